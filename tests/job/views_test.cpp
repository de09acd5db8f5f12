// What two phones know of one part, joined: steps, tins, pauses, confirmations, hand-overs.
#include "tests/support/phones.h"

using namespace undersheet;
using job::State;
using test::deck_done;
using test::keep;
using test::Phones;
using test::Site;
using test::state;

namespace {

// Two phones that know of an edge band under way, its coat on.
Phones coated() {
    Site site;
    site.opened();
    site.record("edge", "08:01", R"({"kind":"gutter"})", "AB");
    site.record("begin", "08:10", R"({"tin":"C1"})", "", "band/AB");
    site.record("tick", "08:20", R"({"step":"coat","coat_end":"2026-06-11T08:20:00+01:00"})", "", "band/AB");
    return Phones(2, site);
}

Site deck_signed() {
    Site site = deck_done();
    site.record("sign", "08:04", "{}", "", "deck");
    return site;
}

const std::string kWhy = R"({"why":"looked again"})";

} // namespace

TEST_CASE("steps and tins that two phones noted of one part are all there after they meet, each once") {
    Phones phones = coated();
    phones.record(0, "tick", "08:30", R"({"step":"finger","finger_deck":"clean","finger_sheet":"clean"})", "",
                  "band/AB");
    phones.record(1, "use", "08:31", R"({"tin":"C2"})", "", "band/AB");
    phones.record(1, "tick", "08:32", R"({"step":"smooth","hand_smoothed":"yes"})", "", "band/AB");
    phones.meet(0, 1);
    for (const std::size_t phone : {0U, 1U}) {
        const auto job = phones.fold(phone);
        const auto& part = *job.part("band/AB");
        CHECK(part.ticks.size() == 3);
        CHECK(part.tins == std::vector<std::string>{"C1", "C2"});
        CHECK(state(job, "band/AB") == State::under_way);
        CHECK(job.to_settle.empty());
    }
}

TEST_CASE("a step that one phone undid by a new coat stays undone, whatever the other noted") {
    for (const std::size_t who : {0U, 1U}) {
        Phones phones = coated();
        phones.record(who, "tick", "08:40", R"({"step":"coat","coat_end":"2026-06-11T08:40:00+01:00"})", "",
                      "band/AB");
        phones.record(1 - who, "use", "08:41", R"({"tin":"C2"})", "", "band/AB");
        phones.meet(0, 1);
        const auto job = phones.fold(1);
        const auto& ticks = job.part("band/AB")->ticks;
        REQUIRE(ticks.size() == 2);
        CHECK(ticks[0].struck);
        CHECK_FALSE(ticks[1].struck);
    }
}

TEST_CASE("a pause that both know of ends once, where one of them went on") {
    for (const std::size_t who : {0U, 1U}) {
        Phones phones = coated();
        phones.record(0, "pause", "08:30", R"({"why":"shower","rain":"yes"})", "", "band/AB");
        phones.meet(0, 1);
        phones.record(who, "resume", "09:00", "{}", "", "band/AB");
        phones.record(1 - who, "use", "09:01", R"({"tin":"C2"})", "", "band/AB");
        phones.meet(0, 1);
        const auto job = phones.fold(1);
        const auto& part = *job.part("band/AB");
        REQUIRE(part.pauses.size() == 1);
        CHECK(part.pauses[0].to != nullptr);
        CHECK(part.pauses[0].spoilt_coat);
        CHECK(part.state == State::under_way);
    }
}

TEST_CASE("a part stands on no air reading that whoever began it did not know of") {
    Site site;
    site.opened();
    const auto known = site.record("air", "08:05", R"({"air_c":15,"rh_pct":50,"surface_c":16})").hash;
    Phones phones(2, site);
    phones.record(1, "air", "08:10", R"({"air_c":16,"rh_pct":50,"surface_c":17})");
    phones.record(0, "begin", "08:20", "{}", "", "lay-out");
    phones.meet(0, 1);
    CHECK(phones.fold(0).part("lay-out")->reading->hash == known);
}

TEST_CASE("a signature struck long before stays as it was when two later sides are settled") {
    Site site = deck_signed();
    for (const std::string event : {"reopen", "begin", "finish"})
        site.record(event, "08:10", R"({"why":"soft board"})", "", "deck");
    Phones phones(2, site);
    const auto signed_at = phones.record(0, "sign", "09:00", "{}", "", "deck");
    const auto sent_back = phones.record(1, "send_back", "09:01", R"({"why":"dust left"})", "", "deck");
    phones.meet(0, 1);
    phones.record(0, "settle", "09:05", keep(sent_back, phones.fold(0).to_settle.at(0).id));
    const auto job = phones.fold(0);
    const auto& signatures = job.part("deck")->signatures;
    REQUIRE(signatures.size() == 2);
    CHECK(signatures[0].struck_why == "soft board");
    CHECK(signatures[1].struck_why == "we looked again");
}

TEST_CASE("a signature that two people confirmed apart keeps both confirmations") {
    Phones phones(2, deck_signed());
    phones.record(0, "heads", "09:00",
                  R"({"total":100,"checked":100,"below":99,"flush":0,"proud":1,"worst_mm":2})");
    phones.meet(0, 1);
    phones.record(0, "confirm", "09:10", kWhy, "", "deck", "ip");
    phones.record(1, "confirm", "09:11", kWhy, "", "deck", "wp");
    phones.meet(0, 1);
    phones.record(0, "punch_add", "09:20", R"({"number":1,"text":"scuff"})");
    phones.record(1, "punch_add", "09:21", R"({"number":2,"text":"hole"})");
    phones.meet(0, 1);
    const auto job = phones.fold(0);
    REQUIRE(job.part("deck")->signature() != nullptr);
    CHECK(job.part("deck")->signature()->confirmed.size() == 2);
    CHECK(state(job, "deck") == State::signed_off);
}

TEST_CASE("a signature that both phones struck is struck, with one reason") {
    Phones phones(2, deck_signed());
    phones.record(0, "reopen", "09:00", R"({"why":"soft board"})", "", "deck");
    phones.record(1, "reopen", "09:01", R"({"why":"loose board"})", "", "deck");
    phones.meet(0, 1);
    const auto job = phones.fold(0);
    CHECK(state(job, "deck") == State::opened_again);
    CHECK(job.to_settle.empty());
    CHECK(job.part("deck")->signatures[0].struck_why == "soft board");
}

TEST_CASE("handed over on both phones, the first hand-over stands on both") {
    Phones phones(2, deck_signed());
    for (const std::size_t phone : {0U, 1U}) {
        for (const std::string event : {"begin", "finish", "sign"})
            phones.record(phone, event, "09:00", "{}", "", "hand-over", phone == 0 ? "ip" : "wp");
    }
    const auto first = phones.fold(0).handed_over->hash;
    const auto second = phones.fold(1).handed_over->hash;
    phones.meet(0, 1);
    CHECK(phones.fold(0).handed_over->hash == phones.fold(1).handed_over->hash);
    const auto stands = phones.fold(0).handed_over->hash;
    CHECK((stands == first || stands == second));
}
