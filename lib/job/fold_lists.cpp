#include "job/fold_lists.h"

#include <algorithm>

namespace undersheet::job {
namespace {

using entry::Entry;
using entry::Value;

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

// The row an entry means: by the entry that raised it, or, where it does not say, by its name.
PunchItem* find_item(Job& job, const std::string& raised, const std::string& name) {
    const auto found = std::find_if(job.punch.begin(), job.punch.end(), [&](const PunchItem& item) {
        return raised.empty() ? item.name == name : entry::hash_text(item.raised->hash) == raised;
    });
    return found == job.punch.end() ? nullptr : &*found;
}

// Two devices may have given one number: the later in the order of the entries gets a letter.
std::string free_name(const Job& job, int number) {
    std::string name = std::to_string(number);
    for (char letter = 'b'; letter <= 'z'; ++letter) {
        const bool taken = std::any_of(job.punch.begin(), job.punch.end(),
                                       [&](const PunchItem& item) { return item.name == name; });
        if (!taken) return name;
        name = std::to_string(number) + letter;
    }
    return name;
}

method::Severity severity_of(std::string_view word) {
    if (word == "stop") return method::Severity::stop;
    return word == "note" ? method::Severity::note : method::Severity::put_right;
}

void join_items(PunchItem& kept, PunchItem* joined) {
    if (joined == nullptr || &kept == joined) return;
    joined->joined_away = true;
    kept.also_raised_as.push_back(joined->name + " " + joined->text);
}

std::string number_text(const Value& data, std::string_view field) {
    const Value* value = data.find(field);
    if (value == nullptr) return {};
    return value->number() != nullptr ? value->number()->text() : data.text_of(field);
}

// A number on the punch list; 0 for what is none.
int punch_number(const Value& data) {
    constexpr double kMost = 1e6;
    const double number = data.number_of("number", 0);
    return number > 0 && number < kMost ? static_cast<int>(number) : 0;
}

void take_punch(Job& job, const Entry& entry, const Value& data) {
    if (entry.kind == "punch_add") {
        const int number = punch_number(data);
        job.punch.push_back({.number = number,
                             .name = free_name(job, number),
                             .raised = &entry,
                             .text = data.text_of("text"),
                             .part = entry.part,
                             .place = entry.place,
                             .severity = severity_of(data.text_of("severity"))});
        return;
    }
    PunchItem* item = find_item(job, data.text_of("of"), number_text(data, "number"));
    if (item == nullptr) return;
    if (entry.kind == "punch_join")
        join_items(*item, find_item(job, data.text_of("with_of"), number_text(data, "with")));
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
                             .stands_on = data.texts_of("stands_on")});
}

Answer answer_from(const Entry& entry, const Value& data, std::string text) {
    return {.entry = &entry,
            .finding = data.text_of("finding"),
            .text = std::move(text),
            .stands_on = data.texts_of("stands_on")};
}

} // namespace

void take_lists(Job& job, const Counted& counted) {
    for (const Entry* entry : counted.standing) {
        const Value data = corrected_data(*entry, counted.corrections);
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

} // namespace undersheet::job
