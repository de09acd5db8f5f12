// What two phones say apart, and how people settle it.
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

namespace {

Site lay_out_done() {
    Site site = deck_done();
    site.record("sign", "08:04", "{}", "", "deck");
    site.record("begin", "08:05", "{}", "", "lay-out");
    site.record("finish", "08:06", "{}", "", "lay-out");
    return site;
}

// All that a merge may decide, in one line.
std::string picture(const job::Job& job) {
    std::string picture;
    for (const auto& part : job.parts) {
        picture += part.name + " " + std::string(job::state_word(part.state));
        for (const auto& tip : part.tips) picture += " " + entry::short_name(tip.entry->hash);
        for (const auto& signature : part.signatures) picture += signature.struck ? " struck" : " stands";
        for (const auto& doubt : part.doubts) picture += " " + doubt;
        picture += "\n";
    }
    for (const auto& item : job.to_settle) picture += item.id + " " + job::settle_words(item) + "\n";
    for (const auto& reading : job.readings) picture += entry::short_name(reading.entry->hash) + " ";
    return picture;
}

} // namespace

TEST_CASE(
    "one phone signs and the other sends back: the part is under way, and both sides are to be settled") {
    Phones phones(2, deck_done());
    const auto signed_at = phones.record(0, "sign", "09:00", "{}", "", "deck").hash;
    const auto sent_back = phones.record(1, "send_back", "09:01", R"({"why":"dust left"})", "", "deck").hash;
    phones.meet(0, 1);
    const auto job = phones.fold(0);
    CHECK(state(job, "deck") == State::under_way);
    CHECK(job.part("deck")->signature() == nullptr);
    CHECK(job.problems.empty());
    REQUIRE(job.to_settle.size() == 1);
    const auto& item = job.to_settle.front();
    CHECK(item.about == Apart::part_state);
    CHECK(item.part == "deck");
    CHECK(item.holds);
    REQUIRE(item.sides.size() == 2);
    CHECK(std::set<entry::Hash>{item.sides[0].entry->hash, item.sides[1].entry->hash} ==
          std::set<entry::Hash>{signed_at, sent_back});
}

TEST_CASE("whoever settles says which side holds, and the signature of the other no longer stands") {
    for (const bool keep_signature : {true, false}) {
        Phones phones(2, deck_done());
        const auto signed_at = phones.record(0, "sign", "09:00", "{}", "", "deck");
        const auto sent_back = phones.record(1, "send_back", "09:01", R"({"why":"dust left"})", "", "deck");
        phones.meet(0, 1);
        const std::string item = phones.fold(0).to_settle.at(0).id;
        phones.record(1, "settle", "09:05", keep(keep_signature ? signed_at : sent_back, item));
        const auto job = phones.fold(1);
        CHECK(state(job, "deck") == (keep_signature ? State::signed_off : State::under_way));
        CHECK((job.part("deck")->signature() != nullptr) == keep_signature);
        CHECK(job.to_settle.empty());
        REQUIRE(job.settled.size() == 1);
        CHECK(job.settled[0].id == item);
        CHECK(job.settled[0].why == "we looked again");
        REQUIRE(job.part("deck")->signatures.size() == 1);
        CHECK(job.part("deck")->signatures[0].struck == !keep_signature);
    }
}

TEST_CASE("both phones sign: both signatures stand and there is nothing to settle") {
    Phones phones(2, deck_done());
    phones.record(0, "sign", "09:00", "{}", "", "deck", "ip");
    phones.record(1, "sign", "09:01", "{}", "", "deck", "wp");
    phones.meet(0, 1);
    const auto job = phones.fold(0);
    CHECK(state(job, "deck") == State::signed_off);
    CHECK(job.to_settle.empty());
    REQUIRE(job.part("deck")->signatures.size() == 2);
    CHECK_FALSE(job.part("deck")->signatures[0].struck);
    CHECK_FALSE(job.part("deck")->signatures[1].struck);
}

TEST_CASE("it is where each phone ended that is compared, not what happened on the way") {
    Phones phones(2, deck_done());
    phones.record(0, "sign", "09:00", "{}", "", "deck", "ip");
    phones.record(1, "send_back", "09:01", R"({"why":"dust left"})", "", "deck");
    phones.record(1, "finish", "09:02", "{}", "", "deck");
    phones.record(1, "sign", "09:03", "{}", "", "deck", "wp");
    phones.meet(0, 1);
    const auto job = phones.fold(0);
    CHECK(state(job, "deck") == State::signed_off);
    CHECK(job.to_settle.empty());
}

TEST_CASE("two phones that sign, send back and open again the same part end with the most careful of it") {
    Phones phones(2, deck_done());
    phones.record(0, "sign", "09:00", "{}", "", "deck", "ip");
    phones.record(0, "reopen", "09:10", R"({"why":"soft board"})", "", "deck");
    phones.record(1, "send_back", "09:01", R"({"why":"dust left"})", "", "deck");
    phones.record(1, "finish", "09:02", "{}", "", "deck");
    phones.record(1, "sign", "09:03", "{}", "", "deck", "wp");
    phones.meet(0, 1);
    const auto job = phones.fold(1);
    CHECK(state(job, "deck") == State::opened_again);
    REQUIRE(job.to_settle.size() == 1);
    CHECK(job::settle_words(job.to_settle[0]).find("opened again") != std::string::npos);
}

TEST_CASE("whatever two phones did to a part, the more careful state stands on both") {
    struct Move {
        std::string event;
        State to;
    };
    const std::vector<std::vector<Move>> ways{
        {{"sign", State::signed_off}},
        {{"send_back", State::under_way}},
        {{"sign", State::signed_off}, {"reopen", State::opened_again}},
        {{"send_back", State::under_way}, {"pause", State::paused}},
        {{"send_back", State::under_way}, {"finish", State::done}},
    };
    for (const auto& one : ways) {
        for (const auto& other : ways) {
            Phones phones(2, deck_done());
            for (const Move& move : one)
                phones.record(0, move.event, "09:00", R"({"why":"said so"})", "", "deck");
            for (const Move& move : other)
                phones.record(1, move.event, "09:00", R"({"why":"said so"})", "", "deck");
            phones.meet(0, 1);
            INFO(one.back().event << " and " << other.back().event);
            const auto job = phones.fold(0);
            CHECK(state(job, "deck") == job::more_careful(one.back().to, other.back().to));
            CHECK(job.to_settle.size() == (one.back().to == other.back().to ? 0U : 1U));
            CHECK(picture(job) == picture(phones.fold(1)));
        }
    }
}

TEST_CASE("three phones end alike, whoever meets whom first") {
    const std::vector<std::vector<std::pair<std::size_t, std::size_t>>> meetings{
        {{0, 1}, {1, 2}, {0, 2}}, {{1, 2}, {0, 2}, {0, 1}}, {{0, 2}, {0, 1}, {1, 2}}};
    std::set<std::string> pictures;
    for (const auto& order : meetings) {
        Phones phones(3, deck_done());
        phones.record(0, "sign", "09:00", "{}", "", "deck", "ip");
        phones.record(1, "send_back", "09:01", R"({"why":"dust left"})", "", "deck");
        phones.record(2, "sign", "09:02", "{}", "", "deck", "wp");
        phones.record(2, "reopen", "09:03", R"({"why":"soft board"})", "", "deck");
        for (const auto& [a, b] : order) phones.meet(a, b);
        for (std::size_t phone = 0; phone < 3; ++phone) pictures.insert(picture(phones.fold(phone)));
    }
    CHECK(pictures.size() == 1);
}

TEST_CASE("a part that is to be settled cannot be moved, and the refusal says how it is cleared") {
    Phones phones(2, deck_done());
    phones.record(0, "sign", "09:00", "{}", "", "deck");
    phones.record(1, "send_back", "09:01", R"({"why":"dust left"})", "", "deck");
    phones.meet(0, 1);
    const auto job = phones.fold(0);
    const auto judged = job::judge(job, test::default_method(), test::default_kinds());
    const auto refusal = job::refusal_of(job, judged, test::default_method(),
                                         {.part = "deck",
                                          .event = job::Event::pause,
                                          .by = "ip",
                                          .when = job.as_of,
                                          .data = *entry::read_json(R"({"why":"rain coming"})")});
    REQUIRE(refusal.held_by.size() == 1);
    CHECK(refusal.held_by[0].clears.find("settle " + job.to_settle[0].id) == 0);
    // Who moves it all the same, with a program that does not ask, moves nothing.
    phones.record(0, "pause", "09:10", R"({"why":"rain coming"})", "", "deck");
    CHECK(state(phones.fold(0), "deck") == State::under_way);
    CHECK(phones.fold(0).problems.size() == 1);
}

TEST_CASE("what one phone recorded puts in doubt what the other signed without knowing of it") {
    Phones phones(2, deck_done());
    phones.record(0, "sign", "09:00", "{}", "", "deck");
    phones.record(1, "heads", "08:50",
                  R"({"total":100,"checked":100,"below":99,"flush":0,"proud":1,"worst_mm":2})");
    CHECK(state(phones.fold(0), "deck") == State::signed_off);
    phones.meet(0, 1);
    CHECK(state(phones.fold(0), "deck") == State::in_doubt);
    phones.record(1, "confirm", "09:30", R"({"why":"set it, looked along"})", "", "deck");
    CHECK(state(phones.fold(1), "deck") == State::signed_off);
}

TEST_CASE("a part signed on one phone is in doubt when the other opened again what lies under it") {
    Phones phones(2, lay_out_done());
    phones.record(0, "reopen", "09:00", R"({"why":"soft board by the wall"})", "", "deck");
    phones.record(1, "sign", "09:01", "{}", "", "lay-out", "wp");
    phones.meet(0, 1);
    const auto job = phones.fold(1);
    CHECK(state(job, "deck") == State::opened_again);
    CHECK(state(job, "lay-out") == State::in_doubt);
}

TEST_CASE("two people who settle one item apart and differently have something new to settle") {
    Phones phones(2, deck_done());
    const auto signed_at = phones.record(0, "sign", "09:00", "{}", "", "deck");
    const auto sent_back = phones.record(1, "send_back", "09:01", R"({"why":"dust left"})", "", "deck");
    phones.meet(0, 1);
    const std::string item = phones.fold(0).to_settle.at(0).id;
    phones.record(0, "settle", "09:05", keep(signed_at, item));
    phones.record(1, "settle", "09:05", keep(sent_back, item));
    phones.meet(0, 1);
    const auto job = phones.fold(0);
    CHECK(state(job, "deck") == State::under_way);
    REQUIRE(job.to_settle.size() == 1);
    CHECK(job.to_settle[0].id != item);
}

TEST_CASE("a copied phone that goes on twice is two views like any other two") {
    Phones phones(1, deck_done());
    phones.record(0, "punch_add", "08:59", R"({"number":1,"text":"x"})");
    const std::size_t copy = phones.copy_of(0);
    phones.record(0, "sign", "09:00", "{}", "", "deck");
    phones.record(copy, "send_back", "09:01", R"({"why":"dust left"})", "", "deck");
    phones.meet(0, copy);
    CHECK(state(phones.fold(0), "deck") == State::under_way);
    CHECK(phones.fold(0).to_settle.size() == 1);
}
