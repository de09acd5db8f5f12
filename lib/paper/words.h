// The words of every paper, a file for each language (schema/words_en.json, schema/words_de.json).
//
// A key names a phrase ("inspection.name"); {place} in a phrase is filled in when it is said. A phrase about a number has
// two keys, <key>.one and <key>.many. The file also holds the decimal sign, what groups the figures before it, what stands
// between the two figures of a place, and the names of the months. `texts` says what comes from elsewhere, the catalogue,
// the method and lib/job, by its English; English itself has none.
//
// Promises: a phrase that is missing comes out as its key, so a paper is never lost over a word; a test holds that every
//   key used in lib/paper is in the file and the other way round, and another that every language has the same keys. A text
//   that is not among `texts` stays English: a firm's own rule is never lost, or said as what it no longer is. A right-to-left name filled into a phrase is set
//   between U+2068 and U+2069, so that the words round it stay where they are.
// Does not: translate what people typed. Threads: plain values; those that come with the program are made once and only read.
#pragma once

#include "base/decimal.h"
#include "base/result.h"
#include "entry/time.h"

#include <initializer_list>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace undersheet::paper {

struct Filling {
    std::string_view name; // as between the braces
    std::string value;
};
using Fillings = std::initializer_list<Filling>;

class Words {
public:
    static Result<Words> read(std::string_view json);
    static const Words& english();
    // By its BCP 47 tag; "de" has what there is for "de-AT" too. no_such_words says which there are.
    static Result<const Words*> of(std::string_view language);
    static std::vector<std::string> languages();
    // The same words with the figures as a program reads them: a point, no groups, a comma between those of a place.
    [[nodiscard]] Words for_programs() const;

    [[nodiscard]] std::string say(std::string_view key, Fillings fillings = {}) const;
    // <key>.one or <key>.many, with {n} filled.
    [[nodiscard]] std::string count(std::string_view key, std::size_t n, Fillings fillings = {}) const;
    [[nodiscard]] bool has(std::string_view key) const;

    [[nodiscard]] bool translates() const { return !texts_.empty(); }
    [[nodiscard]] const std::string*
    find_text(std::string_view english) const;                      // nullptr when it stays English
    [[nodiscard]] std::string text(std::string_view english) const; // itself when it stays English
    // A name or address as the book holds it: as it was typed, or that it was erased.
    [[nodiscard]] std::string held(const std::string& personal) const;
    [[nodiscard]] static std::string fill(std::string_view form, const std::vector<Filling>& fillings);

    [[nodiscard]] std::string number(double value, int places) const; // halves away from zero
    [[nodiscard]] std::string number(const Decimal& as_typed) const;
    [[nodiscard]] std::string figures(std::string_view written) const; // "2.90,1.80" of a place, or "22.2"
    [[nodiscard]] std::string date(const entry::Date& date) const;     // 11 June 2026
    [[nodiscard]] std::string date_and_time(const entry::Time& time) const;         // 11 June 2026, 08:05
    [[nodiscard]] std::string listed(const std::vector<std::string>& things) const; // "A, B and C"

    [[nodiscard]] const std::string& language() const { return language_; } // BCP 47
    [[nodiscard]] std::vector<std::string> keys() const;

private:
    using Texts = std::map<std::string, std::string, std::less<>>;
    [[nodiscard]] std::string phrase(std::string_view key) const;

    std::string language_, decimal_sign_, group_sign_, place_sign_ = ",";
    std::vector<std::string> months_;
    Texts phrases_, texts_;
};

} // namespace undersheet::paper
