// Before a step is ticked and before a part is signed.
#include "job/guards.h"
#include "job/supplements.h"
#include "job/weather.h"

#include "base/text.h"

#include <algorithm>

namespace undersheet::job {
namespace {

using method::Moment;
using method::Severity;

Held undone(const Scene& scene, const method::Step& step, const std::string& before) {
    const method::Step* first = scene.stage.step(before);
    return {.why = step.closes_adhesive ? "no clean finger test on both faces after the last coat"
                                        : "not done yet: " + (first == nullptr ? before : first->says),
            .clears = "tick " + scene.part.name + " " + before};
}

bool is_clean(const Tick& tick, const std::vector<std::string>& fields) {
    return std::all_of(fields.begin(), fields.end(),
                       [&](const std::string& field) { return tick.data.text_of(field) == "clean"; });
}

// Fields the step cannot do without; a typed "not looked at" does not do the step.
HeldList missing_fields(const Scene& scene, const method::Step& step) {
    std::vector<std::string> missing;
    for (const auto& field : step.fields) {
        if (scene.wish.data.find(field) == nullptr) missing.push_back(field + "=…");
    }
    if (missing.empty()) return {};
    return {{.why = "'" + step.name + "' needs " + joined(missing, " "),
             .clears = "tick " + scene.part.name + " " + step.name + " " + joined(missing, " ")}};
}

HeldList no_moisture_now(const Scene& scene) {
    const auto points = scene.job.all("moisture");
    const double most_h = scene.method.limit("moisture_age_h");
    const bool any_young = std::any_of(points.begin(), points.end(), [&](const Reading* point) {
        return entry::minutes_between(point->when(), scene.wish.when) / 60 <= most_h;
    });
    if (any_young) return {};
    return {{.why = "no moisture reading of the last " + shortest(most_h, 0) + " h",
             .clears = "record moisture at six points"}};
}

HeldList rained_since(const Scene& scene) {
    const auto rain = last_rain(scene.job);
    if (!rain) return {};
    const auto points = scene.job.all("moisture");
    const bool read_since = std::any_of(points.begin(), points.end(), [&](const Reading* point) {
        return point->when().unix_s >= rain->unix_s;
    });
    if (read_since) return {};
    return {{.why = "rain at " + entry::clock_text(*rain) + " since moisture was read",
             .clears = "read the points near edges and openings again"}};
}

HeldList no_tin(const Scene& scene) {
    if (!scene.part.tins.empty()) return {};
    return {{.why = "no tin named for " + part_words(scene.part.name),
             .clears = "record use tin=… --part " + scene.part.name}};
}

HeldList creases_not_warmed(const Scene& scene) {
    HeldList held;
    for (const Reading* crease : scene.job.all("crease")) {
        if (!crease->label.empty() && crease->word("warmed_mm").empty() &&
            crease->number("height_mm").value_or(0) > scene.method.limit("crease_mm")) {
            held.push_back({.why = "crease " + crease->label + " was not measured after warming",
                            .clears = "record crease label=" + crease->label + " warmed=yes warmed_mm=…"});
        }
    }
    return held;
}

bool only_holds_hand_over(const Scene& scene, const Finding& finding) {
    return !finding.holds.empty() &&
           std::all_of(finding.holds.begin(), finding.holds.end(), [&](const method::Hold& hold) {
               const method::Stage* stage = scene.method.stage(hold.stage);
               return stage != nullptr && stage->per == "job";
           });
}

HeldList punch_open(const Scene& scene) {
    HeldList held;
    for (const Finding& finding : scene.findings) {
        if (finding.severity == Severity::note || only_holds_hand_over(scene, finding)) continue;
        held.push_back({.why = "still open: " + finding.says,
                        .clears = finding.clears,
                        .decidable = finding.decidable,
                        .finding = finding.id});
    }
    return held;
}

HeldList doubted_parts(const Scene& scene) {
    HeldList held;
    for (const Part& part : scene.job.parts) {
        if (part.state == State::in_doubt)
            held.push_back(
                {.why = part_words(part.name) + " is in doubt", .clears = "confirm or reopen " + part.name});
        if (part.state == State::opened_again)
            held.push_back(
                {.why = part_words(part.name) + " is opened again", .clears = "begin " + part.name});
    }
    return held;
}

// The customer signs, or the record says that they were not there and where it was sent.
HeldList no_customer(const Scene& scene) {
    const bool customer = scene.wish.data.find("customer") != nullptr;
    const bool not_present = scene.wish.data.find("not_present") != nullptr;
    const auto why = customer_unsaid(customer, not_present);
    const bool is_only_asked = scene.wish.by.empty() && !customer && !not_present;
    if (!why || is_only_asked) return {};
    return {{.why = *why, .clears = "sign with customer=NAME, or not_present=\"sent on …\""}};
}

void take(HeldList& held, HeldList lines) {
    for (auto& line : lines) {
        const bool known = std::any_of(held.begin(), held.end(), [&](const Held& other) {
            return other.why == line.why || (!line.finding.empty() && other.finding == line.finding);
        });
        if (!known) held.push_back(std::move(line));
    }
}

} // namespace

HeldList step_holds(const Scene& scene) {
    const std::string name = scene.wish.data.text_of("step");
    const method::Step* step = scene.stage.step(name);
    if (step == nullptr) {
        std::vector<std::string> names;
        for (const auto& known : scene.stage.steps) names.push_back(known.name);
        return {{.why = part_words(scene.part.name) + " has no step '" + name + "'",
                 .clears = "steps: " + joined(names, ", ")}};
    }
    if (!step->after.empty()) {
        const Tick* before = scene.part.last_tick(step->after);
        if (before == nullptr || !is_clean(*before, step->clean)) return {undone(scene, *step, step->after)};
    }
    return missing_fields(scene, *step);
}

HeldList sign_holds(const Scene& scene) {
    const auto& guards = scene.stage.sign_guards;
    HeldList held = held_by_findings(scene, Moment::sign);
    const auto when = [&](std::string_view guard, HeldList (*lines)(const Scene&)) {
        if (has_guard(guards, guard)) take(held, lines(scene));
    };
    when("moisture_now", no_moisture_now);
    when("dry_since_rain", rained_since);
    when("tin", no_tin);
    when("creases_warmed", creases_not_warmed);
    when("punch_clear", punch_open);
    when("nothing_doubted", doubted_parts);
    when("nothing_doubted", nothing_to_settle);
    when("customer", no_customer);
    return held;
}

} // namespace undersheet::job
