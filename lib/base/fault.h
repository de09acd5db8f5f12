// A fault is the one line a person reads when something cannot be done: what was found, where, and what would be right.
//
// Promises: every code has a number that is never reused, a range per room, and a heading in docs/faults.md.
// Does not: decide how a fault is shown; the command line prints it, the C interface passes it on.
// Threads: plain values.
#pragma once

#include "base/worded.h"

#include <string>
#include <utility>

namespace undersheet {

// Ranges: 100 base, 200 entry, 300 method, 400 job (the answer is no), 500 book, 600 paper, 700 desk.
enum class Code : int {
    number_malformed = 101, // "12,3,4", "1.2.3", an empty number, letters in a number
    number_too_long = 102,  // more digits than can be kept exactly
    text_not_utf8 = 103,    // bytes that are no text
    value_impossible = 104, // a computation was given what cannot be: a negative length, 120 % humidity

    json_malformed = 201,  // not JSON, or JSON that is not in the strict written form
    json_too_large = 202,  // too large, too deep, too many members
    json_shape = 203,      // a member is missing, unknown or of another type
    place_malformed = 204, // a place that cannot be read
    time_malformed = 205,  // a time without offset, or no such day
    body_malformed = 206,  // the body of an entry does not hold together
    signature_wrong = 207, // hash or signature do not belong to these bytes
    key_unusable = 208,    // the device key cannot be read or made

    method_malformed = 301,   // the method file or the catalogue breaks its own rules (line and reason)
    kind_unknown = 302,       // no such kind of entry
    field_unknown = 303,      // no such field in this kind
    field_missing = 304,      // a field that this kind cannot do without
    field_out_of_range = 305, // outside the range of the catalogue
    choice_unknown = 306,     // not one of the words this field takes
    unit_unknown = 307,       // a unit of another quantity, or none we know
    place_wrong_type = 308,   // this kind is not recorded at that sort of place
    prices_malformed = 309,   // the price list breaks its own rules (line and reason)

    held = 401,              // a part may not move: something under it is not there yet
    not_from_here = 402,     // this event does not exist in the part's present state
    reason_needed = 403,     // a reason or a name is missing or too short
    not_decidable = 404,     // no decision may let this limit go
    closed = 405,            // handed over: only a supplement that is open takes more
    no_such_part = 406,      // this roof has no such part or step
    no_such_finding = 407,   // no such finding or punch item
    not_on_job = 408,        // this person is not on the job
    place_not_on_roof = 409, // a corner, edge or label this roof does not have
    outline_crosses = 410,   // the corner order crosses itself
    too_late_to_undo = 411,  // a mis-tap older than ten minutes, or already built on
    check_failed = 412,      // a check was made and the answer is no
    record_too_thin = 413,   // the record does not hold what this is worked out from
    pin_needed = 414,        // this person signs with a PIN on this device
    pin_wrong = 415,         // not the PIN it was locked with, or none that can be set

    book_missing = 501,     // no such file
    book_not_a_book = 502,  // a file, but none of ours
    book_read_only = 503,   // can be read, not written
    book_full = 504,        // no room left
    book_in_use = 505,      // another program holds it
    book_damaged = 506,     // bytes that do not verify
    book_failed = 507,      // the file system said no for another reason
    photo_unreadable = 508, // a photograph that cannot be read or kept
    not_handed = 509,       // a file that is no whole hand-over file of ours

    format_unknown = 601, // a paper is not written in that format
    paper_unknown = 602,  // no such paper
    no_such_words = 603,  // there is no words file for that language

    argument_wrong = 701,     // a command was used wrongly
    person_unknown = 702,     // a name the book does not know
    job_unknown = 703,        // a job the book does not know, or none chosen
    entry_unknown = 704,      // no entry with that name
    topic_unknown = 705,      // no such computation
    supplement_unknown = 706, // no such supplement of this job
};

struct Fault {
    Code code{};
    std::string detail;                    // what was wrong, with the value found
    std::string where = {};                // the field, line, place or file; may be empty
    std::string clears = {};               // what would be right, or what would clear it; may be empty
    Worded detail_as = {}, clears_as = {}; // the two for another language; empty where each is its own form
};

// "where: detail; clears" on one line, empty pieces left out; bytes that are no text, and control characters, are U+FFFD.
[[nodiscard]] std::string one_line(const Fault& fault);

} // namespace undersheet
