#include "tests/cli/program.h"

#include <fstream>
#include <set>
#include <sstream>

using namespace undersheet;

namespace {

// The commands, as the overview of the program lists them: two blanks, the name, and what it does from column 27 on.
std::set<std::string> commands() {
    std::set<std::string> names;
    std::istringstream lines(Program().run("--help").out);
    for (std::string line; std::getline(lines, line);) {
        if (line.size() < 28 || !line.starts_with("  ") || line[2] == ' ' || line[26] != ' ' ||
            line[27] == ' ')
            continue;
        if (line.starts_with("  undersheet")) continue;
        const std::string cell = line.substr(2, 24);
        names.insert(cell.substr(0, cell.find_last_not_of(' ') + 1));
    }
    return names;
}

std::size_t longest_line(const std::string& text) {
    std::size_t longest = 0, now = 0;
    for (const char c : text) {
        if (c == '\n')
            now = 0;
        else if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U)
            longest = std::max(longest, ++now);
    }
    return longest;
}

} // namespace

TEST_CASE("the overview lists every command of the issue") {
    const auto known = commands();
    for (const char* name :
         {"start",    "people", "people add", "jobs",    "jobs new", "record",    "kinds",     "correct",
          "withdraw", "photo",  "findings",   "why",     "stages",   "tick",      "begin",     "pause",
          "resume",   "sign",   "send-back",  "confirm", "reopen",   "leave-out", "take-back", "decide",
          "reason",   "told",   "punch",      "paper",   "history",  "verify",    "reckon"}) {
        INFO(name);
        CHECK(known.contains(name));
    }
}

TEST_CASE("every command explains itself with an example of itself") {
    const Program program;
    for (const auto& name : commands()) {
        const Ran ran = program.run(name + " --help");
        INFO(name << ": " << ran.out << ran.err);
        CHECK(ran.code == 0);
        CHECK(ran.err.empty());
        CHECK(ran.shows("For example:\n  undersheet " + name));
    }
}

TEST_CASE("help fits a screen of 80 columns, but for the examples") {
    const Program program;
    for (const auto& name : commands()) {
        const std::string out = program.run(name + " --help").out;
        const auto example = out.find("For example:");
        REQUIRE(example != std::string::npos);
        INFO(name);
        CHECK(longest_line(out.substr(0, example)) <= 80);
    }
}

TEST_CASE("every kind that can be recorded explains its fields") {
    const Program program;
    for (const char* kind :
         {"site",   "day",     "structure", "board", "heads",  "joint",   "moisture", "level", "tape",
          "edge",   "section", "abutment",  "chase", "gutter", "opening", "patch",    "alter", "sheet",
          "crease", "tin",     "use",       "air",   "look",   "decide",  "begin",    "sign"}) {
        const Ran ran = program.run(std::string("kinds ") + kind);
        INFO(kind << ran.err);
        CHECK(ran.code == 0);
        CHECK(ran.shows(kind));
    }
}

TEST_CASE("the manual page in the docs is the one the program writes") {
    const std::string kept = bytes_of_file(std::string(UNDERSHEET_SOURCE_DIR) + "/docs/undersheet.1");
    REQUIRE_FALSE(kept.empty());
    CHECK(Program().run("completion man").out == kept);
}

TEST_CASE("the completions are scripts their shells can read") {
    const Program program;
    CHECK(program.pipe("$U completion bash >done.bash && bash -n done.bash").code == 0);
    for (const std::string shell : {"zsh", "fish"}) {
        const Ran ran = program.run("completion " + shell);
        CHECK(ran.code == 0);
        CHECK(ran.shows("undersheet"));
        CHECK(ran.shows("send-back"));
        CHECK(ran.shows("moisture"));
    }
}

TEST_CASE("bash finishes a command and a kind from its first letters") {
    const Program program;
    const std::string ask =
        "$U completion bash >done.bash && bash -c '. ./done.bash; complete -p undersheet'";
    const Ran ran = program.pipe(ask);
    CHECK(ran.code == 0);
    CHECK(ran.shows("undersheet"));
}

TEST_CASE("the version is told, and no command at all is an error that says what to do") {
    const Program program;
    CHECK(program.run("--version").shows("undersheet "));
    const Ran ran = program.run("");
    CHECK(ran.code == 2);
    CHECK(ran.message_lines() == 1);
    CHECK(ran.says("undersheet --help"));
}
