// The one sheet: the cheapest roll that covers the roof with what its edges need, and what it weighs.
#include "job/money.h"
#include "job/takeoff_making.h"

#include "base/text.h"

#include <algorithm>

namespace undersheet::job {
namespace {

// A roll that is wide enough, and what the length off it costs.
struct Offer {
    trade::Sheet sheet;
    method::Price price;
};

std::string extra_key(const CountedEdge& edge) {
    if (edge.kind == "wall") return edge.is_slope ? "sheet_extra_slope_mm" : "sheet_extra_wall_mm";
    return "sheet_extra_" + edge.kind + "_mm";
}

trade::SheetInput sheet_input(const Making& making) {
    trade::SheetInput in{.outline = making.roof.outline, .extra_mm = {}, .rolls_m = {}};
    for (const CountedEdge& edge : making.roof.edges) in.extra_mm.push_back(making.rate(extra_key(edge)));
    return in;
}

method::Price price_of(const method::RollOnSale& roll, const trade::Sheet& sheet) {
    if (!roll.price_m2) return std::nullopt;
    const auto cost = cost_of(in_millionths(sheet.area_m2), *roll.price_m2);
    return cost ? method::Price(*cost) : std::nullopt;
}

std::vector<Offer> offers(const Making& making) {
    std::vector<Offer> found;
    trade::SheetInput in = sheet_input(making);
    in.cut_to_m = making.prices->cut_to_m.value();
    for (const method::RollOnSale& roll : making.prices->rolls) {
        in.rolls_m = {roll.width_m.value()};
        const auto sheet = trade::sheet(in);
        if (sheet) found.push_back({*sheet, price_of(roll, *sheet)});
    }
    return found;
}

// By price where every roll has one, else by area.
bool is_better(const Offer& a, const Offer& b, bool priced) {
    if (priced && *a.price != *b.price) return *a.price < *b.price;
    return in_millionths(a.sheet.area_m2) < in_millionths(b.sheet.area_m2);
}

std::optional<Offer> best(const std::vector<Offer>& offers) {
    const bool priced =
        std::all_of(offers.begin(), offers.end(), [](const Offer& offer) { return offer.price.has_value(); });
    const auto found = std::min_element(offers.begin(), offers.end(), [&](const Offer& a, const Offer& b) {
        return is_better(a, b, priced);
    });
    if (found == offers.end()) return std::nullopt;
    return Offer{found->sheet, priced ? found->price : std::nullopt};
}

std::string size_words(const trade::Sheet& sheet) {
    return fixed(sheet.roll_width_m, 2) + " x " + fixed(sheet.length_m, 2) + " m";
}

std::string edges_words(const Making& making) {
    std::vector<std::string> extras;
    for (const CountedEdge& edge : making.roof.edges)
        extras.push_back(edge.name + " " + shortest(making.rate(extra_key(edge)), 1));
    return "besides the deck, in mm: " + joined(extras, ", ");
}

Allowances extra_rows(const Making& making) {
    Allowances rows;
    for (const CountedEdge& edge : making.roof.edges) {
        const method::Limit* row = making.method.find_limit(extra_key(edge));
        if (std::find(rows.begin(), rows.end(), row) == rows.end()) rows.push_back(row);
    }
    return rows;
}

// What the roof takes in one piece, whatever is on sale.
void needed(Making& making, TakeOffLine& line) {
    trade::SheetInput in = sheet_input(making);
    const double wide_enough_m = 10 * making.made.areas.perimeter_m;
    in.rolls_m = {wide_enough_m};
    in.cut_to_m = 0.001; // in whole mm
    const auto sheet = trade::sheet(in);
    if (!sheet) return;
    line.working.push_back("the roof takes " + fixed(sheet->needs_along_m, 3) + " x " +
                           fixed(sheet->needs_across_m, 3) + " m in one piece");
    line.amount = in_millionths(sheet->needs_along_m * sheet->needs_across_m);
}

void take(Making& making, TakeOffLine& line, const Offer& offer, const std::vector<Offer>& others) {
    making.made.sheet = offer.sheet;
    line.title = "sheet " + size_words(offer.sheet);
    line.amount = in_millionths(offer.sheet.area_m2);
    line.price = offer.price;
    if (!offer.price) line.remark = "a roll of it has no price";
    line.working.push_back("takes " + fixed(offer.sheet.needs_along_m, 3) + " m of the " +
                           fixed(offer.sheet.roll_width_m, 2) + " m roll, " +
                           fixed(offer.sheet.needs_across_m, 3) + " m of its width");
    for (const Offer& other : others) {
        line.working.push_back(size_words(other.sheet) + " = " + in_words(other.sheet.area_m2, "m2") +
                               (other.price ? ", " + making.prices->money(*other.price) : ""));
    }
}

double or_else(std::optional<double> recorded, double usual) { return recorded ? *recorded : usual; }

double weight_kg(const Making& making, std::string_view density, const Reading* recorded) {
    const auto mm = recorded == nullptr ? std::nullopt : recorded->number("thickness_mm");
    const auto kg_m3 = recorded == nullptr ? std::nullopt : recorded->number("density_kg_m3");
    return trade::sheet_weight_kg(making.made.sheet->area_m2, or_else(mm, making.rate("sheet_thickness_mm")),
                                  or_else(kg_m3, making.rate(density)));
}

void add_weight(Making& making) {
    if (!making.made.sheet) return;
    const Reading* recorded = making.job.latest("sheet");
    const double usual_kg = weight_kg(making, "sheet_density_kg_m3", recorded);
    const std::string range = fixed(weight_kg(making, "sheet_density_low_kg_m3", recorded), 1) + " to " +
                              fixed(weight_kg(making, "sheet_density_high_kg_m3", recorded), 1) + " kg";
    making.made.lines.push_back(
        {.section = "areas",
         .name = "sheet_weight",
         .title = "weight of the sheet",
         .amount = in_millionths(usual_kg),
         .unit = "kg",
         .working = {"area x thickness x density; it may be " + range},
         .allowances = making.rows({"sheet_thickness_mm", "sheet_density_low_kg_m3", "sheet_density_kg_m3",
                                    "sheet_density_high_kg_m3", "sheet_two_people_kg"}),
         .remark = usual_kg > making.rate("sheet_two_people_kg") ? "two people" : ""});
}

} // namespace

void add_sheet(Making& making) {
    TakeOffLine line{.section = "materials",
                     .name = "sheet",
                     .title = "sheet",
                     .amount = {},
                     .unit = "m2",
                     .working = {edges_words(making)},
                     .allowances = extra_rows(making)};
    const auto on_sale = making.prices == nullptr ? std::vector<Offer>() : offers(making);
    if (const auto offer = best(on_sale)) {
        take(making, line, *offer, on_sale);
    } else {
        needed(making, line);
        if (making.prices != nullptr) line.remark = "no roll on the price list is wide enough for one piece";
    }
    add_weight(making);
    making.made.lines.push_back(std::move(line));
}

} // namespace undersheet::job
