// Everything that prints has --json, it is JSON, and the keys that scripts rely on are there.
#include "tests/cli/program.h"

#include <nlohmann/json.hpp>

using namespace undersheet;
using nlohmann::json;

namespace {

struct Asked {
    std::string words;
    std::vector<std::string> keys; // of the object, or of each row
};

Program& busy() {
    static Program program;
    static const bool ready = [] {
        program.start();
        program.survey();
        REQUIRE(program.run("record chase height_mm=130 --at CD+0.10 --by IP").code == 0);
        REQUIRE(program.run("punch add scuff --at BC --severity note --by WP").code == 0);
        return true;
    }();
    REQUIRE(ready);
    return program;
}

json read(const Ran& ran) {
    INFO(ran.out << ran.err);
    REQUIRE(json::accept(ran.out));
    return json::parse(ran.out);
}

void check_has(const json& row, const std::vector<std::string>& keys) {
    for (const auto& key : keys) {
        INFO(row.dump() << " needs " << key);
        CHECK(row.contains(key));
    }
}

} // namespace

TEST_CASE("every list for scripts has rows with the keys they rely on") {
    for (const Asked& asked : std::vector<Asked>{
             {"stages", {"part", "state", "may", "steps", "held_by"}},
             {"findings",
              {"id", "rule", "severity", "place", "value", "limit", "source", "clears", "near", "entries"}},
             {"punch", {"job"}},
             {"jobs", {"ref"}},
             {"people", {"name", "initials", "role"}},
             {"history", {"entry", "kind", "when", "job"}},
             {"kinds", {"name", "fields"}},
             {"kinds air", {"name", "fields"}},
             {"reckon --list", {"topic", "says"}},
         }) {
        INFO(asked.words);
        const Ran ran = busy().run(asked.words + " --json");
        CHECK(ran.code == 0);
        const json rows = read(ran);
        REQUIRE(rows.is_array());
        REQUIRE_FALSE(rows.empty());
        for (const auto& row : rows) check_has(row, asked.keys);
    }
}

TEST_CASE("what holds a part says why and what clears it") {
    std::size_t held = 0;
    for (const auto& row : read(busy().run("stages --json"))) {
        for (const auto& line : row["held_by"]) {
            check_has(line, {"why", "clears"});
            ++held;
        }
    }
    CHECK(held > 0);
}

TEST_CASE("severities are the three words scripts know") {
    for (const auto& row : read(busy().run("findings --json"))) {
        const auto severity = row["severity"].get<std::string>();
        CHECK((severity == "note" || severity == "put_right" || severity == "stop"));
    }
}

TEST_CASE("one answer for scripts is an object with its keys") {
    check_has(read(busy().run("verify --json")), {"ok", "entries", "digest", "witnessed", "faults"});
    check_has(read(busy().run("why field/1 --json")), {"job"});
    check_has(read(busy().run("record tape m=3.2 --at AB --by IP --json")),
              {"job", "entry", "kind", "when", "by", "place"});
    const Ran held = busy().run("begin field/1 --by IP --json");
    CHECK(held.code == 1);
    check_has(read(held), {"job", "part", "held_by"});
}

TEST_CASE("a paper can be had as JSON") {
    REQUIRE(busy().run("paper inspection -o paper.json").code == 0);
    const json paper = read(busy().pipe("cat paper.json"));
    CHECK(paper.is_object());
    CHECK_FALSE(paper.empty());
}

TEST_CASE("lines fed at once answer for scripts, kept or not") {
    write_file(busy().file("bad"), "not json\n");
    const Ran bad = busy().run("record --from bad --by IP --json");
    CHECK(bad.code == 2);
    const json said = read(bad);
    check_has(said, {"job", "kept", "bad"});
    CHECK(said["kept"] == 0);
    CHECK(said["bad"][0]["line"] == 1);
}

TEST_CASE("the commands that make a book, a person or a job, or change the firm, answer for scripts") {
    Program program;
    check_has(read(program.run("start roofs.book --firm Pell --json")), {"book", "firm", "device"});
    check_has(read(program.run("people add 'Isolde Pell' --role installer --json"))[0], {"name", "initials"});
    check_has(read(program.run("jobs new A-07 --roof dormer --by IP --json"))[0], {"ref"});
    check_has(read(program.run("firm --json")), {"name"});
    check_has(read(program.run("firm change --phone '01632 960 119' --by IP --json")), {"name", "phone"});
}
