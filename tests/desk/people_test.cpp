#include "tests/desk/desk_support.h"

using namespace undersheet;

TEST_CASE("a book begins with nobody in it, and the first person needs nobody to vouch for them") {
    TempFolder folder;
    const std::string path = folder.file("new.book");
    good(desk::Desk::start(path, {"Pell & Daughter", "", "", "", ""}, std::make_unique<FixedWorld>()));
    auto desk = good(desk::Desk::open(path, std::make_unique<FixedWorld>(2)));
    CHECK(good(desk.people()).empty());
    const auto added = good(desk.add_person({}, {"Isolde Pell", "installer", "", "", "", ""}));
    CHECK(added.initials == "IP");
    CHECK(added.id.size() == 11);
    CHECK(good(desk.people()).size() == 1);
}

TEST_CASE("initials, a whole name and a first name all mean the same person, in any letters") {
    DeskTest test;
    for (const std::string who : {"IP", "ip", "Isolde Pell", "isolde pell", "isolde"}) {
        CHECK(good(test.open().record(DeskTest::by(who, "08:10"), {"tape", "AB", "", {"m=3.2"}})).by ==
              "Isolde Pell");
    }
}

TEST_CASE("a name that fits two people names both and chooses nobody") {
    DeskTest test;
    good(test.open().add_person(DeskTest::by("IP"), {"Wren Tolley", "helper", "WT", "", "", ""}));
    const auto refused = test.open().record(DeskTest::by("wren", "08:10"), {"tape", "AB", "", {"m=3.2"}});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::person_unknown);
    CHECK(line_of(refused) == "--by: 'wren' fits Wren Pell (WP) and Wren Tolley (WT); give the initials");
}

TEST_CASE("a name the book does not know is refused with the names it knows") {
    DeskTest test;
    const auto refused = test.open().record(DeskTest::by("Oswin", "08:10"), {"tape", "AB", "", {"m=3.2"}});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::person_unknown);
    CHECK(refused.fault().clears.find("Isolde Pell (IP), Wren Pell (WP)") != std::string::npos);
}

TEST_CASE("with two people in the book somebody has to say who it is") {
    DeskTest test;
    const auto refused = test.open().record({}, {"tape", "AB", "", {"m=3.2"}});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::person_unknown);
    CHECK(refused.fault().where == "--by");
}

TEST_CASE("somebody put on the book later is on the open job too") {
    DeskTest test;
    good(test.open().add_person(DeskTest::by("IP"), {"Oswin Bray", "helper", "OB", "", "", ""}));
    CHECK(good(test.open().record(DeskTest::by("OB", "08:10"), {"tape", "AB", "", {"m=3.2"}})).by ==
          "Oswin Bray");
}

TEST_CASE("somebody put on the book does not change which job was last worked on") {
    DeskTest test;
    good(test.open().open_job(DeskTest::by("IP"), {"A-08", "porch", "", false, ""}));
    good(test.open().record({"A-07", "IP", ""}, {"tape", "AB", "", {"m=3.2"}}));
    good(test.open().add_person(DeskTest::by("IP"), {"Oswin Bray", "helper", "OB", "", "", ""}));
    CHECK(good(test.open().findings({})).job.ref == "A-07");
}

TEST_CASE("two people cannot have the same initials") {
    DeskTest test;
    const auto refused =
        test.open().add_person(DeskTest::by("IP"), {"Ida Pratt", "helper", "ip", "", "", ""});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().where == "--initials");
    CHECK(good(test.open().people()).size() == 2);
}

TEST_CASE("a role that does not exist is refused with the roles there are") {
    DeskTest test;
    const auto refused = test.open().add_person(DeskTest::by("IP"), {"Ida Pratt", "boss", "XP", "", "", ""});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::choice_unknown);
}

TEST_CASE("a name with a character that nobody sees is refused, and initials with a joiner too") {
    DeskTest test;
    const auto added = [&](const std::string& name, const std::string& initials) {
        return line_of(test.open().add_person(DeskTest::by("IP"), {name, "installer", initials, "", "", ""}));
    };
    CHECK(added("Isolde Pell", "I\u200BP") ==
          "person initials: character 2 of it is U+200B, which nobody can see; type it again without that");
    CHECK(added("Zoë \u202E Marsh", "ZM") ==
          "person name: character 5 of it is U+202E, which nobody can see; type it again without that");
    CHECK(added("Isolde Pell", "I\u200DP") ==
          "person initials: character 2 of it is U+200D, which nobody can see; type it again without that");
    CHECK(good(test.open().people()).size() == 2);
    CHECK(added("علی\u200Cرضا", "AR") == "done"); // Persian names are written with this joiner
}
