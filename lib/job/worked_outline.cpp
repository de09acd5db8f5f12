// Tapes against each other, and heights at walls and outlets.
#include "job/rules.h"

#include "base/text.h"

#include <algorithm>

namespace undersheet::job {
namespace {

using method::Level;
using method::Rule;

std::vector<const entry::Entry*> entries_of(const Job& job, std::string_view kind) {
    std::vector<const entry::Entry*> entries;
    for (const Reading* reading : job.all(kind)) entries.push_back(reading->entry);
    return entries;
}

// Every tape against the same length worked out from the others, worst first; and the tape that must be wrong, if one can be named.
std::vector<std::string> tape_working(const trade::Outline& outline) {
    std::vector<std::string> lines;
    for (const auto& tape : outline.tapes) {
        if (!tape.from_others_m) continue;
        std::string line = tape.from + tape.to + " taped " + fixed(tape.m, 3) + " m, from the others " +
                           fixed(*tape.from_others_m, 4) + " m";
        if (tape.suspect)
            line += ": this tape is wrong";
        else if (tape.perhaps)
            line += ": may be the wrong one";
        for (const auto& slip : tape.slips)
            line += "; " + std::string(trade::words(slip.kind)) + " would make it " +
                    fixed(slip.would_be_m, 3) + " m";
        lines.push_back(std::move(line));
    }
    return lines;
}

// One spare tape says that a tape is wrong; where more of them say which, it is named. Nothing is changed by it.
void name_suspect(Finding& finding, const trade::Outline& outline) {
    const auto wrong = std::find_if(outline.tapes.begin(), outline.tapes.end(),
                                    [](const trade::JudgedTape& tape) { return tape.suspect; });
    if (wrong == outline.tapes.end()) return;
    const std::string tape = wrong->from + wrong->to;
    say(finding, worded("{says}; the others agree without {tape}",
                        {{"says", finding.says_as}, {"tape", place_worded(tape)}}));
    clear_by(finding, worded("tape {tape} again first", {{"tape", place_worded(tape)}}));
}

void misclosure(const Context& context, const Rule& rule, Findings& out) {
    const auto& outline = context.job.roof.outline;
    if (!outline || !outline->misclosure_mm) return;
    for (const Level& level : rule.levels) {
        if (*outline->misclosure_mm <= context.limit(level.limit)) continue;
        out.push_back(make_finding(context, rule, level,
                                   {.value = fixed(*outline->misclosure_mm, 0),
                                    .working = tape_working(*outline),
                                    .entries = entries_of(context.job, "tape")}));
        name_suspect(out.back(), *outline);
        return;
    }
}

void tape_fit(const Context& context, const Rule& rule, Findings& out) {
    const Roof& roof = context.job.roof;
    if (!roof.outline_says.empty()) {
        Finding finding =
            make_finding(context, rule, rule.levels.front(), {.entries = entries_of(context.job, "tape")});
        say(finding, worded("the tapes do not fix the outline: {why}", {{"why", roof.outline_says_as}}));
        out.push_back(std::move(finding));
        return;
    }
    if (!roof.outline || roof.outline->accepted) return;
    auto working = tape_working(*roof.outline);
    working.insert(working.begin(), "weighted square sum " + fixed(roof.outline->vpv, 2) + " over " +
                                        fixed(roof.outline->vpv_limit, 2) + " (chi-square, upper 95 %, " +
                                        std::to_string(roof.outline->spare_tapes) + " spare)");
    out.push_back(make_finding(context, rule, rule.levels.front(),
                               {.working = working, .entries = entries_of(context.job, "tape")}));
    name_suspect(out.back(), *roof.outline);
}

std::string edge_name(const Reading& reading) { return reading.place.a + reading.place.b; }

std::string abutment_of(const Job& job, const Reading& chase) {
    const Edge* edge = job.roof.edge(edge_name(chase));
    return edge == nullptr ? std::string() : edge->abutment;
}

// A door threshold has its own, lower limit; anything lower than the stop stops the job.
void chase_height(const Context& context, const Rule& rule, Findings& out) {
    for (const Reading* chase : context.job.all("chase")) {
        const auto height_mm = chase->number("height_mm");
        if (!height_mm) continue;
        const bool threshold = abutment_of(context.job, *chase) == "door_threshold";
        const std::vector<std::string> keys =
            threshold ? std::vector<std::string>{"threshold_mm"}
                      : std::vector<std::string>{"chase_stop_mm", "chase_height_mm"};
        const About about{.reading = chase, .value = chase->word("height_mm")};
        bool low = false;
        for (const auto& key : keys) {
            const Level* level = rule.level_with(key);
            if (level == nullptr || low || *height_mm >= context.limit(key)) continue;
            out.push_back(make_finding(context, rule, *level, about));
            low = true;
        }
        const method::Limit* limit = context.method.find_limit(keys.back());
        const Level* level = rule.level_with(keys.back());
        if (!low && level != nullptr && limit->near && *height_mm <= *limit->near)
            out.push_back(make_near(context, rule, *level, about));
    }
}

void chase_readings(const Context& context, const Rule& rule, Findings& out) {
    std::map<std::string, std::vector<const Reading*>> by_edge;
    for (const Reading* chase : context.job.all("chase")) by_edge[edge_name(*chase)].push_back(chase);
    for (const auto& [edge, readings] : by_edge) {
        if (readings.size() == 1)
            out.push_back(make_finding(context, rule, rule.levels.front(),
                                       {.reading = readings.front(), .place = edge}));
    }
}

std::optional<double> lowest_height_mm(const Job& job) {
    std::optional<double> lowest;
    for (const Reading* chase : job.all("chase")) {
        const auto height_mm = chase->number("height_mm");
        if (height_mm && (!lowest || *height_mm < *lowest)) lowest = height_mm;
    }
    return lowest;
}

// Water has to find the overflow before it finds the lowest upstand or threshold.
void overflow(const Context& context, const Rule& rule, Findings& out) {
    const auto lowest_mm = lowest_height_mm(context.job);
    for (const Reading* gutter : context.job.all("gutter")) {
        const auto lip_mm = gutter->number("overflow_lip_mm");
        if (!lip_mm || !lowest_mm || *lowest_mm - *lip_mm >= context.limit("overflow_below_mm")) continue;
        const std::string sum = "lowest upstand " + shortest(*lowest_mm, 0) + " mm less lip " +
                                shortest(*lip_mm, 0) + " mm = " + shortest(*lowest_mm - *lip_mm, 0) + " mm";
        out.push_back(make_finding(context, rule, rule.levels.front(),
                                   {.reading = gutter, .value = shortest(*lip_mm, 0), .working = {sum}}));
    }
}

} // namespace

void add_worked_outline(WorkedTable& table) {
    table["misclosure"] = misclosure;
    table["tape_fit"] = tape_fit;
    table["chase_height"] = chase_height;
    table["chase_readings"] = chase_readings;
    table["overflow"] = overflow;
}

} // namespace undersheet::job
