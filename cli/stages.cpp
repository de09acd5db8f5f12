#include "cli/show.h"
#include "cli/verb.h"

#include "base/text.h"

#include <algorithm>
#include <map>

namespace undersheet::cli {
namespace {

constexpr std::size_t kPartRoom = 15;
constexpr std::size_t kStateRoom = 13;

bool is_settled(const desk::PartLine& part) {
    return part.state == "signed" || part.state == "left_out" || part.state == "not_needed" ||
           part.state == "closed";
}

std::string held_words(const desk::Held& held) {
    return held.clears.empty() ? held.why : held.why + " -> " + held.clears;
}

std::string steps_left(const desk::PartLine& part) {
    std::vector<std::string> left;
    for (const auto& step : part.steps) {
        if (step.must && !step.done) left.push_back(step.name);
    }
    return joined(left, ", ");
}

// What is in hand: one line for the part, one for its steps, one for each thing that holds it.
void show_live(const desk::PartLine& part, Screen& screen) {
    std::vector<std::string> may;
    for (const auto& event : part.may) may.push_back(plain_words(event));
    const std::string first =
        "  " + padded(part.part, kPartRoom) + " " + padded(part.state_text, kStateRoom) + " ";
    screen.set_in(first, may.empty() ? part.note : "now: " + joined(may, ", "), Ink::green);
    if (const auto left = steps_left(part); !left.empty() && part.state != "ready")
        screen.set_in("      still to do: ", left);
    for (const auto& held : part.held_by) {
        screen.set_in("      held: ", held_words(held));
    }
}

// One thing in the way, and every part that waits for it.
struct Reason {
    std::string says;
    std::vector<std::string> parts;
};

std::vector<Reason> reasons_of(const std::vector<desk::PartLine>& parts) {
    std::vector<Reason> reasons;
    for (const auto& part : parts) {
        if (part.state != "waiting") continue;
        for (const auto& held : part.held_by) {
            if (!held.after.empty()) continue;
            const std::string says = held_words(held);
            const auto same = [&](const Reason& reason) { return reason.says == says; };
            auto found = std::find_if(reasons.begin(), reasons.end(), same);
            if (found == reasons.end()) found = reasons.insert(reasons.end(), {says, {}});
            if (found->parts.empty() || found->parts.back() != part.part) found->parts.push_back(part.part);
        }
    }
    return reasons;
}

std::string turn_of(const desk::PartLine& part) {
    std::vector<std::string> before;
    for (const auto& held : part.held_by) {
        if (!held.after.empty()) before.push_back(held.after);
    }
    return joined(before, ", ");
}

// Parts that wait for the same parts share a line.
void show_turns(const std::vector<desk::PartLine>& parts, Screen& screen) {
    std::vector<Reason> turns;
    for (const auto& part : parts) {
        const std::string turn = part.state == "waiting" ? turn_of(part) : "";
        if (turn.empty()) continue;
        const auto same = [&](const Reason& known) { return known.says == turn; };
        auto found = std::find_if(turns.begin(), turns.end(), same);
        if (found == turns.end()) found = turns.insert(turns.end(), {turn, {}});
        found->parts.push_back(part.part);
    }
    if (!turns.empty()) screen.line("Waiting for their turn:", Ink::strong);
    for (const auto& turn : turns)
        screen.set_in("  ", joined(turn.parts, ", ") + ": sign " + turn.says + " first");
}

// Each reason stands once, under all the parts that wait for it: so a whole roof fits on one screen.
void show_held(const std::vector<desk::PartLine>& parts, Screen& screen) {
    auto reasons = reasons_of(parts);
    const auto broader = [](const Reason& a, const Reason& b) { return a.parts.size() > b.parts.size(); };
    std::stable_sort(reasons.begin(), reasons.end(), broader);
    if (!reasons.empty()) screen.line("Held:", Ink::strong);
    while (!reasons.empty()) {
        const std::vector<std::string> heading = reasons.front().parts;
        screen.set_in("  ", joined(heading, ", ") + ":");
        for (const auto& reason : reasons) {
            if (reason.parts == heading) screen.set_in("      ", reason.says);
        }
        std::erase_if(reasons, [&](const Reason& reason) { return reason.parts == heading; });
    }
}

std::string settled_words(const desk::PartLine& part) {
    if (part.signed_by.empty()) return part.part;
    return part.part + " (" + part.signed_by +
           (part.signed_at.empty() ? "" : " " + day_and_time(part.signed_at)) + ")";
}

void show_settled(const std::vector<desk::PartLine>& parts, Screen& screen) {
    std::vector<std::string> order;
    std::map<std::string, std::vector<std::string>> by_state;
    for (const auto& part : parts) {
        if (!is_settled(part)) continue;
        if (!by_state.contains(part.state_text)) order.push_back(part.state_text);
        by_state[part.state_text].push_back(settled_words(part));
    }
    for (const auto& state : order) screen.set_in(state + ": ", joined(by_state[state], ", "), Ink::faint);
}

void show_stages(const desk::Stages& stages, Screen& screen) {
    job_heading(stages.job, stages.as_of, screen);
    if (!stages.bond_now.empty()) screen.set_in("", stages.bond_now);
    for (const auto& part : stages.parts) {
        if (!is_settled(part) && part.state != "waiting") show_live(part, screen);
    }
    show_held(stages.parts, screen);
    show_turns(stages.parts, screen);
    show_settled(stages.parts, screen);
}

int run_stages(const Arguments& arguments, Screen& screen) {
    return answer(
        arguments, screen, [&](desk::Desk& desk) { return desk.stages(asked(arguments)); },
        [&](const desk::Stages& stages) { show_stages(stages, screen); });
}

} // namespace

std::vector<Verb> stage_verbs() {
    return {{"stages",
             "what may be done now, and what holds the rest",
             "undersheet stages --job A-07",
             {},
             reading(),
             run_stages}};
}

} // namespace undersheet::cli
