#include "job/takeoff_making.h"

#include <array>
#include <cmath>

namespace undersheet::job {
namespace {

constexpr int kPlaces = 6;

struct RateUse {
    std::string_view key;
    bool divides = false;
};
constexpr std::array kRates{
    RateUse{"sheet_extra_gutter_mm"},
    RateUse{"sheet_extra_kerb_mm"},
    RateUse{"sheet_extra_wall_mm"},
    RateUse{"sheet_extra_slope_mm"},
    RateUse{"band_mm"},
    RateUse{"wedge_spacing_mm", true},
    RateUse{"misclosure_stop_mm"},
    RateUse{"sheet_thickness_mm"},
    RateUse{"sheet_density_low_kg_m3"},
    RateUse{"sheet_density_kg_m3"},
    RateUse{"sheet_density_high_kg_m3"},
    RateUse{"sheet_two_people_kg"},
    RateUse{"bond_faces"},
    RateUse{"field_cover_m2_l", true},
    RateUse{"field_spare_pct"},
    RateUse{"contact_cover_m2_l", true},
    RateUse{"contact_spare_pct"},
    RateUse{"contact_gutter_mm"},
    RateUse{"contact_kerb_mm"},
    RateUse{"contact_wall_mm"},
    RateUse{"outlet_square_mm", true},
    RateUse{"pipe_square_mm", true},
    RateUse{"flue_square_mm", true},
    RateUse{"patch_width_mm"},
    RateUse{"patch_wall_mm"},
    RateUse{"patch_inner_mm"},
    RateUse{"patch_opening_mm"},
    RateUse{"patch_extra_mm"},
    RateUse{"tape_spare_pct"},
    RateUse{"primer_order_mm"},
    RateUse{"primer_cover_m2_l", true},
    RateUse{"primer_spare_pct"},
    RateUse{"lap_bead_m_cartridge", true},
    RateUse{"lap_spare_pct"},
    RateUse{"chase_joint_b_mm"},
    RateUse{"chase_joint_d_mm"},
    RateUse{"chase_spare_pct"},
    RateUse{"trim_kerf_mm"},
    RateUse{"trim_gap_mm"},
    RateUse{"trim_coefficient_per_k"},
    RateUse{"trim_laid_c"},
    RateUse{"trim_hot_c"},
    RateUse{"trim_lap_mm"},
    RateUse{"trim_least_mm"},
    RateUse{"foam_spare_pct"},
    RateUse{"cover_first_mm"},
    RateUse{"cover_hole_mm", true},
    RateUse{"plate_hole_mm", true},
    RateUse{"kerb_first_mm"},
    RateUse{"kerb_hole_mm", true},
    RateUse{"corner_pins"},
    RateUse{"pins_spare_pct"},
    RateUse{"nails_spare_pct"},
    RateUse{"hours_set_up_h"},
    RateUse{"hours_deck_h_m2"},
    RateUse{"hours_plate_h_m"},
    RateUse{"hours_lay_out_h"},
    RateUse{"hours_lay_out_h_m2"},
    RateUse{"hours_field_h_m2"},
    RateUse{"hours_band_h_m"},
    RateUse{"hours_wall_h_m"},
    RateUse{"hours_chase_h_m"},
    RateUse{"hours_rooflight_h"},
    RateUse{"hours_outlet_h"},
    RateUse{"hours_pipe_h"},
    RateUse{"hours_flue_h"},
    RateUse{"hours_patch_h"},
    RateUse{"hours_cover_h_m"},
    RateUse{"hours_kerb_h_m"},
    RateUse{"hours_corner_h"},
    RateUse{"hours_trim_off_h"},
    RateUse{"hours_final_h"},
    RateUse{"hours_hand_over_h"},
    RateUse{"crew_people", true},
    RateUse{"crew_day_h", true},
};

std::string unit_words(std::string_view unit) {
    if (unit == "m2") return "m²";
    return std::string(unit);
}

bool all_priced(const std::vector<method::PackOnSale>& packs) {
    for (const auto& pack : packs) {
        if (!pack.price) return false;
    }
    return true;
}

void remark_on(TakeOffLine& line, Worded remark) {
    if (line.remark.empty()) line.remark = std::move(remark);
}

Fault wrong_rate(const Worded& what, const char* clears) {
    return {Code::method_malformed, what.text, "method file", clears, what};
}

} // namespace

Allowances Making::rows(const std::vector<std::string_view>& keys) const {
    Allowances found;
    for (const auto key : keys) found.push_back(method.find_limit(key));
    return found;
}

double Making::with_spare(double amount, std::string_view key, std::string_view unit,
                          Working& working) const {
    const double spare_pct = rate(key);
    const double all = amount * (1 + spare_pct / 100);
    working.push_back("+ " + shortest(spare_pct, 2) + " % = " + in_words(all, unit));
    return all;
}

Decimal in_millionths(double amount) {
    const auto rounded = Decimal::rounded(amount, kPlaces);
    if (!rounded) throw TooGreat{};
    return *rounded;
}

double rounded_up(double amount) { return std::ceil(in_millionths(amount).value()); }

std::string in_words(double amount, std::string_view unit) {
    const std::string words = shortest(amount, 4);
    return unit.empty() ? words : words + " " + unit_words(unit);
}

std::string in_metres(std::int64_t mm) { return fixed(static_cast<double>(mm) / 1000, 3); }

Worded item_worded(const TakeOffLine& line) {
    return {Worded::Sort::choice, line.title, "item." + line.name};
}

void buy(const Making& making, TakeOffLine& line) {
    if (making.prices == nullptr) return;
    const auto on_sale = making.prices->packs_of(line.name);
    if (on_sale.empty()) return remark_on(line, "not on the price list");
    const bool priced = all_priced(on_sale);
    trade::PacksInput in{.need = line.amount};
    for (const auto& pack : on_sale) in.packs.push_back({pack.size, priced ? *pack.price : 0});
    const auto bought = trade::packs(in);
    if (!bought) return remark_on(line, fault_worded(bought.fault()));
    line.packs = bought->mix;
    if (priced)
        line.price = bought->price;
    else
        remark_on(line, "a pack of it has no price");
}

TakeOffLine& add_material(Making& making, TakeOffLine line) {
    line.section = "materials";
    buy(making, line);
    making.made.lines.push_back(std::move(line));
    return making.made.lines.back();
}

Done rates_there(const method::Method& method) {
    for (const RateUse& use : kRates) {
        const std::string key(use.key);
        const method::Limit* limit = method.find_limit(key);
        if (limit == nullptr)
            return wrong_rate(
                worded("the take-off asks for '{rate}', which is not there", {{"rate", typed(key)}}),
                "give it under takeoff, with its source");
        if (use.divides && !(limit->value > 0))
            return wrong_rate(worded("'{rate}' is {value}",
                                     {{"rate", typed(key)}, {"value", shortest(limit->value, kPlaces)}}),
                              "it has to be above 0");
    }
    return {};
}

} // namespace undersheet::job
