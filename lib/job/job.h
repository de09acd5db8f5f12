// A job folded from its entries: what counts now, who is on it, what the roof is, where every part stands.
//
// Promises: a pure function of the entries (and of the method) up to a time; the same entries give the same job on every
//   device, in whatever order they were received. Nothing is lost: what was corrected, withdrawn, struck or replaced stays
//   reachable.
// Does not: read a clock, a file or a database; judge (judge.h).
// Threads: a Job is read-only once folded.
#pragma once

#include "entry/entry.h"
#include "job/parts.h"
#include "job/roof.h"
#include "job/worded.h"
#include "method/kinds.h"
#include "method/method.h"

#include <memory>

namespace undersheet::job {

using EntryList = std::vector<entry::Entry>;

// One thing that counts for judging. A kind that fills field by field stands on several entries; the last is `entry`.
struct Reading {
    const entry::Entry* entry = nullptr;
    std::vector<const entry::Entry*> stands_on = {};
    std::string kind = {}, label = {}, part = {};
    entry::Place place = {};
    entry::Value data = {}; // with corrections in it
    bool doubted = false;   // the deck was changed near it afterwards
    [[nodiscard]] const entry::Time& when() const { return entry->when; }
    [[nodiscard]] std::optional<double> number(std::string_view field) const;
    [[nodiscard]] std::string word(std::string_view field) const; // "" when missing; "not_looked" stays
    [[nodiscard]] bool not_looked(std::string_view field) const;  // not looked, or could not reach
};

struct Person {
    std::string id, name, initials, role, firm, ends;
};

struct Tick {
    std::string step;
    const entry::Entry* entry = nullptr;
    entry::Value data = {};
    bool struck =
        false; // undone: by a later coat, a pause that spoilt it, or because the part was opened again
};

struct SignOff {
    const entry::Entry* entry = nullptr;
    std::string by;      // person id
    bool struck = false; // the part was opened again
    std::string struck_why = {};
    bool own_check = false; // nobody else looked (final only)
    std::vector<const entry::Entry*> confirmed = {};
};

struct Pause {
    const entry::Entry* from = nullptr;
    const entry::Entry* to = nullptr; // nullptr while it lasts
    bool rain = false;
    bool spoilt_coat = false;
};

struct PartEvent {
    Event event{};
    const entry::Entry* entry = nullptr;
    State from{}, to{};
};

// The last move of a part that one device made; there are several when devices moved it apart.
struct Tip {
    const entry::Entry* entry = nullptr;
    State state{};
};

struct Part {
    std::string name, stage, what; // "band/AB", "band", "AB"
    State state = State::waiting;
    std::string note = {}; // why it is not needed, left out or in doubt
    std::vector<PartEvent> events = {};
    std::vector<Tip> tips = {}; // where the moves of each device led
    std::vector<Tick> ticks = {};
    std::vector<SignOff> signatures = {}; // the last one stands unless struck
    std::vector<Pause> pauses = {};
    std::vector<std::string> doubts = {};      // open causes
    std::vector<std::string> doubt_parts = {}; // the parts whose reopening put it in doubt
    std::vector<std::string> tins = {};        // labels named at begin, resume or by use
    const entry::Entry* redo_from = nullptr;   // opened again by this; what was done before no longer counts
    const entry::Entry* sent_back = nullptr;   // done is what somebody does again after this
    const entry::Entry* reading = nullptr;     // the air reading it was begun under
    std::string begun_by = {};
    std::string left_out_why = {}, agreed_by = {};
    [[nodiscard]] bool is_called_for() const {
        return state != State::not_needed && state != State::left_out;
    }
    void stand(const PartEvent& event);                               // moved by it, by one device alone
    [[nodiscard]] bool is_contested() const;                          // devices left it in different states
    [[nodiscard]] const SignOff* signature() const;                   // the one that stands, or nullptr
    [[nodiscard]] const Tick* last_tick(std::string_view step) const; // the latest that is not struck
    [[nodiscard]] bool has_begun() const;
};

// What two devices said apart, for a person to settle (settle.h).
enum class Apart { part_state, reading, field, correction, after_hand_over, after_revocation, punch_rows };
struct SettleSide {
    const entry::Entry* entry = nullptr;
    std::string says = {}; // "signed"; "" where the entry speaks for itself
};
struct SettleItem {
    std::string id = {};
    Apart about{};
    std::string part = {}, kind = {}, field = {}; // what it concerns
    entry::Place place = {};
    std::vector<SettleSide> sides = {};
    bool holds = false;                    // its part, and the final look
    const entry::Entry* settled = nullptr; // by this
    const entry::Entry* kept = nullptr;
    std::string why = {};
};

struct Decision {
    const entry::Entry* entry = nullptr;
    std::string finding, decider, role, why, limit, reading;
    std::vector<std::string> stands_on; // entry names (hex) it was taken on
};
struct Answer { // a reason given to a finding, or who was told of it
    const entry::Entry* entry = nullptr;
    std::string finding, text;
    std::vector<std::string> stands_on = {};
};

struct PunchItem {
    int number = 0;
    std::string name = {}; // "5"; "5b" when another device gave the same number
    const entry::Entry* raised = nullptr;
    std::string text, part;
    entry::Place place = {};
    method::Severity severity = method::Severity::put_right;
    const entry::Entry* cleared = nullptr;
    const entry::Entry* looked = nullptr;         // the second look
    std::vector<std::string> also_raised_as = {}; // joined duplicates
    bool joined_away = false;                     // shown under another number
};

// What was recorded after the hand-over, on one visit or claim (supplements.h).
struct Supplement {
    std::string name = {};                            // "1"; "1b" when another device gave the same number
    const entry::Entry* opened = nullptr;             // its hash is what the others name
    std::string why = {};                             // yearly, call, claim or recall
    std::vector<const entry::Entry*> entries = {};    // those that name it, in order
    std::vector<const entry::Entry*> signatures = {}; // the first one ends it
    [[nodiscard]] bool is_open() const { return signatures.empty(); }
};

// By the entry that they correct, in order.
using Corrections = std::map<entry::Hash, std::vector<const entry::Entry*>>;

struct Job {
    std::string id, ref, roof_name, method_hash, kinds_hash;
    const entry::Entry* opened = nullptr;
    std::shared_ptr<const EntryList> entries; // all of them, in order
    entry::Time as_of;
    std::vector<Person> people;
    Roof roof;
    std::vector<Reading> readings; // what counts, in order
    std::vector<Reading> replaced; // earlier readings that no longer count, for the history
    std::vector<const entry::Entry*> withdrawn;
    Corrections corrections;
    std::vector<Part> parts; // in the order of work
    std::vector<Decision> decisions;
    std::vector<Answer> reasons, told;
    std::vector<PunchItem> punch;
    std::vector<const entry::Entry*> issued; // papers given out
    std::vector<std::string> problems;       // entries that break a rule, kept and not folded
    std::vector<SettleItem> to_settle, settled;
    const entry::Entry* handed_over = nullptr;
    std::vector<Supplement> supplements = {};
    std::optional<entry::Hash> within = {}; // folded with the supplement that this entry opened

    [[nodiscard]] const Part* part(std::string_view name) const;
    [[nodiscard]] const Supplement* supplement() const; // the one it was folded within, or nullptr
    [[nodiscard]] const Person* person(std::string_view id) const;
    [[nodiscard]] std::vector<const Reading*> all(std::string_view kind) const;
    [[nodiscard]] const Reading* latest(std::string_view kind) const;
    // The latest word on one field of a kind that fills field by field; "" when nobody said.
    [[nodiscard]] std::string said(std::string_view kind, std::string_view field) const;
    [[nodiscard]] std::string personal(std::string_view kind,
                                       std::string_view field) const; // "" or "(erased)"
    [[nodiscard]] const Reading* tin(std::string_view label) const;
    [[nodiscard]] std::string person_name(std::string_view id) const; // the id when the name is gone
};

// Folds the entries written about times up to `as_of`. The entries are sorted here; unknown kinds are kept and not folded.
// `within` is the entry that opened a supplement: then what was handed over goes on in it. Without one, no supplement counts.
[[nodiscard]] Result<Job> fold(EntryList entries, const method::Method& method,
                               const method::Catalogue& kinds, const entry::Time& as_of,
                               const std::optional<entry::Hash>& within = {});

} // namespace undersheet::job
