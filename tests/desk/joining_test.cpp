// Two phones with a book of their own each, and people of their own: whoever writes on a job that came from the other.
#include "tests/desk/desk_support.h"

#include <algorithm>

using namespace undersheet;

namespace {

// The test's own phone with job A-07, and a helper's phone that took the job in and knows only the helper.
struct TwoBooks {
    TwoBooks() {
        first.survey();
        good(desk::Desk::start(second_path(), {"Bray Roofing", "", "", "", ""}, world()));
        good(second().add_person({}, {"Oswin Bray", "helper", "OB", "", "", ""}));
        give(first.open(), second());
    }
    [[nodiscard]] std::string second_path() const { return folder.file("second.book"); }
    std::unique_ptr<entry::World> world() {
        return std::make_unique<FixedWorld>(1000 + ++starts, "2026-06-11T08:00:00+01:00");
    }
    desk::Desk second() { return good(desk::Desk::open(second_path(), world())); }

    std::string hand(desk::Desk from, const std::string& file) {
        return good(from.hand({"A-07", false, file})).digest;
    }
    desk::TakenIn give(desk::Desk from, desk::Desk to) {
        const std::string file = folder.file("job" + std::to_string(++files) + ".hand");
        hand(std::move(from), file);
        return good(to.take(file));
    }
    void check_alike() {
        give(first.open(), second());
        give(second(), first.open());
        ++files;
        CHECK(hand(first.open(), folder.file("a" + std::to_string(files))) ==
              hand(second(), folder.file("b" + std::to_string(files))));
        for (const char* paper : {"inspection", "stages", "punch"}) {
            INFO(paper);
            CHECK(good(first.open().paper({"A-07", "", ""}, paper, "txt")).bytes ==
                  good(second().paper({"A-07", "", ""}, paper, "txt")).bytes);
        }
        CHECK(good(first.open().verify()).ok);
        CHECK(good(second().verify()).ok);
    }
    Result<desk::Kept> records(const std::string& who, const std::string& when = "08:31") {
        return second().record(DeskTest::by(who, when), {"chase", "CD+0.10", {}, {"height_mm=140"}});
    }

    DeskTest first;
    TempFolder folder = {};
    int files = 0;
    std::uint64_t starts = 0;
};

bool is_in(const std::vector<desk::PersonLine>& people, const std::string& name) {
    return std::any_of(people.begin(), people.end(), [&](const auto& line) { return line.name == name; });
}

} // namespace

TEST_CASE("somebody of the phone that took a job in writes on it at once, and both phones come to the same "
          "record") {
    TwoBooks books;
    CHECK(good(books.records("OB")).by == "Oswin Bray");
    CHECK(good(books.records("oswin", "08:40")).by == "Oswin Bray");
    CHECK(books.give(books.second(), books.first.open()).fresh ==
          3); // put on the job once, then two readings
    CHECK(good(books.first.record("tape", {"m=3.2"}, "AB", "09:00")).by == "Isolde Pell");
    books.check_alike();
    const auto history = good(books.first.open().history({}));
    CHECK(std::count_if(history.lines.begin(), history.lines.end(),
                        [](const auto& line) { return line.by == "Oswin Bray"; }) == 3);
}

TEST_CASE("taking a job in puts nobody on it, so it is handed back as it came") {
    TwoBooks books;
    CHECK(books.give(books.second(), books.first.open()).fresh == 0);
}

TEST_CASE("who is on the job already writes on the other phone without being known to its book") {
    TwoBooks books;
    CHECK(good(books.records("WP")).by == "Wren Pell");
    CHECK_FALSE(is_in(good(books.second().people()), "Wren Pell"));
    CHECK(books.give(books.second(), books.first.open()).fresh == 1);
}

TEST_CASE("somebody the job does not know is put on it by being named among the people of the day") {
    TwoBooks books;
    const desk::Fields day = {"people=IP, OB", "briefing=yes"};
    good(books.second().record(DeskTest::by("IP", "08:31"), {"day", "", {}, day}));
    CHECK(books.give(books.second(), books.first.open()).fresh == 2);
    CHECK(good(books.first.open().record(DeskTest::by("OB", "09:00"), {"tape", "AB", "", {"m=3.2"}})).by ==
          "Oswin Bray");
    const auto unknown = books.second().record(DeskTest::by("IP", "08:31"), {"day", "", {}, {"people=Bo"}});
    CHECK(line_of(unknown).find("there is nobody called 'Bo'") != std::string::npos);
}

TEST_CASE("lines of a file may be written by somebody the job does not know yet") {
    TwoBooks books;
    const auto kept = good(books.second().record_lines(
        DeskTest::by("OB", "08:31"), R"({"kind":"chase","place":"CD+0.10","data":{"height_mm":140}})"
                                     "\n"
                                     R"({"kind":"day","data":{"people":["OB","IP"]}})"));
    CHECK(kept.kept == 2);
    CHECK(kept.bad.empty());
    books.check_alike();
}

TEST_CASE("a record that is refused puts nobody on the job") {
    TwoBooks books;
    CHECK_FALSE(
        books.second().record(DeskTest::by("OB", "08:31"), {"chase", "CD+0.10", {}, {"height_mm=x"}}).ok());
    CHECK(books.give(books.second(), books.first.open()).fresh == 0);
}

TEST_CASE(
    "two people of the same initials from two phones are told apart, by one line that says what to do") {
    TwoBooks books;
    good(books.first.open().open_job(DeskTest::by("IP"), {"A-08", "porch", "", false, ""}));
    good(desk::Desk::start(books.folder.file("third.book"), {"Pratt", "", "", "", ""}, books.world()));
    const auto third = [&] { return good(desk::Desk::open(books.folder.file("third.book"), books.world())); };
    good(third().add_person({}, {"Ida Pratt", "helper", "IP", "", "", ""}));
    books.give(books.first.open(), third());

    const auto reads = [&](const std::string& who) {
        return third().record(DeskTest::by(who, "08:31"), {"chase", "CD+0.10", {}, {"height_mm=140"}});
    };
    CHECK(good(reads("IP")).by == "Isolde Pell"); // the job's own come first
    CHECK(
        line_of(reads("Ida Pratt")) ==
        "--by: Ida Pratt is not on job A-07, where 'IP' is Isolde Pell; undersheet people add \"Ida Pratt\" "
        "with other --initials");
    const desk::Fields day = {"people=Ida Pratt"};
    CHECK(line_of(third().record(DeskTest::by("IP", "08:31"), {"day", "", {}, day}))
              .find("where 'IP' is Isolde Pell") != std::string::npos);
    good(third().add_person(DeskTest::by("IP"), {"Ida Pratt", "helper", "IDP", "", "", ""}));
    CHECK(good(reads("IDP")).by == "Ida Pratt");
}

TEST_CASE("somebody of the other phone who is added here too is the same person") {
    TwoBooks books;
    const auto added =
        good(books.second().add_person(DeskTest::by("OB"), {"Isolde Pell", "installer", "", "", "", ""}));
    const auto there = good(books.first.open().people());
    CHECK(there[0].id == added.id);
    good(books.second().open_job(DeskTest::by("IP"), {"B-01", "porch", "", false, ""}));
    good(books.records("IP"));
    books.check_alike();
}

TEST_CASE("initials of somebody on an open job are not given to another") {
    TwoBooks books;
    const auto refused =
        books.second().add_person(DeskTest::by("OB"), {"Ida Pratt", "helper", "", "", "", ""});
    CHECK(line_of(refused) == "--initials: 'IP' is Isolde Pell already; give other initials");
}
