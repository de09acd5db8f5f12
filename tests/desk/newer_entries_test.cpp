// What a newer version wrote: kinds and fields this one does not know. They are kept, shown as not understood, and handed on.
#include "book/book.h"
#include "tests/desk/desk_support.h"
#include "tests/support/tamper.h"

using namespace undersheet;

namespace {

// As a newer program on the same phone: its entries are signed like all others.
struct Newer {
    Newer() {
        test.survey();
        auto world = test.world();
        book::KeyFiles keys(test.path());
        auto book = good(book::Book::open(test.path(), book::Access::write, {*world, keys}));
        entry::Draft flight;
        flight.kind = "flight";
        flight.job = good(book.last_job());
        flight.author = good(book.entries(book.office())).at(1).data.text_of("person");
        flight.when = *entry::parse_time("2026-06-11T08:20:00+01:00");
        flight.data.set("height_m", 12)
            .set("pattern", entry::List{entry::Value("north"), entry::Value("south")});
        flight.personal["pilot"] = "Odile Farrow";
        entry::Draft edge = flight;
        edge.kind = "tape";
        edge.place = "AB";
        edge.personal.clear();
        edge.data = entry::Value().set("m", *Decimal::parse("3.2")).set("sag_mm", 4);
        good(book.append({flight, edge}));
    }
    [[nodiscard]] static desk::HistoryLine line_of_kind(desk::Desk desk, const std::string& kind) {
        for (const auto& line : good(desk.history({})).lines) {
            if (line.kind == kind) return line;
        }
        throw std::logic_error("there is no " + kind);
    }

    DeskTest test;
};

bool says(const std::vector<std::string>& lines, const std::string& piece) {
    return std::any_of(lines.begin(), lines.end(),
                       [&](const std::string& line) { return line.find(piece) != std::string::npos; });
}

} // namespace

TEST_CASE("a kind and a field of a newer version stand in the history with what they say, marked as not "
          "understood") {
    Newer newer;
    const auto flight = Newer::line_of_kind(newer.test.open(), "flight");
    CHECK(flight.says.find("height 12 m") != std::string::npos);
    CHECK(flight.says.find("north, south") != std::string::npos);
    CHECK(flight.says.find("Odile Farrow") != std::string::npos);
    CHECK(says(flight.marks, "not understood here"));
    const auto tape = Newer::line_of_kind(newer.test.open(), "tape");
    CHECK(tape.says.find("sag 4 mm") != std::string::npos);
    CHECK(says(tape.marks, "sag_mm"));
    for (const auto& line : good(newer.test.open().history({})).lines) {
        if (line.kind != "flight" && line.kind != "tape") CHECK_FALSE(says(line.marks, "not understood"));
    }
}

TEST_CASE("what is not understood hinders nobody: papers are printed, the record verifies and goes on") {
    Newer newer;
    CHECK(good(newer.test.open().verify()).ok);
    for (const std::string paper : {"inspection", "stages", "punch", "completion"})
        CHECK(line_of(newer.test.open().paper({}, paper, "txt")) == "done");
    good(newer.test.record("chase", {"height_mm=165"}, "CD+0.10", "08:30"));
    CHECK(good(newer.test.open().verify()).ok);
}

TEST_CASE(
    "what is not understood is handed on to the last byte, personal values too, and erased like others") {
    Newer newer;
    TempFolder folder;
    const std::string file = folder.file("all.hand");
    good(newer.test.open().hand({"", true, file}));
    const desk::BookAt other{folder.file("other.book"), "2026-06-11T09:00:00+01:00"};
    good(desk::Desk::start_from(other, file));
    CHECK(good(good(desk::Desk::open(other)).verify()).digest == good(newer.test.open().verify()).digest);
    CHECK(Newer::line_of_kind(good(desk::Desk::open(other)), "flight").says ==
          Newer::line_of_kind(newer.test.open(), "flight").says);
    good(newer.test.open().hand({"A-07", false, folder.file("again.hand")}));
    CHECK(good(good(desk::Desk::open(other)).take(folder.file("again.hand"))).fresh == 0);

    good(newer.test.open().erase(DeskTest::by("IP", "12:00"), {"Odile Farrow", "asked by letter", "", {}}));
    CHECK(bytes_of_file(newer.test.path()).find("Odile Farrow") == std::string::npos);
    CHECK(good(newer.test.open().verify()).ok);
}

TEST_CASE("what is not understood is salvaged with the rest") {
    Newer newer;
    TempFolder folder;
    const auto salvaged = good(desk::Desk::salvage({newer.test.path(), folder.file("new.book"), {}}));
    CHECK(salvaged.whole);
    CHECK(Newer::line_of_kind(good(desk::Desk::open({folder.file("new.book"), ""})), "flight")
              .says.find("height 12 m") != std::string::npos);
}
