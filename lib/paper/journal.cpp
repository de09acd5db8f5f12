#include "paper/journal.h"

#include "base/text.h"

#include <algorithm>

namespace undersheet::paper {
namespace {

using entry::Entry;
using job::Reading;

// What was typed where it differs from what was understood: "12,1".
std::string typed_words(const Making& making, const Entry& entry) {
    std::vector<std::string> pieces;
    if (entry.raw.map() == nullptr) return {};
    for (const auto& member : *entry.raw.map())
        pieces.push_back(making.said.label(entry.kind, member.key) + ": " + entry.raw.text_of(member.key));
    return joined(pieces, "; ");
}

std::string kind_words(const Making& making, const Entry& entry) {
    const method::Kind* kind = making.setting.kinds.find(entry.kind);
    return kind == nullptr ? making.say("journal.unknown", {{"kind", entry.kind}})
                           : making.words.text(kind->heading);
}

bool is_reading(const Making& making, const Entry& entry) {
    const method::Kind* kind = making.setting.kinds.find(entry.kind);
    return kind != nullptr && kind->group == method::Group::reading;
}

std::string where_words(const Making& making, const Entry& entry) {
    const std::string place = making.said.place(entry.place);
    return place.empty() && !entry.part.empty() ? making.said.part(entry.part) : place;
}

// What an entry says, and what was typed where that differs, on lines of their own below its row.
Row row_of(const Making& making, const Entry& entry) {
    return {{entry::short_name(entry.hash), kind_words(making, entry), where_words(making, entry),
             making.when(&entry), making.person(&entry)},
            {}};
}

void add_beneath(Row& row, std::string words) {
    if (!words.empty()) row.beneath.emplace_back(std::move(words));
}

Row reading_row(const Making& making, const Entry& entry) {
    Row row = row_of(making, entry);
    add_beneath(row, facts_words(making, as_written(entry), "; "));
    const std::string typed = typed_words(making, entry);
    add_beneath(row, typed.empty() ? "" : making.say("journal.typed", {{"typed", typed}}));
    return row;
}

const Entry* entry_named(const Making& making, const entry::Hash& name) {
    const auto& entries = *making.job.entries;
    const auto found =
        std::find_if(entries.begin(), entries.end(), [&](const Entry& entry) { return entry.hash == name; });
    return found == entries.end() ? nullptr : &*found;
}

// A correction changes some fields; each is shown as it stood before.
void add_rows(const Making& making, Reading& now, const Entry& correction, std::vector<Row>& rows) {
    const entry::Value* fields = correction.data.find("fields");
    if (fields == nullptr || fields->map() == nullptr) return;
    for (const auto& member : *fields->map()) {
        const std::string before = making.said.value(now, member.key);
        now.data.set(member.key, member.value);
        rows.push_back({{entry::short_name(now.entry->hash), making.said.label(now.kind, member.key), before,
                         making.said.value(now, member.key), correction.data.text_of("why"),
                         making.by(&correction), entry::short_name(correction.hash)},
                        {}});
    }
}

// What a reading says stands whole further up.
Row journal_row(const Making& making, const Entry& entry) {
    Row row = row_of(making, entry);
    row.cells.emplace_back(entry.device.substr(0, 8));
    if (!is_reading(making, entry)) add_beneath(row, facts_words(making, as_written(entry), "; "));
    return row;
}

} // namespace

Reading as_written(const Entry& entry) {
    Reading reading{.entry = &entry, .stands_on = {&entry}, .kind = entry.kind, .part = entry.part};
    reading.place = entry.place;
    reading.data = entry.data;
    return reading;
}

std::string facts_words(const Making& making, const Reading& reading, std::string_view between) {
    std::vector<std::string_view> fingerprints; // tell a reader nothing
    if (const method::Kind* kind = making.setting.kinds.find(reading.kind))
        for (const method::Field& field : kind->fields)
            if (field.type == method::FieldType::hash || field.type == method::FieldType::hashes)
                fingerprints.push_back(field.name);
    std::vector<std::string> pieces;
    for (const Fact& fact : making.said.facts(reading, fingerprints))
        pieces.push_back(fact.name + ": " + fact.value.words());
    return joined(pieces, between);
}

void add_readings(Making& making, const std::function<bool(const Entry&)>& is_wanted) {
    std::vector<Row> rows;
    for (const Entry& entry : *making.job.entries)
        if (is_reading(making, entry) && is_wanted(entry)) rows.push_back(reading_row(making, entry));
    making.table("", {"entry", "kind", "where", "when", "written_by"}, std::move(rows));
}

void add_tins_used(Making& making, const std::function<bool(const job::TinUse&)>& is_wanted) {
    making.heading("section.tins_used");
    std::vector<Row> rows;
    for (const job::TinUse& use : job::tin_uses(making.job)) {
        if (!is_wanted(use)) continue;
        const auto batch = use.tin == nullptr ? std::string() : making.said.value(*use.tin, "batch");
        rows.push_back({{use.label, batch, use.part.empty() ? "" : making.said.part(use.part),
                         making.by(use.entry), entry::short_name(use.entry->hash)},
                        {}});
    }
    making.table("", {"tin", "batch", "part", "written_by", "entry"}, std::move(rows));
}

void add_corrections(Making& making) {
    making.heading("section.corrections");
    std::vector<Row> rows;
    for (const auto& [name, corrections] : making.job.corrections) {
        const Entry* corrected = entry_named(making, name);
        if (corrected == nullptr) continue;
        Reading now = as_written(*corrected);
        for (const Entry* correction : corrections) add_rows(making, now, *correction, rows);
    }
    making.table("", {"entry", "field", "before", "after", "why", "written_by", "correction"},
                 std::move(rows));
}

void add_journal(Making& making) {
    making.heading("section.journal");
    making.sentence("journal.check");
    std::vector<Row> rows;
    for (const Entry& entry : *making.job.entries) rows.push_back(journal_row(making, entry));
    making.table("", {"entry", "kind", "where", "when", "written_by", "device"}, std::move(rows));
}

} // namespace undersheet::paper
