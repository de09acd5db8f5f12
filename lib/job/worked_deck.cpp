// Boards, fixing heads and moisture.
#include "job/heads_sample.h"
#include "job/rules.h"

#include "trade/moisture.h"

#include <algorithm>
#include <cmath>

namespace undersheet::job {
namespace {

using method::Level;
using method::Rule;

// Thin boards carry only between close supports; with the supports unknown the wide ones are taken.
void board_thickness(const Context& context, const Rule& rule, Findings& out) {
    const Reading* structure = context.job.latest("structure");
    for (const Reading* board : context.job.all("board")) {
        const auto thickness_mm = board->number("thickness_mm");
        if (!thickness_mm || board->word("material") == "old_surface") continue;
        auto support_mm = board->number("support_mm");
        if (!support_mm && structure != nullptr) support_mm = structure->number("joist_spacing_mm");
        const bool narrow = support_mm && *support_mm <= context.limit("support_narrow_mm");
        const std::string key = narrow ? "board_at_narrow_mm" : "board_at_wide_mm";
        if (*thickness_mm >= context.limit(key)) continue;
        const std::string at = support_mm ? "supports " + shortest(*support_mm, 0) + " mm apart"
                                          : "supports not known: taken as wide";
        out.push_back(make_finding(
            context, rule, rule.levels.front(),
            {.reading = board, .value = shortest(*thickness_mm, 1), .limit = key, .working = {at}}));
    }
}

void heads(const Context& context, const Rule& rule, Findings& out) {
    const auto sample = judge_heads(context.job, context.method);
    if (!sample || sample->cleared) return;
    Finding finding =
        make_finding(context, rule, rule.levels.front(),
                     {.value = sample->line, .working = sample->working, .entries = sample->entries});
    if (sample->all_wanted && !sample->is_full)
        clear_by(finding, "check every head: set the bad ones and record reset=");
    else if (sample->is_full)
        clear_by(finding, worded("set them, and record the full check with reset={bad}",
                                 {{"bad", std::to_string(sample->bad)}}));
    else if (!sample->boards.empty())
        clear_by(finding, "check every head of those boards and their neighbours; then check different heads "
                          "(other_heads=yes)");
    out.push_back(std::move(finding));
}

void heads_sample(const Context& context, const Rule& rule, Findings& out) {
    const auto sample = judge_heads(context.job, context.method);
    if (!sample || sample->is_full) return;
    double squares = context.limit("heads_squares");
    const double every_m2 = context.limit("heads_square_every_m2");
    if (const auto area_m2 = context.area_m2()) squares += std::max(0.0, std::floor(*area_m2 / every_m2) - 1);
    const double wanted = squares * context.limit("heads_per_square");
    if (static_cast<double>(sample->squares) >= squares && static_cast<double>(sample->checked) >= wanted)
        return;
    const auto line = worded("{checked} heads in {squares} squares; {heads} in {wanted} wanted",
                             {{"checked", std::to_string(sample->checked)},
                              {"squares", std::to_string(sample->squares)},
                              {"heads", shortest(wanted, 0)},
                              {"wanted", shortest(squares, 0)}});
    out.push_back(
        make_finding(context, rule, rule.levels.front(), {.value = line, .entries = sample->entries}));
}

void heads_quick(const Context& context, const Rule& rule, Findings& out) {
    const double sample_size = context.limit("heads_squares") * context.limit("heads_per_square");
    for (const Reading* heads : context.job.all("heads")) {
        const auto took_min = heads->number("minutes_min");
        const double checked = heads->number("checked").value_or(0);
        if (!took_min || *took_min >= context.limit("heads_quick_min") || checked < sample_size) continue;
        out.push_back(make_finding(context, rule, rule.levels.front(),
                                   {.reading = heads, .value = shortest(checked, 0)}));
    }
}

void fixing_length(const Context& context, const Rule& rule, Findings& out) {
    double thickest_mm = 0;
    for (const Reading* board : context.job.all("board"))
        thickest_mm = std::max(thickest_mm, board->number("thickness_mm").value_or(0));
    const double by_board_mm = context.limit("fixing_length_times") * thickest_mm;
    const double least_mm = std::max(context.limit("fixing_length_mm"), by_board_mm);
    for (const Reading* heads : context.job.all("heads")) {
        const auto length_mm = heads->number("length_mm");
        if (!length_mm || *length_mm >= least_mm) continue;
        const bool by_board = by_board_mm > context.limit("fixing_length_mm");
        const std::string sum = shortest(context.limit("fixing_length_times"), 1) + " x " +
                                shortest(thickest_mm, 1) + " mm = " + shortest(by_board_mm, 1) + " mm";
        Finding finding = make_finding(context, rule, rule.levels.front(),
                                       {.reading = heads,
                                        .value = shortest(*length_mm, 1),
                                        .limit = by_board ? "fixing_length_times" : "fixing_length_mm",
                                        .working = {sum}});
        finding.limit = shortest(least_mm, 1);
        say(finding, worded("fixings {value} mm long; at least {limit} mm",
                            {{"value", finding.value}, {"limit", finding.limit}}));
        out.push_back(std::move(finding));
    }
}

// Measured again: on the same board, or when every head was checked.
bool is_measured_again(const Job& job, const Reading& heads, std::string_view field) {
    const auto all = job.all("heads");
    return std::any_of(all.begin(), all.end(), [&](const Reading* later) {
        if (!later->number(field) || !entry::comes_before(*heads.entry, *later->entry)) return false;
        const bool is_full = later->number("checked") && later->number("checked") == later->number("total");
        const bool is_there = later->place.form != entry::PlaceForm::nowhere || !later->word("board").empty();
        return is_full || (is_there && later->word("board") == heads.word("board") &&
                           entry::place_text(later->place) == entry::place_text(heads.place));
    });
}

// A pattern counts as wrong when it is over the spacing by more than the tolerance.
void spacing(const Context& context, const Rule& rule, std::string_view field, Findings& out) {
    const Level& level = rule.levels.front();
    // In hundredths of a mm, so that 165 mm is exactly 10 % over 150.
    const double most_hundredths = context.limit(level.limit) * (100 + context.limit("spacing_over_pct"));
    for (const Reading* heads : context.job.all("heads")) {
        const auto apart_mm = heads->number(field);
        if (!apart_mm || *apart_mm * 100 <= most_hundredths) continue;
        if (is_measured_again(context.job, *heads, field)) continue;
        out.push_back(
            make_finding(context, rule, level, {.reading = heads, .value = shortest(*apart_mm, 1)}));
    }
}

trade::MoistureRule cold_wood_rule(const Context& context) {
    trade::MoistureRule rule = trade::practice_moisture_rule();
    rule.pct_per_k_below = context.limit("moisture_per_k_pct");
    rule.pct_per_k_above = context.limit("moisture_per_k_pct");
    rule.reference_c = context.limit("moisture_reference_c");
    return rule;
}

std::optional<trade::Moisture> judged(const Context& context, const Reading& reading) {
    const auto raw = reading.number("reading_pct");
    if (!raw) return std::nullopt;
    const auto result =
        trade::moisture({.reading_pct = *raw, .board_c = reading.number("board_c")}, cold_wood_rule(context),
                        {context.limit("meter_least_pct"), context.limit("meter_most_pct")});
    if (result) return *result;
    return trade::Moisture{.judged_pct = *raw}; // a correction that cannot be must not hide a wet board
}

void moisture(const Context& context, const Rule& rule, Findings& out) {
    for (const Reading* reading : context.job.all("moisture")) {
        const auto result = judged(context, *reading);
        if (!result) continue;
        const auto value = worded(result->judged_corrected ? "{pct} % (corrected)" : "{pct} % (raw)",
                                  {{"pct", fixed(result->judged_pct, 1)}});
        std::vector<std::string> working{"raw " + reading->word("reading_pct") + " %"};
        if (result->corrected_pct)
            working.push_back("corrected for the board's temperature " + fixed(*result->corrected_pct, 3) +
                              " %; the worse counts");
        for (const Level& level : rule.levels) {
            if (result->judged_pct < context.limit(level.limit)) continue;
            out.push_back(
                make_finding(context, rule, level, {.reading = reading, .value = value, .working = working}));
            break;
        }
    }
}

void meter(const Context& context, const Rule& rule, Findings& out) {
    for (const Reading* reading : context.job.all("moisture")) {
        const auto raw = reading->number("reading_pct");
        if (!raw) continue;
        const bool over = *raw > context.limit("meter_most_pct");
        if (!over && *raw >= context.limit("meter_least_pct")) continue;
        const Level* level = rule.level_with(over ? "meter_most_pct" : "meter_least_pct");
        if (level == nullptr) continue;
        out.push_back(make_finding(
            context, rule, *level,
            {.reading = reading, .value = worded("{pct} %", {{"pct", reading->word("reading_pct")}})}));
    }
}

// Between the two the correction is small enough to do without.
void board_temperature(const Context& context, const Rule& rule, Findings& out) {
    const Reading* air = context.job.latest("air");
    const auto air_c = air == nullptr ? std::nullopt : air->number("air_c");
    if (!air_c || (*air_c >= context.limit("moisture_cold_c") && *air_c <= context.limit("moisture_warm_c")))
        return;
    for (const Reading* reading : context.job.all("moisture")) {
        if (!reading->number("reading_pct") || reading->number("board_c")) continue;
        out.push_back(make_finding(context, rule, rule.levels.front(), {.reading = reading}));
    }
}

void moisture_points(const Context& context, const Rule& rule, Findings& out) {
    const auto points = context.job.all("moisture");
    const auto count = std::count_if(points.begin(), points.end(),
                                     [](const Reading* r) { return r->number("reading_pct").has_value(); });
    double wanted = context.limit("moisture_points");
    if (const auto area_m2 = context.area_m2())
        wanted = std::max(wanted, std::ceil(*area_m2 / context.limit("moisture_m2_a_point")));
    if (count == 0 || static_cast<double>(count) >= wanted) return;
    Finding finding = make_finding(context, rule, rule.levels.front(), {.value = std::to_string(count)});
    for (const Reading* point : points) finding.entries.push_back(point->entry);
    finding.limit = shortest(wanted, 0);
    say(finding, worded(count == 1 ? "{value} moisture point; at least {limit}"
                                   : "{value} moisture points; at least {limit}",
                        {{"value", finding.value}, {"limit", finding.limit}}));
    out.push_back(std::move(finding));
}

void moisture_alike(const Context& context, const Rule& rule, Findings& out) {
    std::vector<const entry::Entry*> entries;
    std::set<std::string> different;
    for (const Reading* reading : context.job.all("moisture")) {
        if (!reading->number("reading_pct")) continue;
        entries.push_back(reading->entry);
        different.insert(reading->word("reading_pct"));
    }
    if (entries.size() < 3 || different.size() > 1) return;
    out.push_back(
        make_finding(context, rule, rule.levels.front(), {.value = *different.begin(), .entries = entries}));
}

void moisture_fell(const Context& context, const Rule& rule, Findings& out) {
    constexpr double kDay_min = 24 * 60;
    for (const Reading* reading : context.job.all("moisture")) {
        const auto now = reading->number("reading_pct");
        for (const Reading& before : context.job.replaced) {
            if (before.kind != "moisture" || reading->label.empty() || before.label != reading->label)
                continue;
            const auto then = before.number("reading_pct");
            if (!now || !then || reading->data.is_yes("new_board")) continue;
            if (entry::minutes_between(before.when(), reading->when()) > kDay_min) continue;
            if (*then - *now <= context.limit("moisture_drop_pct")) continue;
            out.push_back(make_finding(
                context, rule, rule.levels.front(),
                {.reading = reading, .value = fixed(*then - *now, 1), .entries = {before.entry}}));
        }
    }
}

} // namespace

void add_worked_deck(WorkedTable& table) {
    table["board_thickness"] = board_thickness;
    table["heads"] = heads;
    table["heads_sample"] = heads_sample;
    table["heads_quick"] = heads_quick;
    table["fixing_length"] = fixing_length;
    table["spacing_edge"] = [](const Context& c, const Rule& r, Findings& out) {
        spacing(c, r, "spacing_edge_mm", out);
    };
    table["spacing_inside"] = [](const Context& c, const Rule& r, Findings& out) {
        spacing(c, r, "spacing_inside_mm", out);
    };
    table["moisture"] = moisture;
    table["meter"] = meter;
    table["board_temperature"] = board_temperature;
    table["moisture_points"] = moisture_points;
    table["moisture_alike"] = moisture_alike;
    table["moisture_fell"] = moisture_fell;
}

} // namespace undersheet::job
