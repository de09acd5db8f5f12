#include "book/handing.h"

#include "book/erased.h"
#include "book/files.h"
#include "book/journal.h"
#include "book/opening.h"
#include "book/photos.h"
#include "schema/embedded.h"

#include <algorithm>
#include <set>

namespace undersheet::book {
namespace {

using entry::Entry;
using entry::Hash;

class Writer {
public:
    Writer(Connection& from, Connection& to, const HandWhat& what) : from_(from), to_(to), what_(what) {}

    Handed write(const entry::Signer& signer) {
        for (const std::string& job : what_.jobs) add_job(entries_of(from_, job));
        devices_.insert(signer.device());
        to_.run("INSERT OR IGNORE INTO pubkey (dev, spki) VALUES (?, ?)",
                {signer.device(), Bytes{entry::spki_of(signer.public_key())}});
        add_keys();
        for (const Hash& text : texts_) add_text(text);
        for (const Hash& photo : photos_) add_photo(photo);
        handed_.digest = entry::digest_of(hashes_);
        add_seal(signer);
        return std::move(handed_);
    }

private:
    void add_job(const std::vector<Entry>& entries) {
        const Erased erased = erased_by(entries);
        for (const Entry& entry : entries) add_entry(entry, erased);
        for (const Hash& photo : photos_of(entries)) {
            if (!erased.photos.contains(photo)) photos_.insert(photo);
        }
    }

    void add_entry(const Entry& entry, const Erased& erased) {
        hashes_.push_back(entry.hash);
        devices_.insert(entry.device);
        ++handed_.entries;
        to_.run("INSERT INTO entry (hash, body, sig) VALUES (?, ?, ?)",
                {Bytes{bytes_of(entry.hash)}, Bytes{entry.body}, Bytes{bytes_of(entry.signature)}});
        for (const entry::Member& member : *entry.data.map()) {
            const auto cid = entry::commitment_of(member.value);
            if (cid && !erased.cids.contains(*cid)) add_secret(*cid);
        }
        for (const Hash& text : texts_pinned_by(entry)) texts_.insert(text);
    }

    void add_secret(const Hash& cid) {
        from_.each("SELECT salt, val FROM secret WHERE cid = ?", {Bytes{bytes_of(cid)}}, [&](const Row& row) {
            to_.run("INSERT OR IGNORE INTO secret (cid, salt, val) VALUES (?, ?, ?)",
                    {Bytes{bytes_of(cid)}, Bytes{row.bytes(0)}, Bytes{row.bytes(1)}});
        });
    }

    void add_keys() {
        from_.each("SELECT dev, spki FROM pubkey", {}, [&](const Row& row) {
            if (devices_.contains(row.text(0)))
                to_.run("INSERT OR IGNORE INTO pubkey (dev, spki) VALUES (?, ?)",
                        {row.text(0), Bytes{row.bytes(1)}});
        });
    }

    void add_text(const Hash& hash) {
        std::string body;
        from_.one("SELECT body FROM text WHERE hash = ?", {Bytes{bytes_of(hash)}},
                  [&](const Row& row) { body = row.bytes(0); });
        if (entry::sha256(body) != hash)
            throw Trouble{
                {Code::book_damaged,
                 "the method or catalogue " + entry::short_name(hash) +
                     " that a job is judged by is missing or was changed: nobody could take the file",
                 {},
                 "take in a file of that job from another phone, then hand it over again"}};
        to_.run("INSERT INTO text (hash, body) VALUES (?, ?)", {Bytes{bytes_of(hash)}, Bytes{body}});
    }

    void add_photo(const Hash& hash) {
        const auto bytes = read_photo_file(what_.photo_folder, hash);
        if (!bytes) return handed_.missing_photos.push_back(entry::hash_text(hash));
        to_.run("INSERT INTO photo (sha256, data) VALUES (?, ?)", {Bytes{bytes_of(hash)}, Bytes{*bytes}});
        ++handed_.photos;
    }

    void add_seal(const entry::Signer& signer) {
        const Seal seal{signer.device(), what_.office,   what_.clock, handed_.digest,
                        handed_.entries, handed_.photos, rest_of(to_)};
        const auto sealed = value_or_trouble(write_seal(seal, signer));
        to_.run("INSERT INTO seal (one, body, sig) VALUES (1, ?, ?)",
                {Bytes{sealed.body}, Bytes{bytes_of(sealed.signature)}});
    }

    Connection& from_;
    Connection& to_;
    const HandWhat& what_;
    std::set<std::string> devices_ = {};
    std::set<Hash> texts_ = {}, photos_ = {};
    std::vector<Hash> hashes_ = {};
    Handed handed_ = {};
};

} // namespace

entry::Hash rest_of(Connection& handed) {
    std::string lines;
    handed.each(
        "SELECT 'photo ' || lower(hex(sha256)) FROM photo UNION ALL SELECT 'pubkey ' || dev FROM pubkey "
        "UNION ALL SELECT 'secret ' || lower(hex(cid)) FROM secret "
        "UNION ALL SELECT 'text ' || lower(hex(hash)) FROM text ORDER BY 1",
        {}, [&](const Row& row) { lines.append(row.text(0)).append("\n"); });
    return entry::sha256(lines);
}

std::vector<Hash> texts_pinned_by(const Entry& entry) {
    std::vector<Hash> texts;
    if (entry.kind != "open") return texts;
    for (const char* pinned : {"method", "kinds"})
        if (const auto hash = entry::parse_hash(entry.data.text_of(pinned))) texts.push_back(*hash);
    return texts;
}

std::vector<Hash> photos_of(const std::vector<Entry>& entries) {
    std::set<Hash> photos;
    for (const Entry& entry : entries) {
        const auto hash = entry::parse_hash(entry.data.text_of("sha256"));
        if (entry.kind == "photo" && hash) photos.insert(*hash);
    }
    return {photos.begin(), photos.end()};
}

Handed write_handed(Connection& from, const HandWhat& what, const entry::Signer& signer,
                    const std::string& path) {
    Handed handed;
    make_file(path, [&](const std::string& part) {
        Connection to(part, Connection::Mode::create, 0);
        Transaction writing(to, Transaction::Kind::writing);
        to.script(schema::handed_sql());
        const Transaction reading(from, Transaction::Kind::reading);
        handed = Writer(from, to, what).write(signer);
        writing.commit();
    });
    return handed;
}

} // namespace undersheet::book
