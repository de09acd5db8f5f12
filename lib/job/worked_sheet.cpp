// The sheet as delivered against what this roof needs.
#include "job/rules.h"

#include "trade/sheet.h"

#include <algorithm>

namespace undersheet::job {
namespace {

using method::Rule;
using method::Severity;

// Of an edge that nobody looked at the method does not say what it needs.
bool all_edges_known(const Context& context) {
    const auto& edges = context.job.roof.edges;
    return std::all_of(edges.begin(), edges.end(), [](const Edge& edge) {
        return edge.kind == "gutter" || edge.kind == "kerb" || edge.kind == "wall";
    });
}

// What each edge needs of the sheet; `spare` false leaves out what is only there to be cut off.
std::vector<double> extras_mm(const Context& context, bool with_spare) {
    std::vector<double> extras;
    for (const Edge& edge : context.job.roof.edges) {
        const bool slope = edge.abutment == "pitched_roof";
        const std::string key = edge.kind == "wall" ? (slope ? "sheet_extra_slope_mm" : "sheet_extra_wall_mm")
                                                    : "sheet_extra_" + edge.kind + "_mm";
        double extra = context.limit(key);
        if (edge.kind == "wall" && !with_spare) extra -= context.limit("sheet_spare_wall_mm");
        extras.push_back(extra);
    }
    return extras;
}

// The length a roll of this width would have to have; nothing when it is too narrow.
std::optional<double> length_needed_m(const Context& context, double width_m, bool with_spare) {
    const auto sheet = trade::sheet({.outline = context.job.roof.polygon(),
                                     .extra_mm = extras_mm(context, with_spare),
                                     .rolls_m = {width_m},
                                     .cut_to_m = 0.001});
    return sheet ? std::optional(sheet->needs_along_m) : std::nullopt;
}

// Laid either way round: the delivered piece has no up and down.
bool covers(const Context& context, double width_m, double length_m, bool with_spare) {
    const double tape_m = context.limit("tape_sd_mm") / 1000; // neither roof nor sheet is taped any better
    const auto one_way = length_needed_m(context, width_m, with_spare);
    if (one_way && *one_way <= length_m + tape_m) return true;
    const auto other_way = length_needed_m(context, length_m, with_spare);
    return other_way && *other_way <= width_m + tape_m;
}

Worded needed_words(const Context& context, double width_m) {
    const auto length_m = length_needed_m(context, width_m, false);
    return length_m ? worded("{m} m of this width", {{"m", fixed(*length_m, 2)}}) : Worded("a wider roll");
}

void sheet_size(const Context& context, const Rule& rule, Findings& out) {
    if (context.job.roof.polygon().empty() || !all_edges_known(context)) return;
    for (const Reading* sheet : context.job.all("sheet")) {
        const auto width_m = sheet->number("width_m");
        const auto length_m = sheet->number("length_m");
        if (!width_m || !length_m || covers(context, *width_m, *length_m, true)) continue;
        const Severity severity =
            covers(context, *width_m, *length_m, false) ? Severity::note : Severity::stop;
        const auto size = worded("{width} x {length} m",
                                 {{"width", sheet->word("width_m")}, {"length", sheet->word("length_m")}});
        Finding finding =
            make_finding(context, rule, *rule.level(severity), {.reading = sheet, .value = size});
        const Worded needed = needed_words(context, *width_m);
        finding.limit = needed.text;
        say(finding, worded(severity == Severity::stop ? "the sheet is {size}; {needed} is needed"
                                                       : "the sheet is {size}: the spare is used up",
                            {{"size", size}, {"needed", needed}}));
        out.push_back(std::move(finding));
    }
}

} // namespace

void add_worked_sheet(WorkedTable& table) { table["sheet_size"] = sheet_size; }

} // namespace undersheet::job
