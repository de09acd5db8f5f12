#include "job/parts.h"
#include "tests/support/site.h"

#include <catch2/catch.hpp>

#include <map>
#include <set>

using namespace undersheet::job;

namespace {

using S = State;
using E = Event;
using G = Guard;

struct Wanted {
    State to;
    std::set<Guard> guards;
};

// The table of practice, written down a second time: anything that is not here must not move.
const std::map<std::pair<State, Event>, Wanted>& wanted() {
    static const std::set<Guard> begin{G::settled, G::earlier_signed, G::no_stop, G::safety, G::reading,
                                       G::tin,     G::side_by_side,   G::on_job};
    static const std::map<std::pair<State, Event>, Wanted> rows{
        {{S::waiting, E::begin}, {S::under_way, begin}},
        {{S::ready, E::begin}, {S::under_way, begin}},
        {{S::opened_again, E::begin}, {S::under_way, begin}},
        {{S::paused, E::resume}, {S::under_way, begin}},
        {{S::waiting, E::leave_out}, {S::left_out, {G::settled, G::may_leave_out, G::reason, G::agreed}}},
        {{S::ready, E::leave_out}, {S::left_out, {G::settled, G::may_leave_out, G::reason, G::agreed}}},
        {{S::left_out, E::take_back}, {S::waiting, {G::settled, G::reason, G::nothing_on_top}}},
        {{S::under_way, E::tick}, {S::under_way, {G::settled, G::step_order, G::side_by_side, G::on_job}}},
        {{S::under_way, E::pause}, {S::paused, {G::settled, G::reason}}},
        {{S::under_way, E::finish}, {S::done, {G::steps_complete}}},
        {{S::done, E::tick}, {S::under_way, {G::settled, G::step_order, G::side_by_side, G::on_job}}},
        {{S::done, E::sign}, {S::signed_off, {G::settled, G::earlier_signed, G::sign_clear, G::on_job}}},
        {{S::done, E::send_back}, {S::under_way, {G::settled, G::reason}}},
        {{S::signed_off, E::doubt}, {S::in_doubt, {}}},
        {{S::in_doubt, E::confirm}, {S::signed_off, {G::settled, G::reason, G::cause_settled, G::on_job}}},
        {{S::signed_off, E::reopen}, {S::opened_again, {G::settled, G::reason}}},
        {{S::in_doubt, E::reopen}, {S::opened_again, {G::settled, G::reason}}},
    };
    return rows;
}

State state_at(int i) { return static_cast<State>(i); }
Event event_at(int i) { return static_cast<Event>(i); }

} // namespace

TEST_CASE("every state and every event moves as the table says and in no other way") {
    for (int s = 0; s < kStates; ++s) {
        for (int e = 0; e < kEvents; ++e) {
            if (event_at(e) == E::close) continue;
            INFO(state_word(state_at(s)) << " + " << event_word(event_at(e)));
            const auto row = wanted().find({state_at(s), event_at(e)});
            const Move move = transition(state_at(s), event_at(e), Facts::all(true));
            CHECK(move.exists == (row != wanted().end()));
            if (row == wanted().end())
                CHECK_FALSE(move.to.has_value());
            else
                CHECK(move.to == row->second.to);
        }
    }
}

TEST_CASE("a move needs every one of its guards, whatever the others say") {
    for (const auto& [from, row] : wanted()) {
        const std::vector<Guard> guards(row.guards.begin(), row.guards.end());
        for (unsigned failing = 0; failing < (1U << guards.size()); ++failing) {
            Facts facts = Facts::all(true);
            std::set<Guard> failed;
            for (std::size_t g = 0; g < guards.size(); ++g) {
                if ((failing & (1U << g)) == 0) continue;
                facts.set(guards[g], false);
                failed.insert(guards[g]);
            }
            const Move move = transition(from.first, from.second, facts);
            INFO(state_word(from.first) << " + " << event_word(from.second) << ", failing set " << failing);
            CHECK(move.to.has_value() == failed.empty());
            CHECK(std::set<Guard>(move.failed.begin(), move.failed.end()) == failed);
        }
    }
}

TEST_CASE("a guard that a move does not name cannot hold it") {
    for (const auto& [from, row] : wanted()) {
        Facts facts = Facts::all(false);
        for (const Guard guard : row.guards) facts.set(guard, true);
        INFO(state_word(from.first) << " + " << event_word(from.second));
        CHECK(transition(from.first, from.second, facts).to == row.to);
    }
}

TEST_CASE("the hand-over closes a part in any state, and nothing leads out of closed") {
    for (int s = 0; s < kStates; ++s) {
        if (state_at(s) == S::closed) continue;
        CHECK(transition(state_at(s), E::close, Facts::all(false)).to == S::closed);
    }
    for (int e = 0; e < kEvents; ++e)
        CHECK_FALSE(transition(S::closed, event_at(e), Facts::all(true)).exists);
}

TEST_CASE("of two different states the more careful one stands, whichever is named first") {
    // practice: closed > opened again > in doubt > paused > under way > done > signed > left out > waiting
    const std::vector<State> careful{S::closed, S::opened_again, S::in_doubt, S::paused, S::under_way,
                                     S::done,   S::signed_off,   S::left_out, S::waiting};
    for (std::size_t a = 0; a < careful.size(); ++a) {
        for (std::size_t b = 0; b < careful.size(); ++b) {
            CHECK(more_careful(careful[a], careful[b]) == careful[std::min(a, b)]);
        }
    }
}

TEST_CASE("every event word leads back to its event") {
    for (int e = 0; e < kEvents; ++e) CHECK(event_of(event_word(event_at(e))) == event_at(e));
    CHECK_FALSE(event_of("air").has_value());
}

// The walk of a part through its ticks, as the replay makes it.
namespace {

undersheet::test::Site on_a_gutter_edge() {
    undersheet::test::Site site;
    site.opened();
    site.record("edge", "08:00", R"({"kind":"gutter"})", "AB");
    site.record("begin", "10:00", "{}", "", "band/AB");
    const std::vector<std::string> steps{R"({"step":"coat","coat_end":"2026-06-11T10:10:00+01:00"})",
                                         R"({"step":"finger","finger_deck":"clean","finger_sheet":"clean"})",
                                         R"({"step":"mate","mated_at":"2026-06-11T10:25:00+01:00"})",
                                         R"({"step":"smooth","hand_smoothed":"no"})"};
    for (const auto& step : steps) site.act("tick", "band/AB", "10:30", step);
    return site;
}

} // namespace

TEST_CASE("a step of a done part can be put right and ticked again, and the part is still done") {
    auto site = on_a_gutter_edge();
    REQUIRE(site.fold("10:31").part("band/AB")->state == S::done);
    site.act("tick", "band/AB", "10:35", R"({"step":"smooth","hand_smoothed":"yes"})");
    const auto job = site.fold("10:36");
    CHECK(job.part("band/AB")->state == S::done);
    CHECK(job.part("band/AB")->last_tick("smooth")->data.text_of("hand_smoothed") == "yes");
}

TEST_CASE("a new coat on a done part takes it back to work until it is tested and mated again") {
    auto site = on_a_gutter_edge();
    site.act("tick", "band/AB", "10:40", R"({"step":"coat","coat_end":"2026-06-11T10:40:00+01:00"})");
    CHECK(site.fold("10:41").part("band/AB")->state == S::under_way);
    const auto early =
        site.wish("tick", "band/AB", "10:42", R"({"step":"mate","mated_at":"2026-06-11T10:42:00+01:00"})");
    REQUIRE(early.held_by.size() == 1);
    CHECK(early.held_by.front().why == "no clean finger test on both faces after the last coat");
}
