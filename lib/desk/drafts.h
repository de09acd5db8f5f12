// From what somebody wants kept to a draft of its entry, or to what holds it. Only the desk includes this.
//
// Everything that can be kept goes through draft_of, whether it was a command, a line of a file or a button: the fields are
// checked against the catalogue, the place and the part against this roof, the move against the guards, the answer against
// the finding it is about.
// Promises: reads only; what is refused leaves nothing behind.
#pragma once

#include "desk/session.h"
#include "method/check.h"

namespace undersheet::desk {

// What is wanted, as typed: text of field=value, or the values of a JSON line.
struct Typed {
    std::string kind = {}, place = {}, part = {};
    std::vector<std::pair<std::string, entry::Value>> fields = {};

    [[nodiscard]] std::string text(std::string_view field) const; // "" when it is not there, or no text
    void put(std::string field, entry::Value value);              // unless it is empty text
    void set(std::string_view field, entry::Value value);         // in place of what was typed
};

struct Drafted {
    entry::Draft draft = {};
    Lines asked = {};
    std::vector<Held> held_by = {}; // not empty: it must not be kept
};

[[nodiscard]] Result<Typed> typed_of(const std::string& kind, const std::string& place,
                                     const std::string& part, const Fields& fields);

// Who writes, in which job, about when.
struct Writing {
    Case& on;
    job::Person by = {};
    std::string pin = {}; // of that person, where it was given
};

[[nodiscard]] Result<Drafted> draft_of(const Writing& writing, Typed typed);

// The kinds that need more than their fields.
[[nodiscard]] Result<Drafted> draft_move(const Writing& writing, const Typed& typed, job::Event event);
[[nodiscard]] Result<Drafted> draft_answer(const Writing& writing, Typed typed); // decide, reason, told
[[nodiscard]] Result<Drafted> draft_settle(const Writing& writing, Typed typed);
[[nodiscard]] Result<Drafted> draft_punch(const Writing& writing, Typed typed);
[[nodiscard]] Result<Drafted> draft_correction(const Writing& writing, const Typed& typed);
[[nodiscard]] Result<Drafted> draft_withdrawal(const Writing& writing, Typed typed);

// Fields checked, place on this roof, part of this job: the draft that all of the above start from.
[[nodiscard]] Result<Drafted> checked_draft(const Writing& writing, const Typed& typed);
[[nodiscard]] method::FindPerson finder(const std::vector<job::Person>& people);
[[nodiscard]] Result<const job::Part*> part_meant(const job::Job& job, const std::string& typed);

// An entry of the office journal: the firm, a person, the opening of a job.
[[nodiscard]] Result<entry::Draft> office_draft(const method::Catalogue& kinds, const Typed& typed,
                                                const entry::Time& when, const std::string& author);

} // namespace undersheet::desk
