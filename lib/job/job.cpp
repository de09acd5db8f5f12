#include "job/job.h"

#include "base/text.h"

#include <algorithm>

namespace undersheet::job {
namespace {

bool is_not_looked(std::string_view word) { return word == "not_looked" || word == "cant_reach"; }

} // namespace

std::optional<double> Reading::number(std::string_view field) const {
    const entry::Value* value = data.find(field);
    if (value == nullptr || value->number() == nullptr) return std::nullopt;
    return value->number()->value();
}

std::string Reading::word(std::string_view field) const {
    const entry::Value* value = data.find(field);
    if (value == nullptr) return {};
    if (value->number() != nullptr) return value->number()->text();
    if (value->boolean() != nullptr) return *value->boolean() ? "yes" : "no";
    return value->text() == nullptr ? std::string() : *value->text();
}

bool Reading::not_looked(std::string_view field) const { return is_not_looked(word(field)); }

void Part::stand(const PartEvent& event) {
    events.push_back(event);
    tips = {{event.entry, event.to}};
    state = event.to;
}

bool Part::is_contested() const {
    return std::any_of(tips.begin(), tips.end(),
                       [&](const Tip& tip) { return tip.state != tips.front().state; });
}

const SignOff* Part::signature() const {
    if (is_contested() || signatures.empty() || signatures.back().struck) return nullptr;
    return &signatures.back();
}

const Tick* Part::last_tick(std::string_view step) const {
    const auto found = std::find_if(ticks.rbegin(), ticks.rend(),
                                    [&](const Tick& tick) { return tick.step == step && !tick.struck; });
    return found == ticks.rend() ? nullptr : &*found;
}

bool Part::has_begun() const {
    return std::any_of(events.begin(), events.end(),
                       [](const PartEvent& event) { return event.event == Event::begin; });
}

const Part* Job::part(std::string_view name) const {
    const auto found =
        std::find_if(parts.begin(), parts.end(), [&](const Part& part) { return part.name == name; });
    return found == parts.end() ? nullptr : &*found;
}

const Supplement* Job::supplement() const {
    const auto found = std::find_if(supplements.begin(), supplements.end(), [&](const Supplement& one) {
        return within && one.opened->hash == *within;
    });
    return found == supplements.end() ? nullptr : &*found;
}

const Person* Job::person(std::string_view wanted) const {
    const auto found =
        std::find_if(people.begin(), people.end(), [&](const Person& known) { return known.id == wanted; });
    return found == people.end() ? nullptr : &*found;
}

std::vector<const Reading*> Job::all(std::string_view kind) const {
    std::vector<const Reading*> found;
    for (const Reading& reading : readings) {
        if (reading.kind == kind) found.push_back(&reading);
    }
    return found;
}

const Reading* Job::latest(std::string_view kind) const {
    const auto found = std::find_if(readings.rbegin(), readings.rend(),
                                    [&](const Reading& reading) { return reading.kind == kind; });
    return found == readings.rend() ? nullptr : &*found;
}

std::string Job::said(std::string_view kind, std::string_view field) const {
    std::string word;
    for (const Reading* reading : all(kind)) {
        if (reading->data.find(field) != nullptr) word = reading->word(field);
    }
    return word;
}

std::string Job::personal(std::string_view kind, std::string_view field) const {
    std::string value;
    for (const Reading* reading : all(kind)) {
        for (const entry::Entry* from : reading->stands_on) {
            if (from->data.find(field) != nullptr) value = from->field_text(field);
        }
    }
    return value;
}

const Reading* Job::tin(std::string_view label) const {
    for (const Reading* tin : all("tin")) {
        if (tin->label == label || tin->word("batch") == label) return tin;
    }
    return nullptr;
}

std::string Job::person_name(std::string_view wanted) const {
    const Person* found = person(wanted);
    if (found == nullptr) return std::string(wanted);
    return found->name.empty() ? found->initials : found->name;
}

} // namespace undersheet::job
