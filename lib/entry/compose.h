// Making an entry: what somebody wants recorded, set behind what the device wrote before, and signed.
//
// Promises: what comes out reads back through read_entry; a personal value, and what was typed for it, stands in no body.
// Does not: keep anything. Who calls it stores entry and secrets together, or neither.
#pragma once

#include "entry/sign.h"
#include "entry/world.h"

namespace undersheet::entry {

// Where the writing device stands, in one job and in all it wrote.
struct Chain {
    std::optional<Hash> prev = {};  // its last entry in this job
    std::int64_t seq = 0;           // its entries in this job so far
    std::optional<Hash> dprev = {}; // its last entry in any job
    std::int64_t dctr = 0;          // its entries in any job so far
    std::vector<Hash> seen = {};    // heads of the other devices in this job
    std::int64_t lam = 0;           // the greatest lam among prev and seen, 0 when there is none
};

// A personal value beside the body: cid = SHA-256(salt, value). Erasing it leaves the body and its signature whole.
using Salt = std::array<std::uint8_t, 32>;
struct Secret {
    Hash cid = {};
    Salt salt = {};
    std::string value = {};
};

[[nodiscard]] Hash commitment(const Salt& salt, std::string_view value);

struct Composed {
    Entry entry; // with its personal values filled in
    std::vector<Secret> secrets;
};

[[nodiscard]] Result<Composed> compose(const Draft& draft, const Chain& chain, World& world,
                                       const Signer& signer);

// Where the device stands after that entry.
[[nodiscard]] Chain advanced(Chain chain, const Entry& entry);

// Does the entry say what the draft wants said? Used when the draft's id was written before.
[[nodiscard]] bool says_the_same(const Draft& draft, const Entry& entry);

} // namespace undersheet::entry
