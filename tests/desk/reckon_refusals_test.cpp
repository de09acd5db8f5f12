// What reckon refuses, and that the refusal names the member.
#include "base/text.h"
#include "desk/own.h"
#include "desk/reckon_topics.h"
#include "tests/desk/reckon_support.h"

#include <cmath>
#include <map>

using namespace undersheet;
using entry::Value;

namespace {

// A good input for each topic: every other test here spoils one member of it.
const std::map<std::string, std::string> kGood{
    {"air", R"({"air_c": 15, "rh_pct": 65})"},
    {"timber", R"({"air_c": 15, "rh_pct": 65})"},
    {"moisture", R"({"reading_pct": 15, "board_c": 10})"},
    {"heads", R"({"total": 60, "checked": 15, "proud": 0})"},
    {"fixings", R"({"board_mm": 18})"},
    {"tape", R"({"m": 7.2, "class": 2})"},
    {"doubt", R"({"value": 19, "u": 1, "limit": 20, "side": "upper"})"},
    {"outline",
     R"({"corners": ["A", "B", "C"], "tapes": [{"from": "A", "to": "B", "m": 3}, {"from": "B", "to": "C", "m": 4},
        {"from": "C", "to": "A", "m": 5}]})"},
    {"falls",
     R"({"outline": [{"x_m": 0, "y_m": 0}, {"x_m": 4, "y_m": 0}, {"x_m": 4, "y_m": 2}, {"x_m": 0, "y_m": 2}],
        "levels": [{"x_m": 0, "y_m": 0, "z_mm": 0}, {"x_m": 4, "y_m": 0, "z_mm": 0}, {"x_m": 4, "y_m": 2, "z_mm": 50}],
        "drains": [{"from": [0, 0], "to": [4, 0]}]})"},
    {"sheet",
     R"({"outline": [{"x_m": 0, "y_m": 0}, {"x_m": 4, "y_m": 0}, {"x_m": 4, "y_m": 2}], "edges": [{"kind": "gutter", "extra_mm": 0},
        {"kind": "kerb", "extra_mm": 0}, {"kind": "kerb", "extra_mm": 0}], "rolls_m": [3], "thickness_mm": 1.2, "density_kg_m3": 1150})"},
    {"packs", R"({"need": 7, "packs": [{"size": 5, "price": 100}]})"},
    {"cuts", R"({"pieces_mm": [1000, 700], "stock_mm": [2500], "kerf_mm": 3})"},
    {"trims", R"({"run_mm": 3600, "stock_mm": 2500, "joint": "gap", "joint_mm": 3})"},
    {"movement", R"({"length_mm": 1000, "coefficient_per_k": 0.00007, "from_c": 0, "to_c": 40})"},
    {"rain", R"({"roof_m2": 24, "rate_l_s_m2": 0.021})"},
    {"wind", R"({"deck": {"b_m": 6, "d_m": 4, "h_m": 3}})"},
    {"heat", R"({"rsi": 0.1, "rse": 0.04, "layers": [{"r_m2k_w": 1}]})"},
    {"daylight", R"({"latitude_deg": 51.5, "longitude_deg": 0, "date": "2026-06-21", "offset_min": 60})"}};

std::string with(const std::string& topic, const std::string& key, Value value) {
    Value input = read_back(kGood.at(topic));
    input.set(key, std::move(value));
    return entry::write_pretty(input);
}

std::string without(const std::string& topic, const std::string& key) {
    Value input = read_back(kGood.at(topic));
    input.erase(key);
    return entry::write_pretty(input);
}

bool names(const std::string& refusal, const std::string& word) {
    return refusal.find(word) != std::string::npos;
}

} // namespace

TEST_CASE("every topic is listed with its saying, has both schemas, and answers a good input") {
    REQUIRE(desk::topics().size() == kGood.size());
    for (const auto& line : desk::topics()) {
        INFO(line.topic);
        CHECK_FALSE(line.says.empty());
        REQUIRE(kGood.contains(line.topic));
        CHECK(reckoned(line.topic, kGood.at(line.topic)).map() != nullptr);
        CHECK(schema_of(line.topic, "input").text_of("type") == "object");
    }
}

TEST_CASE("the list of topics for scripts is of the shape its schema says") {
    const auto shape = read_back(std::string(desk::own_text("reckon_list.schema.json")));
    CHECK(method::check_shape(shape, read_back(desk::json_of(desk::topics())), "list").ok());
}

TEST_CASE("a topic there is not is refused, with the nearest one or all of them") {
    CHECK(refusal("airr", "{}") == "there is no topic 'airr'; did you mean air?");
    CHECK(names(refusal("plumbing", "{}"), "there are air, timber, moisture"));
    CHECK(desk::reckon_schema("plumbing").fault().code == Code::topic_unknown);
}

TEST_CASE("every topic refuses an unknown member by its name") {
    for (const auto& [topic, input] : kGood) {
        INFO(topic);
        CHECK(names(refusal(topic, with(topic, "colour", "red")), "colour is not known here"));
    }
    CHECK(
        names(refusal("wind", R"({"deck": {"b_m": 6, "d_m": 4, "h_m": 3, "q": 1}})"), "deck.q is not known"));
}

TEST_CASE("every topic refuses each member that it needs and has not, by its name") {
    std::size_t tried = 0;
    for (const auto& good : kGood) {
        const std::string& topic = good.first;
        const Value schema = schema_of(topic, "input");
        for (const Value& key : schema.list_of("required")) {
            INFO(topic << " without " << *key.text());
            CHECK(names(refusal(topic, without(topic, *key.text())), "'" + *key.text() + "'"));
            ++tried;
        }
    }
    CHECK(tried > 40);
}

TEST_CASE("every topic refuses a member of another type by its name") {
    for (const auto& good : kGood) {
        const std::string& topic = good.first;
        const Value shape = schema_of(topic, "input");
        for (const auto& [key, schema] : *shape.find("properties")->map()) {
            INFO(topic << " with " << key);
            const Value odd = schema.text_of("type") == "array" ? Value("7") : Value(entry::List{});
            CHECK(names(refusal(topic, with(topic, key, odd)), key + " is "));
        }
    }
    CHECK(
        names(refusal("heads", R"({"total": 60.5, "checked": 15, "proud": 0})"), "total is of type number"));
    CHECK(names(refusal("tape", R"({"m": 7.2, "class": "2"})"), "class is '2', it should be one of 1, 2, 3"));
    CHECK(names(refusal("air", "[]"), "the file is of type array, it should be object"));
}

TEST_CASE("every number refuses what lies beyond its limits by its name, and takes what lies on them") {
    std::size_t tried = 0;
    for (const auto& good : kGood) {
        const std::string& topic = good.first;
        const Value shape = schema_of(topic, "input");
        for (const auto& [key, schema] : *shape.find("properties")->map()) {
            const std::string member = key;
            const auto refused = [&](double value) {
                return names(refusal(topic, with(topic, member, desk::figure(value))), member + " is ");
            };
            INFO(topic << " " << member);
            for (const char* bound : {"minimum", "exclusiveMinimum", "maximum", "exclusiveMaximum"}) {
                const auto* limit = schema.find(bound);
                if (limit == nullptr) continue;
                const double sign = std::string_view(bound).ends_with("inimum") ? -1 : 1;
                const double at = limit->number()->value();
                const double step =
                    schema.text_of("type") == "integer" ? 1 : 1e-6 * std::max(1.0, std::fabs(at));
                CHECK(refused(at + sign * step));
                CHECK(refused(at) == std::string_view(bound).starts_with("exclusive"));
                ++tried;
            }
        }
    }
    CHECK(tried > 60);
}

TEST_CASE("NaN, infinities, huge exponents and null are refused by name") {
    for (const char* word : {"NaN", "Infinity", "-Infinity", "1e400", "1e99", "null"}) {
        const auto refused = refusal("air", std::string(R"({"rh_pct": 65, "air_c": )") + word + "}");
        INFO(refused);
        CHECK(refused.starts_with(std::string("air_c: ") + word));
    }
}

TEST_CASE("text that is not JSON, and a member that stands twice, are refused with the line") {
    CHECK(names(refusal("air", ""), "the JSON ends too early"));
    CHECK(names(refusal("air", "{\n\"air_c\" 15}"), "line 2"));
    CHECK(names(refusal("air", R"({"air_c": 15, "air_c": 16, "rh_pct": 65})"), "'air_c' stands twice"));
}

TEST_CASE("what one member makes of another is refused by name") {
    CHECK(refusal("heads", R"({"total": 60, "checked": 61, "proud": 0})").starts_with("checked: "));
    CHECK(refusal("heads", R"({"total": 60, "checked": 15, "proud": 16})").starts_with("proud: "));
    CHECK(refusal("wind", "{}").starts_with("speed_ms: there is nothing to work out"));
    CHECK(refusal("wind", R"({"site": {"vb_ms": 26, "z_m": 9, "z0_m": 1, "zmin_m": 1}})")
              .starts_with("site.zmin_m: "));
    CHECK(refusal(
              "rain",
              R"({"roof_m2": 24, "rate_l_s_m2": 0.021, "gutter": {"shape": "half_round", "area_mm2": 5000}})")
              .starts_with("gutter.coefficient: missing"));
    CHECK(refusal("heat", R"({"rsi": 0.1, "rse": 0.04, "layers": [{"thickness_mm": 18}]})")
              .starts_with("layers[0].conductivity_w_mk: missing"));
    CHECK(refusal("outline", with("outline", "corners", entry::List{"A", "B", "A"}))
              .starts_with("corners[2]: "));
    CHECK(refusal("daylight", with("daylight", "date", "2026-02-30")).starts_with("date: "));
    CHECK(refusal("daylight", with("daylight", "date", "2026-02")).starts_with("date: "));
    CHECK(refusal("daylight", with("daylight", "date", "1900-06-01")).starts_with("date: "));
}

TEST_CASE("falls refuses levels that cannot be and drains that are neither line nor point") {
    const auto levels = [](const std::string& third) {
        return with("falls", "levels",
                    read_back(R"([{"x_m": 0, "y_m": 0, "z_mm": 0}, {"x_m": 4, "y_m": 0, "z_mm": 0}, )" +
                              third + "]"));
    };
    CHECK(refusal("falls", levels(R"({"x_m": 4, "y_m": 0, "z_mm": 5})"))
              .starts_with("levels[2]: stands where another does"));
    CHECK(refusal("falls", levels(R"({"x_m": 4, "y_m": 2.301, "z_mm": 5})"))
              .starts_with("levels[2]: lies outside"));
    CHECK(refusal("falls", levels(R"({"x_m": 4, "y_m": 2.3, "z_mm": 5})")).empty()); // place_near_m is 0.3
    CHECK(refusal("falls", levels(R"({"x_m": 2, "y_m": 0, "z_mm": 5})"))
              .starts_with("levels: the levels lie in one line"));
    CHECK(refusal("falls", with("falls", "drains", read_back(R"([{"from": [0, 0]}])")))
              .starts_with("drains[0]: "));
    CHECK(refusal("falls",
                  with("falls", "drains", read_back(R"([{"at": [0, 0], "from": [0, 0], "to": [4, 0]}])")))
              .starts_with("drains[0]: "));
    CHECK(refusal("falls",
                  with("falls", "outline",
                       read_back(R"([{"x_m": 0, "y_m": 0}, {"x_m": 0, "y_m": 2}, {"x_m": 4, "y_m": 0}])")))
              .starts_with("outline: the corners run clockwise"));
}

TEST_CASE("the defaults of the schemas are the figures of the method") {
    const auto standard = [](const char* topic, const char* key) {
        return schema_of(topic, "input").find("properties")->find(key)->find("default")->number()->value();
    };
    CHECK(standard("heads", "confidence_pct") == desk::own_method().limit("heads_confidence_pct"));
    CHECK(standard("outline", "sd_mm") == desk::own_method().limit("tape_sd_mm"));
}
