#include "job/view.h"

#include "job/settle.h"

#include <algorithm>

namespace undersheet::job {
namespace {

using entry::Entry;

bool comes_first(const Entry* a, const Entry* b) { return entry::comes_before(*a, *b); }

const Entry* later(const Entry* a, const Entry* b) {
    if (a == nullptr || b == nullptr) return a == nullptr ? b : a;
    return comes_first(a, b) ? b : a;
}

// All of `a` and what only `b` has, in the order of their entries. `same` joins two that speak of the same.
template <class Thing, class Same, class Put>
void unite(std::vector<Thing>& a, std::vector<Thing> b, const Entry* Thing::*entry, Same same, Put put) {
    for (Thing& other : b) {
        const auto known =
            std::find_if(a.begin(), a.end(), [&](const Thing& one) { return same(one, other); });
        if (known == a.end())
            a.push_back(std::move(other));
        else
            put(*known, other);
    }
    std::stable_sort(a.begin(), a.end(), [&](const Thing& one, const Thing& other) {
        return comes_first(one.*entry, other.*entry);
    });
}

template <class Thing>
void unite(std::vector<Thing>& a, std::vector<Thing> b, const Entry* Thing::*entry) {
    unite(
        a, std::move(b), entry,
        [&](const Thing& one, const Thing& other) { return one.*entry == other.*entry; },
        [](Thing&, const Thing&) {});
}

void unite_words(std::vector<std::string>& a, const std::vector<std::string>& b) {
    for (const auto& word : b) {
        if (std::find(a.begin(), a.end(), word) == a.end()) a.push_back(word);
    }
    std::sort(a.begin(), a.end());
}

void strike(SignOff& one, const SignOff& other) {
    for (const Entry* confirmed : other.confirmed) {
        if (std::find(one.confirmed.begin(), one.confirmed.end(), confirmed) == one.confirmed.end())
            one.confirmed.push_back(confirmed);
    }
    std::sort(one.confirmed.begin(), one.confirmed.end(), comes_first);
    if (one.struck == other.struck) {
        one.struck_why = std::max(one.struck_why, other.struck_why);
    } else if (other.struck) {
        one.struck = true;
        one.struck_why = other.struck_why;
    }
}

bool has_moved_on(const Part& part, const Tip& tip) {
    const bool still_tip = std::any_of(part.tips.begin(), part.tips.end(),
                                       [&](const Tip& own) { return own.entry == tip.entry; });
    const bool knows = std::any_of(part.events.begin(), part.events.end(),
                                   [&](const PartEvent& event) { return event.entry == tip.entry; });
    return knows && !still_tip;
}

std::vector<Tip> tips_left(const Part& of, const Part& beside) {
    std::vector<Tip> left;
    std::copy_if(of.tips.begin(), of.tips.end(), std::back_inserter(left),
                 [&](const Tip& tip) { return !has_moved_on(beside, tip); });
    return left;
}

bool has_tip(const std::vector<Tip>& tips, const Tip& wanted) {
    return std::any_of(tips.begin(), tips.end(), [&](const Tip& tip) { return tip.entry == wanted.entry; });
}

bool is_within(const std::vector<Tip>& some, const std::vector<Tip>& all) {
    return std::all_of(some.begin(), some.end(), [&](const Tip& tip) { return has_tip(all, tip); });
}

void unite_records(Part& a, const Part& b) {
    unite(
        a.events, b.events, &PartEvent::entry,
        [](const PartEvent& one, const PartEvent& other) {
            return one.entry == other.entry && one.event == other.event;
        },
        [](PartEvent&, const PartEvent&) {});
    unite(
        a.ticks, b.ticks, &Tick::entry,
        [](const Tick& one, const Tick& other) { return one.entry == other.entry && one.step == other.step; },
        [](Tick& one, const Tick& other) { one.struck = one.struck || other.struck; });
    unite(
        a.signatures, b.signatures, &SignOff::entry,
        [](const SignOff& one, const SignOff& other) { return one.entry == other.entry; }, strike);
    unite(
        a.pauses, b.pauses, &Pause::from,
        [](const Pause& one, const Pause& other) { return one.from == other.from; },
        [](Pause& one, const Pause& other) {
            one.to = later(one.to, other.to);
            one.spoilt_coat = one.spoilt_coat || other.spoilt_coat;
        });
    unite_words(a.tins, b.tins);
    a.redo_from = later(a.redo_from, b.redo_from);
    a.sent_back = later(a.sent_back, b.sent_back);
    a.reading = later(a.reading, b.reading);
}

// Which of two views of a part is the newer in everything that is not a list; both, when neither knows all of the other.
void take_standing(Part& a, const Part& b, bool a_is_newer, bool b_is_newer) {
    if (a_is_newer) return;
    if (b_is_newer) {
        a.note = b.note;
        a.doubts = b.doubts;
        a.doubt_parts = b.doubt_parts;
        a.begun_by = b.begun_by;
        a.left_out_why = b.left_out_why;
        a.agreed_by = b.agreed_by;
        return;
    }
    unite_words(a.doubts, b.doubts);
    unite_words(a.doubt_parts, b.doubt_parts);
    for (auto field : {&Part::note, &Part::begun_by, &Part::left_out_why, &Part::agreed_by})
        a.*field = std::max(a.*field, b.*field);
}

void join_part(Part& a, const Part& b) {
    std::vector<Tip> tips = tips_left(a, b);
    const std::vector<Tip> others = tips_left(b, a);
    const bool a_is_newer = is_within(others, tips);
    const bool b_is_newer = is_within(tips, others);
    for (const Tip& tip : others) {
        if (!has_tip(tips, tip)) tips.push_back(tip);
    }
    std::sort(tips.begin(), tips.end(),
              [](const Tip& one, const Tip& other) { return comes_first(one.entry, other.entry); });
    take_standing(a, b, a_is_newer, b_is_newer);
    unite_records(a, b);
    a.tips = std::move(tips);
    if (!a.tips.empty()) a.state = state_of_tips(a);
}

void join_recorded(Recorded& a, const Recorded& b) {
    for (const auto& [what, entry] : b) a[what] = later(a[what], entry);
}

} // namespace

State state_of_tips(const Part& part) {
    State state = part.tips.front().state;
    for (const Tip& tip : part.tips) state = more_careful(state, tip.state);
    return state;
}

SettleItem settle_item(const Part& part) {
    SettleItem item{.about = Apart::part_state, .part = part.name, .holds = true};
    for (const Tip& tip : part.tips) item.sides.push_back({tip.entry, std::string(state_text(tip.state))});
    item.id = settle_id(item);
    return item;
}

View joined_views(View a, View b) {
    // What was handed over stays as it was then; of two hand-overs the first in the order of the entries.
    if (a.handed_over != nullptr || b.handed_over != nullptr) {
        const bool a_stands = b.handed_over == nullptr ||
                              (a.handed_over != nullptr && !comes_first(b.handed_over, a.handed_over));
        return a_stands ? std::move(a) : std::move(b);
    }
    for (std::size_t i = 0; i < a.parts.size(); ++i) join_part(a.parts[i], b.parts[i]);
    join_recorded(a.recorded, b.recorded);
    unite(
        a.problems, std::move(b.problems), &Problem::entry,
        [](const Problem& one, const Problem& other) {
            return one.entry == other.entry && one.says == other.says;
        },
        [](Problem&, const Problem&) {});
    unite(a.settled, std::move(b.settled), &SettleItem::settled);
    return a;
}

} // namespace undersheet::job
