#include "tests/rooms/house_rules.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <random>
#include <string>
#include <utility>
#include <vector>

using namespace undersheet;
namespace fs = std::filesystem;

namespace {

// A small source tree of its own, gone at the end.
class Tree {
public:
    Tree()
        : top_(fs::temp_directory_path() / ("undersheet_rooms_" + std::to_string(std::random_device()()))) {
        fs::create_directories(top_);
    }
    Tree(const Tree&) = delete;
    Tree& operator=(const Tree&) = delete;
    ~Tree() { fs::remove_all(top_); }

    void plant(const std::string& path, const std::string& text) const {
        fs::create_directories((top_ / path).parent_path());
        std::ofstream(top_ / path) << text;
    }
    [[nodiscard]] std::vector<std::string> offences() const {
        std::vector<std::string> lines;
        for (const auto& offence : house::offences_in(top_)) lines.push_back(house::text_of(offence));
        return lines;
    }

private:
    fs::path top_;
};

std::vector<std::string> offences_of(const std::string& path, const std::string& text) {
    const Tree tree;
    tree.plant(path, text);
    return tree.offences();
}

using Lines = std::vector<std::string>;

std::string many_lines(int count) {
    std::string text;
    for (int line = 0; line < count; ++line) text += "int x;\n";
    return text;
}

} // namespace

TEST_CASE("this house is in order") {
    const auto offences = house::offences_in(UNDERSHEET_SOURCE_DIR);
    for (const auto& offence : offences) FAIL_CHECK(house::text_of(offence));
    CHECK(offences.empty());
}

TEST_CASE("a room that includes a higher room is named with both ranks") {
    CHECK(offences_of("lib/trade/air.h", "#pragma once\n\n#include \"job/job.h\"\n") ==
          Lines{"lib/trade/air.h:3: trade [1] may not include job [3] (job/job.h)"});
}

TEST_CASE("a room may not include its neighbour of the same rank") {
    CHECK(offences_of("lib/entry/entry.cpp", "#include \"trade/air.h\"\n") ==
          Lines{"lib/entry/entry.cpp:1: entry [1] may not include trade [1] (trade/air.h)"});
    CHECK(offences_of("lib/job/job.cpp", "#include \"book/journal.h\"\n").size() == 1);
}

TEST_CASE("a room may include itself and any lower room") {
    const std::vector<std::pair<std::string, std::string>> allowed = {
        {"lib/trade/air.cpp", "trade/air.h"},          {"lib/trade/air.cpp", "base/result.h"},
        {"lib/method/kinds.cpp", "entry/json.h"},      {"lib/job/fold.cpp", "trade/air.h"},
        {"lib/book/journal.cpp", "method/kinds.h"},    {"lib/paper/html.cpp", "job/job.h"},
        {"lib/desk/desk.cpp", "book/journal.h"},       {"lib/capi/undersheet.cpp", "desk/desk.h"},
        {"lib/method/kinds.cpp", "schema/embedded.h"},
    };
    for (const auto& [from, to] : allowed) {
        INFO(from << " includes " << to);
        CHECK(offences_of(from, "#include \"" + to + "\"\n") == Lines{});
    }
}

TEST_CASE("an include without a room is refused") {
    CHECK(offences_of("lib/trade/air.cpp", "#include \"air.h\"\n") ==
          Lines{"lib/trade/air.cpp:1: \"air.h\" names no room"});
}

TEST_CASE("the command line sees only the desk and the base") {
    CHECK(offences_of("cli/main.cpp", "#include \"desk/desk.h\"\n#include \"base/result.h\"\n") == Lines{});
    CHECK(offences_of("cli/main.cpp", "#include \"job/job.h\"\n") ==
          Lines{"cli/main.cpp:1: cli may not include job [3] (job/job.h)"});
}

TEST_CASE("a header that users of the library see reaches only the desk and the base") {
    CHECK(offences_of("lib/desk/desk.h", "#include \"base/result.h\"\n") == Lines{});
    CHECK(offences_of("lib/desk/desk.h", "#include \"job/job.h\"\n") ==
          Lines{"lib/desk/desk.h:1: desk [5] may not include job [3] (job/job.h): "
                "installed headers reach this one, and not job"});
    CHECK(offences_of("lib/capi/undersheet.h", "#include \"job/job.h\"\n").size() == 1);
}

TEST_CASE("a header of the desk's own may include lower rooms, until somebody sees it") {
    const Tree tree;
    tree.plant("lib/desk/session.h", "#include \"job/job.h\"\n");
    CHECK(tree.offences() == Lines{});
    tree.plant("lib/desk/answers.h", "#include \"desk/session.h\"\n");
    tree.plant("lib/desk/desk.h", "#include \"desk/answers.h\"\n");
    CHECK(tree.offences().size() == 1);
}

TEST_CASE("a header of the desk's own is not for the command line") {
    const Tree tree;
    tree.plant("lib/desk/session.h", "#include \"job/job.h\"\n");
    tree.plant("cli/main.cpp", "#include \"desk/session.h\"\n");
    CHECK(tree.offences().size() == 1);
}

TEST_CASE("JSON stands in no header, and in the trade not at all") {
    CHECK(offences_of("lib/entry/json.h", "#include <nlohmann/json.hpp>\n") ==
          Lines{"lib/entry/json.h:1: <nlohmann/json.hpp> may not stand in a header"});
    CHECK(offences_of("lib/entry/json.cpp", "#include <nlohmann/json.hpp>\n") == Lines{});
    CHECK(offences_of("lib/trade/air.cpp", "#include <nlohmann/json.hpp>\n").size() == 1);
}

TEST_CASE("SQLite is for the book alone, its headers and its language") {
    CHECK(offences_of("lib/book/journal.h", "#include <SQLiteCpp/SQLiteCpp.h>\n") == Lines{});
    CHECK(offences_of("lib/book/journal.cpp", "db.exec(\"SELECT 1\");\n") == Lines{});
    CHECK(offences_of("lib/desk/desk.cpp", "#include <sqlite3.h>\n").size() == 1);
    CHECK(offences_of("lib/desk/desk.cpp", "const auto q = \"SELECT body FROM entry\";\n") ==
          Lines{"lib/desk/desk.cpp:1: SQL belongs in lib/book"});
    CHECK(offences_of("cli/main.cpp", "run(R\"(delete from entry)\");\n").size() == 1);
}

TEST_CASE("a comment may speak of SQL and clocks") {
    CHECK(offences_of("lib/job/job.h", "// No \"select this\", no system_clock.\n") == Lines{});
}

TEST_CASE("the arithmetic and the judgement know no clock and no file") {
    CHECK(offences_of("lib/trade/air.cpp", "auto t = std::chrono::system_clock::now();\n").size() == 1);
    CHECK(offences_of("lib/job/fold.cpp", "auto t = std::chrono::steady_clock::now();\n").size() == 1);
    CHECK(offences_of("lib/trade/air.cpp", "#include <fstream>\n").size() == 1);
    CHECK(offences_of("lib/desk/desk.cpp", "auto t = std::chrono::system_clock::now();\n") == Lines{});
}

TEST_CASE("a file may reach its length and not pass it") {
    CHECK(offences_of("lib/trade/air.h", many_lines(300)) == Lines{});
    CHECK(offences_of("lib/trade/air.h", many_lines(301)) ==
          Lines{"lib/trade/air.h: 301 lines, at most 300"});
    CHECK(offences_of("lib/trade/air.cpp", many_lines(500)) == Lines{});
    CHECK(offences_of("lib/trade/air.cpp", many_lines(501)).size() == 1);
    CHECK(offences_of("tests/trade/air_test.cpp", many_lines(300)) == Lines{});
    CHECK(offences_of("tests/trade/air_test.cpp", many_lines(301)).size() == 1);
}

TEST_CASE("nothing new lies about at the top level") {
    CHECK(offences_of("notes.md", "") == Lines{"notes.md: the top level is fixed, and this is not on it"});
    CHECK(offences_of(".clang-format", "") == Lines{});
    CHECK(offences_of("README.md", "") == Lines{});
}
