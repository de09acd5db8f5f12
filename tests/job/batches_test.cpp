#include "job/batches.h"

#include "tests/support/site.h"

using namespace undersheet;
using job::alike;
using job::Alike;
using test::Site;

namespace {

entry::Date day(const char* text) { return *entry::parse_date(text); }

// Two tins used on the deck, one never used, a primer without a batch, a sheet.
Site roof() {
    Site site;
    site.opened();
    for (const auto& [place, kind] :
         {std::pair{"AB", "gutter"}, {"BC", "kerb"}, {"CD", "wall"}, {"DA", "kerb"}})
        site.record("edge", "08:10", std::string(R"({"kind":")") + kind + R"("})", place);
    site.record("tin", "08:20", R"({"label":"one","product":"deck_adhesive","batch":"DK-61"})");
    site.record("tin", "08:21", R"({"label":"two","product":"deck_adhesive","batch":"DK-6l"})");
    site.record("tin", "08:22", R"({"label":"three","product":"primer","batch":"unknown"})");
    site.record("tin", "08:23", R"({"label":"four","product":"contact_adhesive","batch":"dk 61"})");
    for (const char* label : {"one", "two", "three"})
        site.record("use", "09:00", std::string(R"({"tin":")") + label + R"(","amount_l":1.25})", "", "deck");
    site.record("use", "09:05", R"({"tin":"one","amount_l":0.5})", "", "band/AB");
    return site;
}

std::vector<std::string> printed(const std::vector<job::BatchFound>& found) {
    std::vector<std::string> all;
    for (const auto& one : found) all.push_back(one.printed);
    return all;
}

job::BatchesOn asked(const job::BatchWanted& wanted) {
    static const job::Job kJob = roof().fold("12:00");
    return job::batches_on(kJob, wanted);
}

} // namespace

TEST_CASE("capitals, blanks and hyphens do not tell batches apart; one character does, and is told of") {
    struct Row {
        const char *asked, *printed;
        Alike how;
    };
    const Row rows[] = {
        {"DK-61", "DK-61", Alike::same},         {"DK-61", "dk 61", Alike::same},
        {"DK-61", "DK61", Alike::same},          {"DK-61", "DK-6l", Alike::nearly},
        {"DK-61", "DK-6", Alike::nearly},        {"DK-61", "DK-611", Alike::nearly},
        {"DK-61", "DX-61", Alike::nearly},       {"DK-61", "DX-62", Alike::not_at_all},
        {"DK-61", "DK-6112", Alike::not_at_all}, {"O0I1", "0010", Alike::not_at_all},
        {"SB-0I", "58-01", Alike::nearly},       {"", "DK-61", Alike::not_at_all},
        {"DK-61", "", Alike::not_at_all},        {" - ", "--", Alike::not_at_all},
    };
    for (const Row& row : rows) {
        INFO(row.asked << " and " << row.printed);
        CHECK(alike(row.asked, row.printed) == row.how);
        CHECK(alike(row.printed, row.asked) == row.how);
    }
}

TEST_CASE("a batch is certain on the parts it went into, with what was used as far as it was written down") {
    const auto found = asked({.batch = "dk61"});
    REQUIRE(found.certain.size() == 1);
    CHECK(found.certain[0].parts == std::vector<std::string>{"deck", "band/AB"});
    CHECK(found.certain[0].amount_l == Approx(1.75));
    CHECK(printed(found.nearly) == std::vector<std::string>{"DK-6l"});
    CHECK(printed(found.unused) == std::vector<std::string>{"dk 61"});
}

TEST_CASE(
    "an unknown batch leaves a roof open from the first day of the window to its last, and not a day more") {
    const auto is_open = [](const char* from, const char* to) {
        return !asked({.batch = "PR-2", .from = day(from), .to = day(to)}).open.empty();
    };
    CHECK(is_open("2026-06-11", "2026-06-11"));
    CHECK_FALSE(is_open("2026-06-12", "2026-06-30"));
    CHECK_FALSE(is_open("2026-06-01", "2026-06-10"));
    CHECK(asked({.batch = "PR-2", .product = "primer"}).open.size() == 1);
    CHECK(asked({.batch = "PR-2", .product = "deck_adhesive"}).open.empty());
}

TEST_CASE("over all roofs only the product that had the batch stays open, and no roof stands twice") {
    const job::BatchFound primer{"unknown", "primer", nullptr, {"patches/D"}, {}};
    const job::BatchFound glue{"", "deck_adhesive", nullptr, {"field/1"}, {}};
    const job::BatchFound hit{"DK-61", "deck_adhesive", nullptr, {"field/1"}, {}};
    std::vector<job::BatchesOn> roofs(3);
    roofs[0].certain = {hit};
    roofs[0].open = {glue};
    roofs[1].open = {primer, glue};
    roofs[2].open = {primer};
    job::rule_out(roofs, {.batch = "DK-61"});
    CHECK(roofs[0].open.empty());
    REQUIRE(roofs[1].open.size() == 1);
    CHECK(roofs[1].open[0].product == "deck_adhesive");
    CHECK(roofs[2].open.empty());
}

TEST_CASE("where no roof is certain every unknown batch stays open") {
    std::vector<job::BatchesOn> roofs(1);
    roofs[0].open = {{"unknown", "primer", nullptr, {"patches/D"}, {}}};
    job::rule_out(roofs, {.batch = "DK-61"});
    CHECK(roofs[0].open.size() == 1);
}

TEST_CASE("a sheet that was delivered and not laid went into nothing") {
    Site site = roof();
    site.record("sheet", "08:30", R"({"batch":"EP-2290"})");
    const auto before = site.fold("12:00");
    CHECK(job::batches_on(before, {.batch = "ep2290"}).certain.empty());
    CHECK(job::batches_on(before, {.batch = "ep2290"}).unused.size() == 1);
}
