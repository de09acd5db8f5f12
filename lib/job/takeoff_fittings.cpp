// What goes with the trims: corner pieces, stop ends, foam, pins and nails by the hole, and what the openings bring.
#include "job/takeoff_making.h"

#include "base/text.h"

#include <map>

namespace undersheet::job {
namespace {

void pieces_at(Making& making, const char* name, const char* title, const std::vector<std::string>& corners) {
    if (corners.empty()) return;
    add_material(making, {.section = {},
                          .name = name,
                          .title = title,
                          .amount = Decimal::of(static_cast<std::int64_t>(corners.size())),
                          .unit = "piece",
                          .working = {"at " + joined(corners, ", ")}});
}

void foam(Making& making) {
    const double length_m = metres_of(making.roof, "kerb");
    if (length_m <= 0) return;
    Working working{in_words(length_m, "m") + " of kerb"};
    const double all = making.with_spare(length_m, "foam_spare_pct", "m", working);
    add_material(making, {.section = {},
                          .name = "foam",
                          .title = "foam strip",
                          .amount = in_millionths(all),
                          .unit = "m",
                          .working = std::move(working),
                          .allowances = making.rows({"foam_spare_pct"})});
}

// "holes of the covers: 25 + 11 + 24 = 60"
struct CountedHoles {
    std::int64_t all = 0;
    Working working = {};

    void add(const char* what, const std::vector<std::int64_t>& holes) {
        if (holes.empty()) return;
        std::int64_t sum = 0;
        std::vector<std::string> terms;
        for (const std::int64_t hole : holes) {
            sum += hole;
            terms.push_back(std::to_string(hole));
        }
        working.push_back("holes of the " + std::string(what) + ": " + joined(terms, " + ") + " = " +
                          std::to_string(sum));
        all += sum;
    }
};

std::vector<std::int64_t> holes_of(const Making& making, std::string_view item) {
    for (const TrimCuts& cuts : making.made.trims) {
        if (cuts.item != item) continue;
        std::vector<std::int64_t> all;
        for (const TrimRun& run : cuts.runs) all.insert(all.end(), run.holes.begin(), run.holes.end());
        return all;
    }
    return {};
}

void fixings(Making& making, const char* name, const char* title, CountedHoles counted, const char* spare_key,
             std::vector<std::string_view> keys) {
    if (counted.all == 0) return;
    const double all = making.with_spare(static_cast<double>(counted.all), spare_key, "", counted.working);
    keys.emplace_back(spare_key);
    add_material(making, {.section = {},
                          .name = name,
                          .title = title,
                          .amount = in_millionths(rounded_up(all)),
                          .unit = "piece",
                          .working = std::move(counted.working),
                          .allowances = making.rows(keys)});
}

void pins(Making& making) {
    CountedHoles counted;
    counted.add("covers", holes_of(making, "cover"));
    counted.add("back plates", holes_of(making, "plate"));
    const std::size_t corners = making.roof.outer_corners.size() + making.roof.inner_corners.size();
    const double each = making.rate("corner_pins");
    if (counted.all == 0) return; // no length on sale: nothing is known of holes
    counted.working.push_back(undersheet::counted(corners, "corner piece", "corner pieces") + " x " +
                              shortest(each, 2) + " = " + shortest(each * static_cast<double>(corners), 2));
    counted.all += static_cast<std::int64_t>(rounded_up(each * static_cast<double>(corners)));
    fixings(making, "pins", "pins", std::move(counted), "pins_spare_pct",
            {"cover_first_mm", "cover_hole_mm", "plate_hole_mm", "corner_pins"});
}

void nails(Making& making) {
    CountedHoles counted;
    counted.add("kerb trims", holes_of(making, "kerb"));
    fixings(making, "nails", "kerb nails", std::move(counted), "nails_spare_pct",
            {"kerb_first_mm", "kerb_hole_mm"});
}

// Only what we supply: a rooflight that the customer buys is not on our order.
void opening_items(Making& making) {
    std::map<std::string, std::vector<std::string>> by_type;
    for (const CountedOpening& opening : making.roof.openings) {
        if (opening.is_ours && opening.is_done_by_us) by_type[opening.type].push_back(opening.label);
    }
    for (const auto& [type, labels] : by_type) {
        add_material(making, {.section = {},
                              .name = type,
                              .title = type,
                              .amount = Decimal::of(static_cast<std::int64_t>(labels.size())),
                              .unit = "piece",
                              .working = {joined(labels, ", ")}});
    }
}

} // namespace

void add_fittings(Making& making) {
    pieces_at(making, "corner_outer", "outer corners", making.roof.outer_corners);
    pieces_at(making, "corner_inner", "inner corners", making.roof.inner_corners);
    pieces_at(making, "stop_end", "stop ends", making.roof.stop_ends);
    foam(making);
    pins(making);
    nails(making);
    opening_items(making);
}

} // namespace undersheet::job
