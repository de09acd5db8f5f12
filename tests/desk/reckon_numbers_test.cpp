#include "desk/reckon_numbers.h"

#include <catch2/catch.hpp>

using namespace undersheet;

namespace {

std::string made(const std::string& json) {
    const auto plain = desk::with_plain_numbers(json);
    return plain.ok() ? *plain : "refused: " + one_line(plain.fault());
}

} // namespace

TEST_CASE("only numbers change: texts, marks, blanks and lines stay as they are") {
    CHECK(made("{\n \"a\": 1e2,\n \"b 1e5\": [\"1e5\", true, false, \"say \\\"1e5\\\"\", -0.50]}\n") ==
          "{\n \"a\": 100,\n \"b 1e5\": [\"1e5\", true, false, \"say \\\"1e5\\\"\", -0.5]}\n");
}

TEST_CASE("what cannot be read is named by the way to it") {
    CHECK(made(R"({"air_c": NaN})") == "refused: air_c: NaN is no number");
    CHECK(made(R"({"a": 1, "layers": [{"sd_m": 1}, {"r": [1, -Infinity]}]})") ==
          "refused: layers[1].r[1]: -Infinity is no number");
    CHECK(made(R"({"a": {"b": 1}, "c": null})") ==
          "refused: c: null stands for nothing here; leave the member out");
    CHECK(made(R"([1, {"x": 1e400}])").starts_with("refused: [1].x: 1e400 is too great or too small"));
    CHECK(made("nothing").starts_with("refused: nothing is no number"));
}

TEST_CASE("text that is no JSON passes to the reader, which says so") {
    for (const char* text : {"", "{", "]", "{\"a", "\"\\", "}}]],,", "{\"a\" 1}", "{,}"})
        CHECK(made(text) == text);
}
