// The default method's limits, key by key: value, where "near" begins, and the mark of its source (P common practice, G published
// guidance). Written down a second time so that no limit changes without somebody saying so here.
#include "method/method.h"
#include "schema/embedded.h"

#include <catch2/catch.hpp>

#include <optional>

using namespace undersheet;

namespace {

struct Row {
    std::string key;
    double value;
    std::optional<double> near;
    std::string mark;
};

const std::vector<Row>& rows() {
    static const std::vector<Row> all{
        {"support_narrow_mm", 450, std::nullopt, "G"},
        {"support_most_mm", 600, std::nullopt, "G"},
        {"board_at_narrow_mm", 15, std::nullopt, "G"},
        {"board_at_wide_mm", 18, std::nullopt, "G"},
        {"gap_least_mm", 1, std::nullopt, "P"},
        {"gap_most_mm", 5, std::nullopt, "P"},
        {"gap_wide_mm", 10, std::nullopt, "P"},
        {"joint_step_mm", 1, std::nullopt, "P"},
        {"joint_step_stop_mm", 5, std::nullopt, "P"},
        {"swollen_edge_mm", 1, std::nullopt, "P"},
        {"spacing_edge_mm", 150, std::nullopt, "G"},
        {"spacing_inside_mm", 300, std::nullopt, "G"},
        {"spacing_over_pct", 10, std::nullopt, "G"},
        {"fixing_edge_mm", 8, std::nullopt, "G"},
        {"fixing_length_mm", 50, std::nullopt, "G"},
        {"fixing_length_times", 2.5, std::nullopt, "G"},
        {"heads_squares", 5, std::nullopt, "P"},
        {"heads_per_square", 10, std::nullopt, "P"},
        {"heads_square_every_m2", 10, std::nullopt, "P"},
        {"heads_all_over_pct", 2, std::nullopt, "P"},
        {"heads_all_over_boards", 1, std::nullopt, "P"},
        {"heads_confidence_pct", 95, std::nullopt, "P"},
        {"heads_quick_min", 2, std::nullopt, "P"},
        {"moisture_warn_pct", 18, std::nullopt, "P"},
        {"moisture_stop_pct", 20, std::nullopt, "P"},
        {"moisture_per_k_pct", 0.15, std::nullopt, "P"},
        {"moisture_reference_c", 20, std::nullopt, "P"},
        {"moisture_cold_c", 10, std::nullopt, "P"},
        {"moisture_warm_c", 25, std::nullopt, "P"},
        {"meter_least_pct", 7, std::nullopt, "G"},
        {"meter_most_pct", 28, std::nullopt, "G"},
        {"moisture_points", 6, std::nullopt, "P"},
        {"moisture_m2_a_point", 4, std::nullopt, "P"},
        {"moisture_reach_m", 1.5, std::nullopt, "P"},
        {"moisture_age_h", 24, std::nullopt, "P"},
        {"wet_edge_m", 1, std::nullopt, "P"},
        {"moisture_drop_pct", 5, std::nullopt, "P"},
        {"fall_1_in", 80, std::nullopt, "G"},
        {"fall_near_mm", 2, std::nullopt, "P"},
        {"fall_base_m", 1.2, std::nullopt, "P"},
        {"fall_line_deg", 45, std::nullopt, "P"},
        {"design_fall_1_in", 40, std::nullopt, "G"},
        {"pond_put_right_mm", 5, std::nullopt, "P"},
        {"pond_stop_mm", 15, std::nullopt, "P"},
        {"level_closing_mm", 2, std::nullopt, "P"},
        {"level_off_plane_mm", 8, std::nullopt, "P"},
        {"level_grid_m", 1.8, std::nullopt, "P"},
        {"chase_height_mm", 150, 153, "G"},
        {"chase_stop_mm", 100, std::nullopt, "P"},
        {"threshold_mm", 75, 78, "G"},
        {"chase_every_m", 1.5, std::nullopt, "P"},
        {"airbrick_mm", 150, std::nullopt, "P"},
        {"sheet_up_wall_mm", 100, std::nullopt, "P"},
        {"tuck_mm", 25, std::nullopt, "G"},
        {"wedge_spacing_mm", 450, std::nullopt, "G"},
        {"flashing_lap_mm", 100, std::nullopt, "G"},
        {"air_gap_mm", 50, std::nullopt, "G"},
        {"insulation_below_pct", 33.4, std::nullopt, "G"},
        {"joist_sag_span", 250, std::nullopt, "P"},
        {"dew_margin_k", 3, 4.5, "P"},
        {"bond_low_c", 5, 7, "P"},
        {"bond_high_c", 25, 23, "P"},
        {"rh_warn_pct", 85, std::nullopt, "P"},
        {"rh_stop_pct", 90, std::nullopt, "P"},
        {"wind_warn_ms", 7.59968, std::nullopt, "G"},
        {"gust_warn_ms", 11.62304, std::nullopt, "G"},
        {"wind_stop_ms", 10.28192, std::nullopt, "G"},
        {"gust_stop_ms", 15.6464, std::nullopt, "G"},
        {"rain_ahead_h", 2, std::nullopt, "P"},
        {"reading_age_min", 90, std::nullopt, "P"},
        {"dust_age_h", 2, std::nullopt, "P"},
        {"use_by_warn_days", 30, std::nullopt, "P"},
        {"touch_dry_least_min", 8, std::nullopt, "P"},
        {"touch_dry_most_min", 60, std::nullopt, "P"},
        {"coat_exposed_min", 60, std::nullopt, "P"},
        {"rest_min", 30, std::nullopt, "P"},
        {"rest_cold_min", 60, std::nullopt, "P"},
        {"rest_cold_below_c", 10, std::nullopt, "P"},
        {"crease_mm", 2, std::nullopt, "P"},
        {"crease_stop_mm", 5, std::nullopt, "P"},
        {"plate_least_mm", 0.5, std::nullopt, "P"},
        {"plate_most_mm", 3, std::nullopt, "P"},
        {"foam_least_pct", 25, std::nullopt, "P"},
        {"foam_most_pct", 35, std::nullopt, "P"},
        {"primer_past_mm", 5, std::nullopt, "P"},
        {"primer_dry_least_min", 5, std::nullopt, "P"},
        {"primer_dry_most_min", 15, std::nullopt, "P"},
        {"opening_upstand_mm", 150, std::nullopt, "G"},
        {"pipe_clear_mm", 150, std::nullopt, "P"},
        {"overflow_below_mm", 25, std::nullopt, "P"},
        {"misclosure_mm", 15, std::nullopt, "P"},
        {"misclosure_stop_mm", 40, std::nullopt, "P"},
        {"tape_sd_mm", 3, std::nullopt, "P"},
        {"forecast_deck_below_air_k", 1, std::nullopt, "P"},
        {"sunset_warn_h", 2, 3, "P"},
        {"views", 4, std::nullopt, "P"},
        {"fire_look_min", 60, std::nullopt, "P"},
        {"undo_min", 10, std::nullopt, "P"},
        {"written_late_min", 10, std::nullopt, "P"},
        {"sheet_extra_gutter_mm", 150, std::nullopt, "P"},
        {"sheet_extra_kerb_mm", 200, std::nullopt, "P"},
        {"sheet_extra_wall_mm", 250, std::nullopt, "P"},
        {"sheet_extra_slope_mm", 300, std::nullopt, "P"},
        {"sheet_spare_wall_mm", 75, std::nullopt, "P"},
        {"band_mm", 150, std::nullopt, "P"},
        {"place_near_m", 0.3, std::nullopt, "P"},
        {"none", 0, std::nullopt, "P"},
        {"zero", 0, std::nullopt, "P"},
        {"scaffold_over_m", 6, std::nullopt, "P"},
    };
    return all;
}

} // namespace

TEST_CASE("every limit of the default method has the value and the mark of the trade's table") {
    const auto method = method::Method::read(schema::method_json());
    REQUIRE(method.ok());
    for (const Row& row : rows()) {
        INFO(row.key);
        const method::Limit* limit = method->find_limit(row.key);
        REQUIRE(limit != nullptr);
        CHECK(limit->value == row.value);
        CHECK(limit->near == row.near);
        CHECK(limit->mark == row.mark);
        CHECK_FALSE(limit->source.empty());
    }
    CHECK(method->limits().size() == rows().size());
}
