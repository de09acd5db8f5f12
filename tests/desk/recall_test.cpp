#include "tests/desk/desk_support.h"

using namespace undersheet;

namespace {

// A job under way with a known batch, and an old roof that is mended with one nobody wrote down.
struct TwoRoofs : DeskTest {
    TwoRoofs() {
        survey();
        open_the_day();
        good(record("site",
                    {"customer=Mrs Ebba Lorn", "address=4 Dyers Yard, ZZ1 3CD", "phone=01632 960555"}));
        good(record("tin", {"product=deck_adhesive", "batch=DA-77"}));
        good(use("A-07", "deck", "DA-77"));
        good(open().open_job(by("IP"), {"B-02", "old kitchen roof", "", true, "2019-08-30"}));
        good(open().open_supplement(by("IP", "09:00"), {"recall", "", "2026-06-10"}));
        good(record("tin", {"product=deck_adhesive", "batch=unknown", "label=mine"}, "", "09:05"));
        good(use("B-02", "deck", "mine"));
    }
    Result<desk::Kept> use(const char* job, const char* part, const char* tin) {
        desk::Asked asked = by("IP", "09:10");
        asked.job = job;
        return open().record(asked, {"use", "", part, {std::string("tin=") + tin, "amount_l=2.5"}});
    }
    std::string ask(const desk::RecallBy& wanted) {
        return good(open().recall(by("IP", "12:00"), wanted, "txt"));
    }
};

bool holds(const std::string& text, const char* words) { return text.find(words) != std::string::npos; }

} // namespace

TEST_CASE("a recall names the certain roof, the one that cannot be ruled out, and whom to ring") {
    TwoRoofs roofs;
    const auto paper = roofs.ask({.batch = "da 77", .notice = "letter 12 of 2 June"});
    CHECK(holds(paper, "1 roof holds it for certain. 1 more cannot be ruled out."));
    CHECK(holds(paper, "A-07. small dormer: deck adhesive, printed DA-77: deck; 2.50 l"));
    CHECK(holds(paper, "Mrs Ebba Lorn"));
    CHECK(holds(paper, "01632 960555"));
    CHECK(holds(paper, "letter 12 of 2 June"));
}

TEST_CASE(
    "repairs of a later visit are among what is asked, with the day the customer was told and visited") {
    TwoRoofs roofs;
    const auto paper = roofs.ask({.batch = "DA-77"});
    CHECK(holds(paper, "B-02. old kitchen roof: deck adhesive, printed unknown: deck; 2.50 l"));
    CHECK(holds(paper, "10 June 2026"));
    CHECK(holds(paper, "11 June 2026 (supplement 1)"));
}

TEST_CASE("a recall is refused without a batch, of an unknown product, and with the days turned round") {
    TwoRoofs roofs;
    const auto refused = [&](const desk::RecallBy& by) {
        return line_of(roofs.open().recall({}, by, "txt"));
    };
    CHECK(refused({}) == "BATCH: say which batch; as the notice prints it");
    CHECK(refused({.batch = "x", .product = "gum"})
              .starts_with("--product: 'gum' is no product; there are sheet, "));
    CHECK(refused({.batch = "x", .from = "2026-06-12", .to = "2026-06-11"}) ==
          "--from: the first day comes after the last; turn them round");
    CHECK(refused({.batch = "x", .from = "2026-06-11", .to = "2026-06-11"}) == "done");
    CHECK(refused({.batch = "x", .from = "soon"}).starts_with("--from: "));
    CHECK(roofs.open().recall({}, {.batch = "x"}, "doc").fault().code == Code::format_unknown);
}

TEST_CASE("a recall is written in every format that has no days to come") {
    TwoRoofs roofs;
    for (const char* format : {"html", "txt", "json", "csv"})
        CHECK(good(roofs.open().recall({}, {.batch = "DA-77"}, format)).size() > 100);
    CHECK(roofs.open().recall({}, {.batch = "DA-77"}, "ics").fault().code == Code::record_too_thin);
}
