// What is to be settled, in words, and what settling it does.
#include "job/guards.h"
#include "job/settle.h"
#include "tests/support/phones.h"

#include <algorithm>

using namespace undersheet;
using test::deck_done;
using test::keep;
using test::Phones;
using test::Site;

namespace {

Site deck_signed() {
    Site site = deck_done();
    site.record("sign", "08:04", "{}", "", "deck");
    return site;
}

const std::string kWhy = R"({"why":"looked again"})";

std::string words_of_only(const job::Job& job) {
    REQUIRE(job.to_settle.size() == 1);
    return job::settle_words(job.to_settle[0]);
}

std::vector<std::string> held_of(const job::Job& job, const std::string& event, const std::string& part) {
    const auto judged = job::judge(job, test::default_method(), test::default_kinds());
    std::vector<std::string> why;
    for (const auto& held : job::refusal_of(job, judged, test::default_method(),
                                            {.part = part,
                                            .event = *job::event_of(event),
                                            .by = "ip",
                                            .when = job.as_of,
                                            .data = *entry::read_json(kWhy)})
                                .held_by)
        why.push_back(held.why);
    return why;
}

} // namespace

TEST_CASE("what was written elsewhere before the hand-over was known is listed, and settled when somebody "
          "says so") {
    Phones phones(2, deck_signed());
    for (const std::string event : {"begin", "finish", "sign"})
        phones.record(0, event, "09:00", "{}", "", "hand-over");
    const entry::Entry handed = phones.known_to(0).back();
    phones.record(1, "tape", "09:05", R"({"m":3.2})", "AB");
    phones.meet(0, 1);
    CHECK(words_of_only(phones.fold(0)) ==
          "1 entry written on another device that did not know of the hand-over");
    CHECK(held_of(phones.fold(0), "reopen", "deck").empty() == false);
    phones.record(1, "settle", "09:10", keep(handed, phones.fold(1).to_settle[0].id));
    CHECK(phones.fold(1).to_settle.empty());
    CHECK(phones.fold(1).settled.size() == 1);
}

TEST_CASE("a field, a reading and a correction that were said apart are each named in words") {
    Phones phones(2, deck_done());
    phones.record(0, "site", "09:00", R"({"fragile":"none"})");
    phones.record(1, "site", "09:00", R"({"fragile":"covered"})");
    phones.meet(0, 1);
    CHECK(words_of_only(phones.fold(0)) == "site: fragile said differently on 2 devices");
    phones.record(0, "site", "09:10", R"({"fragile":"covered"})"); // knows of both
    CHECK(phones.fold(0).to_settle.empty());

    Phones read(2, deck_done());
    read.record(0, "chase", "09:00", R"({"height_mm":165})", "AB+0.10");
    read.record(1, "chase", "09:00", R"({"height_mm":140})", "AB+0.10");
    read.meet(0, 1);
    CHECK(words_of_only(read.fold(0)) == "chase at AB+0.10: read differently on 2 devices");

    Site site = deck_done();
    const std::string tape = entry::hash_text(site.record("tape", "08:10", R"({"m":3.2})", "AB").hash);
    Phones corrected(2, site);
    for (const std::size_t phone : {0U, 1U}) {
        corrected.record(phone, "correct", "09:00",
                         R"({"of":")" + tape + R"(","why":"misread","fields":{"m":)" +
                             (phone == 0 ? "3.3" : "3.4") + "}}");
    }
    corrected.meet(0, 1);
    CHECK(words_of_only(corrected.fold(0)).find("one entry corrected differently on 2 devices") !=
          std::string::npos);
}

TEST_CASE(
    "the same words on the punch list from two phones are offered as one, from one phone they are two") {
    Phones phones(2, deck_done());
    phones.record(0, "punch_add", "09:00", R"({"number":1,"text":"Scuff "})", "AB");
    phones.record(0, "punch_add", "09:01", R"({"number":2,"text":"scuff"})", "AB");
    phones.record(1, "punch_add", "09:02", R"({"number":3,"text":"scuff"})", "BC");
    phones.record(1, "punch_add", "09:03", R"({"number":4,"text":"scuff"})", "AB", "deck");
    phones.meet(0, 1);
    CHECK(phones.fold(0).to_settle.empty());
    phones.record(1, "punch_add", "09:04", R"({"number":5,"text":"scuff"})", "AB");
    phones.meet(0, 1);
    const auto job = phones.fold(0);
    REQUIRE(job.to_settle.size() == 2); // with either of the two
    CHECK(job::settle_words(job.to_settle[0]) == "punch rows 1 and 5 say the same");
    for (const std::string event : {"begin", "finish"}) phones.record(0, event, "09:04", "{}", "", "final");
    const auto held = held_of(phones.fold(0), "sign", "final");
    CHECK_FALSE(held.empty());
    for (const auto& why : held) CHECK(why.find("punch rows") == std::string::npos);
    phones.record(0, "punch_join", "09:05", R"({"number":1,"with":5})");
    phones.record(0, "punch_join", "09:06", R"({"number":2,"with":2})");
    phones.record(0, "punch_join", "09:07", R"({"number":2,"with":77})");
    CHECK(phones.fold(0).to_settle.empty());
    phones.record(0, "punch_clear", "09:08", R"({"number":77,"why":"none of that number"})");
    for (const auto& row : phones.fold(0).punch) CHECK(row.cleared == nullptr);
}

TEST_CASE("a reading is settled by who says which side holds; two who say the same agree, two who do not "
          "leave it open") {
    for (const bool agree : {true, false}) {
        Phones phones(2, deck_done());
        const auto high = phones.record(0, "chase", "09:00", R"({"height_mm":165})", "AB+0.10");
        const auto low = phones.record(1, "chase", "09:00", R"({"height_mm":140})", "AB+0.10");
        phones.meet(0, 1);
        const std::string item = phones.fold(0).to_settle.at(0).id;
        phones.record(0, "settle", "09:05", keep(high, item));
        phones.record(1, "settle", "09:05", keep(agree ? high : low, item));
        phones.meet(0, 1);
        CHECK(phones.fold(0).to_settle.size() == (agree ? 0U : 1U));
        phones.record(0, "settle", "09:10", keep(low, item)); // knows of both
        CHECK(phones.fold(0).to_settle.empty());
        CHECK(phones.fold(0).latest("chase")->number("height_mm") == 140);
    }
}

TEST_CASE("settling that names none of the sides, or another item, settles nothing") {
    Phones phones(2, deck_done());
    const auto high = phones.record(0, "chase", "09:00", R"({"height_mm":165})", "AB+0.10");
    phones.record(1, "chase", "09:00", R"({"height_mm":140})", "AB+0.10");
    const auto mine = phones.record(0, "sign", "09:01", "{}", "", "deck");
    phones.record(1, "send_back", "09:01", R"({"why":"dust left"})", "", "deck");
    phones.meet(0, 1);
    const auto open = phones.fold(0).to_settle;
    REQUIRE(open.size() == 2);
    const auto part =
        std::find_if(open.begin(), open.end(), [](const auto& item) { return !item.part.empty(); });
    const auto reading =
        std::find_if(open.begin(), open.end(), [](const auto& item) { return item.part.empty(); });
    REQUIRE(part != open.end());
    REQUIRE(reading != open.end());
    phones.record(0, "settle", "09:05", keep(high, part->id));
    phones.record(0, "settle", "09:06", keep(mine, reading->id));
    phones.record(0, "settle", "09:07", keep(mine, "M00000000"));
    const auto job = phones.fold(0);
    CHECK(job.to_settle.size() == 2);
    CHECK(std::any_of(job.problems.begin(), job.problems.end(), [](const auto& problem) {
        return problem.find("settle of deck names none of the sides") == 0;
    }));
    CHECK_FALSE(job::settle_item_meant(job, "M0").ok());
    CHECK(job::settle_item_meant(job, part->id).ok());
}

TEST_CASE(
    "what a lost phone wrote stays out when it is settled so, and comes back up to the entry that is kept") {
    Phones phones(2, deck_done());
    const auto lost = phones.record(1, "tape", "09:00", R"({"m":3.2})", "AB");
    phones.record(1, "tape", "09:01", R"({"m":2.1})", "BC");
    const auto revoked =
        phones.record(0, "revoke", "09:05", R"({"device":")" + lost.device + R"(","why":"left on a train"})");
    phones.meet(0, 1);
    CHECK(words_of_only(phones.fold(0)) == "2 entries from a device after it was reported lost, not counted");
    CHECK(phones.fold(0).all("tape").empty());
    const std::string item = phones.fold(0).to_settle[0].id;
    Phones out = phones;
    out.record(0, "settle", "09:10", keep(revoked, item));
    CHECK(out.fold(0).all("tape").empty());
    CHECK(out.fold(0).to_settle.empty());
    phones.record(0, "settle", "09:10", keep(lost, item));
    CHECK(phones.fold(0).all("tape").size() == 1);
    CHECK(phones.fold(0).to_settle.empty());
}
