// reckon from outside: the two ways in, the one way out, and its exit codes.
#include "tests/cli/program.h"

#include <array>
#include <nlohmann/json.hpp>

using namespace undersheet;
using nlohmann::json;

namespace {

constexpr const char* kAir = R"({"air_c": 15, "rh_pct": 65, "surface_c": 11.5})";

} // namespace

TEST_CASE("reckon answers in JSON from a file, from - and from nothing named, and needs no book") {
    const Program program;
    write_file(program.file("air.json"), kAir);
    const Ran from_file = program.run("reckon air air.json");
    CHECK(from_file.code == 0);
    CHECK(from_file.err.empty());
    REQUIRE(json::accept(from_file.out));
    CHECK(json::parse(from_file.out)["margin_k"].get<double>() == Approx(3.03).margin(0.001)); // Python
    CHECK(program.run("reckon air -", "cat air.json |").out == from_file.out);
    CHECK(program.run("reckon air", "cat air.json |").out == from_file.out);
    CHECK(program.pipe("ls *.book 2>/dev/null || true").out.empty());
}

TEST_CASE("reckon lists its topics and prints the schema of each") {
    const Program program;
    const Ran list = program.run("reckon --list");
    CHECK(list.code == 0);
    const Ran rows = program.run("reckon --list --json");
    REQUIRE(json::accept(rows.out));
    const json topics = json::parse(rows.out);
    CHECK(topics.size() >= 16);
    for (const auto& row : topics) {
        const auto topic = row["topic"].get<std::string>();
        CHECK(("\n" + list.out).find("\n" + topic + " ") != std::string::npos);
        const Ran schema = program.run("reckon " + topic + " --schema");
        INFO(topic << schema.err);
        CHECK(schema.code == 0);
        REQUIRE(json::accept(schema.out));
        for (const char* part : {"input", "output"})
            CHECK(json::parse(schema.out)[part]["$schema"] == "https://json-schema.org/draft/2020-12/schema");
    }
}

TEST_CASE("reckon refuses in one line with exit code 2, and prints nothing") {
    const Program program;
    for (const auto& [words, in, says] : std::vector<std::array<std::string, 3>>{
             {"reckon", "", "needs a topic"},
             {"reckon plumbing", "{}", "there is no topic 'plumbing'"},
             {"reckon plumbing --schema", "", "there is no topic 'plumbing'"},
             {"reckon air nowhere.json", "", "nowhere.json"},
             {"reckon air", "", "ends too early"},
             {"reckon air", R"({"air_c": 15})", "'rh_pct'"},
             {"reckon air", R"({"air_c": 15, "rh_pct": 101})", "rh_pct is 101"},
             {"reckon air", R"({"air_c": NaN, "rh_pct": 65})", "air_c: NaN"},
             {"reckon air", R"({"air_c": "15", "rh_pct": 65})", "air_c is of type string"},
             {"reckon heads", R"({"total": 5, "checked": 6, "proud": 0})", "checked"}}) {
        const Ran ran = program.run(words, "printf '%s' '" + in + "' |");
        INFO(words << " " << in << ": " << ran.err);
        CHECK(ran.code == 2);
        CHECK(ran.out.empty());
        CHECK(ran.message_lines() == 1);
        CHECK(ran.says(says));
    }
}
