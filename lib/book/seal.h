// The seal of a hand-over file: what it must hold, signed by the device that made it. Without it the file is not whole.
//
// Promises: read_seal checks the form and the signature; whether the file holds what the seal says is for who reads the file.
#pragma once

#include "entry/sign.h"
#include "entry/time.h"

#include <optional>

namespace undersheet::book {

struct Seal {
    std::string device = {};
    std::string office = {}; // the firm's journal, when the whole book was handed; else ""
    std::string clock = {};  // the machine's clock, a claim
    entry::Hash digest = {}; // as in Verified, over the entries of the file
    std::int64_t entries = 0, photos = 0;
    // Over the names of everything in the file that is no entry (handing.h); none in files of the first versions.
    std::optional<entry::Hash> rest = {};
};

struct SealedBytes {
    std::string body = {};
    entry::Signature signature = {};
};

[[nodiscard]] Result<SealedBytes> write_seal(const Seal& seal, const entry::Signer& signer);
[[nodiscard]] Result<Seal> read_seal(const SealedBytes& bytes, const entry::PublicKey& key);
[[nodiscard]] std::string device_of_seal(std::string_view body); // "" when there is none to be read

} // namespace undersheet::book
