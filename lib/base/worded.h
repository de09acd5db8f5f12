// A text as it can be said again in another language: its English, the form that was made from, and what fills the form.
//
// Promises: text is the English, filled in one pass from left to right, so braces in what is filled in stay what they are.
//   What somebody typed is marked as typed, so that nobody translates it.
// Does not: know any other language; that is the papers' business (paper/said.h).
// Threads: plain values.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace undersheet {

struct Worded {
    enum class Sort {
        words,  // a form with {places}; a text without any, a bare number among them, is its own form
        typed,  // by a person
        choice, // a word of the catalogue; the form is field.word
        place,  // in its written form, or two of them with > between
        date,   // the form is year-month-day
        list,   // its fillings, one behind the other
    };
    Sort sort = Sort::words;
    std::string text = {}, form = {};
    std::string name = {}; // the {place} it fills in the form it belongs to
    std::vector<Worded> fillings = {};

    Worded() = default;
    Worded(std::string words) : text(words), form(std::move(words)) {}
    Worded(const char* words) : Worded(std::string(words)) {}
    Worded(Sort of, std::string says, std::string written)
        : sort(of), text(std::move(says)), form(std::move(written)) {}
    [[nodiscard]] bool empty() const { return text.empty(); }
};

struct WordedFilling {
    std::string_view name; // as between the braces
    Worded value;
};

[[nodiscard]] Worded worded(std::string form, std::initializer_list<WordedFilling> fillings);
[[nodiscard]] Worded worded_typed(std::string text);
// "A, B, C": one behind the other, whatever their number.
[[nodiscard]] Worded worded_list(const std::vector<Worded>& things);

} // namespace undersheet
