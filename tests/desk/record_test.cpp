#include "tests/desk/desk_support.h"

using namespace undersheet;

TEST_CASE("an air reading answers whether one can bond now") {
    DeskTest test;
    const auto kept =
        good(test.record("air", {"air_c=13", "rh_pct=66", "surface_c=14", "wind_ms=6mph", "gust_ms=10mph"}));
    CHECK(kept.kind == "air");
    CHECK(kept.says.starts_with("air 13 °C, rh 66 %, surface 14 °C, wind 6mph"));
    CHECK(kept.bond_now.find("6.8") != std::string::npos); // dew point, Magnus with a = 17.62, b = 243.12 °C
    CHECK(kept.name.size() == 8);
}

TEST_CASE("a reading is kept with its place, its time and who took it") {
    DeskTest test;
    const auto kept =
        good(test.record("moisture", {"reading_pct=12.1", "board_c=15.5", "setting=2"}, "0.3,0.3", "08:35"));
    CHECK(kept.place == "0.30,0.30");
    CHECK(kept.when == "2026-06-11T08:35:00+01:00");
    CHECK(kept.by == "Isolde Pell");
    CHECK(kept.job.roof == "small dormer");
}

TEST_CASE("an unknown kind is refused with the nearest one, and nothing is kept") {
    DeskTest test;
    const auto refused = test.record("moistur", {"reading_pct=12"});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::kind_unknown);
    CHECK(line_of(refused).find("moisture") != std::string::npos);
    CHECK(good(test.open().history({})).lines.size() == 4); // opening, firm, two people
}

TEST_CASE("a field that is no field=value is refused with how to write it") {
    DeskTest test;
    const auto refused = test.record("air", {"13"});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::argument_wrong);
}

TEST_CASE("a corner that this roof does not have is refused once the edges are recorded") {
    DeskTest test;
    CHECK(test.record("chase", {"height_mm=165"}, "CE+0.10").ok()); // nobody knows the roof yet
    test.survey();
    const auto refused = test.record("chase", {"height_mm=165"}, "CE+0.10");
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::place_not_on_roof);
}

TEST_CASE("an odd value is kept, and asked about") {
    DeskTest test;
    const auto kept = good(test.record("board", {"thickness_mm=9", "material=plywood3"}));
    REQUIRE(!kept.asked.empty());
    CHECK(kept.asked[0].find("thickness_mm") != std::string::npos);
}

TEST_CASE("an entry written more than ten minutes after is marked, one at ten minutes is not") {
    DeskTest test("2026-06-11T08:20:00+01:00");
    CHECK(good(test.record("tape", {"m=3.2"}, "AB", "08:10")).marks.empty());
    CHECK(good(test.record("tape", {"m=3.2"}, "AB", "08:09")).marks.size() == 1);
}

TEST_CASE("an entry about a time to come is marked ahead of the clock") {
    DeskTest test("2026-06-11T08:00:00+01:00");
    const auto kept = good(test.record("tape", {"m=3.2"}, "AB", "08:30"));
    REQUIRE(kept.marks.size() == 1);
    CHECK(kept.marks[0].starts_with("ahead of the clock"));
}

TEST_CASE("what was recorded ahead of the clock is not left out of the judging") {
    DeskTest test("2026-06-11T08:00:00+01:00");
    good(test.record("heads", {"total=170", "checked=50", "below=49", "flush=0", "proud=1"}, "", "08:30"));
    CHECK(!good(test.open().findings({})).open.empty());
}

TEST_CASE("a question about an earlier time leaves out what came later") {
    DeskTest test("2026-06-11T12:00:00+01:00");
    const auto before = good(test.open().findings(DeskTest::by("", "08:20"))).open.size();
    good(test.record("heads", {"total=170", "checked=50", "below=49", "flush=0", "proud=1"}, "", "08:30"));
    CHECK(good(test.open().findings(DeskTest::by("", "08:29"))).open.size() == before);
    CHECK(good(test.open().findings(DeskTest::by("", "08:30"))).open.size() > before);
}

TEST_CASE("a time without an offset is refused") {
    DeskTest test;
    const auto refused = test.open().record({"", "IP", "2026-06-11T08:10:00"}, {"tape", "AB", "", {"m=3.2"}});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::time_malformed);
}

TEST_CASE("a kind that fills in field by field needs its product only once") {
    DeskTest test;
    good(test.record("tin", {"label=CA-3", "product=contact_adhesive", "batch=CA-3", "use_by=2026-11"}));
    CHECK(good(test.record("tin", {"label=CA-3", "dented=no"})).says == "label CA-3, dented no");
    CHECK(!test.record("tin", {"label=CA-4", "dented=no"}).ok());
}

TEST_CASE("what the program writes itself, nobody types") {
    DeskTest test;
    CHECK(!test.record("finish", {}).ok());
    CHECK(!test.record("open", {"ref=B-1"}).ok());
    CHECK(!test.record("person", {"name=Nobody"}).ok());
}

TEST_CASE("people are said by their names, never by the number they have in the book") {
    DeskTest test;
    CHECK(good(test.record("day", {"people=IP, WP", "briefing=yes"}))
              .says.find("people Isolde Pell, Wren Pell") != std::string::npos);
    const auto history = good(test.open().history({}));
    for (const auto& line : history.lines) {
        INFO(line.says);
        for (const auto& person : good(test.open().people()))
            CHECK(line.says.find(person.id) == std::string::npos);
    }
}
