#include "job/parts.h"

#include <algorithm>

namespace undersheet::job {
namespace {

struct Row {
    State from{};
    Event event{};
    State to{};
    std::vector<Guard> guards = {};
};

// The whole machine. A move that is not here does not exist.
const std::vector<Row>& table() {
    using S = State;
    using E = Event;
    using G = Guard;
    static const std::vector<Guard> begin{G::settled, G::earlier_signed, G::no_stop, G::safety, G::reading,
                                          G::tin,     G::side_by_side,   G::on_job};
    static const std::vector<Row> rows{
        {S::waiting, E::begin, S::under_way, begin},
        {S::opened_again, E::begin, S::under_way, begin},
        {S::paused, E::resume, S::under_way, begin},
        {S::waiting, E::leave_out, S::left_out, {G::settled, G::may_leave_out, G::reason, G::agreed}},
        {S::left_out, E::take_back, S::waiting, {G::settled, G::reason, G::nothing_on_top}},
        {S::under_way, E::tick, S::under_way, {G::settled, G::step_order, G::side_by_side, G::on_job}},
        {S::under_way, E::pause, S::paused, {G::settled, G::reason}},
        {S::under_way, E::finish, S::done, {G::steps_complete}},
        // Done again by itself when every must-do step still stands; a new coat takes back the finger test and the mating.
        {S::done, E::tick, S::under_way, {G::settled, G::step_order, G::side_by_side, G::on_job}},
        {S::done, E::sign, S::signed_off, {G::settled, G::earlier_signed, G::sign_clear, G::on_job}},
        {S::done, E::send_back, S::under_way, {G::settled, G::reason}},
        {S::signed_off, E::doubt, S::in_doubt, {}},
        {S::in_doubt, E::confirm, S::signed_off, {G::settled, G::reason, G::cause_settled, G::on_job}},
        {S::signed_off, E::reopen, S::opened_again, {G::settled, G::reason}},
        {S::in_doubt, E::reopen, S::opened_again, {G::settled, G::reason}},
    };
    return rows;
}

const Row* find_row(State from, Event event) {
    const State stored = from == State::ready ? State::waiting : from;
    const auto& rows = table();
    const auto found = std::find_if(rows.begin(), rows.end(),
                                    [&](const Row& row) { return row.from == stored && row.event == event; });
    return found == rows.end() ? nullptr : &*found;
}

struct Names {
    std::string_view word, text;
};

constexpr std::array<Names, kStates> kStateNames{{{"not_needed", "not needed"},
                                                  {"waiting", "waiting"},
                                                  {"ready", "ready"},
                                                  {"under_way", "under way"},
                                                  {"paused", "paused"},
                                                  {"done", "done, to be signed"},
                                                  {"signed", "signed"},
                                                  {"in_doubt", "in doubt"},
                                                  {"opened_again", "opened again"},
                                                  {"left_out", "left out"},
                                                  {"closed", "closed"}}};

constexpr std::array<std::string_view, kEvents> kEventWords{
    "begin", "tick",    "pause",  "resume",    "finish",    "sign",  "send_back",
    "doubt", "confirm", "reopen", "leave_out", "take_back", "close", "settle"};

// practice: closed > opened again > in doubt > paused > under way > done > signed > left out > waiting.
int care(State state) {
    constexpr std::array order{State::not_needed, State::waiting,      State::ready,     State::left_out,
                               State::signed_off, State::done,         State::under_way, State::paused,
                               State::in_doubt,   State::opened_again, State::closed};
    return static_cast<int>(std::find(order.begin(), order.end(), state) - order.begin());
}

} // namespace

Facts Facts::all(bool content) {
    Facts facts;
    facts.facts_.fill(content);
    return facts;
}

Move transition(State from, Event event, const Facts& facts) {
    // The hand-over closes every part alike, whatever state it is in; nothing leads out of closed.
    if (event == Event::close) return {.exists = from != State::closed, .to = State::closed};
    const Row* row = find_row(from, event);
    if (row == nullptr) return {};
    Move move{.exists = true};
    std::copy_if(row->guards.begin(), row->guards.end(), std::back_inserter(move.failed),
                 [&](Guard guard) { return !facts.content(guard); });
    if (move.failed.empty()) move.to = row->to;
    return move;
}

const std::vector<Guard>& guards_of(State from, Event event) {
    static const std::vector<Guard> none;
    const Row* row = find_row(from, event);
    return row == nullptr ? none : row->guards;
}

std::vector<Event> events_from(State from) {
    std::vector<Event> events;
    for (int e = 0; e < kEvents; ++e) {
        if (find_row(from, static_cast<Event>(e)) != nullptr) events.push_back(static_cast<Event>(e));
    }
    return events;
}

std::string_view state_word(State state) { return kStateNames[static_cast<std::size_t>(state)].word; }
std::string_view state_text(State state) { return kStateNames[static_cast<std::size_t>(state)].text; }
std::string_view event_word(Event event) { return kEventWords[static_cast<std::size_t>(event)]; }

std::optional<Event> event_of(std::string_view word) {
    const auto found = std::find(kEventWords.begin(), kEventWords.end(), word);
    if (found == kEventWords.end()) return std::nullopt;
    return static_cast<Event>(found - kEventWords.begin());
}

State more_careful(State a, State b) { return care(a) >= care(b) ? a : b; }

} // namespace undersheet::job
