// How long an answer (a decision, a reason) to a finding counts: as long as nobody has said anything else about it.
#include "tests/support/site.h"

using namespace undersheet;
using test::Site;

namespace {

// As the desk writes it: pinned to the entries the finding stands on.
void answer(Site& site, const std::string& kind, const std::string& now, const std::string& finding,
            const std::string& data) {
    const auto judged = site.judge(now);
    const auto* found = judged.finding(finding);
    INFO(finding);
    REQUIRE(found != nullptr);
    std::string stands_on;
    for (const auto* entry : found->entries)
        stands_on += (stands_on.empty() ? "\"" : ",\"") + entry::hash_text(entry->hash) + "\"";
    site.record(kind, now,
                R"({"finding":")" + finding + R"(","stands_on":[)" + stands_on + "]," + data + "}");
}

bool is_open(Site& site, const std::string& now, const std::string& finding) {
    const auto judged = site.judge(now);
    const auto& open = judged.findings;
    return std::any_of(open.begin(), open.end(), [&](const job::Finding& f) { return f.id == finding; });
}

const char* const kDecision = R"("decider":"Ivo Tarrant","role":"line engineer","why":"dead telephone wire")";

} // namespace

TEST_CASE("a decision about a cable outlives a later entry about something else on the same site") {
    Site site;
    site.opened().record("site", "08:10", R"({"cable_within_3m":"yes"})");
    answer(site, "decide", "08:20", "cable_near", kDecision);
    site.record("site", "09:00", R"({"height_m":2.7})");
    CHECK_FALSE(is_open(site, "09:10", "cable_near"));
}

TEST_CASE("a decision about a cable asks again once the cable is looked at again") {
    Site site;
    site.opened().record("site", "08:10", R"({"cable_within_3m":"yes"})");
    answer(site, "decide", "08:20", "cable_near", kDecision);
    site.record("site", "09:00", R"({"cable_within_3m":"yes"})");
    CHECK(is_open(site, "09:10", "cable_near"));
}

TEST_CASE("a decision about a value asks again once that value is corrected, and not for another field") {
    Site site;
    const auto& gap =
        site.opened().record("structure", "08:10", R"({"roof_kind":"cold","air_gap_front_mm":30})");
    const std::string of = R"({"of":")" + entry::hash_text(gap.hash) + R"(","why":"misread","fields":)";
    answer(site, "decide", "08:20", "air_gap_small",
           R"("decider":"Odo Fennick","role":"surveyor","why":"no room")");
    CHECK_FALSE(is_open(site, "08:30", "air_gap_small"));
    site.record("correct", "08:40", of + R"({"joist_spacing_mm":400}})");
    CHECK_FALSE(is_open(site, "08:50", "air_gap_small"));
    site.record("correct", "09:00", of + R"({"air_gap_front_mm":20}})");
    CHECK(is_open(site, "09:10", "air_gap_small"));
}

TEST_CASE("an unknown batch holds the final look until a reason is given, and is a note from then on") {
    Site site;
    site.opened().record("tin", "08:10", R"({"label":"P1","product":"primer","batch":"unknown"})");
    const auto before = site.judge("08:20");
    const auto* found = before.finding("tin_batch_unknown@P1");
    REQUIRE(found != nullptr);
    CHECK(found->severity == method::Severity::put_right);
    answer(site, "reason", "08:30", "tin_batch_unknown@P1", R"("why":"label wiped off by a spill")");
    const auto judged = site.judge("08:40");
    found = judged.finding("tin_batch_unknown@P1");
    REQUIRE(found != nullptr);
    CHECK(found->severity == method::Severity::note);
    CHECK(found->reason != nullptr);
}

TEST_CASE(
    "a proud head found after the deck was signed puts the deck in doubt, one set below the face does not") {
    for (const auto& [proud, state] :
         {std::pair{0, job::State::signed_off}, std::pair{1, job::State::in_doubt}}) {
        Site site;
        site.opened();
        for (const char* event : {"begin", "finish", "sign"}) site.record(event, "08:10", "{}", "", "deck");
        site.record("heads", "08:20",
                    R"({"total":170,"checked":170,"proud":)" + std::to_string(proud) + R"(,"below":)" +
                        std::to_string(170 - proud) + "}");
        INFO(proud << " proud");
        CHECK(site.fold("08:30").part("deck")->state == state);
    }
}
