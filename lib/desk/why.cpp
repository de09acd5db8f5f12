#include "base/text.h"
#include "desk/desk.h"
#include "desk/session.h"
#include "desk/words.h"

namespace undersheet::desk {
namespace {

std::string entry_line(Case& on, const entry::Entry& entry) {
    const method::Kind* kind = on.kinds->find(entry.kind);
    std::string line = entry::short_name(entry.hash) + " " + heading_of(*on.kinds, entry.kind);
    if (entry.place.form != entry::PlaceForm::nowhere) line += " at " + entry::place_text(entry.place);
    return line + ", " + by_words(on.job, &entry) + ": " + entry_words(on.job, entry, kind);
}

std::string source_words(const job::Finding& finding) {
    if (finding.mark == "P") return finding.source + " (common practice, no published source)";
    if (finding.mark == "M") return finding.source + " (published, quoted from memory)";
    return finding.source;
}

void add_one(Why& why, std::string heading, const std::string& line) {
    if (!line.empty()) why.add(std::move(heading), {line});
}

std::string let_go(Case& on, const job::Finding& finding) {
    if (finding.decided == nullptr) return "";
    const job::Decision& decision = *finding.decided;
    return decision.decider + ", " + decision.role + ": " + decision.why + " (" +
           by_words(on.job, decision.entry) + ")";
}

Why of_finding(Case& on, const job::Finding& finding) {
    Why why = {on.name(),
               finding.id,
               std::string(method::severity_text(finding.severity)) + ": " + finding.says,
               {}};
    Lines recorded;
    for (const auto* entry : finding.entries) recorded.push_back(entry_line(on, *entry));
    why.add("What was recorded", recorded);
    why.add("Worked out", finding.working);
    add_one(why, "Limit", finding.limit);
    add_one(why, "Source", source_words(finding));
    add_one(why, "To clear it", finding.clears);
    add_one(why, "Let go by", let_go(on, finding));
    return why;
}

std::string held_line(const job::Held& held) {
    return held.why + (held.clears.empty() ? "" : "; " + held.clears) +
           (held.finding.empty() ? "" : " [" + held.finding + "]");
}

Lines step_lines(Case& on, const job::PartView& view) {
    Lines lines;
    for (const auto& step : view.steps) {
        const std::string done =
            step.done   ? "done" + (step.entry == nullptr ? "" : ", " + by_words(on.job, step.entry))
            : step.must ? "still to do"
                        : "not done, wanted";
        lines.push_back(step.name + " (" + step.says + "): " + done);
    }
    return lines;
}

Lines event_lines(Case& on, const job::Part& part) {
    Lines lines;
    for (const auto& event : part.events) {
        lines.push_back(replaced(std::string(job::event_word(event.event)), "_", " ") + ", " +
                        by_words(on.job, event.entry) + ": " + std::string(job::state_text(event.to)));
    }
    return lines;
}

// What holds the part, with each finding that holds it told in full.
void add_part(Why& why, Case& on, const job::PartView& view) {
    Lines held;
    for (const auto& line : view.held_by) held.push_back(held_line(line));
    why.add(view.part + " is " + std::string(job::state_text(view.state)) + (held.empty() ? "" : ", held by"),
            held);
    why.add(view.part + ", steps", step_lines(on, view));
    if (const auto* part = on.job.part(view.part))
        why.add(view.part + ", what happened", event_lines(on, *part));
    for (const auto& line : view.held_by) {
        const job::Finding* finding = line.finding.empty() ? nullptr : on.judged().finding(line.finding);
        if (finding == nullptr) continue;
        for (auto& step : of_finding(on, *finding).steps)
            why.steps.push_back({finding->id + ", " + step.heading, step.lines});
    }
}

std::string stage_verdict(const std::vector<const job::PartView*>& views) {
    std::size_t settled = 0;
    for (const auto* view : views) {
        if (view->state == job::State::signed_off || view->state == job::State::left_out ||
            view->state == job::State::not_needed || view->state == job::State::closed)
            ++settled;
    }
    if (views.size() == 1) return std::string(job::state_text(views[0]->state));
    return std::to_string(settled) + " of " + std::to_string(views.size()) + " parts settled";
}

std::vector<std::string> known_names(Case& on) {
    std::vector<std::string> known;
    for (const auto& finding : on.judged().findings) known.push_back(finding.id);
    for (const auto& view : on.judged().parts) known.push_back(view.part);
    for (const auto& stage : on.method->stages()) known.push_back(stage.name);
    return known;
}

} // namespace

void Why::add(std::string heading, Lines lines) {
    if (!lines.empty()) steps.push_back({std::move(heading), std::move(lines)});
}

Result<Why> Desk::why(const Asked& asked, std::string_view wanted) {
    constexpr std::string_view kTakeOff = "takeoff:";
    if (wanted.starts_with(kTakeOff))
        return why_take_off(asked, {.line = std::string(wanted.substr(kTakeOff.size()))});
    auto on = take_up(*session_, asked);
    if (!on) return on.fault();
    if (const auto* finding = on->judged().finding(wanted)) return of_finding(*on, *finding);
    std::vector<const job::PartView*> views;
    for (const auto& view : on->judged().parts) {
        if (view.part == wanted || view.stage == wanted) views.push_back(&view);
    }
    if (views.empty()) {
        const std::string near = nearest_word(wanted, known_names(*on));
        return Fault{Code::no_such_finding,
                     "job " + on->job.ref + " has no finding, stage or part '" + std::string(wanted) + "'",
                     {},
                     near.empty() ? "undersheet findings and undersheet stages list them"
                                  : "did you mean '" + near + "'?"};
    }
    Why why = {on->name(), std::string(wanted), stage_verdict(views), {}};
    for (const auto* view : views) add_part(why, *on, *view);
    return why;
}

} // namespace undersheet::desk
