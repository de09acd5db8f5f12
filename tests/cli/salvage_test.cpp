// salvage, typed: a damaged book, a name that is taken, a file that is none.
#include "tests/cli/program.h"

#include <nlohmann/json.hpp>

using namespace undersheet;

namespace {

constexpr std::size_t kPageBytes = 4096;

void damage(const Program& program, const std::string& holds) {
    std::string bytes = program.book();
    const auto at = bytes.find(holds);
    REQUIRE(at != std::string::npos);
    write_file(program.file("damaged.book"),
               bytes.replace(at / kPageBytes * kPageBytes, kPageBytes, std::string(kPageBytes, '\0')));
}

} // namespace

TEST_CASE("a damaged book is refused in one line, and salvage says what came back and what is missing") {
    Program program;
    program.start();
    program.survey();
    damage(program, "\"kind\":\"kerb\"");
    const Ran broken = program.run("history --book damaged.book");
    CHECK(broken.code == 3);
    CHECK(broken.message_lines() == 1);
    CHECK(broken.says("salvage"));
    CHECK(program.run("verify --book damaged.book").code == 1);

    const Ran salvaged = program.run("salvage damaged.book -o new.book");
    CHECK(salvaged.code == 0);
    CHECK(salvaged.err.empty());
    CHECK(salvaged.shows("missing: job A-07: entr"));
    CHECK(salvaged.shows("next: undersheet take FILE --book new.book"));
    CHECK(program.run("history --book new.book").code == 0);

    REQUIRE(program.run("hand --all -o all.hand").code == 0);
    REQUIRE(program.run("take all.hand --book new.book").code == 0);
    CHECK(program.run("verify --book new.book").code == 0);
}

TEST_CASE("a whole book is salvaged without a word of missing, also for scripts") {
    Program program;
    program.start();
    const Ran said = program.run("salvage roofs.book -o new.book");
    CHECK(said.code == 0);
    CHECK(said.shows("Nothing is known to be missing."));
    const Ran scripts = program.run("salvage roofs.book -o newer.book --json");
    const auto json = nlohmann::json::parse(scripts.out);
    CHECK(json["whole"] == true);
    CHECK(json["gaps"].empty());
    CHECK(json["devices"][0]["entries"] == json["entries"]);
}

TEST_CASE("salvage refuses a name that is taken, and a file with nothing in it that holds, in one line") {
    Program program;
    program.start();
    const std::string before = program.book();
    const Ran taken = program.run("salvage roofs.book -o roofs.book");
    CHECK(taken.code == 3);
    CHECK(taken.says("a file of that name already"));
    write_file(program.file("picture"), std::string(9000, 'x'));
    const Ran none = program.run("salvage picture -o new.book");
    CHECK(none.code == 3);
    CHECK(none.says("no entry that holds"));
    CHECK(none.says("go back to a copy"));
    CHECK(none.message_lines() == 1);
    CHECK(program.run("salvage missing -o new.book").code == 3);
    CHECK(program.run("salvage roofs.book").code == 2);
    CHECK(program.run("salvage roofs.book -o new.book --with picture").says("no hand-over file"));
    CHECK(bytes_of_file(program.file("new.book")).empty());
    CHECK(program.book() == before);
}
