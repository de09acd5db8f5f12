#include "entry/entry.h"

#include "entry/json.h"
#include "tests/support/device.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::entry;

namespace {

Value good_body() {
    Device device(1);
    device.write(air_draft());
    Draft second = air_draft();
    second.place = "AB+1.20";
    second.part = "field/2";
    second.raw.set("air_c", "13,0");
    return *read_strict(device.write(second).body);
}

// What reading says of the good body with one member changed ("" when it is taken).
std::string said_of(std::string_view member, const Value& value) {
    Value body = good_body();
    body.set(member, value);
    const auto read = read_entry(write_strict(body), {});
    return read.ok() ? "" : one_line(read.fault());
}

} // namespace

TEST_CASE("a body reads into its members and keeps its bytes") {
    const std::string bytes = write_strict(good_body());
    Signature signature{};
    signature[5] = 7;
    const auto read = read_entry(bytes, signature);
    REQUIRE(read.ok());
    CHECK(read->body == bytes);
    CHECK(read->hash == sha256(bytes));
    CHECK(read->signature == signature);
    CHECK(read->kind == "air");
    CHECK(read->job == kJob);
    CHECK(read->seq == 2);
    CHECK(read->lam == 2);
    CHECK(place_text(read->place) == "AB+1.20");
    CHECK(read->part == "field/2");
    CHECK(read->when.text == "2026-06-11T08:05:00+01:00");
    CHECK(read->raw.text_of("air_c") == "13,0");
    CHECK(read->data.number_of("air_c", 0) == 13);
    CHECK_FALSE(read->simulated);
    CHECK(read->prev.has_value());
}

TEST_CASE("a member that is not in its written form is named") {
    struct Row {
        const char* member;
        Value value;
    };
    const std::vector<Row> rows = {
        {"author", "Mary"},
        {"author", "p12"},
        {"boot", "0"},
        {"clock", "2026-06-11T08:05:00"},
        {"clock", "2026-06-11T08:05Z"},
        {"data", List{}},
        {"dctr", 0},
        {"dctr", "2"},
        {"dctr", Value(*Decimal::parse("2.5"))},
        {"dev", "ABCDEF"},
        {"dprev", "00"},
        {"id", "1"},
        {"job", "back roof"},
        {"kind", "Air"},
        {"kind", ""},
        {"lam", -1},
        {"mono_millis", -1},
        {"part", ""},
        {"part", "field 2"},
        {"place", ""},
        {"place", "AB+1.2"},
        {"place", "AA"},
        {"prev", true},
        {"raw", Value()},
        {"raw", Value().set("air_c", 13)},
        {"seen", List{}},
        {"seen", List{"00"}},
        {"seq", 0},
        {"simulated", false},
        {"simulated", "yes"},
        {"supplement", ""},
        {"supplement", std::string(63, 'a')},
        {"when", "today"},
    };
    for (const auto& row : rows) {
        INFO(row.member << " = " << write_strict(row.value));
        CHECK(said_of(row.member, row.value) ==
              "entry: '" + std::string(row.member) + "' is not in its written form");
    }
}

TEST_CASE("no member is taken that is of another type than its own") {
    const std::vector<std::string> members = {"akey", "asig",        "author",    "boot",  "clock", "data",
                                              "dctr", "dev",         "dprev",     "id",    "job",   "kind",
                                              "lam",  "mono_millis", "part",      "place", "prev",  "raw",
                                              "seen", "seq",         "simulated", "v",     "when"};
    const std::vector<Value> values = {
        Value(*Decimal::parse("1.5")), Value(false), List{}, List{Value(1)}, Value().set("x", 1), ""};
    for (const auto& member : members) {
        for (const auto& value : values) {
            const bool fits = (member == "data" && value.map() != nullptr) ||
                              (member == "author" && value.text() != nullptr);
            INFO(member << " = " << write_strict(value));
            CHECK((said_of(member, value) == "entry: '" + member + "' is not in its written form") != fits);
        }
    }
}

TEST_CASE("a kind is a short name in small letters, a part may hold capitals, figures and four marks") {
    for (const char* kind : {"air", "air2", "a_b-c"}) CHECK(said_of("kind", kind).empty());
    for (const char* kind : {"2air", "{air", "air{", "air:", "air/", "aIr"})
        CHECK_FALSE(said_of("kind", kind).empty());
    CHECK(said_of("kind", std::string(32, 'a')).empty());
    CHECK_FALSE(said_of("kind", std::string(33, 'a')).empty());
    for (const char* part : {"field/2", "patches/R1-1", "a_B.9", "Z/z"}) CHECK(said_of("part", part).empty());
    for (const char* part : {"a{", "a[", "a:", "a!"}) CHECK_FALSE(said_of("part", part).empty());
    CHECK(said_of("part", std::string(64, 'a')).empty());
    CHECK_FALSE(said_of("part", std::string(65, 'a')).empty());
}

TEST_CASE("every sort of value has words to be shown by") {
    Entry entry;
    entry.data.set("text", "soft").set("number", 3).set("yes", true).set("no", false);
    entry.data.set("list", List{"AB", "BC"}).set("map", Value().set("x", 1));
    CHECK(entry.field_text("text") == "soft");
    CHECK(entry.field_text("number") == "3");
    CHECK(entry.field_text("yes") == "yes");
    CHECK(entry.field_text("no") == "no");
    CHECK(entry.field_text("list") == "AB, BC");
    CHECK(entry.field_text("map") == R"({"x":1})");
    CHECK(entry.field_text("none").empty());
}

TEST_CASE("an entry in a newer written form is said to be newer, not broken") {
    CHECK(said_of("v", "undersheet.entry.2") ==
          "entry: its written form 'undersheet.entry.2' is newer than this program");
    CHECK(said_of("v", "other") == "entry: 'v' is not in its written form");
}

TEST_CASE("a member that is unknown or missing is refused") {
    CHECK(said_of("colour", "black") == "entry: there is a member that this form does not have");
    Value body = good_body();
    body.erase("job");
    const auto read = read_entry(write_strict(body), {});
    REQUIRE_FALSE(read.ok());
    CHECK(one_line(read.fault()) == "entry: 'job' is missing");
    CHECK_FALSE(read_entry("[]", {}).ok());
    CHECK_FALSE(read_entry("{}", {}).ok());
    CHECK_FALSE(read_entry("", {}).ok());
}

TEST_CASE("members that contradict each other are refused") {
    CHECK(said_of("seq", 1) == "entry: 'prev' and 'seq' do not fit together");
    CHECK(said_of("dctr", 1) == "entry: 'dprev' and 'dctr' do not fit together");
    CHECK(said_of("seq", 3) == "entry: 'dctr' is smaller than 'seq'");
    CHECK(said_of("dprev", hash_text(sha256("x"))) == "entry: 'prev' and 'dprev' do not fit together");
    CHECK(said_of("lam", 1) == "entry: 'lam' does not fit to what was known");
    CHECK(said_of("raw", Value().set("rain", "x")) == "entry: 'raw' names a field that 'data' does not have");
    CHECK(said_of("dctr", 3).empty()); // written in another job in between
}

TEST_CASE("heads that were seen stand in ascending order, none twice") {
    const std::string low = std::string(63, '0') + "1";
    const std::string high = std::string(64, 'f');
    CHECK(said_of("seen", List{low, high}).empty());
    CHECK_FALSE(said_of("seen", List{high, low}).empty());
    CHECK_FALSE(said_of("seen", List{low, low}).empty());
}

TEST_CASE("a body that is not in the strict form is refused even if every member is right") {
    const std::string bytes = write_strict(good_body());
    CHECK_FALSE(read_entry(" " + bytes, {}).ok());
    CHECK_FALSE(read_entry(bytes + "\n", {}).ok());
    CHECK_FALSE(read_entry(write_pretty(good_body()), {}).ok());
}

TEST_CASE("a field is read as text whatever it holds") {
    Entry entry;
    entry.data.set("words", "dry").set("number", Value(*Decimal::parse("12.5"))).set("yes", true);
    entry.data.set("edges", List{"AB", "BC"}).set("name", Value().set("cid", std::string(64, 'a')));
    entry.data.set("gone", Value().set("cid", std::string(64, 'b')));
    entry.personal["name"] = "Jo Example";
    CHECK(entry.field_text("words") == "dry");
    CHECK(entry.field_text("number") == "12.5");
    CHECK(entry.field_text("yes") == "yes");
    CHECK(entry.field_text("edges") == "AB, BC");
    CHECK(entry.field_text("name") == "Jo Example");
    CHECK(entry.field_text("gone") == "(erased)");
    CHECK(entry.field_text("missing").empty());
}

TEST_CASE("entries are ordered by lamport number, then device, then number, then hash") {
    Entry a;
    a.lam = 2;
    a.device = "b";
    a.seq = 5;
    Entry b = a;
    CHECK_FALSE(comes_before(a, b));
    b.hash[0] = 1;
    CHECK(comes_before(a, b));
    b.seq = 4;
    CHECK(comes_before(b, a));
    b.device = "c";
    CHECK(comes_before(a, b));
    b.lam = 1;
    CHECK(comes_before(b, a));
}

TEST_CASE("only an object with one whole hash called cid is a commitment") {
    CHECK(commitment_of(Value().set("cid", std::string(64, 'a'))).has_value());
    CHECK_FALSE(commitment_of(Value().set("cid", std::string(63, 'a'))).has_value());
    CHECK_FALSE(commitment_of(Value().set("cid", std::string(64, 'a')).set("x", 1)).has_value());
    CHECK_FALSE(commitment_of("cid").has_value());
    CHECK_FALSE(commitment_of(Value()).has_value());
}
