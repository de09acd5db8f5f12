// A paper before it is a page: who it is from and for, what it says block by block, and the small print at its foot.
//
// One document is written as HTML, plain text or JSON by its own file (html.h, text.h, json.h); none of them adds or
// leaves out a word. Every string here is plain text: names and notes go in exactly as somebody typed them, and each
// renderer does its own escaping. Nothing in a document is markup.
//
// A new sort of block is one more struct and one more alternative of Block. The renderers visit the variant without a
// default, so each of them stops compiling until it can draw the new one.
//
// Does not: know the trade, words or limits; the papers (inspection.h, stages.h, punch.h, completion.h) fill it in.
// Threads: plain values.
#pragma once

#include "entry/time.h"
#include "paper/drawing.h"

#include <string>
#include <variant>
#include <vector>

namespace undersheet::paper {

// --- running text ---

enum class Weight { plain, strong, struck }; // struck: no longer stands, but is kept readable

struct Run {
    std::string text;
    Weight weight = Weight::plain;
};

// A line of text whose pieces may differ in weight. Made from a plain string, or piece by piece with add().
struct Text {
    std::vector<Run> runs = {};

    Text() = default;
    Text(std::string plain); // NOLINT: a plain string is the usual line of text
    Text(const char* plain); // NOLINT
    Text& add(std::string text, Weight weight = Weight::plain);

    [[nodiscard]] bool is_empty() const;
    [[nodiscard]] std::string words() const; // without weights
};

[[nodiscard]] Text strong(std::string text);
[[nodiscard]] Text struck(std::string text);

// --- blocks ---

struct Heading {
    int level = 2; // 1 is the name of the paper itself, so blocks begin at 2
    std::string text;
};

// The one sentence that answers the paper's question; it is set larger than the rest.
struct Verdict {
    Text text;
};

struct Paragraph {
    Text text;
    bool keeps_next = false; // on one page with what comes after it
};

struct Listing {
    std::vector<Text> points;
};

struct Fact {
    std::string name;
    Text value;
};

struct Facts {
    std::vector<Fact> rows;
};

enum class Column { words, figures }; // figures stand to the right and never break over two lines

struct Header {
    std::string text;
    Column column = Column::words;
};

struct Row {
    std::vector<Text> cells;        // as many as the table has headers; the first one names the row
    std::vector<Text> beneath = {}; // lines that belong to this row, set in below it
};

struct Table {
    std::string caption;
    std::vector<Header> headers;
    std::vector<Row> rows = {};
};

struct Photograph {
    std::string hash;            // SHA-256 of the original, 64 hexadecimal digits
    std::string caption;         // what it shows, where and when
    std::string media_type = {}; // "image/jpeg", "image/png"; empty when the picture is not at hand
    std::string bytes = {};      // the picture as it is shown, usually smaller than the original
};

struct Photographs {
    std::vector<Photograph> pictures; // set side by side: before and after
};

// Something numbered that has a story of its own: a finding, a row of the punch list.
struct Item {
    std::string number;   // may be empty
    std::string standing; // how much it holds, in words: "put right"
    Text what;
    std::vector<Fact> facts = {};
    std::vector<Photograph> pictures = {};
};

struct Signature {
    std::string meaning; // what was signed: "Deck inspected"
    std::string name;    // empty: the line waits for a pen
    std::string role = {};
    std::string when = {};
    std::string note = {};         // "own check", "not present, sent on 12 June 2026"
    Weight weight = Weight::plain; // struck when a reopening took it back
};

struct PageBreak {};

using Block = std::variant<Heading, Verdict, Paragraph, Listing, Facts, Table, Drawing, Photographs, Item,
                           Signature, PageBreak>;

// --- the whole paper ---

// What stands at the head of every paper. A piece that is not known is left empty and printed as nothing.
struct Head {
    std::string firm = {}, firm_address = {}, firm_phone = {};
    std::string job = {}, roof = {}, customer = {}, customer_address = {};
    std::string name = {};             // "Deck inspection"
    std::string number = {};           // of this paper on this job
    std::string issue = {}, date = {}; // which issue of it, and of which day
};

struct Foot {
    std::vector<std::string> cautions;
    std::string standing;    // what this paper is and is not
    std::string made_with;   // program and method, with their versions
    std::string check_value; // of the record it was made from
};

// A day to come, for a calendar.
struct Reminder {
    std::string uid = {}; // the same for the same day of the same job, so that a second import adds nothing
    entry::Date on = {};
    entry::Time written = {}; // when what it follows from was written down
    std::string what = {}, more = {};
};

struct Document {
    std::string language = "en"; // BCP 47
    Head head = {};
    std::vector<Block> blocks = {};
    Foot foot = {};
    std::vector<Reminder> reminders = {}; // for its iCalendar form only

    Document& add(Block block);
    Document& heading(std::string text, int level = 2);
    Document& paragraph(Text text);
};

} // namespace undersheet::paper
