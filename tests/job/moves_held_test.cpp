// What holds leaving a part out, taking it back, confirming it; and who may move anything.
#include "tests/job/ready_site.h"

using namespace undersheet;
using test::all_held;
using test::make_ready;
using test::Site;

namespace {

using Lines = std::vector<std::string>;

Site ready() {
    Site site;
    make_ready(site);
    return site;
}

} // namespace

TEST_CASE("a part is left out for a reason of ten letters, and somebody agreed; nine are too few") {
    const auto held = [](const std::string& data) {
        Site site = ready();
        return all_held(site.wish("leave_out", "plate/AB", "09:00", data));
    };
    const std::string no_reason = "no reason given; say why, in at least 10 letters (--why)";
    const std::string nobody = "nobody named who agreed; name who agreed (agreed_by=)";
    CHECK(held("{}") == Lines{no_reason, nobody});
    CHECK(held(R"({"why":"too short","agreed_by":"C. Dunmoor"})") == Lines{no_reason});
    CHECK(held(R"({"why":"fascia new","agreed_by":"  "})") == Lines{nobody});
    CHECK(held(R"({"why":"fascia new","agreed_by":"C. Dunmoor"})").empty());
}

TEST_CASE("a deck is never left out") {
    Site site;
    site.opened();
    const auto held = all_held(
        site.wish("leave_out", "deck", "09:00", R"({"why":"it looks sound","agreed_by":"C. Dunmoor"})"));
    CHECK(held == Lines{"deck is never left out; do it, and sign it"});
}

TEST_CASE("a part that was left out is not taken back under one that is signed on top of it") {
    Site site = ready();
    site.record("leave_out", "08:00", R"({"why":"fascia new","agreed_by":"C. Dunmoor"})", "", "plate/AB");
    site.record("edge", "07:01", R"({"kind":"kerb"})", "BC");
    for (const std::string part : {"field/1", "band/AB", "band/BC"}) {
        for (const std::string event : {"begin", "finish", "sign"})
            site.record(event, "08:10", "{}", "", part);
    }
    const std::string why = R"({"why":"wanted after all"})";
    CHECK(all_held(site.wish("take_back", "plate/AB", "09:00", why)) ==
          Lines{"band, edge AB is signed on top; reopen band/AB first"});
    site.record("reopen", "09:05", why, "", "band/AB");
    site.act("take_back", "plate/AB", "09:10", why);
}

TEST_CASE("pausing, sending back and opening again need a reason of three letters") {
    Site site = ready();
    site.record("begin", "08:00", "{}", "", "field/1");
    const Lines none{"no reason given; say why, in at least 3 letters (--why)"};
    CHECK(all_held(site.wish("pause", "field/1", "08:10", R"({"why":"no"})")) == none);
    CHECK(all_held(site.wish("reopen", "deck", "08:10")) == none);
    site.act("pause", "field/1", "08:10", R"({"why":"tea"})");
}

TEST_CASE("somebody signs until their last day on the book, and nobody signs who is not on the job") {
    for (const auto& [now, held] : std::vector<std::pair<std::string, Lines>>{
             {"2026-06-11T23:00:00+01:00", {}},
             {"2026-06-12T07:00:00+01:00",
              {"Wren Pell left on 11 June 2026; somebody who is on the job signs"}}}) {
        Site site = ready();
        site.record("person", "07:05", R"({"person":"wp","role":"installer","ends":"2026-06-11"})");
        for (const std::string event : {"begin", "finish"}) site.record(event, "08:00", "{}", "", "plate/AB");
        INFO(now);
        const auto lines = all_held(site.wish("sign", "plate/AB", now, "{}", "wp"));
        CHECK(lines.size() == held.size());
    }
    Site site = ready();
    for (const std::string event : {"begin", "finish"}) site.record(event, "08:00", "{}", "", "plate/AB");
    CHECK(all_held(site.wish("sign", "plate/AB", "09:00", "{}", "nobody")) ==
          Lines{"this person is not on the job; add them (people add)"});
}

TEST_CASE("a part in doubt is confirmed once what put it in doubt is signed again") {
    Site site = ready();
    for (const std::string event : {"begin", "finish", "sign"})
        site.record(event, "08:10", "{}", "", "field/1");
    site.record("use", "08:11", R"({"tin":"F1"})", "", "field/1");
    site.record("reopen", "08:20", R"({"why":"sheet moved"})", "", "lay-out");
    REQUIRE(site.fold("08:30").part("field/1")->state == job::State::in_doubt);
    const std::string why = R"({"why":"looked at it"})";
    CHECK(all_held(site.wish("confirm", "field/1", "08:30", why)) ==
          Lines{"lay out opened again; sign lay-out"});
    for (const std::string event : {"begin", "finish"}) site.record(event, "08:40", "{}", "", "lay-out");
    CHECK(all_held(site.wish("confirm", "field/1", "08:45", why)) ==
          Lines{"lay out not signed; sign lay-out"});
    site.record("sign", "08:50", "{}", "", "lay-out");
    site.act("confirm", "field/1", "08:55", why);
}

TEST_CASE("a chase that was left out is not taken back under a final look that is signed") {
    Site site = ready();
    site.record("edge", "07:01", R"({"kind":"wall"})", "BC");
    site.record("leave_out", "08:00", R"({"why":"not wanted","agreed_by":"C. Dunmoor"})", "", "chase/BC");
    for (const std::string event : {"begin", "finish", "sign"})
        site.record(event, "08:10", "{}", "", "final");
    CHECK(all_held(site.wish("take_back", "chase/BC", "09:00", R"({"why":"wanted after all"})")) ==
          Lines{"final is signed on top; reopen final first"});
}

TEST_CASE(
    "an opening that was left out is not taken back under a patch of its section, and no other holds it") {
    for (const auto& [patch, held] : std::vector<std::pair<std::string, Lines>>{
             {"patches/R1-1", {"patch R1-1 is signed on top; reopen patches/R1-1 first"}},
             {"patches/R2-1", {}}}) {
        Site site = ready();
        site.record("opening", "07:03", R"({"label":"R1","type":"rooflight"})", "1.5,1.5");
        site.record("opening", "07:03", R"({"label":"R2","type":"rooflight"})", "4.5,4.5");
        site.record("section", "07:04", R"({"label":"1","edges":["AB"],"holds":["R1"],"order":1})");
        site.record("section", "07:04", R"({"label":"2","edges":["CD"],"holds":["R2"],"order":2})");
        site.record("leave_out", "08:00", R"({"why":"not wanted","agreed_by":"C. Dunmoor"})", "",
                    "openings/R1");
        for (const std::string event : {"begin", "finish", "sign"})
            site.record(event, "08:10", "{}", "", patch);
        INFO(patch);
        CHECK(all_held(site.wish("take_back", "openings/R1", "09:00", R"({"why":"wanted after all"})")) ==
              held);
    }
}
