// Outline, falls and sheet through JSON, against published and outside figures.
#include "tests/desk/reckon_support.h"

using namespace undersheet;

namespace {

// Four corners, the gutter along AB; `wide` and `deep` in metres.
std::string falls_json(const std::string& wide, const std::string& deep, const std::string& levels) {
    return R"({"outline": [{"x_m": 0, "y_m": 0}, {"x_m": )" + wide + R"(, "y_m": 0}, {"x_m": )" + wide +
           R"(, "y_m": )" + deep + R"(}, {"x_m": 0, "y_m": )" + deep +
           R"(}], "drains": [{"from": [0, 0], "to": [)" + wide + R"(, 0]}], "levels": [)" + levels + "]}";
}

std::string level(const std::string& x, const std::string& y, const std::string& z) {
    return R"({"x_m": )" + x + R"(, "y_m": )" + y + R"(, "z_mm": )" + z + "}";
}

std::string levels(const std::vector<std::vector<std::string>>& rows) {
    std::string out;
    for (const auto& row : rows) out += (out.empty() ? "" : ", ") + level(row[0], row[1], row[2]);
    return out;
}

std::string dormer(const std::string& ac) {
    return R"({"corners": ["A", "B", "C", "D"], "tapes": [{"from": "A", "to": "B", "m": 6.004},
        {"from": "B", "to": "C", "m": 3.998}, {"from": "C", "to": "D", "m": 6.001}, {"from": "D", "to": "A", "m": 4.003},
        {"from": "A", "to": "C", "m": )" +
           ac + R"(}, {"from": "B", "to": "D", "m": 7.209}]})";
}

const std::string kFiveCorners = R"({"corners": ["A", "B", "C", "D", "E"], "tapes": [
    {"from": "A", "to": "B", "m": 7.202}, {"from": "B", "to": "C", "m": 3.097}, {"from": "C", "to": "D", "m": 3.723},
    {"from": "D", "to": "E", "m": 4.044}, {"from": "E", "to": "A", "m": 4.403}, {"from": "A", "to": "C", "m": 7.837},
    {"from": "A", "to": "D", "m": 6.405}, {"from": "B", "to": "D", "m": 6.035}, {"from": "B", "to": "E", "m": 8.438},
    {"from": "C", "to": "E", "m": 7.317}]})";

} // namespace

// scipy least_squares on residual/sigma, redundancy from its Jacobian; tolerance 0.2 mm, |w| 0.02.
TEST_CASE("reckon outline gives the corners, residuals and verdict of an outside least-squares solver") {
    const auto found = reckoned("outline", dormer("7.214"));
    const auto& corners = found.list_of("corners");
    REQUIRE(corners.size() == 4);
    CHECK(figure_of(corners[0], "x_m") == 0);
    CHECK(figure_of(corners[1], "y_m") == 0);
    CHECK(figure_of(corners[1], "x_m") == Approx(6.0032).margin(0.0002));
    CHECK(figure_of(corners[2], "x_m") == Approx(6.0064).margin(0.0002));
    CHECK(figure_of(corners[3], "y_m") == Approx(4.0025).margin(0.0002));
    CHECK(figure_of(found, "area_m2") == Approx(24.0065).margin(0.001));
    CHECK(figure_of(found, "vpv") == Approx(0.4264).margin(0.0005));
    CHECK(figure_of(found, "vpv_limit") == Approx(3.8415).margin(0.0001));
    CHECK(figure_of(found, "spare_tapes") == 1);
    CHECK(found.is_yes("accepted"));
    const std::vector<double> residual_mm{-0.81, -0.54, -0.82, -0.54, 0.98, 0.98};
    const std::vector<double> redundancy{0.173, 0.077, 0.1732, 0.0768, 0.2502, 0.2498};
    for (std::size_t i = 0; i < 6; ++i) {
        const auto& tape = found.list_of("tapes")[i];
        CHECK(figure_of(tape, "residual_mm") == Approx(residual_mm[i]).margin(0.2));
        CHECK(figure_of(tape, "redundancy") == Approx(redundancy[i]).margin(0.0005));
        CHECK(std::abs(figure_of(tape, "w")) == Approx(0.653).margin(0.02));
    }
}

TEST_CASE("reckon outline shows a slip of 50 mm that one spare tape cannot place") {
    const auto found = reckoned("outline", dormer("7.264"));
    CHECK(figure_of(found, "vpv") == Approx(59.2527).margin(0.01));
    CHECK_FALSE(found.is_yes("accepted"));
    CHECK_FALSE(found.is_yes("can_locate"));
    for (const auto& tape : found.list_of("tapes")) {
        CHECK(std::abs(figure_of(tape, "w")) == Approx(7.698).margin(0.02));
        CHECK_FALSE(tape.is_yes("suspect"));
    }
    CHECK(found.find("next_tape") != nullptr);
}

TEST_CASE("reckon outline names the tape that is wrong where the others agree without it") {
    const auto found = reckoned("outline", kFiveCorners); // BD is 100 mm long
    CHECK(figure_of(found, "vpv") == Approx(352.0181).margin(0.05));
    CHECK(found.is_yes("can_locate"));
    for (const auto& tape : found.list_of("tapes"))
        CHECK(tape.is_yes("suspect") == (tape.text_of("from") == "B" && tape.text_of("to") == "D"));
}

TEST_CASE("reckon falls gives the plane of an outside least-squares solver") {
    // numpy.linalg.lstsq: 1 in 49.38 towards 270.157 degrees, rms with n - 3 1.9293 mm.
    const auto found = reckoned("falls", falls_json("6", "4",
                                                    levels({{"0", "0", "0"},
                                                            {"3", "0", "1"},
                                                            {"6", "0", "-1"},
                                                            {"0", "2", "42"},
                                                            {"3", "2", "40"},
                                                            {"6", "2", "44"},
                                                            {"0", "4", "81"},
                                                            {"3", "4", "83"},
                                                            {"6", "4", "79"}})));
    const auto& plane = *found.find("plane");
    CHECK(figure_of(plane, "fall_1_in") == Approx(49.38).margin(0.05));
    CHECK(figure_of(plane, "toward_deg") == Approx(270.157).margin(0.01));
    CHECK(figure_of(plane, "rms_mm") == Approx(1.9293).margin(0.001));
    CHECK(found.list_of("steps").size() == 6);
    CHECK(found.list_of("ponds").empty());
    // By hand: the flattest step climbs 35 mm in 2 m, but for the plane's slight turn, from (6,2) to (6,4).
    CHECK(figure_of(*found.find("flattest"), "fall_1_in") == Approx(57.14).margin(0.2));
    CHECK(figure_of(*found.find("flattest"), "x_m") == 6);
    CHECK(figure_of(*found.find("flattest"), "y_m") == 3);
}

TEST_CASE("reckon falls gives a negative fall for a step the wrong way, and none for a level one") {
    const auto found = reckoned("falls", falls_json("1", "4",
                                                    levels({{"0", "0", "0"},
                                                            {"1", "0", "0"},
                                                            {"0", "2", "50"},
                                                            {"1", "2", "50"},
                                                            {"0", "4", "40"},
                                                            {"1", "4", "50"}})));
    std::size_t back = 0, level_steps = 0;
    for (const auto& step : found.list_of("steps")) {
        if (step.find("fall_1_in") == nullptr)
            ++level_steps;
        else if (figure_of(step, "fall_1_in") < 0)
            ++back;
    }
    CHECK(back == 1);
    CHECK(level_steps == 1);
}

TEST_CASE("reckon falls finds the water that a lip along the gutter holds back") {
    // Closed form of a wedge: 6 mm lip, fall 1:60, 4 m wide: h n w = 1.44 m2 and h^2 n w / 2 = 4.32 l.
    const auto found = reckoned("falls", falls_json("4", "1.2",
                                                    levels({{"0", "0", "6"},
                                                            {"4", "0", "6"},
                                                            {"0", "0.0001", "0"},
                                                            {"4", "0.0001", "0"},
                                                            {"0", "0.36", "6"},
                                                            {"4", "0.36", "6"},
                                                            {"0", "1.2", "20"},
                                                            {"4", "1.2", "20"}})));
    // A lip this thin lies within a centimetre of the line: its foot counts as on it, and drains.
    CHECK(found.list_of("ponds").empty());
    const auto wide = reckoned("falls", falls_json("4", "1.22",
                                                   levels({{"0", "0", "6"},
                                                           {"4", "0", "6"},
                                                           {"0", "0.02", "0"},
                                                           {"4", "0.02", "0"},
                                                           {"0", "0.38", "6"},
                                                           {"4", "0.38", "6"},
                                                           {"0", "1.22", "20"},
                                                           {"4", "1.22", "20"}})));
    REQUIRE(wide.list_of("ponds").size() == 1);
    const auto& pond = wide.list_of("ponds").front();
    CHECK(figure_of(pond, "depth_mm") == Approx(6));
    CHECK(figure_of(pond, "area_m2") == Approx(1.44 + 4 * 0.02)); // and the slope of the lip itself
    CHECK(figure_of(pond, "litres") == Approx(4.32 + 4 * 0.02 * 6 / 2));
}

TEST_CASE("reckon falls keeps the pond of a pyramid, and an outlet at its foot empties it") {
    // Closed form: 1.2 x 0.8 m, 15 mm deep: 4.8 l on 0.96 m2.
    const std::string bowl = levels(
        {{"0", "0", "0"}, {"1.2", "0", "0"}, {"1.2", "0.8", "0"}, {"0", "0.8", "0"}, {"0.6", "0.4", "-15"}});
    const auto found = reckoned("falls", falls_json("1.2", "0.8", bowl));
    REQUIRE(found.list_of("ponds").size() == 1);
    const auto& pond = found.list_of("ponds").front();
    CHECK(figure_of(pond, "litres") == Approx(4.8));
    CHECK(figure_of(pond, "area_m2") == Approx(0.96));
    CHECK(figure_of(pond, "x_m") == Approx(0.6));
    CHECK(found.find("plane")->find("fall_1_in") == nullptr); // level
    std::string with_outlet = falls_json("1.2", "0.8", bowl);
    with_outlet.replace(with_outlet.find("{\"from\": [0, 0]"),
                        std::string("{\"from\": [0, 0], \"to\": [1.2, 0]}").size(), R"({"at": [0.6, 0.4]})");
    CHECK(reckoned("falls", with_outlet).list_of("ponds").empty());
}

TEST_CASE("reckon falls lets no water cross what lies outside the outline") {
    // An L: from the upper arm the straight way to the gutter would cross the notch; inside it leads over the ridge at 30.
    const std::string roof =
        R"({"outline": [{"x_m": 0, "y_m": 0}, {"x_m": 4, "y_m": 0}, {"x_m": 4, "y_m": 2}, {"x_m": 2, "y_m": 2},
        {"x_m": 2, "y_m": 4}, {"x_m": 0, "y_m": 4}], "drains": [{"from": [4, 0], "to": [4, 2]}], "levels": [)";
    const auto found = reckoned("falls", roof +
                                             levels({{"4", "0", "0"},
                                                     {"4", "2", "0"},
                                                     {"2", "2", "30"},
                                                     {"0", "2", "30"},
                                                     {"0", "0", "30"},
                                                     {"2", "0", "30"},
                                                     {"2", "4", "10"},
                                                     {"0", "4", "10"}}) +
                                             "]}");
    REQUIRE(found.list_of("ponds").size() == 1);
    CHECK(figure_of(found.list_of("ponds").front(), "depth_mm") == Approx(20));
    CHECK(figure_of(found.list_of("ponds").front(), "litres") ==
          Approx(40)); // a wedge 2 x 2 m, 20 mm at its end
}

TEST_CASE("reckon falls says how far off the levels are that it takes for a drain") {
    const auto found = reckoned(
        "falls",
        falls_json(
            "4", "2",
            levels({{"1", "0.25", "0"}, {"3", "0.25", "0"}, {"1", "1.75", "30"}, {"3", "1.75", "30"}})));
    const auto& drain = found.list_of("drains").front();
    CHECK(figure_of(drain, "levels") == 2);
    CHECK(figure_of(drain, "away_m") == 0.25);
}

TEST_CASE("reckon sheet gives the smallest sheet off the rolls, its weight and what is left over") {
    // By hand: 6 x 4 m with 150 at the gutter and 250 at the wall, 200 at both kerbs, takes 6.4 x 4.4 m; weight: area x
    // thickness x density.
    const auto asked = [](const std::string& rolls, const std::string& more) {
        return reckoned(
            "sheet",
            R"({"outline": [{"x_m": 0, "y_m": 0}, {"x_m": 6, "y_m": 0}, {"x_m": 6, "y_m": 4}, {"x_m": 0, "y_m": 4}],
            "edges": [{"kind": "gutter", "extra_mm": 150}, {"kind": "kerb", "extra_mm": 200}, {"kind": "wall", "extra_mm": 250},
            {"kind": "kerb", "extra_mm": 200}], "thickness_mm": 1.2, "density_kg_m3": 1150, "rolls_m": [)" +
                rolls + "]" + more + "}");
    };
    const auto straight = asked("3.05, 4.57, 6.1", "");
    CHECK(figure_of(straight, "roll_width_m") == 4.57);
    CHECK(figure_of(straight, "length_m") == Approx(6.4));
    CHECK(figure_of(straight, "turn_deg") == Approx(0).margin(1e-9));
    CHECK(figure_of(straight, "area_m2") == Approx(4.57 * 6.4));
    CHECK(figure_of(straight, "waste_pct") == Approx(100 * (4.57 * 6.4 - 24) / (4.57 * 6.4)));
    CHECK(figure_of(straight, "weight_kg") == Approx(4.57 * 6.4 * 0.0012 * 1150));
    const auto turned = asked("6.4", R"(, "cut_to_m": 0.5)");
    CHECK(figure_of(turned, "length_m") == Approx(4.5)); // 4.4 m, cut to half metres
    CHECK(figure_of(turned, "turn_deg") == Approx(90));
}
