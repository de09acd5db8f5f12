// Figures that came out of another unit, as a finding says them to people.
#include "tests/support/site.h"

using namespace undersheet;
using test::Site;

namespace {

job::Finding windy(const std::string& wind_ms) {
    Site site;
    site.opened();
    site.record("air", "08:55", R"({"air_c":15,"rh_pct":50,"surface_c":15,"wind_ms":)" + wind_ms + "}");
    const auto judged = site.judge("09:00");
    const auto* finding = judged.finding("windy");
    return finding == nullptr ? job::Finding{} : *finding;
}

} // namespace

TEST_CASE("a wind typed in miles an hour is said with one decimal, and stays exact for programs") {
    const auto at_limit = windy("10.28192"); // 23 mph
    CHECK(at_limit.says == "wind 10.3 m/s; 10.3 m/s is the most with the sheet loose");
    CHECK(at_limit.value == "10.28192");
    CHECK(at_limit.limit == "10.28192");
    CHECK(windy("13.4112").says == "wind 13.4 m/s; 10.3 m/s is the most with the sheet loose");
}

TEST_CASE("rounding never says that a value keeps a limit it breaks") {
    CHECK(windy("10.29").says == "wind 10.29 m/s; 10.28 m/s is the most with the sheet loose");
    CHECK(windy("10.28292").says == "wind 10.283 m/s; 10.282 m/s is the most with the sheet loose");
    CHECK(windy("9").says == "wind 9 m/s; 7.6 m/s is the most with the sheet loose"); // the warning
    CHECK(windy("7.59").says.empty());
}
