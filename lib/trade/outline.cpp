#include "trade/outline.h"

#include "base/decimal.h"
#include "trade/chi_square.h"
#include "trade/field_check.h"
#include "trade/outline_check.h"
#include "trade/outline_shape.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace undersheet::trade {

namespace {

constexpr double kLongest_m = 200;
constexpr double kWidestDoubt_mm = 1000;
constexpr std::size_t kMostCorners = 40;
constexpr std::size_t kMostTapes = 200; // each is left out once, and the rest fitted again
constexpr double kClosed = 1e-3;

std::string tape_field(std::size_t i, const char* name) { return "tapes[" + std::to_string(i) + "]." + name; }

std::optional<Fault> wrong_corners(const std::vector<std::string>& labels) {
    if (labels.size() < 3 || labels.size() > kMostCorners)
        return impossible("corners", worded("{n} corners", {{"n", std::to_string(labels.size())}}),
                          "a roof has from 3 to 40");
    std::set<std::string> seen;
    for (std::size_t i = 0; i < labels.size(); ++i)
        if (labels[i].empty() || !seen.insert(labels[i]).second)
            return impossible("corners[" + std::to_string(i) + "]",
                              worded("\"{corner}\" stands there already or is empty",
                                     {{"corner", worded_typed(labels[i])}}),
                              "give each corner its own letter");
    return std::nullopt;
}

std::optional<std::size_t> place_of(const std::string& label, const std::vector<std::string>& labels) {
    const auto found = std::find(labels.begin(), labels.end(), label);
    if (found == labels.end()) return std::nullopt;
    return static_cast<std::size_t>(found - labels.begin());
}

Result<TapedLine> line_of(const OutlineInput& in, std::size_t i) {
    const TapedLength& tape = in.tapes[i];
    const auto from = place_of(tape.from, in.corners);
    const auto to = place_of(tape.to, in.corners);
    if (!from || !to)
        return impossible(
            tape_field(i, from ? "to" : "from"),
            worded("no corner {corner}", {{"corner", worded_typed(from ? tape.to : tape.from)}}),
            "name two corners of the outline");
    if (*from == *to)
        return impossible(tape_field(i, "to"),
                          worded("both ends are {corner}", {{"corner", worded_typed(tape.to)}}),
                          "name two different corners");
    FieldCheck check;
    check.above(tape_field(i, "m"), tape.m, 0, kLongest_m)
        .above(tape_field(i, "sd_mm"), tape.sd_mm, 0, kWidestDoubt_mm);
    if (check.fault()) return *check.fault();
    return TapedLine{*from, *to, tape.m, tape.sd_mm.value_or(in.sd_mm)};
}

Result<std::vector<TapedLine>> lines_of(const OutlineInput& in) {
    if (const auto wrong = wrong_corners(in.corners)) return *wrong;
    if (const auto wrong = FieldCheck().above("sd_mm", in.sd_mm, 0, kWidestDoubt_mm).fault()) return *wrong;
    if (in.tapes.size() > kMostTapes)
        return impossible("tapes", worded("{n} tapes", {{"n", std::to_string(in.tapes.size())}}),
                          "a roof is worked out from at most 200; take those out that were taped again");
    std::vector<TapedLine> lines;
    for (std::size_t i = 0; i < in.tapes.size(); ++i) {
        const Result<TapedLine> line = line_of(in, i);
        if (!line) return line.fault();
        lines.push_back(*line);
    }
    return lines;
}

Worded named(const OutlineInput& in, CornerPair pair) {
    return worded_typed(in.corners[pair.from] + in.corners[pair.to]);
}

Worded to_tape_next(const OutlineInput& in, CornerPair next) {
    return worded("tape {pair} next", {{"pair", named(in, next)}});
}

Fault loose(const OutlineInput& in, CornerPair next) {
    return impossible("tapes", "these tapes leave a corner loose", to_tape_next(in, next));
}

// A side of a triangle longer than the other two together, if there is one; the plainest reason why nothing fits.
std::optional<Fault> too_long(const OutlineInput& in, const std::vector<TapedLine>& lines) {
    const auto taped = [&](std::size_t a, std::size_t b) {
        const auto found = std::find_if(lines.begin(), lines.end(), [&](const TapedLine& line) {
            return (line.from == a && line.to == b) || (line.from == b && line.to == a);
        });
        return found == lines.end() ? 0.0 : found->m;
    };
    for (std::size_t i = 0; i < lines.size(); ++i)
        for (std::size_t corner = 0; corner < in.corners.size(); ++corner) {
            const double first = taped(lines[i].from, corner);
            const double second = taped(corner, lines[i].to);
            if (first > 0 && second > 0 && lines[i].m >= first + second)
                return impossible(tape_field(i, "m"),
                                  worded("{m} m is no shorter than the way round by {corner}, {round} m",
                                         {{"m", shortest(lines[i].m, 3)},
                                          {"corner", worded_typed(in.corners[corner])},
                                          {"round", shortest(first + second, 3)}}),
                                  "tape the three sides of that triangle again");
        }
    return std::nullopt;
}

Fault no_shape(const OutlineInput& in, const std::vector<TapedLine>& lines) {
    if (const auto wrong = too_long(in, lines)) return *wrong;
    return impossible("tapes", "no outline whose sides keep clear of each other has these lengths",
                      "check the order of the corners, then the longest tapes");
}

Fault undecided(const OutlineInput& in, const Rival& rival) {
    return impossible(
        "tapes", "these tapes fit two different roofs",
        worded("tape {pair} next: it is about {here} m or {there} m", {{"pair", named(in, rival.tape)},
                                                                       {"here", fixed(rival.here_m, 2)},
                                                                       {"there", fixed(rival.there_m, 2)}}));
}

// Held in principle, but by tapes so nearly in a line that their small errors move a corner a long way.
std::optional<Fault> badly_held(const OutlineInput& in, const std::vector<TapedLine>& lines,
                                const std::optional<Strength>& held, double loose_mm) {
    if (!held)
        return impossible("tapes",
                          "a corner lies so nearly in line with those it is taped from that nothing holds it",
                          "tape such a corner from one across the roof as well");
    const CornerPair next = most_telling_tape(*held, lines);
    for (std::size_t i = 0; i < in.corners.size(); ++i)
        if (const double sd_mm = 1000 * std::hypot(held->corner_sd[i].x_m, held->corner_sd[i].y_m);
            sd_mm > loose_mm)
            return impossible("tapes",
                              worded("corner {corner} is held only to {mm} mm",
                                     {{"corner", worded_typed(in.corners[i])}, {"mm", fixed(sd_mm, 0)}}),
                              to_tape_next(in, next));
    return std::nullopt;
}

bool stands_alone(const Strength& held, std::size_t i, double told_apart) {
    if (held.redundancy[i] < kUnchecked) return false;
    return std::all_of(held.ties[i].begin(), held.ties[i].end(),
                       [&](double tie) { return tie <= told_apart; });
}

// Could a wrong tape be named? Where one is wrong: was it. Else: is there one whose misfit would look like no other's.
bool can_name(const Outline& out, const Strength& held, const TapeCheck& check, double told_apart) {
    if (check.wrong) return true;
    if (!out.accepted || out.spare_tapes < 2) return false;
    for (std::size_t i = 0; i < out.tapes.size(); ++i)
        if (stands_alone(held, i, told_apart)) return true;
    return false;
}

Corner corner_of(const std::string& label, Point at, Point sd) {
    return {label, at.x_m, at.y_m, std::hypot(sd.x_m, sd.y_m) * 1000, sd.x_m * 1000, sd.y_m * 1000};
}

JudgedTape judged(const TapedLength& tape, const Fit& fitted, const TapedLine& line, double redundancy) {
    JudgedTape out{tape.from, tape.to, tape.m};
    out.residual_mm = (taped_length_m(fitted.corners, line) - line.m) * 1000;
    out.redundancy = redundancy;
    if (redundancy > kUnchecked) out.w = out.residual_mm / (line.sd_mm * std::sqrt(redundancy));
    return out;
}

void note_check(Outline& out, const std::vector<TapedLine>& lines, const TapeCheck& check,
                const HookReach& hook) {
    for (std::size_t i = 0; i < out.tapes.size(); ++i) {
        JudgedTape& tape = out.tapes[i];
        tape.suspect = check.wrong == i;
        tape.perhaps = std::count(check.perhaps.begin(), check.perhaps.end(), i) > 0;
        tape.from_others_m = check.without[i].from_others_m;
        if (!tape.from_others_m) continue;
        out.misclosure_mm =
            std::max(out.misclosure_mm.value_or(0), std::abs(tape.m - *tape.from_others_m) * 1000);
        if (tape.suspect || tape.perhaps)
            tape.slips =
                likely_slips(tape.m, *tape.from_others_m, lines[i].sd_mm / std::sqrt(tape.redundancy), hook);
    }
}

Outline measured(const OutlineInput& in, const Fit& fitted, const Strength& held) {
    Outline out;
    for (std::size_t i = 0; i < in.corners.size(); ++i)
        out.corners.push_back(corner_of(in.corners[i], fitted.corners[i], held.corner_sd[i]));
    out.angles_deg = angles_deg(fitted.corners);
    out.area_m2 = area_m2(fitted.corners);
    out.area_sd_m2 = held.area_sd_m2;
    out.perimeter_m = perimeter_m(fitted.corners);
    out.spare_tapes = static_cast<int>(in.tapes.size()) - 2 * static_cast<int>(in.corners.size()) + 3;
    out.vpv = fitted.vpv;
    return out;
}

Outline judged(const OutlineInput& in, const std::vector<TapedLine>& lines, const FoundShape& found,
               const Strength& held, const OutlineRules& rules) {
    Outline out = measured(in, found.fit, held);
    if (out.spare_tapes > 0) out.vpv_limit = chi_square_at(rules.accept_pct / 100, out.spare_tapes);
    out.accepted = out.spare_tapes == 0 || out.vpv <= out.vpv_limit;
    for (std::size_t i = 0; i < lines.size(); ++i)
        out.tapes.push_back(judged(in.tapes[i], found.fit, lines[i], held.redundancy[i]));
    const TapeCheck check =
        checked_tapes(found.fit, held, lines, {rules.accept_pct / 100, rules.suspect_w, rules.clearer_by});
    note_check(out, lines, check, rules.hook);
    out.can_locate = can_name(out, held, check, rules.told_apart);
    const CornerPair next = most_telling_tape(held, lines);
    if (!out.can_locate) out.next_tape = NextTape{in.corners[next.from], in.corners[next.to]};
    if (found.rival)
        out.other_shape = OtherShape{{in.corners[found.rival->tape.from], in.corners[found.rival->tape.to]},
                                     found.rival->here_m,
                                     found.rival->there_m};
    return out;
}

} // namespace

Result<Outline> outline(const OutlineInput& in, const OutlineRules& rules) {
    const Result<std::vector<TapedLine>> lines = lines_of(in);
    if (!lines) return lines.fault();
    if (const auto next = missing_tape(in.corners.size(), *lines)) return loose(in, *next);
    const std::optional<FoundShape> found = found_shape(in.corners.size(), *lines);
    if (!found) return no_shape(in, *lines);
    if (found->rival && found->rival->is_undecided) return undecided(in, *found->rival);
    // Without a spare tape every honest set closes exactly; what does not close cannot be a roof.
    if (lines->size() + 3 == 2 * in.corners.size() && found->fit.vpv > kClosed) return no_shape(in, *lines);
    const std::optional<Strength> held = strength(found->fit.corners, *lines);
    if (const auto wrong = badly_held(in, *lines, held, rules.loose_mm)) return *wrong;
    return judged(in, *lines, *found, *held, rules);
}

Polygon polygon(const Outline& outline) {
    Polygon corners;
    for (const Corner& corner : outline.corners) corners.push_back({corner.x_m, corner.y_m});
    return corners;
}

} // namespace undersheet::trade
