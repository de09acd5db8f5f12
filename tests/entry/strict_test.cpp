#include "entry/json.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <random>

using namespace undersheet;
using namespace undersheet::entry;

namespace {

bool is_taken(std::string_view bytes) { return read_strict(bytes).ok(); }
std::string nested(std::size_t depth) { return std::string(depth, '[') + std::string(depth, ']'); }
std::string list_of(std::size_t count) {
    std::string text = "[";
    for (std::size_t i = 0; i < count; ++i) text += i == 0 ? "1" : ",1";
    return text + "]";
}

const std::vector<std::string> kGood = {
    R"({})",
    R"({"a":1,"b":-2,"c":0})",
    R"({"air_c":12.1,"rh_pct":66})",
    R"({"a":0.5,"b":-0.25,"c":999999999999999})",
    R"({"a":[true,false,"x",[],{}]})",
    "{\"a\":\"caf\xC3\xA9 \xE2\x82\xAC \xF0\x9F\x8F\xA0\"}",
    R"({"a":"two\nlines, \"quoted\" and \\ back"})",
    R"({"a":"/ stays as it is"})",
};

} // namespace

TEST_CASE("what is in the strict form is taken and written again byte for byte") {
    for (const auto& bytes : kGood) {
        INFO(bytes);
        const auto read = read_strict(bytes);
        REQUIRE(read.ok());
        CHECK(write_strict(*read) == bytes);
    }
}

// Each of these is read by common parsers, some with another meaning; none may be hashed and signed.
TEST_CASE("what has a second way of being written is refused") {
    const std::string bytes = GENERATE(
        as<std::string>{}, R"({"a":1,"a":2})", R"({"b":1,"a":2})", R"({ "a":1})", R"({"a":1} )",
        "{\"a\":1}\n", R"({"a":1.0})", R"({"a":1.50})", R"({"a":1e2})", R"({"a":1E2})", R"({"a":1e-7})",
        R"({"a":-0})", R"({"a":-0.0})", R"({"a":01})", R"({"a":+1})", R"({"a":.5})", R"({"a":1.})",
        R"({"a":null})", R"({"a":NaN})", R"({"a":Infinity})", R"({"a":"\u0041"})", R"({"a":"\/"})",
        R"({"a":"\u000a"})", R"({"a":"\t"})", R"({"a":"\u0001"})", R"({"a":"\u007f"})",
        R"({"a":"\ud83c\udfe0"})", R"({"a":"\u00e9"})", R"({"a":18446744073709551616})",
        R"({"a":18446744073709551615})", R"({"a":9007199254740993})", R"({"a":1000000000000000})",
        R"({"a":1E400})", R"({"a":"x"} trailing)", R"({"A":1})", R"({"":1})", R"({"1a":1})", R"({"a-b":1})",
        R"({"_a":1})", R"({"a":{"b c":1}})", R"([{"Z":1}])", R"({"a":'x'})", R"({"a":1,})", R"([1,])", R"()",
        R"({"a":"\ud800"})", R"({"a":"\udc00"})");
    INFO(bytes);
    CHECK_FALSE(is_taken(bytes));
}

TEST_CASE("bytes that are no text are refused") {
    CHECK_FALSE(is_taken("\xEF\xBB\xBF{}"));
    CHECK_FALSE(is_taken("{\"a\":\"\xFF\"}"));
    CHECK_FALSE(is_taken("{\"a\":\"\xC0\xAF\"}"));     // an overlong slash
    CHECK_FALSE(is_taken("{\"a\":\"\xED\xA0\x80\"}")); // a surrogate written as UTF-8
    CHECK_FALSE(is_taken("{\"a\":\"\xE2\x82\"}"));     // cut off
    CHECK_FALSE(is_taken("{\"a\":\"\x7F\"}"));
    CHECK_FALSE(is_taken("{\"a\":\"\t\"}"));
    CHECK_FALSE(is_taken(std::string_view("{\"a\":\"\0\"}", 9)));
}

TEST_CASE("depth eight is taken and depth nine, or a hundred thousand, is refused") {
    CHECK(is_taken(nested(7)));
    CHECK(is_taken(nested(8)));
    CHECK(read_strict(nested(9)).fault().code == Code::json_too_large);
    CHECK(read_strict(nested(30'000)).fault().code == Code::json_too_large);
    CHECK(read_strict(std::string(100'000, '[')).fault().code == Code::json_too_large);
}

TEST_CASE("two hundred and fifty-six members are taken and one more is refused") {
    CHECK(is_taken(list_of(255)));
    CHECK(is_taken(list_of(256)));
    CHECK(read_strict(list_of(257)).fault().code == Code::json_too_large);
}

TEST_CASE("sixty-four kibibytes are taken and one more byte is refused") {
    const std::size_t frame = std::string_view(R"({"a":""})").size();
    const auto sized = [&](std::size_t bytes) {
        return "{\"a\":\"" + std::string(bytes - frame, 'x') + "\"}";
    };
    CHECK(is_taken(sized(65'535)));
    CHECK(is_taken(sized(65'536)));
    CHECK(read_strict(sized(65'537)).fault().code == Code::json_too_large);
}

TEST_CASE("a member name may have thirty-two characters and not one more") {
    CHECK(is_taken("{\"" + std::string(32, 'k') + "\":1}"));
    CHECK_FALSE(is_taken("{\"" + std::string(33, 'k') + "\":1}"));
}

// Another parser says of the same bytes what they mean: an outside opinion on everything that is taken.
TEST_CASE("whatever is taken is written again byte for byte and means the same to another parser") {
    const auto seed = std::random_device{}();
    INFO("seed " << seed);
    std::mt19937 chance(seed);
    constexpr std::string_view kPieces = "{}[]\",:01.-eE \\ntu/abAZ\xC3\xA9\x7F\n";
    int taken = 0;
    for (int i = 0; i < 30'000; ++i) {
        std::string bytes = kGood[chance() % kGood.size()];
        for (auto changes = chance() % 3; changes > 0; --changes) {
            const auto at = chance() % bytes.size();
            if (chance() % 3 == 0)
                bytes.erase(at, 1);
            else if (chance() % 2 == 0)
                bytes[at] = kPieces[chance() % kPieces.size()];
            else
                bytes.insert(at, 1, kPieces[chance() % kPieces.size()]);
            if (bytes.empty()) bytes = "{";
        }
        const auto read = read_strict(bytes);
        if (!read.ok()) continue;
        ++taken;
        INFO(bytes);
        REQUIRE(write_strict(*read) == bytes);
        const auto outside = nlohmann::json::parse(bytes, nullptr, false);
        REQUIRE_FALSE(outside.is_discarded());
        if (bytes.find('.') == std::string::npos) REQUIRE(outside.dump() == bytes);
    }
    CHECK(taken > 1000);
}
