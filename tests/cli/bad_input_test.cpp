// What a tired person types wrongly: each gives one line that names what, where and what would be right, and the book stays
// as it was, byte for byte.
#include "tests/cli/program.h"

using namespace undersheet;

namespace {

struct Wrong {
    std::string typed;
    int code;
    std::string what, where, right; // each stands in the line; "" where the line needs none
};

void check_refused(const Program& program, const Wrong& wrong) {
    INFO(wrong.typed);
    const std::string before = program.book();
    const Ran ran = program.run(wrong.typed);
    INFO(ran.err);
    CHECK(ran.code == wrong.code);
    CHECK(ran.message_lines() == 1);
    CHECK(ran.says(wrong.what));
    CHECK(ran.says(wrong.where));
    CHECK(ran.says(wrong.right));
    CHECK(ran.out.empty());
    CHECK(program.book() == before);
}

Program& surveyed() {
    static Program program;
    static const bool ready = [] {
        program.start();
        program.survey();
        return true;
    }();
    REQUIRE(ready);
    return program;
}

void check_refused(const std::vector<Wrong>& all) {
    for (const Wrong& wrong : all) check_refused(surveyed(), wrong);
}

} // namespace

TEST_CASE("a figure that cannot be meant is refused in one line") {
    check_refused({
        {"record tape m=5kg --at AB --by IP", 2, "'kg' measures a weight", "tape m", "mm, cm, in, ft"},
        {"record moisture reading_pct=12C setting=2 --at 1,1 --by IP", 2, "'C' measures a temperature",
         "moisture reading_pct", "%"},
        {"record tape m=2,1,0 --at AB --by IP", 2, "two commas", "tape m", "12.5"},
        {"record tape m=1.234,5 --at AB --by IP", 2, "a comma and a point", "tape m", "12.5"},
        {"record tape m=1,234.5 --at AB --by IP", 2, "a comma and a point", "tape m", "12.5"},
        {"record tape m=3furlongs --at AB --by IP", 2, "furlongs", "tape m", "mm, cm, in, ft"},
        {"record air air_c=warm rh_pct=66 --by IP", 2, "'warm' is not a number", "air air_c", "12.5"},
        {"record air air_c=13 rh_pct=101 --by IP", 2, "101 %", "air rh_pct", "100"},
        {"record air rh_pct=66 --by IP", 2, "is missing", "air air_c", "air_c="},
        {"record air air_c --by IP", 2, "'air_c' is no field=value", "air", "air_c=13"},
    });
}

TEST_CASE("a field at its limit is kept, and just over it is refused") {
    const Program& program = surveyed();
    CHECK(program.run("record air air_c=13 rh_pct=100 --by IP").code == 0);
    check_refused(program, {"record air air_c=13 rh_pct=100.1 --by IP", 2, "100.1 %", "rh_pct", "to 100"});
    CHECK(program.run("record tape m=0.05 --at AB --by IP").code == 0);
    check_refused(program, {"record tape m=0.049 --at AB --by IP", 2, "0.049 m", "tape m", "0.05 to 60"});
    CHECK(program.run("record tape m=60 --at AB --by IP").code == 0);
    check_refused(program, {"record tape m=60.001 --at AB --by IP", 2, "60.001 m", "tape m", "0.05 to 60"});
}

TEST_CASE("a character that nobody sees is named in one line with its place") {
    check_refused({
        {"people add 'Isolde Pell' --role installer --initials \"$(printf 'I\\342\\200\\213P')\" --by IP", 2,
         "character 2 of it is U+200B", "person initials", "without that"},
        {"people add \"$(printf 'Zoe \\342\\200\\256 Marsh')\" --role installer --by IP", 2,
         "character 5 of it is U+202E", "person name", "without that"},
        {"jobs new \"$(printf 'A-08\\342\\200\\256')\" --roof porch --by IP", 2, "U+202E", "open ref",
         "without that"},
    });
}

TEST_CASE("what is neither a receipt nor a file of receipts is told what a receipt looks like") {
    check_refused({
        {"verify --receipt 'x y z'", 2, "'x y z' is no receipt, and there is no file of that name",
         "--receipt", "undersheet.receipt.1, 64 digits, 64 digits"},
        {"verify --receipt .", 2, "there is no file of receipts to read here", ".", "check the name"},
        {"verify --receipt 'undersheet.receipt.1 12 13'", 2, "a digit of it is missing", "receipt",
         "64 digits"},
    });
}

TEST_CASE("a word after an option's value is a word of the command, wherever it stands") {
    Program program;
    program.start();
    program.survey();
    REQUIRE(program
                .run("leave-out chase/CD --why 'the builder points it' --agreed-by 'Mrs Harbin' "
                     "whose=builder --by IP")
                .code == 0);
    const Ran told = program.run("history");
    CHECK(told.shows("Mrs Harbin"));
    CHECK(told.shows("whose builder"));
    CHECK_FALSE(told.shows("whose=builder"));
}

TEST_CASE("an unknown word is named with the nearest known one") {
    check_refused({
        {"record tap m=3 --at AB --by IP", 2, "'tap' is nothing that can be recorded", "",
         "did you mean tape?"},
        {"record air ait_c=3 --by IP", 2, "'ait_c'", "air", "air_c"},
        {"record edge kind=gutterr --at AB --by IP", 2, "'gutterr'", "edge kind", "gutter"},
        {"stagess", 2, "'stagess'", "command", "did you mean 'stages'?"},
        {"record tape m=3 --att AB --by IP", 2, "--att", "record", "did you mean --at?"},
        {"begin bandd/AB --by IP", 1, "'bandd/AB'", "part", "did you mean 'band/AB'?"},
        {"stages --job A-08", 2, "'A-08'", "this book", "did you mean 'A-07'?"},
        {"paper completions -o x.txt", 2, "'completions'", "paper", "completion"},
        {"paper completion -o x.doc", 2, "'doc'", "paper", "html, txt"},
        {"punch ad scuff --by IP", 2, "'punch ad'", "command", "add, clear"},
        {"record tape m=3 --by IP --at", 2, "--at", "", "undersheet record --help"},
        {"people add 'Nell Marsh' --role roofer --by IP", 2, "'roofer'", "role", "installer"},
    });
}

TEST_CASE("a place that is none, or not on this roof, is refused in one line") {
    check_refused({
        {"record tape m=3 --at 'A%' --by IP", 2, "'A%' is not a place", "tape place", "AB+1.20"},
        {"record tape m=3 --at 'AB+x' --by IP", 2, "'AB+x' is not a place", "tape place", "AB+1.20"},
        {"record tape m=3 --by IP", 2, "is missing", "tape place", "two corners, like AB"},
        {"record chase height_mm=165 --at CE+0.50 --by IP", 1, "no corner E", "this roof", "AB BC CD DA"},
        {"record chase height_mm=165 --at AC+0.50 --by IP", 1, "AC is no edge", "this roof", "AB BC CD DA"},
        {"record gutter clear=yes --at BD --by IP", 1, "BD is no edge", "this roof", "AB BC CD DA"},
        {"record patch why=blister --at AE --by IP", 1, "no corner E", "this roof", "AB BC CD DA"},
    });
}

TEST_CASE("an order of corners that crosses itself is refused in one line") {
    check_refused({
        {"record edge kind=kerb --at AC --by IP", 1, "AC is no edge", "corners run A B C D", "withdraw"},
        {"record section label=1 outline='0,0 3,0 0,2 3,2' --by IP", 1, "cross", "section outline",
         "in order"},
    });
    CHECK(surveyed().run("record section label=1 outline='0,0 3,0 3,2 0,2' --by IP").code == 0);
}

TEST_CASE("a third edge at a corner is refused before the outline closes") {
    Program program;
    program.start();
    REQUIRE(program.run("record edge kind=gutter --at AB --by IP").code == 0);
    REQUIRE(program.run("record edge kind=kerb --at BC --by IP").code == 0);
    check_refused(program, {"record edge kind=wall --at BD --by IP", 1, "corner B", "AB and BC", "withdraw"});
    CHECK(program.run("record edge kind=wall --at CD --by IP").code == 0);
}

TEST_CASE("a diagonal may be taped, and an edge may be named from its other end") {
    const Program& program = surveyed();
    CHECK(program.run("record tape m=3.9 --at AC --by IP").code == 0);
    const Ran ran = program.run("record edge kind=kerb --at CB --by IP");
    CHECK(ran.code == 0);
    CHECK(ran.shows("at BC"));
    CHECK_FALSE(program.run("stages").shows("band/CB"));
}

TEST_CASE("a time without offset is refused in one line that names the option") {
    check_refused({
        {"record air air_c=13 rh_pct=66 --when 2026-06-11T09:00:00 --by IP", 2, "no offset", "--when",
         "+01:00"},
        {"record air air_c=13 rh_pct=66 --when yesterday --by IP", 2, "'yesterday'", "--when", "+01:00"},
        {"stages --when 2026-06-31T09:00:00+01:00", 2, "2026-06-31", "--when", ""},
    });
}

TEST_CASE("a name that nobody knows, or nobody gave, is refused in one line") {
    check_refused({
        {"record air air_c=13 rh_pct=66 --by Nobody", 2, "'Nobody'", "--by",
         "Isolde Pell (IP), Wren Pell (WP)"},
        {"record air air_c=13 rh_pct=66", 2, "who", "--by", "IP"},
        {"record air air_c=13 rh_pct=66 --by Pell", 2, "Pell", "--by", "Wren Pell"},
        {"record day people='IP, Nobody' --by IP", 2, "'Nobody'", "day people", "Isolde Pell"},
    });
}
