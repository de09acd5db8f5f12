#include "job/takeoff.h"

#include "job/takeoff_making.h"

#include <algorithm>

namespace undersheet::job {
namespace {

// What stands against ordering by this outline, though it can be worked out.
void look_at_tapes(Making& making) {
    const auto& outline = making.job.roof.outline;
    const double stop_mm = making.rate("misclosure_stop_mm");
    if (outline->misclosure_mm && *outline->misclosure_mm > stop_mm) {
        making.made.remarks.push_back(
            worded("do not order the sheet: the tapes disagree by {mm} mm, at most {most}",
                   {{"mm", fixed(*outline->misclosure_mm, 0)}, {"most", shortest(stop_mm, 0)}}));
    } else if (!outline->accepted) {
        making.made.remarks.emplace_back("the tapes do not fit together: tape again before ordering");
    } else if (outline->spare_tapes == 0) {
        making.made.remarks.emplace_back("no spare tape: nothing checks the outline");
    }
}

void look_at_walls(Making& making) {
    for (const CountedEdge& edge : making.roof.edges) {
        if (edge.kind == "wall" && making.job.roof.edge(edge.name)->abutment.empty())
            making.made.remarks.push_back(
                worded("nobody said what the wall at {edge} is: counted with a chase",
                       {{"edge", typed(edge.name)}}));
    }
}

Done add_everything(Making& making) {
    if (auto done = add_areas(making); !done) return done;
    add_sheet(making);
    add_adhesives(making);
    add_patches(making);
    add_chase(making);
    add_trims(making);
    add_fittings(making);
    add_hours(making);
    add_price(making);
    add_used(making);
    return {};
}

} // namespace

const TakeOffLine* TakeOff::line(std::string_view name) const {
    const auto found =
        std::find_if(lines.begin(), lines.end(), [&](const TakeOffLine& line) { return line.name == name; });
    return found == lines.end() ? nullptr : &*found;
}

std::vector<const TakeOffLine*> TakeOff::of(std::string_view section) const {
    std::vector<const TakeOffLine*> found;
    for (const TakeOffLine& line : lines) {
        if (line.section == section) found.push_back(&line);
    }
    return found;
}

Result<TakeOff> take_off(const Job& job, const method::Method& method, const method::PriceList* prices) {
    if (auto done = rates_there(method); !done) return done.fault();
    auto roof = counted_roof(job);
    if (!roof) return roof.fault();
    Making making{job, method, prices, *std::move(roof)};
    look_at_tapes(making);
    look_at_walls(making);
    try {
        if (auto done = add_everything(making); !done) return done.fault();
    } catch (const TooGreat&) {
        return Fault{Code::value_impossible, "an amount comes out beyond anything on a roof", "take-off",
                     "look at the rates of the method and at the roof's measures"};
    }
    return std::move(making.made);
}

} // namespace undersheet::job
