// The fixed words of every paper, kept in one file (schema/words_en.json) so that another language is another file.
//
// A key names a phrase ("inspection.name"); {place} in a phrase is filled in when it is said. A phrase about a number has
// two keys, <key>.one and <key>.many. The file also holds the decimal sign and the names of the months.
//
// Promises: a phrase that is missing comes out as its key, so a paper is never lost over a word; a test holds that every
//   key used in lib/paper is in the file and the other way round. A right-to-left name filled into a phrase is set
//   between U+2068 and U+2069, so that the words round it stay where they are.
// Does not: translate what people typed. Threads: plain values; english() is made once and only read.
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

    [[nodiscard]] std::string say(std::string_view key, Fillings fillings = {}) const;
    // <key>.one or <key>.many, with {n} filled.
    [[nodiscard]] std::string count(std::string_view key, std::size_t n, Fillings fillings = {}) const;
    [[nodiscard]] bool has(std::string_view key) const;

    [[nodiscard]] std::string number(double value, int places) const; // halves away from zero
    [[nodiscard]] std::string number(const Decimal& as_typed) const;
    [[nodiscard]] std::string date(const entry::Date& date) const;                  // 11 June 2026
    [[nodiscard]] std::string date_and_time(const entry::Time& time) const;         // 11 June 2026, 08:05
    [[nodiscard]] std::string listed(const std::vector<std::string>& things) const; // "A, B and C"

    [[nodiscard]] const std::string& language() const { return language_; } // BCP 47
    [[nodiscard]] std::vector<std::string> keys() const;

private:
    [[nodiscard]] std::string phrase(std::string_view key) const;

    std::string language_, decimal_sign_;
    std::vector<std::string> months_;
    std::map<std::string, std::string, std::less<>> phrases_;
};

} // namespace undersheet::paper
