// A desk for tests: a book in a folder of its own, a clock that stands until it is moved, two people and a job.
#pragma once

#include "desk/desk.h"
#include "tests/support/fixed_world.h"
#include "tests/support/temp_folder.h"

#include <catch2/catch.hpp>

namespace undersheet {

// The value, or the end of the test with the fault's own line.
template <class T>
T good(Result<T> result) {
    if (!result.ok()) throw std::logic_error(one_line(result.fault()));
    return std::move(*result);
}

template <class T>
std::string line_of(const Result<T>& result) {
    return result.ok() ? "done" : one_line(result.fault());
}

class DeskTest {
public:
    explicit DeskTest(std::string clock = "2026-06-11T08:00:00+01:00", const std::string& language = {})
        : clock_(std::move(clock)) {
        good(desk::Desk::start(path(), {"Pell & Daughter", "3 Quay Lane", "", "", "", language}, world()));
        good(open().add_person({}, {"Isolde Pell", "installer", "IP", "", "", ""}));
        good(open().add_person({"", "IP", ""}, {"Wren Pell", "installer", "WP", "", "", ""}));
        good(open().open_job(by("IP"), {"A-07", "small dormer", "", false, ""}));
    }

    [[nodiscard]] std::string path() const { return folder_.file("roofs.book"); }
    void set_clock(std::string clock) { clock_ = std::move(clock); }
    // Opened afresh each time, as a command does.
    [[nodiscard]] desk::Desk open() { return good(desk::Desk::open(path(), world())); }

    [[nodiscard]] static desk::Asked by(std::string who, std::string when = {}) {
        return {"", std::move(who), when.empty() ? when : "2026-06-11T" + when + ":00+01:00"};
    }
    // Each new world brings other chance, as another start of the program does.
    [[nodiscard]] std::unique_ptr<entry::World> world() {
        return std::make_unique<FixedWorld>(++starts_, clock_);
    }

    Result<desk::Kept> record(const std::string& kind, desk::Fields fields, const std::string& place = {},
                              const std::string& when = "08:10") {
        return open().record(by("IP", when), {kind, place, {}, std::move(fields)});
    }
    // Edges, corners and safety of a small roof: gutter, two kerbs, wall.
    void survey() {
        good(record("edge", {"kind=gutter"}, "AB"));
        good(record("edge", {"kind=kerb"}, "BC"));
        good(record("edge", {"kind=wall"}, "CD"));
        good(record("edge", {"kind=kerb"}, "DA"));
    }
    void open_the_day() {
        good(record("site", {"edge_protection=scaffold_rail", "height_m=2.6", "fragile=none",
                             "cable_within_3m=no", "asbestos=none_seen"}));
        good(record("day", {"people=IP, WP", "briefing=yes", "plan=yes", "extinguisher=yes",
                            "solvent_care=yes", "data_sheet=yes"}));
    }

private:
    TempFolder folder_;
    std::string clock_;
    std::uint64_t starts_ = 0;
};

} // namespace undersheet
