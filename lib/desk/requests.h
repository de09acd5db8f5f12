// What is put to the desk: what somebody typed, as they typed it.
//
// Everything is text on purpose. Names, times, places and figures are read by the desk against the catalogue and the job,
// so the command line and a phone are told the same thing in the same words when something is not right.
// Threads: plain values.
#pragma once

#include <string>
#include <vector>

namespace undersheet::desk {

// Goes with every question and every record of a job.
struct Asked {
    std::string job = {};  // its reference; "" is the job last worked on
    std::string by = {};   // initials or a name; "" is the only person in the book
    std::string when = {}; // RFC 3339 with offset; "" is now
    std::string pin = {};  // of `by`, for what persons sign with a key of their own
    std::string supplement =
        {}; // its number; "" is the only open one after the hand-over, "0" the first record
};

// The PIN of the person who asks, on this device. The first one needs neither of the others.
struct PinChange {
    std::string pin = {}, old_pin = {};
    std::string forgotten = {}; // why there is to be a new key, without the old PIN
};

struct Firm {
    std::string name = {}, address = {}, phone = {}, email = {}, registration = {};
    std::string language = {}; // of its papers, BCP 47; "" is English
};

struct NewPerson {
    std::string name = {}, role = {}, initials = {}, firm = {}, cards = {}, ends = {};
};

struct NewJob {
    std::string ref = {}, roof = {};
    std::string method =
        {}; // the text of a firm's own method file; "" is the one that comes with the program
    bool from_paper = false;   // an old roof, taken over from its papers: accepted as it is, and closed
    std::string finished = {}; // the day such a roof was finished
};

using Fields = std::vector<std::string>; // "air_c=13", one each

struct Record {
    std::string kind = {}, place = {}, part = {};
    Fields fields = {};
};

// Moves a part: begin, tick, pause, resume, sign, send_back, confirm, reopen, leave_out, take_back.
struct Move {
    std::string event = {}, part = {}, place = {};
    Fields fields = {};
};

struct Correction {
    std::string entry = {}; // its name, or as much of the beginning as is unmistakable
    Fields fields = {};
    std::string why = {};
};

struct Withdrawal {
    std::string entry = {}, why = {};
};

struct Photograph {
    std::string bytes = {}, file_name = {};
    std::string of = {};                   // a place, an entry or a part
    std::string shows = {}, label_of = {}; // label_of: the tin or sheet whose label it is
};

struct Decide {
    std::string finding = {}, decider = {}, role = {}, why = {};
};

struct Reason {
    std::string finding = {}, text = {};
};

struct Told {
    std::string finding = {}, whom = {};
};

// A later visit to a roof that was handed over.
struct NewSupplement {
    std::string why = {};       // yearly, call, claim or recall
    std::string complaint = {}; // in the customer's own words
    std::string told_on = {};   // the day the customer was told of a recall
};

// Which roofs hold a batch.
struct RecallBy {
    std::string batch = {}, product = {}, notice = {}, from = {}, to = {}; // days; "" leaves the window open
    std::string language = {};                                             // "" is the firm's, else English
};

struct SupplementSign {
    std::string customer = {}, not_present = {};
};

struct Settle {
    std::string item = {}, keep = {}, why = {}; // keep: the entry of the side that holds
};

struct Salvage {
    std::string damaged = {}, to = {};
    std::vector<std::string> with = {}; // hand-over files whose keys help
};

struct HandOver {
    std::string job = {};    // its reference; "" is the job last worked on
    bool whole_book = false; // every job and the firm's journal
    std::string file = {};   // where it is to lie; a file that is there is left alone
};

struct Erase {
    std::string person = {}; // somebody of the book, or a name that stands in a personal field
    std::string why = {};
    std::string although = {};            // why before the time for which records are kept is over
    std::vector<std::string> photos = {}; // entries of photographs that show the person
};

struct TakeOffBy {
    std::string prices = {}; // the text of a price list; "" is none
    std::string line = {};   // why this one: its name, "deck_adhesive"
};

struct PunchAdd {
    std::string text = {}, place = {}, part = {}, severity = {};
    Photograph photo = {}; // what it looks like; without bytes there is none
};

struct PunchClear {
    std::string number = {}, why = {};
    Photograph photo = {}; // what it looks like now; without bytes there is none
};

} // namespace undersheet::desk
