#include "job/supplements.h"

#include <algorithm>
#include <set>

namespace undersheet::job {
namespace {

using entry::Entry;

constexpr int kMostNumber = 9999; // as in the catalogue

int number_of(const Entry& opened) {
    const double number = opened.data.number_of("number", 0);
    return number >= 1 && number <= kMostNumber ? static_cast<int>(number) : 0;
}

// Two devices may have given one number: the later in the order of the entries gets a letter.
std::string free_name(const std::vector<Supplement>& known, int number) {
    const auto is_taken = [&](const std::string& name) {
        return std::any_of(known.begin(), known.end(),
                           [&](const Supplement& other) { return other.name == name; });
    };
    std::string name = std::to_string(number);
    for (char letter = 'b'; letter <= 'z' && is_taken(name); ++letter) name = std::to_string(number) + letter;
    return name;
}

std::string told_of(const Entry& entry, const char* says) {
    return std::string(says) + " (entry " + entry::short_name(entry.hash) + ")";
}

Supplement* opened_by(std::vector<Supplement>& supplements, const entry::Hash& hash) {
    const auto found =
        std::find_if(supplements.begin(), supplements.end(),
                     [&](const Supplement& supplement) { return supplement.opened->hash == hash; });
    return found == supplements.end() ? nullptr : &*found;
}

bool is_in_hand(State state) {
    return state == State::under_way || state == State::paused || state == State::done ||
           state == State::opened_again || state == State::in_doubt;
}

} // namespace

std::vector<Supplement> supplements_in(const std::vector<const Entry*>& visible, const Told& told,
                                       std::vector<std::string>& problems) {
    std::vector<Supplement> supplements;
    for (const Entry* entry : visible) {
        if (entry->kind != "supplement" || entry->supplement) continue;
        Supplement one;
        one.name = free_name(supplements, number_of(*entry));
        one.opened = entry;
        one.why = entry->data.text_of("why");
        supplements.push_back(std::move(one));
    }
    for (const Entry* entry : visible) {
        if (!entry->supplement) continue;
        Supplement* one = opened_by(supplements, *entry->supplement);
        if (one == nullptr) {
            problems.push_back(told_of(*entry, "it belongs to a supplement that is not here"));
        } else if (!told.knew(*entry, *one->opened)) {
            problems.push_back(told_of(*entry, "it names a supplement that its writer did not know of"));
        } else {
            one->entries.push_back(entry);
            if (entry->kind == "supplement_sign") one->signatures.push_back(entry);
        }
    }
    return supplements;
}

std::vector<const Entry*> counting(const std::vector<const Entry*>& visible,
                                   const std::vector<Supplement>& supplements,
                                   const std::optional<entry::Hash>& within) {
    std::set<const Entry*> added;
    for (const Supplement& supplement : supplements) {
        if (!within) break;
        added.insert(supplement.entries.begin(), supplement.entries.end());
        if (supplement.opened->hash == *within) break;
    }
    std::vector<const Entry*> count;
    for (const Entry* entry : visible) {
        if (!entry->supplement || added.contains(entry)) count.push_back(entry);
    }
    return count;
}

std::optional<std::string> customer_unsaid(bool signs, bool is_away) {
    if (signs && is_away) return "the customer cannot sign and be away";
    if (!signs && !is_away) return "the customer has not signed";
    return std::nullopt;
}

std::vector<const Part*> in_hand(const Job& job) {
    std::vector<const Part*> parts;
    for (const Part& part : job.parts)
        if (is_in_hand(part.state)) parts.push_back(&part);
    return parts;
}

std::vector<OpenThing> open_in(const Job& job, const Supplement& supplement) {
    std::vector<OpenThing> open;
    const bool was_looked = std::any_of(supplement.entries.begin(), supplement.entries.end(),
                                        [](const Entry* entry) { return entry->kind == "look"; });
    if (!was_looked)
        open.push_back(
            {"nothing is written of what was seen", "undersheet record look seen=TEXT state_after=TEXT"});
    for (const Part* part : in_hand(job))
        open.push_back({part_words(part->name) + " is " + std::string(state_text(part->state)),
                        part->state == State::in_doubt ? "confirm " + part->name + ", or open it again"
                                                       : "sign " + part->name});
    for (const SettleItem& item : job.to_settle) {
        if (item.holds)
            open.push_back({"two devices said different things (" + item.id + ")", "undersheet settle"});
    }
    return open;
}

} // namespace undersheet::job
