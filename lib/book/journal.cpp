#include "book/journal.h"

#include "base/text.h"
#include "entry/order.h"

#include <algorithm>

namespace undersheet::book {
namespace {

using entry::Chain;
using entry::Entry;
using entry::Hash;

Trouble damaged(std::string what) {
    return {{Code::book_damaged,
             std::move(what),
             {},
             "go back to a copy, or read what is left: undersheet salvage"}};
}

template <class Array>
Array fixed_size(std::string_view bytes, const char* what) {
    Array array{};
    if (bytes.size() != array.size())
        throw damaged(std::string("a ") + what + " in the book is not of its size");
    std::copy(bytes.begin(), bytes.end(), array.begin());
    return array;
}

template <class Array>
std::string_view view(const Array& array) {
    return {reinterpret_cast<const char*>(array.data()), array.size()};
}

// --- where a device stands: local row "at/<device>", "<entries it wrote in any job> <hash of the last>" ---

std::string standing_key(const std::string& device) { return "at/" + device; }

void read_standing(Connection& connection, const std::string& device, Chain& chain) {
    const std::string value = local(connection, standing_key(device));
    if (value.empty()) return;
    const auto pieces = split(value, ' ');
    const auto count = Decimal::parse(pieces.front());
    const auto last = entry::parse_hash(pieces.back());
    if (pieces.size() != 2 || !count || !last)
        throw damaged("the book does not know where this device stands");
    chain.dctr = count->whole();
    chain.dprev = *last;
}

void write_standing(Connection& connection, const Entry& entry) {
    set_local(connection, standing_key(entry.device),
              std::to_string(entry.dctr) + " " + entry::hash_text(entry.hash));
}

void add_secrets(Connection& connection, const std::vector<entry::Secret>& secrets) {
    for (const entry::Secret& secret : secrets) {
        connection.run("INSERT INTO secret (cid, salt, val) VALUES (?, ?, ?)",
                       {Bytes{view(secret.cid)}, Bytes{view(secret.salt)}, Bytes{secret.value}});
    }
}

void move_head(Connection& connection, const Entry& entry) {
    if (entry.prev) {
        connection.run("DELETE FROM head WHERE job = ? AND dev = ? AND hash = ?",
                       {entry.job, entry.device, Bytes{view(*entry.prev)}});
    }
    connection.run("INSERT INTO head (job, dev, hash, seq, lam) VALUES (?, ?, ?, ?, ?)",
                   {entry.job, entry.device, Bytes{view(entry.hash)}, entry.seq, entry.lam});
}

struct JobRow {
    std::string ref = {};
    std::int64_t entries = 0;
    std::string last_when = {};
};

bool is_later(const std::string& when, const std::string& than) {
    const auto a = entry::parse_time(when);
    const auto b = entry::parse_time(than);
    return !b || (a && a->unix_s > b->unix_s);
}

void count_in_job(Connection& connection, const Entry& entry) {
    JobRow row;
    connection.one("SELECT ref, entries, last_when FROM job WHERE job = ?", {entry.job},
                   [&](const Row& found) {
                       row = {found.text(0), found.integer(1), found.text(2)};
                   });
    if (entry.kind == "open") row.ref = entry.data.text_of("ref", row.ref);
    if (is_later(entry.when.text, row.last_when)) row.last_when = entry.when.text;
    connection.run("INSERT OR REPLACE INTO job (job, ref, entries, last_when) VALUES (?, ?, ?, ?)",
                   {entry.job, row.ref, row.entries + 1, row.last_when});
}

// --- reading back ---

Entry entry_of(const Row& row) {
    return value_or_trouble(entry::read_entry(row.bytes(0), signature_from(row.bytes(1))));
}

void fill_personal(Connection& connection, Entry& entry) {
    for (const entry::Member& member : *entry.data.map()) {
        const auto cid = entry::commitment_of(member.value);
        if (!cid) continue;
        connection.one("SELECT val FROM secret WHERE cid = ?", {Bytes{view(*cid)}},
                       [&](const Row& row) { entry.personal[member.key] = row.bytes(0); });
    }
}

std::vector<Entry> read_entries(Connection& connection, const char* query, Parameters parameters) {
    std::vector<Entry> entries;
    connection.each(query, parameters, [&](const Row& row) { entries.push_back(entry_of(row)); });
    for (Entry& entry : entries) fill_personal(connection, entry);
    return entries;
}

} // namespace

Hash hash_from(std::string_view bytes) { return fixed_size<Hash>(bytes, "hash"); }

entry::Signature signature_from(std::string_view bytes) {
    return fixed_size<entry::Signature>(bytes, "signature");
}

std::string_view bytes_of(const Hash& hash) { return view(hash); }
std::string_view bytes_of(const entry::Signature& signature) { return view(signature); }

Chain chain_of(Connection& connection, const std::string& job, const std::string& device) {
    Chain chain;
    read_standing(connection, device, chain);
    connection.each(
        "SELECT dev, hash, seq, lam FROM head WHERE job = ? ORDER BY seq, hash", {job}, [&](const Row& row) {
            const Hash hash = hash_from(row.bytes(1));
            chain.lam = std::max(chain.lam, row.integer(3));
            if (row.text(0) != device) return chain.seen.push_back(hash);
            if (chain.prev)
                chain.seen.push_back(*chain.prev); // this device was copied: go on from the longer branch
            chain.prev = hash;
            chain.seq = row.integer(2);
        });
    return chain;
}

void add_row(Connection& connection, const Entry& entry) {
    connection.run(
        "INSERT INTO entry (hash, job, dev, seq, lam, id, body, sig) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
        {Bytes{view(entry.hash)}, entry.job, entry.device, entry.seq, entry.lam, entry.id, Bytes{entry.body},
         Bytes{view(entry.signature)}});
}

void recount(Connection& connection, const std::vector<Entry>& whole_job) {
    const std::string& job = whole_job.front().job;
    connection.run("DELETE FROM head WHERE job = ?", {job});
    connection.run("DELETE FROM job WHERE job = ?", {job});
    const auto heads = entry::heads_of(whole_job);
    for (const Entry& entry : whole_job) {
        count_in_job(connection, entry);
        if (!std::binary_search(heads.begin(), heads.end(), entry.hash)) continue;
        connection.run("INSERT INTO head (job, dev, hash, seq, lam) VALUES (?, ?, ?, ?, ?)",
                       {job, entry.device, Bytes{view(entry.hash)}, entry.seq, entry.lam});
    }
}

void add(Connection& connection, const entry::Composed& composed) {
    add_row(connection, composed.entry);
    add_secrets(connection, composed.secrets);
    move_head(connection, composed.entry);
    count_in_job(connection, composed.entry);
    write_standing(connection, composed.entry);
}

void add_device(Connection& connection, const entry::PublicKey& key) {
    connection.run("INSERT OR IGNORE INTO pubkey (dev, spki) VALUES (?, ?)",
                   {entry::device_name(key), Bytes{entry::spki_of(key)}});
}

std::vector<std::string> jobs_in(Connection& connection) {
    std::vector<std::string> jobs;
    connection.each("SELECT DISTINCT job FROM entry ORDER BY job", {},
                    [&](const Row& row) { jobs.push_back(row.text(0)); });
    return jobs;
}

std::vector<Entry> entries_of(Connection& connection, std::string_view job) {
    return read_entries(connection, "SELECT body, sig FROM entry WHERE job = ? ORDER BY lam, dev, seq, hash",
                        {job});
}

std::optional<Entry> entry_by_id(Connection& connection, std::string_view id) {
    auto found = read_entries(connection, "SELECT body, sig FROM entry WHERE id = ? LIMIT 1", {id});
    if (found.empty()) return std::nullopt;
    return std::move(found.front());
}

std::vector<Entry> entries_between(Connection& connection, const Hash& low, const Hash& high) {
    return read_entries(connection,
                        "SELECT body, sig FROM entry WHERE hash BETWEEN ? AND ? ORDER BY hash LIMIT 2",
                        {Bytes{view(low)}, Bytes{view(high)}});
}

std::set<std::string> own_devices(Connection& connection) {
    std::set<std::string> devices;
    connection.each("SELECT k FROM local WHERE k LIKE 'at/%'", {},
                    [&](const Row& row) { devices.insert(row.text(0).substr(standing_key("").size())); });
    return devices;
}

void give_up_device(Connection& connection, const std::string& device) {
    const std::string key = standing_key(device);
    connection.run("DELETE FROM local WHERE k = ?", {key});
    if (local(connection, "device") == device) set_local(connection, "device", "");
}

std::string local(Connection& connection, std::string_view key) {
    std::string value;
    connection.one("SELECT v FROM local WHERE k = ?", {key}, [&](const Row& row) { value = row.text(0); });
    return value;
}

void set_local(Connection& connection, std::string_view key, std::string_view value) {
    connection.run("INSERT OR REPLACE INTO local (k, v) VALUES (?, ?)", {key, value});
}

} // namespace undersheet::book
