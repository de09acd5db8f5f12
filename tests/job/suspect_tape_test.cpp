// Which tape the findings about the outline name. Five corners, all ten tapes; what a slip of BD does to them was
// adjusted with scipy (tests/trade/outline_test.cpp, case 5d).
#include "tests/support/site.h"

using namespace undersheet;
using test::Site;

namespace {

constexpr std::pair<const char*, double> kTapes[]{{"AB", 7.202}, {"BC", 3.097}, {"CD", 3.723}, {"DE", 4.044},
                                                  {"EA", 4.403}, {"AC", 7.837}, {"AD", 6.405}, {"BD", 5.935},
                                                  {"BE", 8.438}, {"CE", 7.317}};

Site taped(double bd_m) {
    Site site;
    site.opened();
    for (const char* edge : {"AB", "BC", "CD", "DE", "EA"})
        site.record("edge", "08:00", R"({"kind":"kerb"})", edge);
    for (const auto& [line, m] : kTapes)
        site.record("tape", "08:10", R"({"m":)" + shortest(std::string(line) == "BD" ? bd_m : m, 3) + "}",
                    line);
    return site;
}

} // namespace

TEST_CASE("the tape that the others agree without is named, with what to do about it") {
    const auto judged = taped(6.035).judge("09:00");
    const auto* finding = judged.finding("tapes_do_not_close");
    REQUIRE(finding != nullptr);
    CHECK(finding->says.ends_with("; the others agree without BD"));
    CHECK(finding->clears == "tape BD again first");
}

TEST_CASE("tapes that agree are no finding, and where one spare tape cannot tell none is named") {
    CHECK(taped(5.935).judge("09:00").finding("tapes_do_not_close") == nullptr);
    Site site;
    site.opened();
    for (const char* edge : {"AB", "BC", "CD", "DA"})
        site.record("edge", "08:00", R"({"kind":"kerb"})", edge);
    for (const auto& [line, m] :
         {std::pair{"AB", "6"}, {"BC", "4"}, {"CD", "6"}, {"DA", "4"}, {"AC", "7.3"}, {"BD", "7.211"}})
        site.record("tape", "08:10", std::string(R"({"m":)") + m + "}", line);
    const auto judged = site.judge("09:00");
    const auto* finding = judged.finding("tapes_do_not_close");
    REQUIRE(finding != nullptr);
    CHECK(finding->says.find("without") == std::string::npos);
    CHECK(finding->clears == "tape again before a sheet is ordered");
}
