#include "book/verify.h"

#include "base/text.h"
#include "book/admitting.h"
#include "book/belongings.h"
#include "book/journal.h"
#include "book/photos.h"
#include "schema/embedded.h"

#include <algorithm>
#include <filesystem>
#include <map>
#include <tuple>

namespace undersheet::book {
namespace {

using entry::ChainFault;
using entry::Entry;
using entry::Hash;

// A row of `entry` as it stands in the file.
struct EntryRow {
    Hash hash = {};
    std::string job = {};
    std::string device = {};
    std::int64_t seq = 0;
    std::int64_t lam = 0;
    std::string id = {};
    std::string body = {};
    entry::Signature signature = {};
};

EntryRow entry_row(const Row& row) {
    return {hash_from(row.bytes(0)), row.text(1), row.text(2),  row.integer(3),
            row.integer(4),          row.text(5), row.bytes(6), signature_from(row.bytes(7))};
}

bool columns_agree(const EntryRow& row, const Entry& entry) {
    return row.job == entry.job && row.device == entry.device && row.seq == entry.seq &&
           row.lam == entry.lam && row.id == entry.id;
}

class Verifier {
public:
    Verifier(Connection& connection, const std::string& photo_folder)
        : connection_(connection), photo_folder_(photo_folder) {}

    Verified run() {
        try {
            const Transaction reading(connection_, Transaction::Kind::reading);
            check_pages();
            check_shape();
            load_keys();
            for (const std::string& job : jobs_in(connection_)) check_one_job(job);
            check_devices_and_tails();
            check_photo_folder();
            check_secrets();
            check_texts();
            belongings_.check(holding(), result_);
            check_job_rows();
        } catch (const Trouble& trouble) {
            if (trouble.fault.code != Code::book_damaged) throw;
            add({}, "the file is damaged and cannot be read to its end: " + trouble.fault.detail);
        }
        result_.digest = entry::digest_of(hashes_);
        return std::move(result_);
    }

private:
    struct About {
        Hash entry = {};
        std::string device = {};
        std::int64_t seq = 0;
    };
    void add(const About& about, std::string what) {
        result_.faults.push_back({about.entry, about.device, about.seq, std::move(what)});
    }
    void add(const std::vector<ChainFault>& faults) {
        result_.faults.insert(result_.faults.end(), faults.begin(), faults.end());
    }

    void check_pages() {
        connection_.each("PRAGMA integrity_check(1)", {}, [&](const Row& row) {
            if (row.text(0) != "ok") add({}, "the file is damaged: " + row.text(0));
        });
    }

    // Nothing of ours looks at a table or index more; whoever checks by hand may be shown another book by it.
    void check_shape() {
        Connection fresh(":memory:", Connection::Mode::create, 0);
        fresh.script(schema::book_sql());
        std::set<std::string> ours;
        for (const std::string& thing : things_in(fresh)) ours.insert(thing);
        for (const std::string& thing : things_in(connection_))
            if (ours.erase(thing) == 0) add({}, "the file holds what no book of ours has: " + thing);
        for (const std::string& thing : ours) add({}, "the file lacks what every book of ours has: " + thing);
    }

    static std::vector<std::string> things_in(Connection& connection) {
        std::vector<std::string> things;
        connection.each("SELECT type, name, coalesce(sql, '') FROM sqlite_schema ORDER BY name", {},
                        [&](const Row& row) {
                            const std::string sql = row.text(2);
                            things.push_back(row.text(0) + " " + row.text(1) +
                                             (sql.empty() ? "" : ", as made by " + one_line_of(sql)));
                        });
        return things;
    }
    static std::string one_line_of(const std::string& sql) {
        return replaced(replaced(sql, "\n", " "), "  ", " ");
    }

    void load_keys() {
        connection_.each("SELECT dev, spki FROM pubkey ORDER BY dev", {}, [&](const Row& row) {
            const std::string device = row.text(0);
            const auto key = admit_key(device, row.bytes(1));
            if (key)
                keys_.emplace(device, *key);
            else
                add({{}, device, 0}, key.fault().detail);
        });
    }

    void check_one_job(const std::string& job) {
        std::vector<Entry> entries;
        connection_.each("SELECT hash, job, dev, seq, lam, id, body, sig FROM entry WHERE job = ? ORDER BY "
                         "lam, dev, seq, hash",
                         {job}, [&](const Row& row) { check_row(entry_row(row), entries); });
        std::sort(entries.begin(), entries.end(), entry::comes_before);
        for (const Entry& entry : entries) {
            hashes_.push_back(entry.hash);
            links_.push_back(entry::device_link(entry));
        }
        add(entry::check_job(entries));
        belongings_.note(entries);
        check_heads(job, entries);
        if (!entries.empty()) count(job, entries);
    }

    void check_row(const EntryRow& row, std::vector<Entry>& good) {
        ++result_.entries;
        const About about{row.hash, row.device, row.seq};
        auto entry = read_named(row.hash, row.body, row.signature);
        if (!entry) return add(about, entry.fault().detail);
        if (!columns_agree(row, *entry))
            return add(about, "the book's index says something else than the entry itself");
        if (auto done = check_signed(*entry, keys_); !done) add(about, done.fault().detail);
        good.push_back(std::move(*entry));
    }

    Holding holding() const {
        return {[this](const Hash& photo) -> Done {
                    const auto bytes = read_photo_file(photo_folder_, photo);
                    return bytes ? Done() : Done(bytes.fault());
                },
                [this](const Hash& cid) { return values_.contains(cid); },
                [this](const Hash& text) { return texts_.contains(text); }};
    }

    void check_photo_folder() {
        std::error_code error;
        for (const auto& file : std::filesystem::directory_iterator(photo_folder_, error)) {
            std::error_code unseen;
            if (!file.is_regular_file(unseen)) add({}, "something beside the photographs is no plain file");
        }
    }

    void check_texts() {
        connection_.each("SELECT hash, body FROM text", {}, [&](const Row& row) {
            const Hash hash = hash_from(row.bytes(0));
            if (entry::sha256(row.bytes(1)) == hash) texts_.insert(hash);
        });
    }

    using Head = std::tuple<Hash, std::string, std::int64_t, std::int64_t>; // and its device, number and lam

    void check_heads(const std::string& job, const std::vector<Entry>& entries) {
        std::set<Head> kept, wanted;
        connection_.each("SELECT hash, dev, seq, lam FROM head WHERE job = ?", {job}, [&](const Row& row) {
            kept.emplace(hash_from(row.bytes(0)), row.text(1), row.integer(2), row.integer(3));
        });
        const auto heads = entry::heads_of(entries);
        for (const Entry& entry : entries)
            if (std::binary_search(heads.begin(), heads.end(), entry.hash))
                wanted.emplace(entry.hash, entry.device, entry.seq, entry.lam);
        heads_ += wanted.size();
        if (kept != wanted) add({}, "what the book notes about where job " + job + " has got to is not so");
    }

    void count(const std::string& job, const std::vector<Entry>& entries) {
        JobRow& row = counted_[job];
        row.second = static_cast<std::int64_t>(entries.size());
        for (const Entry& entry : entries)
            if (entry.kind == "open") row.first = entry.data.text_of("ref", row.first);
    }

    // The book remembers what its own devices wrote last: their tails cannot go unnoticed, and neither can whole jobs.
    void check_devices_and_tails() {
        std::vector<std::string> own;
        connection_.each("SELECT k, v FROM local WHERE k LIKE 'at/%' ORDER BY k", {}, [&](const Row& row) {
            own.push_back(row.text(0).substr(3));
            check_tail(own.back(), row.text(1));
        });
        add(entry::check_devices(links_, own));
    }

    void check_tail(const std::string& device, const std::string& standing) {
        const auto last = entry::parse_hash(split(standing, ' ').back());
        const bool is_here = last && std::find(hashes_.begin(), hashes_.end(), *last) != hashes_.end();
        if (!is_here)
            add({last ? *last : Hash{}, device, 0},
                "the last entry this device wrote is missing or was changed");
    }

    void check_secrets() {
        connection_.each("SELECT cid, salt, val FROM secret", {}, [&](const Row& row) {
            values_.insert(hash_from(row.bytes(0)));
            entry::Salt salt{};
            const std::string bytes = row.bytes(1);
            std::copy_n(bytes.begin(), std::min(bytes.size(), salt.size()), salt.begin());
            const bool fits = bytes.size() == salt.size() &&
                              entry::commitment(salt, row.bytes(2)) == hash_from(row.bytes(0));
            if (!fits)
                add({}, "a personal value is not the one that was recorded (" + hex_of(row.bytes(0)) + ")");
        });
    }
    static std::string hex_of(const std::string& cid) { return entry::short_name(hash_from(cid)); }

    void check_job_rows() {
        std::map<std::string, JobRow> kept;
        connection_.each("SELECT job, ref, entries FROM job", {}, [&](const Row& row) {
            kept[row.text(0)] = {row.text(1), row.integer(2)};
        });
        if (kept != counted_)
            add({}, "what the book notes about its jobs, their numbers and how many entries they have, is "
                    "not so");
        if (connection_.number("SELECT count(*) FROM head") != static_cast<std::int64_t>(heads_))
            add({}, "the book notes how far a job has got that is not there");
    }

    Connection& connection_;
    const std::string& photo_folder_;
    Verified result_ = {};
    KeysByDevice keys_ = {};
    Belongings belongings_ = {};
    std::set<Hash> values_ = {}, texts_ = {}; // that are here; a text only as it was kept
    std::vector<Hash> hashes_ = {};
    std::vector<entry::DeviceLink> links_ = {};
    using JobRow = std::pair<std::string, std::int64_t>; // its number, and how many entries
    std::map<std::string, JobRow> counted_ = {};
    std::size_t heads_ = 0;
};

} // namespace

Verified verify_book(Connection& connection, const std::string& photo_folder) {
    return Verifier(connection, photo_folder).run();
}

} // namespace undersheet::book
