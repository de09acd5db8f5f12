// What goes stale, and how long things take: each at its limit, a minute under it and a minute over it.
#include "tests/job/ready_site.h"

using namespace undersheet;
using test::held;
using test::make_ready;
using test::record_all;
using test::Site;

namespace {

std::string tick_time(const std::string& field, const std::string& clock) {
    return R"(")" + field + R"(":"2026-06-11T)" + clock + R"(:00+01:00")";
}

} // namespace

TEST_CASE("an air reading holds for bonding for 90 minutes and not a minute more") {
    for (const auto& [now, reason] : std::vector<std::pair<std::string, std::string>>{
             {"09:59", ""},
             {"10:00", ""},
             {"10:01", "the air reading of 08:30 is 91 min old, over 90 min"}}) {
        Site site;
        make_ready(site);
        record_all(site, "08:30", "08:40", "08:00");
        CHECK(held(site, "field/1", now) == reason);
    }
}

TEST_CASE("a wiped deck stays clean for two hours, and only the field asks") {
    for (const auto& [now, reason] : std::vector<std::pair<std::string, std::string>>{
             {"10:40", ""}, {"10:41", "the deck was wiped over 2 h ago"}}) {
        Site site;
        make_ready(site);
        record_all(site, "10:00", "08:40", "08:00");
        CHECK(held(site, "field/1", now) == reason);
    }
}

TEST_CASE("moisture holds for bonding for 24 hours") {
    for (const auto& [moisture, reason] : std::vector<std::pair<std::string, std::string>>{
             {"2026-06-10T10:00:00+01:00", ""},
             {"2026-06-10T09:59:00+01:00", "moisture at M1 is over 24 h old"}}) {
        Site site;
        make_ready(site);
        record_all(site, "09:30", "09:30", moisture);
        CHECK(held(site, "field/1", "10:00") == reason);
    }
}

TEST_CASE("rain after the moisture reading asks for the points near edges again") {
    Site site;
    make_ready(site);
    record_all(site, "09:30", "09:30", "08:00");
    site.record("air", "09:40",
                R"({"air_c":15,"rh_pct":50,"surface_c":16,"rain_ended":"2026-06-11T08:30:00+01:00"})");
    CHECK(held(site, "field/1", "10:00") == "rain at 08:30 since moisture was read at M1");
    site.record("moisture", "09:50", R"({"label":"M1","reading_pct":13,"board_c":18,"setting":"2"})");
    CHECK(held(site, "field/1", "10:00").empty());
}

TEST_CASE("a tin is good on its use-by day and refused the day after") {
    Site site;
    make_ready(site);
    record_all(site, "09:30", "09:30", "08:00");
    CHECK(held(site, "field/1", "10:00", R"({"tin":"F1"})").empty());
    Site late("2026-06-12");
    make_ready(late);
    late.record(
        "day", "07:00",
        R"({"date":"2026-06-12","people":["ip"],"briefing":"yes","plan":"yes","solvent_care":"yes","data_sheet":"yes"})");
    record_all(late, "09:30", "09:30", "08:00");
    CHECK(held(late, "field/1", "10:00", R"({"tin":"F1"})") == "tin F1 was use-by 11 June 2026");
}

TEST_CASE("a tin of another kind, one that froze and one nobody recorded are refused by name") {
    Site site;
    make_ready(site);
    record_all(site, "09:30", "09:30", "08:00");
    site.record("tin", "08:00", R"({"label":"F2","product":"deck_adhesive","batch":"F2","stored":"frozen"})");
    CHECK(held(site, "field/1", "10:00", R"({"tin":"C1"})") ==
          "C1 is contact adhesive; field takes deck adhesive");
    CHECK(held(site, "field/1", "10:00", R"({"tin":"F2"})") == "tin F2 was stored too cold");
    CHECK(held(site, "field/1", "10:00", R"({"tin":"F9"})") == "no tin F9 on record");
}

TEST_CASE("the range on the tin overrides the usual one") {
    Site site;
    make_ready(site);
    site.record("tin", "08:00",
                R"({"label":"F3","product":"deck_adhesive","batch":"F3","low_c":16,"high_c":25})");
    record_all(site, "09:30", "09:30", "08:00");
    CHECK(held(site, "field/1", "10:00", R"({"tin":"F3"})") ==
          "15 °C is outside the range on tin F3, 16 to 25 °C");
}

TEST_CASE("a sheet rests 30 minutes, and 60 when the air is below 10 degrees") {
    struct Case {
        std::string air_c, rested_until;
        bool short_rest;
    };
    for (const auto& [air_c, until, is_short] : std::vector<Case>{{"10", "09:30", false},
                                                                  {"10", "09:29", true},
                                                                  {"9.9", "09:59", true},
                                                                  {"9.9", "10:00", false}}) {
        Site site;
        make_ready(site);
        site.record("air", "08:30", R"({"air_c":)" + air_c + R"(,"rh_pct":50,"surface_c":16})");
        site.record("reopen", "08:40", R"({"why":"sheet moved"})", "", "lay-out");
        site.record("begin", "08:50", "{}", "", "lay-out");
        site.record("tick", "09:00", R"({"step":"unroll",)" + tick_time("rest_start", "09:00") + "}", "",
                    "lay-out");
        site.record("tick", "10:05", R"({"step":"rest",)" + tick_time("rest_end", until) + "}", "",
                    "lay-out");
        bool found = false;
        for (const auto& finding : site.judge("10:06").findings)
            found = found || finding.rule == "rest_short";
        INFO(air_c << " until " << until);
        CHECK(found == is_short);
    }
}

TEST_CASE("touch dry in less than 8 or more than 60 minutes is asked about") {
    struct Case {
        std::string clean_at, rule;
    };
    for (const auto& [clean_at, rule] : std::vector<Case>{
             {"11:07", "touch_dry_quick"}, {"11:08", ""}, {"12:00", ""}, {"12:01", "touch_dry_slow"}}) {
        Site site;
        make_ready(site);
        site.record("begin", "10:50", "{}", "", "band/AB");
        site.record("tick", "11:00", R"({"step":"coat",)" + tick_time("coat_end", "11:00") + "}", "",
                    "band/AB");
        site.record("tick", clean_at, R"({"step":"finger","finger_deck":"clean","finger_sheet":"clean"})", "",
                    "band/AB");
        std::string said;
        for (const auto& finding : site.judge("12:02").findings) {
            if (finding.rule.starts_with("touch_dry")) said = finding.rule;
        }
        CHECK(said == rule);
    }
}

TEST_CASE("an open coat outlives a pause of 60 minutes, but not one of 61, and no rain at all") {
    struct Case {
        std::string back_at, rain;
        bool spoilt;
    };
    for (const auto& [back_at, rain, spoilt] :
         std::vector<Case>{{"12:05", "no", false}, {"12:06", "no", true}, {"11:10", "yes", true}}) {
        Site site;
        make_ready(site);
        site.record("begin", "10:50", "{}", "", "band/AB");
        site.record("tick", "11:00", R"({"step":"coat",)" + tick_time("coat_end", "11:00") + "}", "",
                    "band/AB");
        site.record("pause", "11:05", R"({"why":"called away","rain":")" + rain + R"("})", "", "band/AB");
        site.record("resume", back_at, "{}", "", "band/AB");
        CHECK((site.fold("12:30").part("band/AB")->last_tick("coat") == nullptr) == spoilt);
    }
}

TEST_CASE("an early or a missing look for fire is noticed, one after an hour is not") {
    struct Case {
        std::string look, rule;
    };
    for (const auto& [look, rule] :
         std::vector<Case>{{"", "fire_look_missing"}, {"13:59", "fire_look_early"}, {"14:00", ""}}) {
        Site site;
        make_ready(site);
        std::string data = R"({"date":"2026-06-11",)" + tick_time("heat_end", "13:00");
        if (!look.empty()) data += "," + tick_time("fire_look", look);
        site.record("day", "14:30", data + "}");
        std::string said;
        for (const auto& finding : site.judge("15:00").findings) {
            if (finding.rule.starts_with("fire_look")) said = finding.rule;
        }
        CHECK(said == rule);
    }
}

TEST_CASE("a use-by date within 30 days is noted, one 31 days off is not") {
    for (const auto& [use_by, noted] :
         std::vector<std::pair<std::string, bool>>{{"2026-07-11", true}, {"2026-07-12", false}}) {
        Site site;
        make_ready(site);
        site.record("tin", "08:00",
                    R"({"label":"F4","product":"deck_adhesive","batch":"F4","use_by":")" + use_by + R"("})");
        bool found = false;
        for (const auto& finding : site.judge("09:00").findings)
            found = found || finding.id == "tin_past_date@F4";
        CHECK(found == noted);
    }
}

TEST_CASE("contact adhesive opened less than two hours before sunset is asked about, within three is near") {
    // Sunset at 52° N, 0° on 11 June 2026 is 21:21 by local clock (UTC+1), worked out by trade/daylight and checked there.
    struct Case {
        std::string coat_at, verdict;
    };
    for (const auto& [coat_at, verdict] :
         std::vector<Case>{{"18:00", ""}, {"18:40", "near"}, {"19:40", "note"}}) {
        Site site;
        make_ready(site);
        site.record("site", "07:30", R"({"latitude_deg":52,"longitude_deg":0})");
        site.record("begin", "17:50", "{}", "", "band/AB");
        site.record("tick", coat_at, R"({"step":"coat",)" + tick_time("coat_end", coat_at) + "}", "",
                    "band/AB");
        std::string said;
        for (const auto& finding : site.judge("19:50").findings) {
            if (finding.rule == "coat_near_dusk") said = finding.near ? "near" : "note";
        }
        INFO(coat_at);
        CHECK(said == verdict);
    }
}
