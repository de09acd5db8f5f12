// Entries in, job out: sort, leave out what is later than asked, then people, readings, roof, parts and lists.
#include "job/derive_parts.h"
#include "job/job.h"
#include "job/replay.h"
#include "job/roof_build.h"

#include "base/text.h"

#include <algorithm>
#include <array>

namespace undersheet::job {
namespace {

using entry::Entry;
using entry::Value;

std::vector<std::string> texts(const Value& data, std::string_view field) {
    std::vector<std::string> out;
    for (const auto& item : data.list_of(field)) {
        if (item.text() != nullptr) out.push_back(*item.text());
    }
    return out;
}

// The firm, its people and the opening of the job always count: work is often written down before its job was opened.
bool is_office(const Entry& entry, const method::Catalogue& kinds) {
    const method::Kind* kind = kinds.find(entry.kind);
    return kind != nullptr && kind->group == method::Group::office;
}

std::vector<const Entry*> visible_at(const EntryList& entries, const method::Catalogue& kinds,
                                     const entry::Time& as_of) {
    std::vector<const Entry*> visible;
    for (const Entry& entry : entries) {
        if (entry.when.unix_s <= as_of.unix_s || is_office(entry, kinds)) visible.push_back(&entry);
    }
    return visible;
}

Person person_from(const Entry& entry, const Value& data) {
    return {.id = data.text_of("person"),
            .name = entry.field_text("name"),
            .initials = entry.field_text("initials"),
            .role = data.text_of("role"),
            .firm = data.text_of("firm"),
            .ends = data.text_of("ends")};
}

void take_person(Job& job, Person person) {
    std::erase_if(job.people, [&](const Person& known) { return known.id == person.id; });
    job.people.push_back(std::move(person));
}

void take_opening(Job& job, const Entry& entry) {
    job.opened = &entry;
    job.ref = entry.data.text_of("ref");
    job.roof_name = entry.data.text_of("roof");
    job.method_hash = entry.data.text_of("method");
    job.kinds_hash = entry.data.text_of("kinds");
}

PunchItem* find_item(Job& job, int number) {
    const auto found = std::find_if(job.punch.begin(), job.punch.end(),
                                    [&](const PunchItem& item) { return item.number == number; });
    return found == job.punch.end() ? nullptr : &*found;
}

method::Severity severity_of(std::string_view word) {
    if (word == "stop") return method::Severity::stop;
    return word == "note" ? method::Severity::note : method::Severity::put_right;
}

void join_items(Job& job, int number, int with) {
    PunchItem* kept = find_item(job, number);
    PunchItem* joined = find_item(job, with);
    if (kept == nullptr || joined == nullptr || kept == joined) return;
    joined->joined_away = true;
    kept->also_raised_as.push_back(std::to_string(with) + " " + joined->text);
}

void take_punch(Job& job, const Entry& entry, const Value& data) {
    const int number = static_cast<int>(data.number_of("number", 0));
    if (entry.kind == "punch_add") {
        job.punch.push_back({.number = number,
                             .raised = &entry,
                             .text = data.text_of("text"),
                             .part = entry.part,
                             .place = entry.place,
                             .severity = severity_of(data.text_of("severity"))});
        return;
    }
    if (entry.kind == "punch_join")
        return join_items(job, number, static_cast<int>(data.number_of("with", 0)));
    PunchItem* item = find_item(job, number);
    if (item == nullptr) return;
    if (entry.kind == "punch_clear") item->cleared = &entry;
    if (entry.kind == "punch_look") item->looked = &entry;
}

void take_decision(Job& job, const Entry& entry, const Value& data) {
    job.decisions.push_back({.entry = &entry,
                             .finding = data.text_of("finding"),
                             .decider = entry.field_text("decider"),
                             .role = data.text_of("role"),
                             .why = data.text_of("why"),
                             .limit = data.text_of("limit"),
                             .reading = data.text_of("reading"),
                             .stands_on = texts(data, "stands_on")});
}

Answer answer_from(const Entry& entry, const Value& data, std::string text) {
    return {.entry = &entry,
            .finding = data.text_of("finding"),
            .text = std::move(text),
            .stands_on = texts(data, "stands_on")};
}

void take_lists(Job& job, const Counted& counted) {
    for (const Entry* entry : counted.standing) {
        const Value data = corrected_data(*entry, counted);
        if (entry->kind == "open")
            take_opening(job, *entry);
        else if (entry->kind == "person")
            take_person(job, person_from(*entry, data));
        else if (entry->kind == "decide")
            take_decision(job, *entry, data);
        else if (entry->kind == "reason")
            job.reasons.push_back(answer_from(*entry, data, data.text_of("text")));
        else if (entry->kind == "told")
            job.told.push_back(answer_from(*entry, data, entry->field_text("whom")));
        else if (entry->kind == "issue")
            job.issued.push_back(entry);
        else if (entry->kind.starts_with("punch_"))
            take_punch(job, *entry, data);
    }
}

bool comes_after(const Entry& a, const Entry& b) { return entry::comes_before(b, a); }

// A changed deck moves the heights and the wet near the change: what was read there before is asked for again.
void doubt_near_changes(Job& job, const method::Method& method) {
    constexpr std::array kDoubted{"chase", "level", "moisture"};
    const double reach_m = method.limit("moisture_reach_m");
    for (const Reading* change : job.all("alter")) {
        const auto changed_at = locate(job.roof, change->place);
        for (Reading& reading : job.readings) {
            if (std::find(kDoubted.begin(), kDoubted.end(), reading.kind) == kDoubted.end()) continue;
            if (!comes_after(*change->entry, *reading.entry)) continue;
            const auto read_at = locate(job.roof, reading.place);
            const bool apart = changed_at && read_at && trade::distance_m(*changed_at, *read_at) > reach_m;
            if (!apart) reading.doubted = true;
        }
    }
}

void close_if_from_paper(Job& job) {
    if (job.opened == nullptr || !job.opened->data.is_yes("from_paper")) return;
    job.handed_over = job.opened;
    for (Part& part : job.parts) {
        if (part.state != State::not_needed) part.state = State::closed;
    }
}

} // namespace

Result<Job> fold(EntryList entries, const method::Method& method, const method::Catalogue& kinds,
                 const entry::Time& as_of) {
    Job job;
    std::sort(entries.begin(), entries.end(), entry::comes_before);
    job.entries = std::make_shared<const EntryList>(std::move(entries));
    job.as_of = as_of;
    if (!job.entries->empty()) job.id = job.entries->front().job;
    Counted counted = count_readings(visible_at(*job.entries, kinds, as_of), kinds);
    take_lists(job, counted);
    job.roof = build_roof(counted.readings, method);
    job.parts = derive_parts(job.roof, method);
    close_if_from_paper(job);
    replay(job, counted, method);
    job.readings = std::move(counted.readings);
    job.replaced = std::move(counted.replaced);
    job.withdrawn = std::move(counted.withdrawn);
    job.corrections = std::move(counted.corrections);
    doubt_near_changes(job, method);
    return job;
}

} // namespace undersheet::job
