#include "book/remains.h"

#include "base/text.h"
#include "book/journal.h"
#include "book/pages.h"
#include "entry/names.h"

#include <algorithm>

namespace undersheet::book {
namespace {

using entry::Entry;
using entry::Hash;
using Sort = PageValue::Sort;

constexpr std::size_t kDeviceDigits = 32;
constexpr std::size_t kHashBytes = 32;

// Rows are told apart by their shape, as schema/book.sql has them.
bool has_shape(const PageRow& row, std::initializer_list<Sort> shape) {
    return std::equal(row.begin(), row.end(), shape.begin(), shape.end(),
                      [](const PageValue& value, Sort sort) { return value.sort == sort; });
}

bool is_hash(const PageValue& value) { return value.bytes.size() == kHashBytes; }

struct EntryBytes {
    std::string body = {};
    entry::Signature signature = {};
};

class Sifter {
public:
    explicit Sifter(const KeyFinder& find_key) : find_key_(find_key) {}

    Remains run(std::string_view file) {
        each_row_of_pages(file, [&](const PageRow& row) { sort_in(row); });
        for (const auto& [name, bytes] : rows_) admit(name, bytes);
        for (auto& [job, entries] : remains_.found.jobs)
            std::sort(entries.begin(), entries.end(), entry::comes_before);
        keep_named_secrets();
        return std::move(remains_);
    }

private:
    void sort_in(const PageRow& row) {
        if (has_shape(row, {Sort::bytes, Sort::text, Sort::text, Sort::number, Sort::number, Sort::text,
                            Sort::bytes, Sort::bytes}))
            return note_entry(row);
        if (has_shape(row, {Sort::text, Sort::bytes})) return note_key(row);
        if (has_shape(row, {Sort::bytes, Sort::bytes, Sort::bytes})) return note_secret(row);
        if (has_shape(row, {Sort::bytes, Sort::bytes})) return note_text(row);
        if (has_shape(row, {Sort::text, Sort::text})) return note_local(row);
        if (has_shape(row, {Sort::text, Sort::text, Sort::bytes, Sort::number, Sort::number}))
            return note_last(row[0], row[1], row[3]); // a row of `head`
        if (has_shape(row, {Sort::text, Sort::number, Sort::text, Sort::number, Sort::bytes, Sort::number}))
            note_last(row[0], row[2], row[3]); // a row of the index entry_order
    }

    void note_entry(const PageRow& row) {
        const std::string& signature = row[7].bytes;
        EntryBytes bytes{row[6].bytes, {}};
        if (!is_hash(row[0]) || signature.size() != bytes.signature.size()) return;
        std::copy(signature.begin(), signature.end(), bytes.signature.begin());
        rows_[hash_from(row[0].bytes)].push_back(std::move(bytes));
    }

    void note_key(const PageRow& row) {
        if (const auto key = admit_key(row[0].bytes, row[1].bytes))
            remains_.found.keys.emplace(row[0].bytes, *key);
    }

    void note_secret(const PageRow& row) {
        if (!is_hash(row[0])) return;
        const Hash cid = hash_from(row[0].bytes);
        if (auto secret = admit_secret(cid, row[1].bytes, row[2].bytes))
            secrets_.emplace(cid, std::move(*secret));
    }

    void note_text(const PageRow& row) {
        if (!is_hash(row[0])) return;
        const Hash hash = hash_from(row[0].bytes);
        if (check_text(hash, row[1].bytes)) remains_.found.texts.emplace(hash, row[1].bytes);
    }

    void note_local(const PageRow& row) {
        const std::string& key = row[0].bytes;
        if (key == "office" && entry::is_job(row[1].bytes)) remains_.office = row[1].bytes;
        const auto pieces = split(row[1].bytes, ' ');
        const auto count = Decimal::parse(pieces.front());
        const bool is_standing = key.starts_with("at/") && pieces.size() == 2 && count && count->is_integer();
        if (!is_standing) return;
        auto& written = remains_.written[key.substr(3)];
        written = std::max(written, count->whole());
    }

    void note_last(const PageValue& job, const PageValue& device, const PageValue& seq) {
        if (!entry::is_job(job.bytes) || !entry::is_hex(device.bytes, kDeviceDigits)) return;
        auto& last = remains_.last[{job.bytes, device.bytes}];
        last = std::max(last, seq.number);
    }

    // The same name may stand twice, once damaged: one that holds is enough.
    void admit(const Hash& name, const std::vector<EntryBytes>& rows) {
        for (const EntryBytes& bytes : rows) {
            auto entry = read_named(name, bytes.body, bytes.signature);
            if (!entry) continue;
            look_for_key(entry->device);
            if (!check_signed(*entry, remains_.found.keys)) continue;
            remains_.found.jobs[entry->job].push_back(std::move(*entry));
            return;
        }
        ++remains_.refused;
    }

    void look_for_key(const std::string& device) {
        if (remains_.found.keys.contains(device) || !looked_for_.insert(device).second) return;
        if (const auto key = find_key_(device)) remains_.found.keys.emplace(device, *key);
    }

    void keep_named_secrets() {
        for (const auto& [job, entries] : remains_.found.jobs) {
            for (const Entry& entry : entries) {
                for (const auto& member : *entry.data.map()) {
                    const auto cid = entry::commitment_of(member.value);
                    const auto secret = cid ? secrets_.find(*cid) : secrets_.end();
                    if (secret == secrets_.end()) continue;
                    remains_.found.secrets.push_back(std::move(secret->second));
                    secrets_.erase(secret);
                }
            }
        }
    }

    const KeyFinder& find_key_;
    Remains remains_ = {};
    std::set<std::string> looked_for_ = {};
    std::map<Hash, std::vector<EntryBytes>> rows_ = {};
    std::map<Hash, entry::Secret> secrets_ = {};
};

} // namespace

Remains remains_of(std::string_view file, const KeyFinder& find_key) { return Sifter(find_key).run(file); }

} // namespace undersheet::book
