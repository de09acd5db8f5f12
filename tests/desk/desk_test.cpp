#include "tests/desk/desk_support.h"

using namespace undersheet;

TEST_CASE("verify counts the entries whose clock was set by hand, and finds no fault in them") {
    DeskTest test;
    CHECK(good(test.open().verify()).clock_by_hand == 0);
    auto world = std::make_unique<FixedWorld>(77, "2046-06-11T08:00:00+01:00");
    world->set_simulated(true);
    auto by_hand = good(desk::Desk::open(test.path(), std::move(world)));
    good(by_hand.record({"", "IP", ""}, {"tape", "AB", "", {"m=3.2"}}));
    const auto verified = good(test.open().verify());
    CHECK(verified.ok);
    CHECK(verified.doubts.empty());
    CHECK(verified.clock_by_hand == 1);
    good(by_hand.hand({"A-07", false, test.path() + ".hand"}));
    CHECK(good(desk::Desk::verify_file(test.path() + ".hand")).clock_by_hand == 1);
}

TEST_CASE("a book is not made over a file that is there") {
    DeskTest test;
    const std::string before = bytes_of_file(test.path());
    CHECK(!desk::Desk::start(test.path(), {"Another", "", "", "", ""}, test.world()).ok());
    CHECK(bytes_of_file(test.path()) == before);
}

TEST_CASE("a firm without a name makes no book") {
    TempFolder folder;
    CHECK(!desk::Desk::start(folder.file("new.book"), {"", "", "", "", ""}, std::make_unique<FixedWorld>())
               .ok());
    CHECK(!desk::Desk::open(folder.file("new.book"), std::make_unique<FixedWorld>()).ok());
}

TEST_CASE("a question writes nothing") {
    DeskTest test;
    test.survey();
    const std::string before = bytes_of_file(test.path());
    auto desk = test.open();
    good(desk.stages({}));
    good(desk.findings({}));
    good(desk.punch({}));
    good(desk.history({}));
    good(desk.jobs());
    good(desk.people());
    good(desk.verify());
    CHECK(bytes_of_file(test.path()) == before);
}

TEST_CASE("a whole book verifies, and a book with a changed byte in an entry does not") {
    DeskTest test;
    test.survey();
    CHECK(good(test.open().verify()).ok);
    std::string bytes = bytes_of_file(test.path());
    const auto at = bytes.find("\"kind\":\"gutter\"");
    REQUIRE(at != std::string::npos);
    bytes[at + 8] = 'G';
    write_file(test.path(), bytes);
    auto desk = desk::Desk::open(test.path(), test.world());
    const bool noticed = !desk.ok() || !desk->verify().ok() || !desk->verify()->ok;
    CHECK(noticed);
}

TEST_CASE("a clock set by hand is told in every entry") {
    TempFolder folder;
    const desk::BookAt at = {folder.file("demo.book"), "2026-06-11T08:00:00+01:00"};
    good(desk::Desk::start(at, {"Pell & Daughter", "", "", "", ""}));
    good(good(desk::Desk::open(at)).add_person({}, {"Isolde Pell", "installer", "", "", "", ""}));
    good(good(desk::Desk::open(at)).open_job({}, {"A-07", "", "", false, ""}));
    const auto kept = good(good(desk::Desk::open(at)).record({}, {"tape", "AB", "", {"m=3.2"}}));
    REQUIRE(kept.marks.size() == 1);
    CHECK(kept.marks[0] == "clock set by hand");
    CHECK(kept.when == "2026-06-11T08:00:00+01:00");
}

TEST_CASE("the version is the project's") {
    const std::string project = bytes_of_file(UNDERSHEET_SOURCE_DIR "/CMakeLists.txt");
    CHECK(project.find("project(undersheet VERSION " + std::string(desk::program_version()) + " ") !=
          std::string::npos);
}

TEST_CASE("every kind explains each of its fields") {
    for (const auto& kind : desk::kinds()) {
        CHECK_FALSE(kind.heading.empty());
        for (const auto& field : kind.fields) CHECK_FALSE(field.prompt.empty());
    }
    CHECK(good(desk::kind("send-back")).name == "send_back");
    CHECK(desk::kind("moistur").fault().code == Code::kind_unknown);
}

TEST_CASE("each paper is written in each of its formats") {
    DeskTest test;
    test.survey();
    for (const auto& name : desk::paper_names()) {
        if (name == "order" || name == "offer") continue; // they need tapes and prices
        if (name == "look") continue;                     // and this one a visit after the hand-over
        for (const std::string format : {"html", "txt", "json", "csv"}) {
            CHECK(good(test.open().paper({}, name, format)).bytes.size() > 100);
        }
#ifdef UNDERSHEET_PDF
        CHECK(good(test.open().paper({}, name, "pdf")).bytes.starts_with("%PDF-1.4\n"));
#endif
    }
    CHECK(test.open().paper({}, "inspection", "doc").fault().code == Code::format_unknown);
    CHECK(test.open().paper({}, "inspektion", "txt").fault().code == Code::paper_unknown);
    CHECK(good(test.open().paper({}, "inspection", "txt", {}, "de")).bytes.find("Holzfeuchte") !=
          std::string::npos);
    CHECK(test.open().paper({}, "inspection", "txt", {}, "nl").fault().code == Code::no_such_words);
}
