// Planned against used: what the record says went out of the tins and how long the days were.
#include "tests/job/takeoff_site.h"

using namespace undersheet;

namespace {

const job::TakeOffUsed* used(const job::TakeOff& made, const std::string& name) {
    for (const auto& one : made.used)
        if (one.name == name) return &one;
    return nullptr;
}

test::Site with_tins() {
    test::Site site = test::ell();
    site.record("tin", "09:20", R"({"label":"F1","product":"deck_adhesive","size_l":10,"count":1})");
    site.record("tin", "09:20", R"({"label":"F2","product":"deck_adhesive","size_l":2.5,"count":1})");
    return site;
}

std::string use(const std::string& tin, const std::string& amount) {
    return "{\"tin\":\"" + tin + "\"" + (amount.empty() ? "" : ",\"amount_l\":" + amount) + "}";
}

} // namespace

TEST_CASE("before anything was used nothing stands beside the plan") {
    CHECK(test::taken_off(with_tins()).used.empty());
}

TEST_CASE("litres of all tins of a product add up beside the litres planned") {
    auto site = with_tins();
    site.record("use", "10:00", use("F1", "10"), "", "field/1");
    site.record("use", "11:00", use("F2", "1.25"), "", "field/1");
    const auto made = test::taken_off(site);
    const auto* field = used(made, "deck_adhesive");
    REQUIRE(field != nullptr);
    CHECK(field->used.text() == "11.25");
    CHECK(field->planned.text() == "12.0505");
    CHECK(field->unit == "l");
    CHECK(field->working.size() == 2);
    CHECK(field->working.front().find("F1: 10 l") == 0);
    CHECK(field->remark.empty());
}

TEST_CASE("a use without an amount is said, because then more was used than the sum") {
    auto site = with_tins();
    site.record("use", "10:00", use("F1", "4"), "", "field/1");
    site.record("use", "11:00", use("F2", ""), "", "field/1");
    const auto made = test::taken_off(site);
    REQUIRE(used(made, "deck_adhesive") != nullptr);
    CHECK(used(made, "deck_adhesive")->remark.text == "1 use without an amount: more was used than this");
}

TEST_CASE("hours of a day count for each person on it, and a day without hours counts nothing") {
    auto site = with_tins();
    site.record("day", "17:00", R"({"date":"2026-06-11","people":["BM","NQ"],"hours_h":8.5})");
    site.record("day", "17:00", R"({"date":"2026-06-12","people":["BM"],"hours_h":4})");
    site.record("day", "17:00", R"({"date":"2026-06-13","people":["BM"]})");
    const auto made = test::taken_off(site);
    REQUIRE(used(made, "hours") != nullptr);
    CHECK(used(made, "hours")->used.text() == "21");
    CHECK(used(made, "hours")->planned.text() == "26.037");
    CHECK(used(made, "hours")->working ==
          job::Working{"2026-06-11: 2 people x 8.5 h", "2026-06-12: 1 person x 4 h"});
}
