#include "book/taking.h"

#include "book/admitting.h"
#include "book/files.h"
#include "book/handing.h"
#include "book/journal.h"
#include "schema/embedded.h"

#include <algorithm>
#include <filesystem>
#include <set>

namespace undersheet::book {
namespace {

using entry::Entry;
using entry::Hash;

constexpr std::uintmax_t kMostFileBytes = 2ULL << 30U;
constexpr std::size_t kMostEntries = 200'000;

Trouble refused(std::string what, const std::string& path) {
    return {{Code::not_handed, std::move(what), path, "nothing was taken; ask for the file once more"}};
}

const std::string& checked_size(const std::string& path) {
    std::error_code error;
    if (!std::filesystem::is_regular_file(path, error))
        throw Trouble{
            {Code::book_missing, "there is no such file", path, "name the file that was handed over"}};
    if (std::filesystem::file_size(path, error) > kMostFileBytes)
        throw refused("this file is larger than 2 GiB", path);
    return path;
}

// The tables as SQLite writes them down: each CREATE statement of ours, without what stands around it.
std::set<std::string> tables_of(std::string_view sql) {
    std::set<std::string> tables;
    for (std::string_view rest = sql;;) {
        const auto from = rest.find("CREATE TABLE");
        if (from == std::string_view::npos) return tables;
        const auto to = rest.find(';', from);
        tables.emplace(rest.substr(from, to - from));
        rest.remove_prefix(to);
    }
}

void check_tables(Connection& connection, const std::string& path) {
    std::set<std::string> found;
    connection.each("SELECT coalesce(sql, '') FROM sqlite_schema", {},
                    [&](const Row& row) { found.insert(row.text(0)); });
    found.erase(""); // the indexes that SQLite makes by itself
    if (found != tables_of(schema::handed_sql()))
        throw refused("this file holds other tables than a hand-over file", path);
}

void check_pages(Connection& connection, const std::string& path) {
    connection.each("PRAGMA quick_check(1)", {}, [&](const Row& row) {
        if (row.text(0) != "ok") throw refused("this file is damaged: " + row.text(0), path);
    });
}

// What SQLite finds wrong with their file is not said of ours.
template <class Work>
auto theirs(const std::string& path, Work work) {
    try {
        return work();
    } catch (const Trouble& trouble) {
        const Code code = trouble.fault.code;
        if (code == Code::not_handed || code == Code::book_missing) throw;
        throw refused(code == Code::book_not_a_book ? "this is no hand-over file"
                                                    : "this file is damaged or broke off",
                      path);
    }
}

} // namespace

std::unique_ptr<HandedFile> HandedFile::open(const std::string& path) {
    return theirs(path, [&] { return std::unique_ptr<HandedFile>(new HandedFile(path)); });
}

HandedFile::HandedFile(const std::string& path)
    : path_(path), connection_(checked_size(path), Connection::Mode::foreign, 0) {
    constexpr std::int64_t kHandedApplication = 1431521352; // as in schema/handed.sql
    constexpr std::int64_t kBook = 1431521364;              // as in schema/book.sql
    const std::int64_t application = connection_.number("PRAGMA application_id");
    if (application == kBook) {
        throw Trouble{{Code::not_handed, "this is a book, not a hand-over file", path,
                       "have it handed over first: undersheet hand --all"}};
    }
    if (application != kHandedApplication) throw refused("this is no hand-over file", path);
    if (connection_.number("PRAGMA user_version") != 1) {
        throw Trouble{{Code::not_handed, "this file was made by a newer version", path,
                       "bring this program up to date"}};
    }
    check_tables(connection_, path);
    check_pages(connection_, path);
}

Incoming HandedFile::read() {
    return theirs(path_, [&] {
        Incoming incoming;
        read_rows(incoming);
        check_seal(incoming);
        return incoming;
    });
}

void HandedFile::read_rows(Incoming& into) {
    read_keys(into);
    read_seal_row(into);
    read_entries(into);
    read_secrets(into);
    read_texts(into);
    read_photos(into);
}

void HandedFile::read_keys(Incoming& into) {
    connection_.each("SELECT dev, spki FROM pubkey", {}, [&](const Row& row) {
        const auto key = admit_key(row.text(0), row.bytes(1));
        if (!key)
            throw refused("the key kept for device " + row.text(0).substr(0, 32) + " is not its own", path_);
        into.keys.emplace(row.text(0), *key);
    });
}

void HandedFile::read_seal_row(Incoming& into) {
    std::string body;
    entry::Signature signature = {};
    const bool is_there = connection_.one("SELECT body, sig FROM seal", {}, [&](const Row& row) {
        body = row.bytes(0);
        signature = signature_from(row.bytes(1));
    });
    if (!is_there) throw refused("this file is not whole: it has no seal", path_);
    const auto key = into.keys.find(device_of_seal(body));
    if (key == into.keys.end()) throw refused("the key of who sealed this file is missing", path_);
    auto seal = read_seal({std::move(body), signature}, key->second);
    if (!seal) throw refused(seal.fault().detail, path_);
    into.seal = std::move(*seal);
}

void HandedFile::read_entries(Incoming& into) {
    std::size_t count = 0;
    connection_.each("SELECT hash, body, sig FROM entry", {}, [&](const Row& row) {
        if (++count > kMostEntries) throw refused("this file holds more than 200,000 entries", path_);
        const Hash name = hash_from(row.bytes(0));
        auto entry = admit_entry(name, row.bytes(1), signature_from(row.bytes(2)), into.keys);
        if (!entry) throw refused("entry " + entry::short_name(name) + ": " + entry.fault().detail, path_);
        into.jobs[entry->job].push_back(std::move(*entry));
    });
    for (auto& [job, entries] : into.jobs) std::sort(entries.begin(), entries.end(), entry::comes_before);
}

void HandedFile::read_secrets(Incoming& into) {
    std::set<Hash> named;
    for (const auto& [job, entries] : into.jobs) {
        for (const Entry& entry : entries) {
            for (const auto& member : *entry.data.map()) {
                if (const auto cid = entry::commitment_of(member.value)) named.insert(*cid);
            }
        }
    }
    connection_.each("SELECT cid, salt, val FROM secret", {}, [&](const Row& row) {
        const Hash cid = hash_from(row.bytes(0));
        if (!named.contains(cid)) throw refused("a personal value belongs to no entry", path_);
        auto secret = admit_secret(cid, row.bytes(1), row.bytes(2));
        if (!secret) throw refused(secret.fault().detail, path_);
        into.secrets.push_back(std::move(*secret));
    });
}

void HandedFile::read_texts(Incoming& into) {
    connection_.each("SELECT hash, body FROM text", {}, [&](const Row& row) {
        const Hash hash = hash_from(row.bytes(0));
        std::string body = row.bytes(1);
        if (auto done = check_text(hash, body); !done) throw refused(done.fault().detail, path_);
        into.texts.emplace(hash, std::move(body));
    });
}

void HandedFile::read_photos(Incoming& into) {
    std::set<Hash> named;
    for (const auto& [job, entries] : into.jobs) {
        for (const Entry& entry : entries) {
            const auto hash = entry::parse_hash(entry.data.text_of("sha256"));
            if (entry.kind == "photo" && hash) named.insert(*hash);
        }
    }
    connection_.each("SELECT sha256 FROM photo", {}, [&](const Row& row) {
        const Hash hash = hash_from(row.bytes(0));
        if (!named.contains(hash)) throw refused("a photograph belongs to no entry", path_);
        into.photos.push_back(hash);
    });
    for (const Hash& hash : into.photos) {
        if (auto done = check_photo(hash, photo(hash)); !done) throw refused(done.fault().detail, path_);
    }
}

std::string HandedFile::photo(const Hash& hash) {
    std::string bytes;
    connection_.one("SELECT data FROM photo WHERE sha256 = ?", {Bytes{bytes_of(hash)}},
                    [&](const Row& row) { bytes = row.bytes(0); });
    return bytes;
}

void HandedFile::check_seal(const Incoming& read) {
    std::vector<Hash> hashes;
    for (const auto& [job, entries] : read.jobs) {
        for (const Entry& entry : entries) hashes.push_back(entry.hash);
    }
    const bool fits = read.seal.digest == entry::digest_of(hashes) &&
                      read.seal.entries == static_cast<std::int64_t>(hashes.size()) &&
                      read.seal.photos == static_cast<std::int64_t>(read.photos.size()) &&
                      (!read.seal.rest || *read.seal.rest == rest_of(connection_));
    if (!fits) throw refused("this file is not whole: it holds something else than its seal says", path_);
}

} // namespace undersheet::book
