// The limits of the written form, each at, just under and just over it, and the table of what other parsers let pass. Sizes,
// depth, members and names stand in strict_test.cpp.
#include "entry/compose.h"
#include "entry/json.h"
#include "entry/names.h"
#include "tests/support/device.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::entry;

namespace {

Code code_of(std::string_view bytes) {
    const auto read = read_strict(bytes);
    REQUIRE_FALSE(read.ok());
    return read.fault().code;
}

Result<Composed> composed_with(const Draft& draft) {
    const Device device(3);
    FixedWorld world(3);
    return compose(draft, {}, world, *device.signer);
}

Draft with_personal(std::size_t bytes) {
    Draft draft = air_draft();
    draft.personal["customer"] = std::string(bytes, 'x');
    return draft;
}

} // namespace

// 15 digits are exact in every parser that reads numbers as doubles (IEEE 754: all whole numbers up to 2^53).
TEST_CASE("fifteen digits are taken, wherever the point stands, and sixteen are refused") {
    for (const char* good : {"[99999999999999]", "[999999999999999]", "[-999999999999999]",
                             "[0.00000000000001]", "[99999999999999.9]", "[0.999999999999999]"}) {
        INFO(good);
        const auto read = read_strict(good);
        REQUIRE(read.ok());
        CHECK(write_strict(*read) == good);
        CHECK(read->list()->front().number()->value() == std::stod(std::string(good).substr(1)));
    }
    for (const char* bad :
         {"[1000000000000000]", "[-1000000000000001]", "[999999999999999.1]", "[0.1234567890123456]"}) {
        INFO(bad);
        CHECK(code_of(bad) == Code::number_too_long);
    }
}

TEST_CASE("two to the power of fifty-three, and what lies beside it, has a digit too many") {
    for (const char* bad : {"[9007199254740990]", "[9007199254740991]", "[9007199254740992]",
                            "[9007199254740993]", "[-9007199254740991]", "[18446744073709551615]",
                            "[18446744073709551616]", "[-9223372036854775808]", "[9223372036854775807]"}) {
        INFO(bad);
        CHECK(code_of(bad) == Code::number_too_long);
    }
}

TEST_CASE("objects nested in objects are taken eight deep and refused nine deep") {
    const auto nested = [](int depth) {
        std::string text = "1";
        for (int i = 0; i < depth; ++i) text = "{\"a\":" + text + "}";
        return text;
    };
    CHECK(read_strict(nested(7)).ok());
    CHECK(read_strict(nested(8)).ok());
    CHECK(code_of(nested(9)) == Code::json_too_large);
}

TEST_CASE("two hundred and fifty-six members of an object are taken and one more is refused") {
    const auto members = [](int count) {
        std::string text = "{";
        for (int i = 0; i < count; ++i) text += (i == 0 ? "\"k" : ",\"k") + std::to_string(1000 + i) + "\":1";
        return text + "}";
    };
    CHECK(read_strict(members(255)).ok());
    CHECK(read_strict(members(256)).ok());
    CHECK(code_of(members(257)) == Code::json_too_large);
}

TEST_CASE("a gigabyte would be refused by its size alone, before it is parsed") {
    CHECK(code_of(std::string(1U << 20U, '{')) == Code::json_too_large);
    CHECK(read_json(std::string((16U << 20U) + 1, ' ')).fault().code == Code::json_too_large);
}

TEST_CASE("lone halves of a surrogate pair and overlong forms are refused") {
    for (const char* bad : {"[\"\\ud800\"]", "[\"\\udfff\"]", "[\"\\ud800\\ud800\"]", "[\"\xED\xBF\xBF\"]",
                            "[\"\xF4\x90\x80\x80\"]", "[\"\xE0\x80\xAF\"]", "[\"\xF8\x88\x80\x80\x80\"]"}) {
        INFO(bad);
        CHECK_FALSE(read_strict(bad).ok());
    }
    CHECK(read_strict("[\"\xF4\x8F\xBF\xBF\xEF\xBF\xBF\"]").ok()); // the last of the characters
}

TEST_CASE("a personal value of sixty-four kibibytes is kept and one more byte is refused") {
    CHECK(composed_with(with_personal(65'535)).ok());
    CHECK(composed_with(with_personal(65'536)).ok());
    const auto refused = composed_with(with_personal(65'537));
    REQUIRE_FALSE(refused.ok());
    CHECK(one_line(refused.fault()) == "customer: this is longer than 64 KiB");
}

TEST_CASE("a body is written up to sixty-four kibibytes and refused above, with nothing signed") {
    const auto with_note = [](std::size_t bytes) {
        Draft draft = air_draft();
        draft.id = "01970000-0000-7000-8000-000000000001";
        draft.data.set("note", std::string(bytes, 'x'));
        return draft;
    };
    const auto small = composed_with(with_note(1));
    REQUIRE(small.ok());
    const std::size_t most = 65'536 - small->entry.body.size() + 1;
    CHECK(composed_with(with_note(most - 1))->entry.body.size() == 65'535);
    CHECK(composed_with(with_note(most))->entry.body.size() == 65'536);
    CHECK(composed_with(with_note(most + 1)).fault().code == Code::json_too_large);
}

TEST_CASE("the part and the kind of an entry are taken at their length and refused above it") {
    const auto refusal = [](const std::string& part, const std::string& kind) {
        Draft draft = air_draft();
        draft.part = part;
        draft.kind = kind;
        const auto made = composed_with(draft);
        return made.ok() ? std::string() : made.fault().detail;
    };
    CHECK(refusal(std::string(63, 'a'), "air").empty());
    CHECK(refusal(std::string(64, 'a'), "air").empty());
    CHECK(refusal(std::string(65, 'a'), "air") == "'part' is not in its written form");
    CHECK(refusal("deck", std::string(31, 'a')).empty());
    CHECK(refusal("deck", std::string(32, 'a')).empty());
    CHECK(refusal("deck", std::string(33, 'a')) == "'kind' is not in its written form");
}
