#include "tests/cli/program.h"

using namespace undersheet;

namespace {

std::string line(const std::string& kind, const std::string& place, const std::string& data,
                 const std::string& when = "2026-06-11T08:35:00+01:00") {
    return R"({"kind":")" + kind + R"(","place":")" + place + R"(","by":"IP","when":")" + when +
           R"(","data":)" + data + "}\n";
}

Ran fed(const Program& program, const std::string& lines) {
    write_file(program.file("lines"), lines);
    return program.run("record --from - <" + program.file("lines"));
}

} // namespace

TEST_CASE("good lines from stdin or a file are all kept") {
    Program program;
    program.start();
    const std::string lines = line("tape", "AB", R"({"m":3.2})") + line("tape", "BC", R"({"m":"2,1"})");
    const Ran ran = fed(program, lines);
    CHECK(ran.code == 0);
    CHECK(ran.shows("A-07: 2 entries kept"));
    CHECK(program.run("record --from lines").code == 0);
    const Ran history = program.run("history");
    CHECK(history.shows("at BC"));
}

TEST_CASE("each bad line is named by number, field and reason, and nothing is written") {
    Program program;
    program.start();
    const std::string before = program.book();
    const Ran ran = fed(program, line("tape", "AB", R"({"m":3.2})") + line("tape", "AB", R"({"m":-3})") +
                                     line("tape", "AB", R"({"mm":3})") +
                                     line("tape", "AB", R"({"m":3})", "2026-06-11T08:35:00") + "not json\n" +
                                     line("tap", "AB", R"({"m":3})"));
    INFO(ran.err);
    CHECK(ran.code == 2);
    CHECK(ran.out.empty());
    CHECK(ran.message_lines() == 6); // five lines, and what to do about them
    CHECK(ran.says("line 2: tape m: -3 m is outside"));
    CHECK(ran.says("line 3: tape: has no field 'mm'"));
    CHECK(ran.says("line 4: when: "));
    CHECK(ran.says("line 5: not JSON"));
    CHECK(ran.says("line 6: 'tap'"));
    CHECK(ran.says("those 5 lines"));
    CHECK(program.book() == before);
}

TEST_CASE("a line that several things hold counts as one line") {
    Program program;
    program.start();
    program.survey();
    const Ran ran = fed(
        program, R"({"kind":"begin","part":"deck","by":"IP","when":"2026-06-11T08:35:00+01:00","data":{}})");
    CHECK(ran.code == 1);
    CHECK(ran.message_lines() > 2);
    CHECK(ran.says("put right that line"));
}

TEST_CASE("an empty file keeps nothing and says so") {
    Program program;
    program.start();
    const std::string before = program.book();
    const Ran ran = fed(program, "");
    CHECK(ran.code == 0);
    CHECK(ran.shows("0 entries kept"));
    CHECK(program.book() == before);
}

TEST_CASE("a file of entries that is not there is named") {
    Program program;
    program.start();
    const Ran ran = program.run("record --from nowhere.jsonl --by IP");
    CHECK(ran.code == 2);
    CHECK(ran.message_lines() == 1);
    CHECK(ran.says("nowhere.jsonl"));
}
