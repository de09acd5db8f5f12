// What was recorded, in words: a value with its unit, a choice in the trade's words, a place as one would say it.
//
// Promises: a figure stands as it was typed, with the decimal sign of the language; one that was typed in another unit is
//   rounded to the digits of its field and what was typed stands behind it. "Not looked at" and "could not reach" are
//   said, never left out. A choice or field without a phrase of its own is said by its name in the catalogue.
//   What lib/job put into words is said again from its form; a form the language does not have stays English as it was.
// Does not: judge, or translate what somebody typed.
#pragma once

#include "job/job.h"
#include "paper/document.h"
#include "paper/setting.h"

namespace undersheet::paper {

class Said {
public:
    Said(const job::Job& job, const Words& words, const method::Catalogue& kinds)
        : job_(job), words_(words), kinds_(kinds) {}

    // "" when nobody said anything of it.
    [[nodiscard]] std::string value(const job::Reading& reading, std::string_view field) const;
    [[nodiscard]] std::string bare(const job::Reading& reading,
                                   std::string_view field) const; // without its unit
    [[nodiscard]] std::string choice(std::string_view field, std::string_view word) const;
    [[nodiscard]] std::string label(std::string_view kind, std::string_view field) const;
    // Every field that says something, in the order of the catalogue; personal values are not among them.
    [[nodiscard]] std::vector<Fact> facts(const job::Reading& reading,
                                          const std::vector<std::string_view>& leave_out = {}) const;

    [[nodiscard]] std::string place(const entry::Place& place) const;  // "edge AB, 1.20 m from A"
    [[nodiscard]] std::string place(std::string_view written) const;   // as it stands when it cannot be read
    [[nodiscard]] std::string spot(const job::Reading& reading) const; // its label, else its place in short
    [[nodiscard]] std::string short_place(const entry::Place& place) const; // "2.90,1.80"

    // What lib/job made, in the language of this paper.
    [[nodiscard]] std::string again(const job::Worded& worded) const;
    [[nodiscard]] std::string part(std::string_view name) const; // "band, edge AB"
    // The label `says` speaks of, as it was typed, or what lib/job calls a thing without one.
    [[nodiscard]] std::string called(const job::Worded& says, const std::string& label) const;

private:
    [[nodiscard]] std::string from_form(const job::Worded& worded) const;
    [[nodiscard]] std::string written_places(std::string_view written) const;
    [[nodiscard]] std::string names(const method::Field& field, const entry::Value& value) const;
    [[nodiscard]] std::string text(const job::Reading& reading, const method::Field& field,
                                   const std::string& unit) const;
    [[nodiscard]] const method::Field* field(std::string_view kind, std::string_view name) const;

    const job::Job& job_;
    const Words& words_;
    const method::Catalogue& kinds_;
};

} // namespace undersheet::paper
