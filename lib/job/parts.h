// The states a part of the roof goes through, and the one table that says how it moves.
//
// A part is a stage and what it is done to: "field/2", "band/AB", "patches/D", "deck". It waits, is begun, paused, resumed,
// done, signed; it can be put in doubt, confirmed, opened again, left out and taken back. After the hand-over it is closed.
// Promises: transition() is pure and total over (state, event, facts); what is not in the table does not move.
// Does not: know the trade. Facts are worked out in guards.h from readings, findings and the order of work.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace undersheet::job {

// `ready` is worked out from waiting and never stored; `not_needed` marks a part this roof does not call for.
enum class State {
    not_needed,
    waiting,
    ready,
    under_way,
    paused,
    done,
    signed_off,
    in_doubt,
    opened_again,
    left_out,
    closed
};
inline constexpr int kStates = 11;

enum class Event {
    begin,
    tick,
    pause,
    resume,
    finish,
    sign,
    send_back,
    doubt,
    confirm,
    reopen,
    leave_out,
    take_back,
    close,
    settle // of two sides that devices wrote apart, one holds; the state is the side's, not this table's
};
inline constexpr int kEvents = 14;

// What has to be true for a move. Each failed guard becomes one line: what holds, and what would clear it.
enum class Guard {
    earlier_signed, // everything that comes before it is signed, left out or not needed
    no_stop,        // no open stop holds its start, nor a put-right that holds the start
    safety,         // today's safety was gone through, by name
    reading,        // a bonding reading that is young enough and inside the limits, dry wood
    tin,            // a tin of the right kind, in date, is named
    side_by_side,   // nothing that must not go on at the same time
    reason,         // a reason is given
    agreed,         // who agreed is given
    may_leave_out,  // the method lets this stage be left out
    nothing_on_top, // no later part is signed on top
    step_order,     // the step may be taken now
    steps_complete, // every must-do step is ticked or decided
    sign_clear,     // nothing holds the sign-off
    on_job,         // the person is on the job
    cause_settled,  // what put it in doubt is settled
    settled         // no two devices left it in different states
};
inline constexpr int kGuards = 16;

// One fact a guard; true means the guard is content.
class Facts {
public:
    static Facts all(bool content);
    [[nodiscard]] bool content(Guard guard) const { return facts_[static_cast<std::size_t>(guard)]; }
    void set(Guard guard, bool content) { facts_[static_cast<std::size_t>(guard)] = content; }

private:
    std::array<bool, kGuards> facts_{};
};

struct Move {
    bool exists = false;            // there is such an event in this state
    std::optional<State> to = {};   // where it leads, when every guard is content
    std::vector<Guard> failed = {}; // the guards that are not
};

[[nodiscard]] Move transition(State from, Event event, const Facts& facts);
[[nodiscard]] const std::vector<Guard>& guards_of(State from,
                                                  Event event); // empty when there is no such move
[[nodiscard]] std::vector<Event> events_from(State from);

[[nodiscard]] std::string_view state_word(State state); // "under_way": for scripts
[[nodiscard]] std::string_view state_text(State state); // "under way": for people
[[nodiscard]] std::string_view event_word(Event event); // "send_back": the kind of its entry
[[nodiscard]] std::optional<Event> event_of(std::string_view word);

// For merging: the more careful of two states stands (practice: closed before opened again before in doubt before …).
[[nodiscard]] State more_careful(State a, State b);

} // namespace undersheet::job
