// Readings, corrections and punch rows that two phones say apart.
#include "job/settle.h"
#include "tests/support/phones.h"

using namespace undersheet;
using job::Apart;
using job::State;
using test::deck_done;
using test::keep;
using test::Phones;
using test::Site;
using test::state;

TEST_CASE("of one height read apart both count until it is settled or read again") {
    Phones phones(2, deck_done());
    const auto high = phones.record(0, "chase", "09:00", R"({"height_mm":165})", "CD+0.10");
    phones.record(1, "chase", "09:01", R"({"height_mm":140})", "CD+0.10");
    phones.meet(0, 1);
    const auto job = phones.fold(0);
    CHECK(job.all("chase").size() == 2);
    REQUIRE(job.to_settle.size() == 1);
    CHECK(job.to_settle[0].about == Apart::reading);

    Phones read_again = phones;
    read_again.record(0, "chase", "09:10", R"({"height_mm":151})", "CD+0.10");
    CHECK(read_again.fold(0).all("chase").size() == 1);
    CHECK(read_again.fold(0).to_settle.empty());

    phones.record(0, "settle", "09:10", keep(high, job.to_settle[0].id));
    const auto settled = phones.fold(0);
    REQUIRE(settled.all("chase").size() == 1);
    CHECK(settled.all("chase")[0]->number("height_mm") == 165);
    CHECK(settled.replaced.size() == 1);
    CHECK(settled.to_settle.empty());
}

TEST_CASE("the same height read on two phones is nothing to settle") {
    Phones phones(2, deck_done());
    phones.record(0, "chase", "09:00", R"({"height_mm":165})", "CD+0.10");
    phones.record(1, "chase", "09:01", R"({"height_mm":165})", "CD+0.10");
    phones.meet(0, 1);
    CHECK(phones.fold(0).all("chase").size() == 1);
    CHECK(phones.fold(0).to_settle.empty());
}

TEST_CASE("the same day from two phones is one day, and only what they say differently is to be settled") {
    Phones phones(2, deck_done());
    phones.record(0, "day", "17:00", R"({"date":"2026-06-11","people":["ip","wp"],"closed":"yes"})");
    const auto other =
        phones.record(1, "day", "17:01", R"({"date":"2026-06-11","people":["ip","wp"],"closed":"no"})");
    phones.meet(0, 1);
    const auto job = phones.fold(0);
    CHECK(job.all("day").size() == 1);
    REQUIRE(job.to_settle.size() == 1);
    CHECK(job.to_settle[0].field == "closed");
    phones.record(1, "settle", "17:10", keep(other, job.to_settle[0].id));
    CHECK(phones.fold(1).said("day", "closed") == "no");
}

TEST_CASE("two corrections of one entry made apart are to be settled") {
    Phones phones(2, deck_done());
    const auto read = phones.record(0, "moisture", "08:30", R"({"label":"M1","reading_pct":12})");
    phones.meet(0, 1);
    const std::string of = R"({"of":")" + entry::hash_text(read.hash) + R"(","why":"typed wrong","fields":)";
    const auto one = phones.record(0, "correct", "09:00", of + R"({"reading_pct":13}})");
    phones.record(1, "correct", "09:01", of + R"({"reading_pct":21}})");
    phones.meet(0, 1);
    REQUIRE(phones.fold(0).to_settle.size() == 1);
    CHECK(phones.fold(0).to_settle[0].about == Apart::correction);
    phones.record(1, "settle", "09:10", keep(one, phones.fold(0).to_settle[0].id));
    CHECK(phones.fold(1).latest("moisture")->number("reading_pct") == 13);
}

TEST_CASE("what another phone wrote without knowing of the hand-over does not change what was handed over") {
    Phones phones(2, deck_done());
    phones.record(0, "begin", "09:00", "{}", "", "hand-over");
    phones.record(0, "finish", "09:00", "{}", "", "hand-over");
    phones.record(0, "sign", "09:01", R"({"not_present":"sent by post"})", "", "hand-over");
    phones.record(1, "chase", "09:02", R"({"height_mm":90})", "CD+0.10");
    phones.record(1, "send_back", "09:03", R"({"why":"dust"})", "", "deck");
    phones.meet(0, 1);
    const auto job = phones.fold(1);
    CHECK(job.handed_over != nullptr);
    CHECK(state(job, "deck") == State::closed);
    CHECK(job.all("chase").empty());
    REQUIRE(job.to_settle.size() == 1);
    CHECK(job.to_settle[0].about == Apart::after_hand_over);
    CHECK(job.to_settle[0].sides.size() == 3);
    CHECK_FALSE(job.to_settle[0].holds);
}

TEST_CASE("punch rows of one number from two phones keep apart, and the same words are offered as one") {
    Phones phones(2, deck_done());
    const auto one =
        phones.record(0, "punch_add", "09:00", R"({"number":1,"text":"scuff on the trim"})", "BC");
    const auto other =
        phones.record(1, "punch_add", "09:00", R"({"number":1,"text":"Scuff on the trim "})", "BC");
    phones.record(1, "punch_clear", "09:05",
                  R"({"number":1,"of":")" + entry::hash_text(other.hash) + R"(","why":"wiped"})");
    phones.meet(0, 1);
    const auto job = phones.fold(0);
    REQUIRE(job.punch.size() == 2);
    for (const auto& item : job.punch) CHECK((item.cleared != nullptr) == (item.raised->hash == other.hash));
    CHECK(job.punch[0].name == "1");
    CHECK(job.punch[1].name == "1b");
    REQUIRE(job.to_settle.size() == 1);
    CHECK(job.to_settle[0].about == Apart::punch_rows);
    CHECK_FALSE(job.to_settle[0].holds);
    phones.record(0, "punch_join", "09:10",
                  R"({"number":1,"with":1,"of":")" + entry::hash_text(one.hash) + R"(","with_of":")" +
                      entry::hash_text(other.hash) + R"("})");
    CHECK(phones.fold(0).to_settle.empty());
}

TEST_CASE("what devices wrote apart holds the final look until it is settled") {
    Phones phones(2, deck_done());
    phones.record(0, "chase", "09:00", R"({"height_mm":165})", "CD+0.10");
    phones.record(1, "chase", "09:01", R"({"height_mm":160})", "CD+0.10");
    phones.record(1, "begin", "09:02", "{}", "", "final");
    phones.record(1, "finish", "09:02", "{}", "", "final");
    phones.meet(0, 1);
    const auto job = phones.fold(0);
    const auto judged = job::judge(job, test::default_method(), test::default_kinds());
    const auto refusal = job::refusal_of(
        job, judged, test::default_method(),
        {.part = "final", .event = job::Event::sign, .by = "ip", .when = job.as_of, .data = {}});
    const bool names_it =
        std::any_of(refusal.held_by.begin(), refusal.held_by.end(), [&](const job::Held& held) {
            return held.clears.find("settle " + job.to_settle.at(0).id) == 0;
        });
    CHECK(names_it);
}
