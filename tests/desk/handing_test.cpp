// Two phones of one firm, from the desk: handing, taking, settling, and a phone that is lost.
#include "tests/desk/desk_support.h"

#include "desk/json.h"

#include <algorithm>

using namespace undersheet;

namespace {

// The test's own phone, and another made from a hand-over file of its whole book.
struct TwoPhones {
    TwoPhones() {
        first.survey();
        const std::string all = folder.file("all.hand");
        good(first.open().hand({"", true, all}));
        good(desk::Desk::start_from({second_path(), kClock}, all));
    }
    [[nodiscard]] std::string second_path() const { return folder.file("second.book"); }
    desk::Desk second() { return good(desk::Desk::open({second_path(), kClock})); }

    desk::TakenIn give(desk::Desk from, desk::Desk to) {
        const std::string file = folder.file("job" + std::to_string(++files) + ".hand");
        good(from.hand({"A-07", false, file}));
        return good(to.take(file));
    }
    void meet() {
        give(first.open(), second());
        give(second(), first.open());
    }
    void check_alike() {
        CHECK(good(first.open().verify()).digest == good(second().verify()).digest);
        for (const char* paper : {"inspection", "stages", "punch"}) {
            INFO(paper);
            CHECK(good(first.open().paper({}, paper, "txt")).bytes ==
                  good(second().paper({}, paper, "txt")).bytes);
        }
        CHECK(desk::json_of(good(first.open().findings({}))) == desk::json_of(good(second().findings({}))));
    }

    static constexpr const char* kClock = "2026-06-11T08:00:00+01:00";
    DeskTest first;
    TempFolder folder = {};
    int files = 0;
};

desk::Asked at(const std::string& when, const std::string& who = "IP") { return DeskTest::by(who, when); }

} // namespace

TEST_CASE("what two phones recorded apart gives the same digest, papers and findings on both") {
    TwoPhones phones;
    good(phones.first.record("chase", {"height_mm=165"}, "CD+0.10", "08:30"));
    good(phones.second().record(at("08:31", "WP"), {"chase", "CD+0.10", {}, {"height_mm=140"}}));
    good(phones.second().punch_add(at("08:32", "WP"), {"scuff on the trim", "BC", "", "put_right", {}}));
    const auto taken = phones.give(phones.second(), phones.first.open());
    CHECK(taken.fresh == 2);
    CHECK(taken.to_settle == 1);
    CHECK(taken.new_devices.size() == 1);
    phones.give(phones.first.open(), phones.second());
    phones.check_alike();
    const std::string sheet = good(phones.first.open().paper({}, "stages", "json")).bytes;
    CHECK(sheet.find("165 mm (Isolde Pell") != std::string::npos);
    CHECK(sheet.find("140 mm (Wren Pell") != std::string::npos);
}

TEST_CASE(
    "an item is settled by the beginning of its name and of an entry, and both stay on the stage sheet") {
    TwoPhones phones;
    const auto high = good(phones.first.record("chase", {"height_mm=165"}, "CD+0.10", "08:30"));
    good(phones.second().record(at("08:31", "WP"), {"chase", "CD+0.10", {}, {"height_mm=140"}}));
    phones.meet();
    const auto open = good(phones.first.open().to_settle({}));
    REQUIRE(open.items.size() == 1);
    CHECK(open.items[0].open);
    CHECK(open.items[0].sides.size() == 2);
    const std::string item = open.items[0].id;

    CHECK(line_of(phones.first.open().settle(at("09:00"), {item.substr(0, 5), "0000", "read twice"}))
              .find("is not one of the sides") != std::string::npos);
    CHECK(line_of(phones.first.open().settle(at("09:00"), {"M9", high.name, "read twice"}))
              .find("nothing to settle") != std::string::npos);
    CHECK_FALSE(phones.first.open().settle(at("09:00"), {item, high.name, ""}).ok());
    good(phones.first.open().settle(at("09:00"), {item.substr(0, 5), high.name, "read twice"}));

    phones.meet();
    const auto after = good(phones.second().to_settle({}));
    REQUIRE(after.items.size() == 1);
    CHECK_FALSE(after.items[0].open);
    CHECK(after.items[0].kept == high.entry);
    CHECK(after.items[0].settled_by == "Isolde Pell");
    CHECK(good(phones.second().paper({}, "stages", "json")).bytes.find("read twice") != std::string::npos);
    phones.check_alike();
}

TEST_CASE("a punch row is cleared under the name it has on this phone") {
    TwoPhones phones;
    good(phones.first.open().punch_add(at("08:30"), {"scuff", "BC", "", "put_right", {}}));
    good(phones.second().punch_add(at("08:30", "WP"), {"hole", "AB", "", "put_right", {}}));
    phones.meet();
    const auto rows = good(phones.first.open().punch({})).rows;
    std::vector<std::string> numbers;
    for (const auto& row : rows) {
        if (row.number == "1" || row.number == "1b") numbers.push_back(row.says);
    }
    CHECK(numbers.size() == 2);
    good(phones.first.open().punch_clear(at("09:00"), {"1B", "filled", {}}));
    phones.meet();
    for (const auto& row : good(phones.second().punch({})).rows) {
        if (row.number == "1b") CHECK_FALSE(row.open);
        if (row.number == "1") CHECK(row.open);
    }
    phones.check_alike();
}

TEST_CASE("a file that was changed is refused in one line, and nothing of it is taken") {
    TwoPhones phones;
    good(phones.second().record(at("08:31", "WP"), {"chase", "CD+0.10", {}, {"height_mm=140"}}));
    const std::string file = phones.folder.file("changed.hand");
    good(phones.second().hand({"A-07", false, file}));
    std::string bytes = bytes_of_file(file);
    const auto where = bytes.find("\"height_mm\":140");
    REQUIRE(where != std::string::npos);
    bytes[where + 13] = '6';
    write_file(file, bytes);
    const auto refused = phones.first.open().take(file);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.fault().code == Code::not_handed);
    CHECK(good(phones.first.open().to_settle({})).items.empty());
}

TEST_CASE("what a lost phone wrote and nobody had seen does not count, until somebody settles that it does") {
    TwoPhones phones;
    good(phones.second().record(at("08:31", "WP"), {"chase", "CD+0.10", {}, {"height_mm=140"}}));
    phones.give(phones.second(), phones.first.open());
    const auto later =
        good(phones.second().record(at("08:40", "WP"), {"chase", "CD+1.00", {}, {"height_mm=90"}}));
    const auto devices = good(phones.first.open().devices());
    REQUIRE(devices.size() == 2);
    const auto lost =
        std::find_if(devices.begin(), devices.end(), [](const auto& line) { return !line.is_this; });
    REQUIRE(lost != devices.end());
    CHECK_FALSE(phones.first.open().revoke(at("09:00"), "ffff", "lost").ok());
    good(phones.first.open().revoke(at("09:00"), lost->device.substr(0, 8), "left on a train"));

    phones.give(phones.second(), phones.first.open());
    const auto low = [&] {
        const auto findings = good(phones.first.open().findings({}));
        return std::any_of(findings.open.begin(), findings.open.end(),
                           [](const auto& finding) { return finding.place == "CD+1"; });
    };
    CHECK_FALSE(low());
    const auto items = good(phones.first.open().to_settle({})).items;
    REQUIRE(items.size() == 1);
    CHECK(items[0].about == "after_revocation");
    good(phones.first.open().settle(at("09:30"), {items[0].id, later.name, "phone was in the van"}));
    CHECK(low());
    CHECK(good(phones.first.open().devices()).size() == 2);
}

TEST_CASE("a phone does not report itself lost") {
    TwoPhones phones;
    const auto devices = good(phones.first.open().devices());
    CHECK(line_of(phones.first.open().revoke(at("09:00"), devices[0].device, "lost"))
              .find("that is this device") != std::string::npos);
}
