// An entry: one thing somebody recorded, signed by the device it was recorded on, never changed afterwards.
//
// Written form ("undersheet.entry.1"), a strict JSON object (entry/json.h), members in ascending order:
//   akey    64 hexadecimal digits: the author's own public key    asig  128: its signature; where a PIN unlocked it (sign.h)
//   author  person who says so: "p" and 10 hexadecimal digits, or "" before there are people
//   boot    16 hexadecimal digits, new at each start of the program
//   clock   the machine's clock as a claim, RFC 3339           simulated  true when the clock was set by hand (tests, demos)
//   data    the fields of the kind; a personal field is {"cid":"<64>"}, the SHA-256 of salt and value
//   dctr    this device's entries in any job, from 1           dprev  hash of the device's entry before this one, in any job
//   dev     32 hexadecimal digits: the first half of SHA-256 over the device's public key (SubjectPublicKeyInfo DER)
//   id      UUIDv7, makes writing idempotent                   job    32 hexadecimal digits
//   kind    what sort of thing                                 lam    1 + the greatest lam of prev and seen
//   mono_millis  a clock that only goes forward within one boot
//   part    the part it belongs to ("band/AB")                 place  where on the roof
//   prev    hash of this device's entry before, in this job    raw    {field: what was typed} where it differs
//   seen    heads of other devices in this job, ascending      seq    this device's entries in this job, from 1
//   supplement  hash of the entry that opened the supplement it belongs to, after the hand-over
//   v       "undersheet.entry.1"                               when   the time it is about, RFC 3339 with offset
// akey and asig, part, place, prev, dprev, raw, seen, simulated and supplement are left out when they say nothing.
//
// Promises: the stored bytes are the truth; nothing writes them a second time. Order is (lam, dev, seq, hash).
// Does not: know SQL, nor what a kind means. Threads: plain values.
#pragma once

#include "entry/hash.h"
#include "entry/place.h"
#include "entry/time.h"
#include "entry/value.h"

#include <map>
#include <optional>
#include <vector>

namespace undersheet::entry {

using PublicKey = std::array<std::uint8_t, 32>;
using Signature = std::array<std::uint8_t, 64>;
class Signer;

// What somebody wants recorded, before it has a name.
struct Draft {
    std::string kind = {};
    std::string job = {};
    std::string author = {};
    std::string place = {};
    std::string part = {};
    std::optional<Hash> supplement = {}; // the entry that opened the one it belongs to
    Time when = {};
    Value data = {};
    Value raw = {};                                   // {field: typed text}, only where it differs
    std::map<std::string, std::string> personal = {}; // field -> value; becomes a commitment in the body
    std::string id = {};                              // left empty, a new UUIDv7 is made
    const Signer* own_hand = nullptr; // the author's own key, where a PIN unlocked it; outlives the writing
};

struct Entry {
    Hash hash = {};
    Signature signature = {};
    std::string body = {};                 // the stored bytes
    std::optional<PublicKey> own_key = {}; // the author's, where the author signed besides the device
    Signature own_signature = {};          // by own_key over own_text(body)

    std::string kind = {}, job = {}, author = {}, device = {}, id = {}, boot = {}, part = {};
    Place place = {};
    Time when = {}, clock = {};
    bool simulated = false;
    Value data = {}; // as in the body: personal fields are commitments
    Value raw = {};
    std::int64_t seq = 0, dctr = 0, lam = 0, mono_millis = 0;
    std::optional<Hash> prev = {}, dprev = {}, supplement = {};
    std::vector<Hash> seen = {};

    std::map<std::string, std::string> personal = {}; // what the book still holds of the personal fields

    // A field as text, a personal one from what is still held ("(erased)" when it is gone); "" when the field is missing.
    [[nodiscard]] std::string field_text(std::string_view field) const;
};

// The salted commitment that stands for a personal value ({"cid":"<64>"}); nothing when this is another value.
[[nodiscard]] std::optional<Hash> commitment_of(const Value& value);

[[nodiscard]] bool comes_before(const Entry& a, const Entry& b); // (lam, dev, seq, hash)

// Reads and checks the written form; signature and chain are checked by who holds the key and the neighbours.
[[nodiscard]] Result<Entry> read_entry(std::string_view body, const Signature& signature);

} // namespace undersheet::entry
