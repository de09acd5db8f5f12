// What a person reads who types a day's story: the punch list, the stages, two phones, a lost phone, a name that is erased.
#include "tests/cli/program.h"

using namespace undersheet;

namespace {

// The lines that the same command gives as JSON and as text have to speak of the same thing.
void check_both(const Program& program, const std::string& command, const std::string& wanted) {
    INFO(command);
    const Ran text = program.run(command);
    const Ran json = program.run(command + " --json");
    CHECK(text.shows(wanted));
    CHECK(json.shows(wanted));
    CHECK(json.out.find_first_of("{[") == 0);
    CHECK(text.err.empty());
    CHECK(json.err.empty());
}

} // namespace

TEST_CASE("the punch list says what is open, what holds, what clears it, and who raised and cleared it") {
    Program program;
    program.start();
    program.survey();
    REQUIRE(program.run("punch add 'scuff on the trim' --at BC --by IP").code == 0);
    REQUIRE(program.run("punch add 'blister' --at AB --severity stop --by WP").code == 0);
    const Ran open = program.run("punch");
    CHECK(open.shows(
        "3 open:\n  2: stop: blister (AB)\n      holds: sign-off of final\n      to clear: punch clear 2\n"));
    REQUIRE(program.run("punch clear 1 --why 'rubbed out' --by IP").code == 0);
    REQUIRE(program.run("punch look 1 --by WP").code == 0);
    const Ran cleared = program.run("punch");
    CHECK(cleared.shows("2 open:"));
    CHECK(cleared.shows("1: cleared: scuff on the trim (BC)"));
    check_both(program, "punch --all", "blister");
    check_both(program, "findings", "blister");
    CHECK(program.run("punch clear 9 --why 'none' --by IP").message_lines() == 1);
}

TEST_CASE("stages says what is held and by what, and what is ready once nothing holds it") {
    Program program;
    program.start();
    program.survey();
    const Ran held = program.run("stages");
    CHECK(held.shows("Held:"));
    CHECK(held.shows("nothing said of edge protection -> record site edge_protection=…"));
    check_both(program, "stages", "deck");
    REQUIRE(program
                .run("record site edge_protection=scaffold_rail height_m=2.6 fragile=none cable_within_3m=no "
                     "asbestos=none_seen --by IP")
                .code == 0);
    REQUIRE(program.run("record day people='IP, WP' briefing=yes plan=yes --by IP").code == 0);
    REQUIRE(program.run("begin deck --by IP").code == 0);
    CHECK(program.run("stages").shows("deck"));
    CHECK(program.run("begin deck --by IP").code != 0);
}

TEST_CASE("two phones hand a job to and fro, and what they said apart is listed and settled by typing it") {
    Program program;
    program.start();
    program.survey();
    REQUIRE(program.run("hand --all -o all.hand").code == 0);
    REQUIRE(program.run("start other.book --from all.hand").code == 0);
    REQUIRE(program.run("record chase height_mm=165 --at CD+0.10 --by IP").code == 0);
    REQUIRE(program.run("record chase height_mm=140 --at CD+0.10 --by WP --book other.book").code == 0);
    const Ran handed = program.run("hand A-07 -o b.hand --book other.book");
    CHECK(handed.shows("Job A-07 as one file: b.hand"));
    CHECK(handed.shows("check value: "));
    const Ran taken = program.run("take b.hand");
    CHECK(taken.code == 0);
    CHECK(taken.shows("job A-07: 1 new of"));
    CHECK(program.run("take b.hand").shows("nothing new"));
    const Ran open = program.run("settle");
    CHECK(open.shows("chase at CD+0.10: read differently on 2 devices"));
    CHECK(open.shows("165"));
    CHECK(open.shows("140"));
    check_both(program, "settle", "CD+0.10");
    check_both(program, "devices", "device");
    CHECK(program.run("verify").code == 0);
    CHECK(program.run("hand A-07 -o b.hand").code != 0); // there is a file of that name
    CHECK(program.run("take none.hand").message_lines() == 1);
}

TEST_CASE("a name that was recorded is erased by typing it, and says where it may still stand") {
    Program program;
    program.start();
    REQUIRE(program.run("record site customer='Caspar Dunmoor' --by IP").code == 0);
    REQUIRE(program.run("retention 12 --why 'guarantee' --by IP").shows("12 years"));
    const Ran kept = program.run("erase 'Caspar Dunmoor' --why 'asked by letter' --by IP");
    CHECK(kept.code != 0); // the time is not over
    const Ran erased =
        program.run("erase 'Caspar Dunmoor' --why 'asked by letter' --although 'nothing is owed' --by IP");
    INFO(erased.out << erased.err);
    CHECK(erased.code == 0);
    CHECK(program.book().find("Caspar Dunmoor") == std::string::npos);
    CHECK(program.run("erase 'Nobody Known' --why 'asked' --although 'asked' --by IP").message_lines() == 1);
    CHECK(program.run("verify").code == 0);
}
