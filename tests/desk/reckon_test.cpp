// Air, timber, moisture, heads, fixings, tape, doubt, movement, packs through JSON, against published and outside figures.
#include "tests/desk/reckon_support.h"

using namespace undersheet;

namespace {

std::string air_json(double air_c, double rh_pct) {
    return "{\"air_c\": " + shortest(air_c, 2) + ", \"rh_pct\": " + shortest(rh_pct, 2) + "}";
}

} // namespace

TEST_CASE("reckon air gives the dew point that the formula gives outside, over water also below 0 °C") {
    // Python, b g / (a - g) with the WMO constants (WMO-No. 8, second text); tolerance 0.002 K.
    struct Row {
        double air_c, rh_pct, dew_c;
    };
    for (const Row& row : {Row{20, 50, 9.255}, Row{25, 80, 21.307}, Row{10, 80, 6.706}, Row{5, 90, 3.495},
                           Row{15, 65, 8.470}, Row{30, 40, 14.925}, Row{0, 95, -0.706}, Row{12, 72, 7.105},
                           Row{18, 60, 10.115}, Row{22, 55, 12.541}, Row{8, 98, 7.703}, Row{35, 30, 14.836},
                           Row{2, 85, -0.258}, Row{28, 70, 22.015}})
        CHECK(figure_of(reckoned("air", air_json(row.air_c, row.rh_pct)), "dew_point_c") ==
              Approx(row.dew_c).margin(0.002));
    // psychrolib's documentation, ASHRAE 2017: 21.3094; the Magnus form lies within 0.03 K.
    CHECK(figure_of(reckoned("air", air_json(25, 80)), "dew_point_c") == Approx(21.3094).margin(0.03));
}

TEST_CASE("reckon air gives the margin of a surface, and its doubt where both instruments have one") {
    const auto cold = reckoned("air", R"({"air_c": 15, "rh_pct": 65, "surface_c": 11.4})");
    CHECK(figure_of(cold, "margin_k") == Approx(2.93).margin(0.005)); // Python, WMO constants
    CHECK(cold.find("dew_point_u_k") == nullptr);
    const auto doubted = reckoned("air", R"({"air_c": 20, "rh_pct": 50, "air_u_k": 0.5, "rh_u_pct": 3})");
    CHECK(figure_of(doubted, "dew_point_u_k") == Approx(1.0037).margin(0.001)); // Python, first order
    CHECK(doubted.find("margin_k") == nullptr);
}

TEST_CASE("reckon timber gives the published moisture of solid wood") {
    // Simpson 1998 (FPL-RN-0268; second text), worked in Python; tolerance 0.005.
    CHECK(figure_of(reckoned("timber", air_json(20, 65)), "emc_pct") == Approx(11.996).margin(0.005));
    CHECK(figure_of(reckoned("timber", air_json(0, 50)), "emc_pct") == Approx(9.519).margin(0.005));
    CHECK(figure_of(reckoned("timber", air_json(5, 95)), "emc_pct") == Approx(24.344).margin(0.005));
    // Wood Handbook table at 21.1 °C, from memory, not confirmed: 12.0 at 65 %, 20.5 at 90 %.
    CHECK(figure_of(reckoned("timber", air_json(21.1, 65)), "emc_pct") == Approx(12.0).margin(0.05));
    CHECK(figure_of(reckoned("timber", air_json(21.1, 90)), "emc_pct") == Approx(20.5).margin(0.05));
}

TEST_CASE("reckon moisture corrects by the rule that is named, and judges the wetter") {
    // 15 % read at 10 °C: +1.5 by the method's line (practice), +1 by the meter makers' manuals, 0 by a meter that corrects.
    const auto by_method = reckoned("moisture", R"({"reading_pct": 15, "board_c": 10})");
    CHECK(figure_of(by_method, "corrected_pct") == Approx(16.5));
    CHECK(figure_of(by_method, "judged_pct") == Approx(16.5));
    CHECK(by_method.text_of("rule") == "0.15 % per K from 20 °C");
    CHECK(figure_of(reckoned("moisture", R"({"reading_pct": 15, "board_c": 10, "rule": "five_degrees"})"),
                    "corrected_pct") == Approx(16));
    CHECK(figure_of(reckoned("moisture", R"({"reading_pct": 15, "board_c": 10, "rule": "none"})"),
                    "corrected_pct") == Approx(15));
    const auto warm = reckoned("moisture", R"({"reading_pct": 15, "board_c": 30, "rule": "per_k"})");
    CHECK(figure_of(warm, "corrected_pct") == Approx(13.5));
    CHECK(figure_of(warm, "judged_pct") == Approx(15));
}

TEST_CASE("reckon moisture believes a pin meter from 7 to 28 %, both included, by its raw reading") {
    // Meter makers' manuals: about 7 % to fibre saturation.
    for (const auto& [reading, reach] : std::vector<std::pair<std::string, std::string>>{
             {"6.9", "below"}, {"7", "within"}, {"28", "within"}, {"28.1", "above"}}) {
        const auto found = reckoned("moisture", R"({"board_c": 20, "reading_pct": )" + reading + "}");
        CHECK(found.text_of("reach") == reach);
        CHECK(found.is_yes("believable") == (reach == "within"));
    }
}

TEST_CASE("reckon heads gives the largest number that may be proud, and how many more to check") {
    // scipy hypergeom.cdf and R phyper, exact.
    const auto sample = [](const std::string& members) { return reckoned("heads", "{" + members + "}"); };
    CHECK(figure_of(sample(R"("total": 60, "checked": 15, "proud": 0)"), "at_most") == 9);
    CHECK(figure_of(sample(R"("total": 200, "checked": 40, "proud": 1)"), "at_most") == 20);
    CHECK(figure_of(sample(R"("total": 600, "checked": 125, "proud": 3)"), "at_most") == 34);
    CHECK(figure_of(sample(R"("total": 300, "checked": 300, "proud": 2)"), "at_most") == 2);
    // Python, math.comb, counting up one head at a time: 2, 16 and 25 more; allowance 5 %.
    CHECK(figure_of(sample(R"("total": 400, "checked": 50, "proud": 0, "allow_pct": 5)"), "check_more") == 2);
    CHECK(figure_of(sample(R"("total": 60, "checked": 15, "proud": 0, "allow_pct": 5)"), "check_more") == 16);
    CHECK(figure_of(sample(R"("total": 600, "checked": 60, "proud": 1, "allow_pct": 5)"), "check_more") ==
          25);
    const auto hopeless = sample(R"("total": 60, "checked": 60, "proud": 9, "allow_pct": 5)");
    CHECK(hopeless.find("check_more") == nullptr);
    CHECK(figure_of(hopeless, "found_pct") == 15);
}

TEST_CASE("reckon heads is 95 % sure when nobody says how sure, and takes another confidence") {
    const auto sure = [](const std::string& more) {
        return figure_of(reckoned("heads", R"({"total": 200, "checked": 20, "proud": 0)" + more + "}"),
                         "at_most");
    };
    CHECK(sure("") == 26); // scipy and R, P(26) = 0.052973
    CHECK(sure(R"(, "confidence_pct": 95)") == 26);
    CHECK(sure(R"(, "confidence_pct": 99)") > 26);
}

TEST_CASE("reckon fixings gives length and thickness of the panel-trade guidance") {
    // WPIF panel guidance, second-hand: max(50 mm, 2.5 t); 0.16 t.
    CHECK(figure_of(reckoned("fixings", R"({"board_mm": 18})"), "length_mm") == 50);
    CHECK(figure_of(reckoned("fixings", R"({"board_mm": 18})"), "diameter_mm") == Approx(2.88));
    CHECK(figure_of(reckoned("fixings", R"({"board_mm": 20})"), "length_mm") == 50);
    CHECK(figure_of(reckoned("fixings", R"({"board_mm": 22})"), "length_mm") == 55);
    CHECK(figure_of(reckoned("fixings", R"({"board_mm": 25})"), "length_mm") == 62.5);
}

TEST_CASE(
    "reckon tape gives the permitted error of each class, L rounded up to the metre, more from the hook") {
    // UK SI 2016/1153 schedule 1I, found: a + b L, plus c from an end surface.
    CHECK(figure_of(reckoned("tape", R"({"m": 7.2, "class": 1})"), "mpe_mm") == Approx(0.9));
    CHECK(figure_of(reckoned("tape", R"({"m": 7.2, "class": 2})"), "mpe_mm") == Approx(1.9));
    CHECK(figure_of(reckoned("tape", R"({"m": 7.2, "class": 3})"), "mpe_mm") == Approx(3.8));
    CHECK(figure_of(reckoned("tape", R"({"m": 8, "class": 2})"), "mpe_mm") == Approx(1.9));
    const auto hooked = reckoned("tape", R"({"m": 7.2, "class": 2, "hook": true})");
    CHECK(figure_of(hooked, "mpe_mm") == Approx(2.1));
    CHECK(figure_of(hooked, "u_mm") == Approx(2.1 / 1.7320508)); // rectangular: JCGM 100 4.3.7, from memory
}

TEST_CASE("reckon doubt gives the chance that a limit is kept, from above and from below") {
    // scipy norm.cdf.
    const auto conforms = [](const std::string& members) {
        return figure_of(reckoned("doubt", "{" + members + "}"), "conforms_pct");
    };
    CHECK(conforms(R"("value": 18.0, "u": 1, "limit": 20, "side": "upper")") == Approx(97.725).margin(0.001));
    CHECK(conforms(R"("value": 20, "u": 1, "limit": 20, "side": "upper")") == Approx(50));
    CHECK(conforms(R"("value": 152, "u": 3, "limit": 150, "side": "lower")") == Approx(74.751).margin(0.001));
    CHECK(conforms(R"("value": 3.8, "u": 0.5, "limit": 3, "side": "lower")") == Approx(94.520).margin(0.001));
}

TEST_CASE("reckon movement is coefficient times length times difference") {
    // PVC-U 70e-6 from memory, steel 12e-6 second-hand; 7.0 and 1.8 mm computed.
    CHECK(figure_of(reckoned("movement",
                             R"({"length_mm": 2500, "coefficient_per_k": 7e-05, "from_c": 0, "to_c": 40})"),
                    "movement_mm") == Approx(7));
    CHECK(figure_of(
              reckoned("movement",
                       R"({"length_mm": 3000, "coefficient_per_k": 0.000012, "from_c": 40, "to_c": -10})"),
              "movement_mm") == Approx(-1.8));
}

TEST_CASE("reckon packs buys enough for the least money") {
    // cbc integer programme and brute force; prices in minor units.
    const auto found = reckoned("packs", R"({"need": 13.4, "packs": [{"size": 2.5, "price": 3100},
        {"size": 5, "price": 5400}, {"size": 10, "price": 9700}]})");
    CHECK(figure_of(found, "price") == 15100);
    CHECK(figure_of(found, "total") == 15);
    CHECK(figure_of(found, "spare") == 1.6);
    REQUIRE(found.list_of("mix").size() == 2);
    CHECK(figure_of(found.list_of("mix")[0], "size") == 5);
    CHECK(figure_of(found.list_of("mix")[1], "count") == 1);
    CHECK(figure_of(reckoned("packs", R"({"need": 7.6, "packs": [{"size": 1, "price": 1650},
        {"size": 2.5, "price": 3600}, {"size": 5, "price": 6800}]})"),
                    "price") == 11750);
    CHECK(figure_of(reckoned("packs", R"({"need": 21, "packs": [{"size": 2.5, "price": 2900},
        {"size": 5, "price": 5500}, {"size": 15, "price": 15800}]})"),
                    "price") == 24200);
}

TEST_CASE("reckon cuts gives the bars, how many, what is wasted and whether that is proved") {
    // Computed by an integer programme (cbc): without a kerf 6 lengths of 3000, with 3 mm 7.
    const std::string pieces =
        "[1000, 1000, 1000, 1000, 1000, 1000, 1500, 1500, 1500, 1500, 750, 750, 750, 750, 750]";
    const auto cut = [&](const std::string& kerf, const std::string& more = "") {
        return reckoned("cuts", "{\"pieces_mm\": " + pieces + ", \"stock_mm\": [3000], \"kerf_mm\": " + kerf +
                                    more + "}");
    };
    CHECK(figure_of(cut("0"), "bars_used") == 6);
    CHECK(figure_of(cut("0"), "waste_mm") == 2250);
    CHECK(cut("0").is_yes("best"));
    CHECK(figure_of(cut("3"), "bars_used") == 7);
    CHECK(figure_of(cut("3"), "at_least_mm") == 21000);
    CHECK(figure_of(cut("3", ", \"prices\": [1120]"), "price") == 7840);
    CHECK(figure_of(cut("3", ", \"prices\": [1120]"), "at_least_price") == 7840);
    CHECK(cut("3", ", \"prices\": [1120]").find("at_least_mm") == nullptr);
}

TEST_CASE("reckon trims lays the run of a hand-worked roof") {
    const auto laid = reckoned(
        "trims", R"({"run_mm": 5100, "stock_mm": 2500, "joint": "gap", "joint_mm": 3, "least_mm": 300})");
    CHECK(laid == read_back(R"({"joints": 2, "pieces_mm": [2500, 2294, 300]})"));
    CHECK(reckoned("trims", R"({"run_mm": 3600, "stock_mm": 2500, "joint": "lap", "joint_mm": 50})") ==
          read_back(R"({"joints": 1, "pieces_mm": [2500, 1150]})"));
}
