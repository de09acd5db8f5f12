// How much may be fed at once: at the limit, just under and just over it.
#include "tests/desk/desk_support.h"

using namespace undersheet;

namespace {

Result<desk::KeptMany> fed(DeskTest& test, const std::string& lines) {
    return test.open().record_lines(DeskTest::by("IP", "08:10"), lines);
}

// A line of exactly so many bytes, its text padded; refused for what it says, or for its length.
std::string line_of_size(std::size_t bytes) {
    const std::string begin = R"({"kind":"chase","place":"AB","data":{"height_mm":165,"note":")",
                      end = "\"}}";
    return begin + std::string(bytes - begin.size() - end.size(), 'x') + end;
}

Code code_of_line(std::size_t bytes) {
    DeskTest test;
    const auto refused = good(fed(test, line_of_size(bytes)));
    REQUIRE(refused.bad.size() == 1);
    return refused.bad.front().fault.code;
}

} // namespace

// A text of that length is over what a field takes, which is another refusal than that of the line.
TEST_CASE("a line of sixty-four kibibytes is read and one more byte is refused") {
    CHECK(code_of_line(65'535) == Code::field_out_of_range);
    CHECK(code_of_line(65'536) == Code::field_out_of_range);
    CHECK(code_of_line(65'537) == Code::json_too_large);
}

TEST_CASE("five thousand lines are taken at once and one more is refused in one line") {
    DeskTest test;
    const std::string air = R"({"kind":"air","data":{"air_c":13,"rh_pct":66}})";
    for (const std::size_t empty : {4998U, 4999U}) {
        const auto kept = fed(test, air + std::string(empty, '\n'));
        INFO(line_of(kept));
        REQUIRE(kept.ok());
        CHECK(kept->kept == 1);
    }
    CHECK(good(fed(test, air + std::string(5000, '\n'))).kept == 1); // the last one ends the last line
    const auto refused = fed(test, air + std::string(5000, '\n') + air);
    CHECK(line_of(refused) == "5001 lines, at most 5000 are kept at once; feed them in pieces");
    CHECK(refused.fault().code == Code::json_too_large);
    CHECK(good(test.open().history({})).lines.size() == 7);
}

TEST_CASE("sixteen mebibytes of lines are taken at once and one more byte is refused in one line") {
    DeskTest test;
    const std::string air = R"({"kind":"air","data":{"air_c":13,"rh_pct":66}})"
                            "\n";
    const auto padded = [&](std::size_t bytes) { return air + std::string(bytes - air.size(), ' '); };
    CHECK(good(fed(test, padded((16U << 20U) - 1))).kept == 1);
    CHECK(good(fed(test, padded(16U << 20U))).kept == 1);
    CHECK(line_of(fed(test, padded((16U << 20U) + 1))) ==
          "these lines are larger than 16 MiB; feed them in pieces");
}

TEST_CASE("a line nested deeper than an entry, or with more members, is refused") {
    DeskTest test;
    for (const std::string& data :
         {std::string(100'000, '['), "{\"note\":" + std::string(8, '[') + std::string(8, ']') + "}"}) {
        const auto refused = good(fed(test, "{\"kind\":\"chase\",\"place\":\"AB\",\"data\":" + data + "}"));
        REQUIRE(refused.bad.size() == 1);
        CHECK(refused.bad.front().fault.code == Code::json_too_large);
    }
}
