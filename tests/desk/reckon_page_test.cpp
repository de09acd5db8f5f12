// docs/reckon.md has each topic with an example; here they are worked out again.
#include "tests/desk/reckon_support.h"

#include "tests/support/temp_folder.h"

#include <cmath>

using namespace undersheet;
using entry::Value;

namespace {

struct Example {
    std::string topic, input, output;
};

// What stands between two marks, and moves `at` behind the second.
std::string between(const std::string& text, const std::string& open, const std::string& close,
                    std::size_t& at) {
    const auto begin = text.find(open, at) + open.size();
    const auto end = text.find(close, begin);
    REQUIRE(end != std::string::npos);
    at = end + close.size();
    return text.substr(begin, end - begin);
}

std::vector<Example> examples() {
    const std::string page = bytes_of_file(std::string(UNDERSHEET_SOURCE_DIR) + "/docs/reckon.md");
    std::vector<Example> found;
    for (std::size_t at = 0; (at = page.find("\n## ", at)) != std::string::npos;) {
        Example example;
        example.topic = between(page, "\n## ", "\n", at);
        example.input = between(page, "```json\n", "```", at);
        example.output = between(page, "```json\n", "```", at);
        found.push_back(example);
    }
    return found;
}

// Numbers to a millionth, so that another processor's last digit is no difference.
bool is_same(const Value& a, const Value& b) {
    if (a.number() != nullptr && b.number() != nullptr) {
        const double x = a.number()->value(), y = b.number()->value();
        return std::fabs(x - y) <= 1e-6 * std::max(1.0, std::fabs(x));
    }
    if (a.list() != nullptr && b.list() != nullptr)
        return std::equal(a.list()->begin(), a.list()->end(), b.list()->begin(), b.list()->end(), is_same);
    if (a.map() != nullptr && b.map() != nullptr) {
        return std::equal(
            a.map()->begin(), a.map()->end(), b.map()->begin(), b.map()->end(),
            [](const auto& x, const auto& y) { return x.key == y.key && is_same(x.value, y.value); });
    }
    return a == b;
}

} // namespace

TEST_CASE("the page on reckon has every topic in the order of the list") {
    const auto found = examples();
    const auto lines = desk::topics();
    REQUIRE(found.size() == lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i) CHECK(found[i].topic == lines[i].topic);
}

TEST_CASE("every example of the page on reckon gives what the page says") {
    for (const auto& example : examples()) {
        INFO(example.topic);
        CHECK(is_same(reckoned(example.topic, example.input), read_back(example.output)));
    }
}

TEST_CASE("the comparison of examples notices a number, a member and a length that differ") {
    CHECK(is_same(read_back(R"({"a": [1.0000001, "x"]})"), read_back(R"({"a": [1, "x"]})")));
    CHECK_FALSE(is_same(read_back(R"({"a": 1.00001})"), read_back(R"({"a": 1})")));
    CHECK_FALSE(is_same(read_back(R"({"a": 1, "b": 1})"), read_back(R"({"a": 1})")));
    CHECK_FALSE(is_same(read_back("[1]"), read_back("[1, 1]")));
}
