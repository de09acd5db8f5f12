// What is looked at or done again: sent back, checked in full, measured again, levelled anew; and what a batch was used on.
#include "job/batches.h"
#include "job/levels.h"
#include "tests/support/site.h"

#include <algorithm>

using namespace undersheet;
using job::State;
using test::Site;

namespace {

Site edged() {
    Site site;
    site.opened("07:00");
    for (const auto& [place, kind] :
         {std::pair{"AB", "gutter"}, {"BC", "kerb"}, {"CD", "wall"}, {"DA", "kerb"}})
        site.record("edge", "07:01", std::string(R"({"kind":")") + kind + R"("})", place);
    return site;
}

void tick(Site& site, const std::string& part, const std::string& now, const std::string& data) {
    site.record("tick", now, data, "", part);
}

// A gutter edge glued, every step of it ticked.
Site band_done() {
    Site site = edged();
    site.record("begin", "08:00", "{}", "", "band/AB");
    tick(site, "band/AB", "08:10", R"({"step":"coat","coat_end":"2026-06-11T08:10:00+01:00"})");
    tick(site, "band/AB", "08:30", R"({"step":"finger","finger_deck":"clean","finger_sheet":"clean"})");
    tick(site, "band/AB", "08:31", R"({"step":"mate","mated_at":"2026-06-11T08:31:00+01:00"})");
    tick(site, "band/AB", "08:32", R"({"step":"smooth","hand_smoothed":"yes"})");
    return site;
}

State state_of(const Site& site, const std::string& part) { return site.fold("18:00").part(part)->state; }

bool speaks(const Site& site, const std::string& rule) {
    const auto spoken = test::spoken(site.judge("18:00"));
    return std::any_of(spoken.begin(), spoken.end(),
                       [&](const std::string& line) { return line.starts_with(rule); });
}

std::string clears_of(const job::Refusal& refusal) {
    return refusal.held_by.empty() ? "" : refusal.held_by.front().clears;
}

} // namespace

TEST_CASE("a part that was sent back is under way until something of it is done again") {
    Site site = band_done();
    REQUIRE(state_of(site, "band/AB") == State::done);
    site.record("send_back", "09:00", R"({"why":"fish-mouth near B"})", "", "band/AB");
    CHECK(state_of(site, "band/AB") == State::under_way);
    site.record("air", "09:01", R"({"air_c":18,"rh_pct":60})");
    CHECK(state_of(site, "band/AB") == State::under_way); // nobody touched the part
    CHECK(clears_of(site.wish("sign", "band/AB", "09:02")) == "it was sent back: tick what was done again");
    tick(site, "band/AB", "09:10", R"({"step":"smooth","hand_smoothed":"yes"})");
    CHECK(state_of(site, "band/AB") == State::done);
}

TEST_CASE("who signs too early is told which steps are left, or that it was never begun") {
    Site site = edged();
    CHECK(clears_of(site.wish("sign", "band/AB", "08:00")) == "begin band/AB first");
    site.record("begin", "08:00", "{}", "", "band/AB");
    tick(site, "band/AB", "08:10", R"({"step":"coat","coat_end":"2026-06-11T08:10:00+01:00"})");
    CHECK(clears_of(site.wish("sign", "band/AB", "08:11")) == "still to do: finger, mate, smooth");
    site.record("pause", "08:12", R"({"why":"shower","rain":"yes"})", "", "band/AB");
    CHECK(clears_of(site.wish("sign", "band/AB", "08:13")) == "resume band/AB first");
}

TEST_CASE("a coat left under a pause is not to be joined but to be resumed, which says whether it is good") {
    Site site = edged();
    site.record("begin", "08:00", "{}", "", "band/AB");
    tick(site, "band/AB", "08:10", R"({"step":"coat","coat_end":"2026-06-11T08:10:00+01:00"})");
    const auto open_coat = [&] {
        const auto refusal = site.wish("begin", "wall/CD", "08:20");
        const auto line = std::find_if(refusal.held_by.begin(), refusal.held_by.end(), [](const auto& held) {
            return held.why.find("still open") != std::string::npos;
        });
        return line == refusal.held_by.end() ? std::string() : line->clears;
    };
    CHECK(open_coat() == "join it first: one open coat a person");
    site.record("pause", "08:15", R"({"why":"shower","rain":"yes"})", "", "band/AB");
    CHECK(open_coat() == "resume band/AB first: it says whether that coat is still good");
}

TEST_CASE("a check of every head answers the samples before it, unless it left bad ones") {
    for (const bool set : {true, false}) {
        INFO((set ? "set" : "left"));
        Site site = edged();
        site.record("heads", "08:00", R"({"total":400,"checked":60,"below":45,"proud":15})");
        REQUIRE(speaks(site, "heads"));
        site.record("heads", "08:30",
                    R"({"total":400,"checked":400,"below":379,"proud":21,"reset":)" +
                        std::string(set ? "21" : "20") + "}");
        CHECK(speaks(site, "heads_bad") != set);
        site.record("heads", "09:00", R"({"total":400,"checked":60,"below":60,"other_heads":"yes"})");
        CHECK(speaks(site, "heads_bad") != set);
    }
}

TEST_CASE("a spacing that was too wide is cleared by a full check, or on the same board, and by no other") {
    struct Row {
        const char *data, *place;
        bool clears;
    };
    const Row rows[] = {
        {R"({"total":400,"checked":400,"below":400,"spacing_inside_mm":290})", "", true},
        {R"({"total":400,"checked":20,"below":20,"spacing_inside_mm":290,"board":"B4"})", "", true},
        {R"({"total":400,"checked":20,"below":20,"spacing_inside_mm":290,"board":"B5"})", "", false},
        {R"({"total":400,"checked":20,"below":20,"spacing_inside_mm":290})", "", false},
        {R"({"total":400,"checked":400,"below":400,"spacing_edge_mm":140})", "", false},
        {R"({"total":400,"checked":400,"below":400,"spacing_inside_mm":340})", "", false},
    };
    for (const Row& row : rows) {
        INFO(row.data);
        Site site = edged();
        site.record("heads", "08:00",
                    R"({"total":400,"checked":60,"below":60,"spacing_inside_mm":340,"board":"B4"})");
        REQUIRE(speaks(site, "heads_spacing_inside"));
        site.record("heads", "08:30", row.data);
        CHECK(speaks(site, "heads_spacing_inside") != row.clears);
    }
}

TEST_CASE("a level that was read again after the deck was changed is in doubt no more, in whichever set-up") {
    Site site = edged();
    site.record("level", "08:00", R"({"z_mm":30,"run":"1"})", "1.00,1.00");
    site.record("alter", "08:30", R"({"what":"replaced"})", "1.00,1.00");
    CHECK(speaks(site, "in_doubt"));
    site.record("level", "09:00", R"({"z_mm":31,"run":"2"})", "1.00,1.20");
    CHECK(speaks(site, "in_doubt")); // another place
    site.record("level", "09:01", R"({"z_mm":31,"run":"2"})", "1.00,1.00");
    CHECK_FALSE(speaks(site, "in_doubt"));
}

TEST_CASE("levels of the bare deck and of the finished roof, or of another visit, are not put together") {
    Site site = edged();
    for (const char* at : {"0.10,0.10", "1.00,1.00", "2.00,1.00"})
        site.record("level", "08:00", R"({"z_mm":30,"on":"bare"})", at);
    CHECK(job::latest_run(site.fold("18:00"))->points.size() == 3);
    site.record("level", "08:10", R"({"z_mm":31})", "0.50,0.50"); // nobody said on what
    CHECK(job::latest_run(site.fold("18:00"))->points.size() == 4);
    site.record("level", "09:00", R"({"z_mm":36,"on":"finished"})", "0.10,0.20");
    CHECK(job::latest_run(site.fold("18:00"))->points.size() == 2); // and what nobody said
}

TEST_CASE("a batch that a step names was used there, and its tin is not said to lie unused") {
    Site site = edged();
    site.record("tin", "08:00", R"({"label":"P1","product":"primer","batch":"PM-5"})");
    site.record("tin", "08:00", R"({"label":"P2","product":"lap_sealant","batch":"LS-2"})");
    site.record("begin", "08:10", "{}", "", "patches/C");
    tick(site, "patches/C", "08:11", R"({"step":"prime","primer_past_mm":8,"primer_batch":"pm 5"})");
    const auto job = site.fold("12:00");
    const auto uses = job::tin_uses(job);
    REQUIRE(uses.size() == 1);
    CHECK(uses[0].label == "P1");
    CHECK(uses[0].part == "patches/C");
    const auto found = job::batches_on(job, {.batch = "PM-5", .product = "primer"});
    REQUIRE(found.certain.size() == 1); // once, not for the tin and for the step
    CHECK(found.certain[0].parts == std::vector<std::string>{"patches/C"});
    CHECK(found.unused.empty());
    CHECK(job::batches_on(job, {.batch = "LS-2"}).unused.size() == 1);
}

TEST_CASE("a batch of which no tin was written down is found by the step that names it") {
    Site site = edged();
    site.record("begin", "08:10", "{}", "", "patches/C");
    tick(site, "patches/C", "08:11", R"({"step":"prime","primer_past_mm":8,"primer_batch":"PM-5"})");
    CHECK(job::batches_on(site.fold("12:00"), {.batch = "PM-5"}).certain.size() == 1);
}

TEST_CASE("a tin past its date that nobody used is not to be used, one near its date is used first") {
    for (const auto& [use_by, clears] :
         {std::pair{"2026-06-10", "do not use it"}, {"2026-06-11", "use it first"}}) {
        Site site = edged();
        site.record("tin", "08:00",
                    std::string(R"({"label":"C1","product":"primer","batch":"x","use_by":")") + use_by +
                        "\"}");
        const auto judged = site.judge("12:00");
        const auto* finding = judged.finding("tin_past_date@C1");
        REQUIRE(finding != nullptr);
        CHECK(finding->clears == clears);
    }
}

TEST_CASE("the customer signs or is away, not both") {
    Site site = edged();
    site.record("begin", "08:00", "{}", "", "hand-over");
    site.record("finish", "08:01", "{}", "", "hand-over");
    const auto both = [&](const char* data) {
        const auto held = site.wish("sign", "hand-over", "09:00", data).held_by;
        return std::any_of(held.begin(), held.end(), [](const auto& line) {
            return line.why == "the customer cannot sign and be away";
        });
    };
    CHECK(both(R"({"customer":"Mrs Ostrander","not_present":"by post"})"));
    CHECK_FALSE(both(R"({"customer":"Mrs Ostrander"})"));
    CHECK_FALSE(both(R"({"not_present":"by post"})"));
}
