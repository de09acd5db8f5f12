// What a part's own entries make of it, where a program that asks nobody wrote them: unknown parts and steps, tins, pauses.
#include "tests/job/ready_site.h"

using namespace undersheet;
using test::make_ready;
using test::record_all;
using test::Site;

namespace {

Site ready() {
    Site site;
    make_ready(site);
    return site;
}

bool has_problem(const job::Job& job, const std::string& wanted) {
    return std::any_of(job.problems.begin(), job.problems.end(),
                       [&](const std::string& problem) { return problem.find(wanted) == 0; });
}

job::State state(const Site& site, const std::string& part) { return site.fold("20:00").part(part)->state; }

} // namespace

TEST_CASE("a move of a part that this roof does not have is kept as a problem and moves nothing") {
    Site site = ready();
    site.record("begin", "09:00", "{}", "", "band/ZZ");
    site.record("tick", "09:01", R"({"step":"coat"})", "", "band/ZZ");
    site.record("begin", "09:02", "{}");
    site.record("use", "09:03", R"({"tin":"C1"})", "", "band/ZZ");
    const auto job = site.fold("10:00");
    CHECK(has_problem(job, "there is no part band/ZZ"));
    CHECK(job.problems.size() == 2);
    site.record("work", "09:04", R"({"step":"coat"})", "", "band/ZZ");
    CHECK(has_problem(site.fold("10:00"), "there is no step 'coat' of band/ZZ"));
}

TEST_CASE("a step that the part does not have, or that is ticked before the part was begun, does not count") {
    Site site = ready();
    site.record("tick", "09:00", R"({"step":"lay"})", "", "field/1");
    site.record("begin", "09:01", "{}", "", "field/1");
    site.record("tick", "09:02", R"({"step":"polish"})", "", "field/1");
    const auto job = site.fold("10:00");
    CHECK(job.part("field/1")->ticks.empty());
    CHECK(has_problem(job, "tick of field/1 was written while it was waiting"));
    CHECK(has_problem(job, "there is no step 'polish' of field/1"));
}

TEST_CASE("a tin is named once, whether typed with commas or listed, and one that is used up is not named by "
          "that") {
    Site site = ready();
    site.record("begin", "09:00", R"({"tin":["F1","F2"]})", "", "field/1");
    site.record("tick", "09:01", R"({"step":"lay","tin":["F2","F3"]})", "", "field/1");
    site.record("use", "09:02", R"({"tin":"F3"})", "", "field/1");
    site.record("use", "09:03", R"({"tin":"F4","ended":"yes"})", "", "field/1");
    site.record("use", "09:04", R"({"tin":"F5"})", "", "field/1");
    CHECK(site.fold("10:00").part("field/1")->tins == std::vector<std::string>{"F1", "F2", "F3", "F5"});
}

TEST_CASE("a decision to do without a step counts for that step of that part, and no other decision does") {
    Site site = ready();
    site.record("begin", "09:00", "{}", "", "field/1");
    site.record("tick", "09:01", R"({"step":"lay"})", "", "field/1");
    const auto decide = [&](const std::string& finding) {
        site.record("decide", "09:05",
                    R"({"finding":")" + finding +
                        R"(","decider":"C. Dunmoor","role":"customer","why":"agreed"})");
    };
    decide("falls@AB");
    decide("step@field/1");
    decide("step@field/9:broom");
    decide("step@field/1:polish");
    site.record("pause", "09:06", R"({"why":"tea"})", "", "field/1");
    site.record("resume", "09:07", "{}", "", "field/1");
    CHECK(state(site, "field/1") == job::State::under_way);
    decide("step@field/1:broom");
    CHECK(state(site, "field/1") == job::State::done);
}

TEST_CASE("a part that goes on after a pause stands on the air reading of then, where there is one") {
    Site site = ready();
    record_all(site, "08:30", "08:30", "08:00");
    site.record("begin", "09:00", "{}", "", "field/1");
    site.record("pause", "09:10", R"({"why":"tea"})", "", "field/1");
    const auto air = site.record("air", "09:20", R"({"air_c":17,"rh_pct":50,"surface_c":18})");
    site.record("resume", "09:30", R"({"tin":"F1"})", "", "field/1");
    site.record("air", "09:40", R"({"air_c":18,"rh_pct":50,"surface_c":19})");
    const auto job = site.fold("10:00");
    CHECK(job.part("field/1")->reading->hash == air.hash);
    CHECK(job.part("field/1")->tins == std::vector<std::string>{"F1"});
}

TEST_CASE("a coat that was spoilt in a pause takes its finger test with it") {
    Site site = ready();
    site.record("begin", "10:50", "{}", "", "band/AB");
    site.record("tick", "11:00", R"({"step":"coat","coat_end":"2026-06-11T11:00:00+01:00"})", "", "band/AB");
    site.record("tick", "11:04", R"({"step":"finger","finger_deck":"clean","finger_sheet":"clean"})", "",
                "band/AB");
    site.record("pause", "11:05", R"({"why":"shower","rain":"yes"})", "", "band/AB");
    site.record("resume", "11:10", "{}", "", "band/AB");
    const auto job = site.fold("12:00");
    CHECK(job.part("band/AB")->last_tick("coat") == nullptr);
    CHECK(job.part("band/AB")->last_tick("finger") == nullptr);
    CHECK(job.part("band/AB")->pauses.front().spoilt_coat);
}

TEST_CASE(
    "the final look is an own check when the same person signed last, and not when nobody or another did") {
    const auto own_check = [](const std::string& by, bool others_signed) {
        Site site;
        site.opened();
        site.record("edge", "08:00", R"({"kind":"gutter"})", "AB");
        for (const std::string part : {"trim-off", "final"}) {
            for (const std::string event : {"begin", "finish", "sign"}) {
                if (event == "sign" && part == "trim-off" && !others_signed) continue;
                site.record(event, "09:00", "{}", "", part, part == "final" ? by : "ip");
            }
        }
        return site.fold("10:00").part("final")->signature()->own_check;
    };
    CHECK(own_check("ip", true));
    CHECK_FALSE(own_check("wp", true));
    CHECK_FALSE(own_check("ip", false));
}

TEST_CASE("opened again, a deck counts what is recorded from then on, and what was recorded before no more") {
    Site site;
    site.opened();
    site.record("begin", "08:01", "{}", "", "deck");
    site.record("heads", "08:02", R"({"total":100,"checked":100,"below":100,"flush":0,"proud":0})");
    site.record("joint", "08:02", R"({"wipe":"clean"})");
    site.record("moisture", "08:02", R"({"label":"M1","reading_pct":12,"board_c":18,"setting":"2"})", "1,1");
    site.record("level", "08:02", R"({"z_mm":0,"run":"1"})", "0,0");
    site.record("board", "08:02", R"({"soft":"none"})");
    REQUIRE(state(site, "deck") == job::State::done);
    site.record("sign", "08:03", "{}", "", "deck");
    site.record("reopen", "08:10", R"({"why":"soft board"})", "", "deck");
    site.record("begin", "08:11", "{}", "", "deck");
    CHECK(state(site, "deck") == job::State::under_way);
    site.record("heads", "08:12", R"({"total":100,"checked":100,"below":100,"flush":0,"proud":0})");
    site.record("joint", "08:12", R"({"wipe":"clean"})");
    site.record("moisture", "08:12", R"({"label":"M1","reading_pct":13,"board_c":18,"setting":"2"})", "1,1");
    site.record("level", "08:12", R"({"z_mm":0,"run":"1"})", "0,0");
    CHECK(state(site, "deck") == job::State::under_way);
    site.record("board", "08:12", R"({"soft":"none"})");
    CHECK(state(site, "deck") == job::State::done);
}

TEST_CASE("a head counts against a signed deck when it stands proud, not when it was not looked at") {
    const auto after = [](const std::string& proud, const std::string& rain) {
        Site site = ready();
        site.record("heads", "09:00",
                    R"({"total":100,"checked":100,"below":99,"flush":0,"proud":)" + proud + "}");
        if (!rain.empty()) site.record("air", "09:01", R"({"air_c":13,"rain":")" + rain + R"("})");
        return site.fold("10:00").part("deck")->state;
    };
    CHECK(after("1", "") == job::State::in_doubt);
    CHECK(after("0", "") == job::State::signed_off);
    CHECK(after(R"("not_looked")", "") == job::State::signed_off);
    CHECK(after("0", "now") == job::State::in_doubt);
    CHECK(after("0", "none") == job::State::signed_off);
    CHECK(after("1", "now") == job::State::in_doubt);
}

TEST_CASE("rain on a deck that has its field on it puts the deck in no doubt") {
    Site site = ready();
    site.record("begin", "09:00", "{}", "", "field/1");
    site.record("air", "09:10", R"({"air_c":13,"rain":"now"})");
    CHECK(state(site, "deck") == job::State::signed_off);
}

TEST_CASE("what was opened again at one place touches only what lies there") {
    const auto opened_at = [](const std::string& place) {
        Site site = ready();
        site.record("edge", "07:01", R"({"kind":"kerb"})", "BC");
        site.record("edge", "07:01", R"({"kind":"kerb"})", "CD");
        site.record("edge", "07:01", R"({"kind":"kerb"})", "DA");
        for (const std::string part : {"field/1", "band/AB", "band/CD", "cover/AB"}) {
            site.record("begin", "08:00", "{}", "", part);
            if (part == "band/CD") site.record("pause", "08:01", R"({"why":"tea"})", "", part);
            if (part != "band/CD") site.record("finish", "08:01", "{}", "", part);
            if (part == "band/AB" || part == "field/1") site.record("sign", "08:02", "{}", "", part);
        }
        site.record("reopen", "09:00", R"({"why":"soft board"})", place, "deck");
        std::string states;
        for (const std::string part : {"band/AB", "band/CD", "cover/AB"})
            states += std::string(job::state_word(state(site, part))) + " ";
        return states;
    };
    CHECK(opened_at("AB") == "opened_again paused opened_again ");
    CHECK(opened_at("") == "opened_again opened_again opened_again ");
}

TEST_CASE("a correction of nothing, of an unknown entry and without fields changes nothing") {
    Site site = ready();
    const auto tape = site.record("tape", "08:00", R"({"m":3.2})", "AB");
    const std::string name = entry::hash_text(tape.hash);
    site.record("correct", "08:01", R"({"of":")" + name + R"(","why":"misread"})");
    site.record("correct", "08:02",
                R"({"of":")" + std::string(64, '0') + R"(","why":"misread","fields":{"m":4}})");
    const auto job = site.fold("10:00");
    CHECK(job.latest("tape")->number("m") == 3.2);
    site.record("correct", "08:03", R"({"of":")" + name + R"(","why":"misread","fields":{"m":3.3}})");
    CHECK(site.fold("10:00").latest("tape")->number("m") == 3.3);
}

TEST_CASE("what was read far from a change of the deck, or after it, is not asked for again") {
    const auto doubted = [](const std::string& at, bool read_after) {
        Site site = ready();
        for (const std::string edge : {"BC", "CD", "DA"})
            site.record("edge", "07:01", R"({"kind":"kerb"})", edge);
        for (const auto& [pair, m] : std::vector<std::pair<std::string, std::string>>{
                 {"AB", "6"}, {"BC", "6"}, {"CD", "6"}, {"DA", "6"}, {"AC", "8.485"}, {"BD", "8.485"}})
            site.record("tape", "07:02", R"({"m":)" + m + "}", pair);
        const auto read = [&] {
            site.record("moisture", "08:00", R"({"label":"M1","reading_pct":12,"board_c":18,"setting":"2"})",
                        "1,1");
        };
        if (!read_after) read();
        site.record("alter", "08:05", R"({"what":"cut","text":"one board"})", at);
        if (read_after) read();
        return site.fold("10:00").latest("moisture")->doubted;
    };
    CHECK(doubted("1,2.5", false));        // 1.5 m away, the reach
    CHECK_FALSE(doubted("1,2.51", false)); // just over it
    CHECK(doubted("", false));             // nobody said where
    CHECK_FALSE(doubted("1,1", true));
}

TEST_CASE("a job from paper is closed in every part but those it never needed") {
    Site site;
    site.record("open", "08:00",
                R"({"ref":"T-2","roof":"old roof","from_paper":"yes","finished":"2019-08-30"})");
    site.record("edge", "08:00", R"({"kind":"wall"})", "AB");
    site.record("abutment", "08:00", R"({"type":"cladding"})", "AB");
    const auto job = site.fold("10:00");
    CHECK(job.part("deck")->state == job::State::closed);
    CHECK(job.part("chase/AB")->state == job::State::not_needed);
    CHECK(job.handed_over == job.opened);
}

TEST_CASE("of no entries at all a job is made in which nothing was said") {
    const auto job = job::fold({}, test::default_method(), test::default_kinds(),
                               *entry::parse_time("2026-06-11T08:00:00+01:00"));
    REQUIRE(job.ok());
    CHECK(job->id.empty());
    CHECK(job->opened == nullptr);
}
