// What a shell does to a program: a pipe that is closed, Ctrl-C half way, a screen that takes no more, no colour.
#include "tests/cli/program.h"

using namespace undersheet;

TEST_CASE("a reader that has seen enough ends the program quietly") {
    Program program;
    program.start();
    const Ran ran = program.pipe("$U history | head -1");
    CHECK(ran.code == 0);
    CHECK(ran.out == "A-07, small dormer\n");
    CHECK(ran.err.empty());
    const Ran closed = program.pipe("{ $U kinds --json; echo $? >code; } | true");
    CHECK(closed.err.empty());
    CHECK(bytes_of_file(program.file("code")) == "0\n");
}

TEST_CASE("an answer that cannot be written is no answer") {
    if (std::system("test -w /dev/full") != 0) {
        WARN("not tested, because there is no /dev/full here");
        return;
    }
    Program program;
    program.start();
    for (const std::string words : {"stages", "history --json", "kinds --json", "paper completion -o -"}) {
        const Ran ran = program.pipe("$U " + words + " >/dev/full");
        INFO(words);
        CHECK(ran.code == 3);
        CHECK(ran.message_lines() == 1);
        CHECK(ran.says("could not be written"));
    }
}

TEST_CASE("a pipe into which nobody writes is refused in one line wherever a file is named") {
    Program program;
    program.start();
    const std::string before = program.book();
    REQUIRE(program.pipe("mkfifo pipe").code == 0);
    for (const std::string words :
         {"verify pipe", "verify --receipt pipe", "photo pipe --of AB --shows x --by IP",
          "jobs new B-08 --roof porch --method pipe --by IP", "day --forecast pipe",
          "paper order --prices pipe -o order.txt", "pin --by IP --new-from pipe",
          "record --from pipe --by IP", "reckon air pipe", "take pipe", "salvage pipe -o whole.book",
          "findings --book pipe"}) {
        const Ran ran = program.run(words, "timeout 20");
        INFO(words << ": " << ran.err);
        CHECK((ran.code == 2 || ran.code == 3));
        CHECK(ran.message_lines() == 1);
        CHECK(ran.says("pipe: "));
    }
    CHECK(program.book() == before);
}

TEST_CASE("a pipe with a writer is read to its end, also when the writer comes late or takes its time") {
    Program program;
    const std::string air = R"({ printf '{"air_c": 20, "rh_pct"'; sleep 3; printf ': 50}'; })";
    REQUIRE(program.pipe("mkfifo pipe").code == 0);
    const std::string asked = program.pipe("echo '{\"air_c\": 20, \"rh_pct\": 50}' | $U reckon air").out;
    REQUIRE_FALSE(asked.empty());
    CHECK(program.pipe(air + " >pipe & timeout 20 $U reckon air pipe").out == asked);
    CHECK(program.pipe("{ sleep 1; " + air + " >pipe; } & timeout 20 $U reckon air pipe").out == asked);
    CHECK(program.pipe(air + " | timeout 20 $U reckon air /dev/stdin").out == asked);
    CHECK(program.pipe(air + " | timeout 20 $U reckon air -").out == asked);
}

TEST_CASE("a pipe among the photographs is a photograph that cannot be read, and nothing waits for it") {
    Program program;
    program.start();
    program.survey();
    write_file(program.file("a.jpg"), "\xFF\xD8\xFF\xE0 an invented photograph");
    REQUIRE(program.run("photo a.jpg --of AB --shows 'the gutter' --by IP").code == 0);
    REQUIRE(program.pipe("cd roofs.book.photos && for kept in *; do rm $kept; mkfifo $kept; done").code == 0);
    const Ran ran = program.run("verify", "timeout 20");
    CHECK(ran.code == 1);
    CHECK(ran.shows("the photograph is not there or cannot be read"));
}

TEST_CASE("Ctrl-C while lines are being typed keeps nothing") {
    Program program;
    program.start();
    const std::string before = program.book();
    const std::string good =
        R"({"kind":"tape","place":"AB","by":"IP","when":"2026-06-11T08:35:00+01:00","data":{"m":3}})";
    write_file(program.file("line"), good + "\n");
    // The program waits for more lines when the signal comes; a shell in the background would have it ignored.
    const Ran ran =
        program.pipe("{ cat line; sleep 3; } | "
                     "timeout --preserve-status -s INT 1 env --default-signal=INT $U record --from -");
    CHECK(ran.code == 130);
    CHECK(program.book() == before);
    CHECK(program.run("verify").code == 0);
}

TEST_CASE("answers go to stdout and messages to stderr") {
    Program program;
    program.start();
    const Ran good = program.run("record air air_c=13 rh_pct=66 surface_c=14 --by IP");
    CHECK(good.err.empty());
    CHECK(good.shows("dew point 6.8 °C, margin 7.2 K: yes, bond"));
    const Ran refused = program.run("begin field/1 --by IP");
    CHECK(refused.code == 1);
    CHECK(refused.out.empty());
    CHECK(refused.says("A-07 field/1: "));
}

TEST_CASE("a file and a pipe get no colour, nor does a terminal when NO_COLOR is set") {
    Program program;
    program.start();
    CHECK_FALSE(program.run("stages").shows("\033["));
    if (std::system("command -v script >/dev/null 2>&1") != 0) {
        WARN("not tested on a terminal, because there is no script(1) here");
        return;
    }
    const std::string on_terminal = "script -qec \"$U stages\" /dev/null";
    CHECK(program.pipe("export TERM=xterm; " + on_terminal).shows("\033[1m"));
    CHECK_FALSE(program.pipe("export TERM=dumb; " + on_terminal).shows("\033["));
    const std::string no_colour = "script -qec \"env $U stages\" /dev/null";
    CHECK_FALSE(
        program.pipe("export TERM=xterm; U=\"$(echo $U | sed 's/-u NO_COLOR/NO_COLOR=1/')\"; " + no_colour)
            .shows("\033["));
}

TEST_CASE("verify says in one line how many entries were written with the clock set by hand") {
    Program program;
    program.start();
    const Ran ran = program.run("verify");
    CHECK(ran.code == 0);
    const auto at = ran.out.find("written with the clock set by hand");
    REQUIRE(at != std::string::npos);
    CHECK(ran.out.find("written with the clock set by hand", at + 1) == std::string::npos);
    CHECK(program.run("verify --json").shows("\"clock_by_hand\": 7"));
}

TEST_CASE("the clock of the machine can be set, and what is written then says so") {
    Program program("2026-06-11T09:00:00+01:00");
    program.start();
    const Ran ran = program.run("record air air_c=13 rh_pct=66 surface_c=14 --by IP");
    CHECK(ran.shows("11 Jun 2026 09:00"));
    CHECK(ran.shows("clock set by hand"));
    program.set_clock("2026-06-12T07:05:00+01:00");
    CHECK(program.run("record air air_c=13 rh_pct=66 --by IP").shows("12 Jun 2026 07:05"));
    CHECK(program.run("record air air_c=13 rh_pct=66 --by IP --when 2026-06-12T06:00:00+01:00")
              .shows("written later"));
    CHECK(program.run("record air air_c=13 rh_pct=66 --by IP --when 2026-06-12T08:00:00+01:00")
              .shows("ahead of the clock"));
    program.set_clock("tomorrow");
    CHECK(program.run("stages").code == 2);
    CHECK(program.run("stages").message_lines() == 1);
}
