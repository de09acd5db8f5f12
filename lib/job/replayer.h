// Moves the parts of one view by one entry after another.
//
// Promises: an entry moves only the view it is given; catch_up() does to a view that was joined what neither side could do
//   alone: what one device recorded or opened again counts against what the other signed without knowing of it.
// Does not: know which views there are (replay.cpp).
#pragma once

#include "entry/causality.h"
#include "job/readings.h"
#include "job/roof.h"
#include "job/view.h"

#include <functional>

namespace undersheet::job {

class Replayer {
public:
    Replayer(const Roof& roof, const Counted& counted, const method::Method& method, const Told& told)
        : roof_(roof), counted_(counted), method_(method), told_(told) {}

    void take(View& view, const entry::Entry& entry);
    void catch_up(View& view, const std::vector<const entry::Entry*>& known);
    void finish_parts(View& view,
                      const entry::Entry& entry); // "done" is what a part is, not what somebody types

private:
    // One place to be moved from: sorted out by kind of entry.
    void act(const entry::Entry& entry, const entry::Value& data, Event event);
    void begin(Part& part, const entry::Entry& entry, const entry::Value& data);
    void resume(Part& part, const entry::Entry& entry, const entry::Value& data);
    void sign(Part& part, const entry::Entry& entry);
    void reopen(Part& part, const entry::Entry& entry, const entry::Value& data);
    void tick(const entry::Entry& entry, const entry::Value& data);
    void use(const entry::Entry& entry, const entry::Value& data);
    void decide(const entry::Entry& entry, const entry::Value& data);
    void settle(const entry::Entry& entry, const entry::Value& data);
    void keep_side(Part& part, SettleItem item, const entry::Entry& settled, const entry::Value& data);

    void doubt_what_was_missed(Part& part, const entry::Entry& kept, const entry::Entry& settled);

    // What an entry does to other parts than its own; `eligible` says to which.
    using Eligible = std::function<bool(const Part&)>;
    void reach_others(const entry::Entry& entry, const Eligible& eligible);
    void reopen_later(const Part& part, const entry::Entry& entry, bool bonded, const Eligible& eligible);
    void affect(Part& later, const Part& cause, method::Effect effect, const entry::Entry& entry);
    void apply_doubts(const entry::Entry& entry, const entry::Value& data, const Eligible& eligible);
    void put_in_doubt(Part& part, const std::string& why, const std::string& cause,
                      const entry::Entry& entry);

    bool move(Part& part, Event event, const entry::Entry& entry);
    void note_problem(const entry::Entry& entry, const std::string& says);
    void strike_signature(Part& part, const std::string& why);
    [[nodiscard]] Part* find_part(const std::string& name);
    [[nodiscard]] const entry::Entry* last_air(const entry::Entry& until) const;
    [[nodiscard]] std::string last_signer() const;
    [[nodiscard]] bool is_bonded() const;
    [[nodiscard]] bool is_affected(method::Which which, const Part& part, const Part& later,
                                   const Footprint& place) const;

    const Roof& roof_;
    const Counted& counted_;
    const method::Method& method_;
    const Told& told_;
    View* view_ = nullptr; // the one that is being moved
};

} // namespace undersheet::job
