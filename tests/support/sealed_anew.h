// A hand-over file changed by who has a key of their own and seals what is left: no honest program makes such a file, and
// only what stands in the entries themselves can tell.
#pragma once

#include "book/admitting.h"
#include "book/handing.h"
#include "entry/order.h"
#include "tests/support/books.h"
#include "tests/support/tamper.h"

#include <algorithm>
#include <map>

namespace undersheet {

inline std::vector<entry::Hash> hashes_in_file(book::Connection& file) {
    std::map<std::string, std::vector<entry::Entry>> jobs;
    file.each("SELECT hash, body, sig FROM entry", {}, [&](const book::Row& row) {
        auto entry = good(book::read_named(entry::sha256(row.bytes(1)), row.bytes(1), {}));
        jobs[entry.job].push_back(std::move(entry));
    });
    std::vector<entry::Hash> hashes;
    for (auto& [job, entries] : jobs) {
        std::sort(entries.begin(), entries.end(), entry::comes_before);
        for (const entry::Entry& entry : entries) hashes.push_back(entry.hash);
    }
    return hashes;
}

// Does `sql` to the file, then seals it. Without `says_rest` as the first versions did.
inline void change_and_seal(const std::string& path, const std::string& sql, bool says_rest = true) {
    tamper(path, sql + "; DELETE FROM seal");
    book::Connection file(path, book::Connection::Mode::write, 0);
    const auto signer = entry::signer_from(seed_of(9));
    file.run("INSERT OR IGNORE INTO pubkey (dev, spki) VALUES (?, ?)",
             {signer->device(), book::Bytes{entry::spki_of(signer->public_key())}});
    const auto hashes = hashes_in_file(file);
    book::Seal seal{signer->device(), "", "2026-06-11T08:00:00+01:00", entry::digest_of(hashes), 0, 0, {}};
    seal.entries = static_cast<std::int64_t>(hashes.size());
    seal.photos = file.number("SELECT count(*) FROM photo");
    if (says_rest) seal.rest = book::rest_of(file);
    const auto sealed = good(book::write_seal(seal, *signer));
    file.run("INSERT INTO seal (one, body, sig) VALUES (1, ?, ?)",
             {book::Bytes{sealed.body},
              book::Bytes{std::string(sealed.signature.begin(), sealed.signature.end())}});
}

} // namespace undersheet
