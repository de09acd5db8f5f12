#include "method/dates.h"

#include "base/text.h"
#include "method/meant.h"

#include <algorithm>
#include <array>
#include <optional>

namespace undersheet::method {
namespace {

constexpr std::array<std::string_view, 12> kMonths{"january",   "february", "march",    "april",
                                                   "may",       "june",     "july",     "august",
                                                   "september", "october",  "november", "december"};

// The pieces of a day as typed, in the order they were typed.
struct DatePieces {
    std::vector<int> numbers = {}; // one or two digits
    std::optional<int> year = {};  // four digits
    std::optional<int> month = {}; // as a word
    bool odd = false;              // something else stood there, or a piece twice
};

bool all_digits(std::string_view text) {
    return !text.empty() &&
           std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

int small_number(std::string_view digits) {
    int value = 0;
    for (const char c : digits) value = value * 10 + (c - '0');
    return value;
}

// "Sept" and "sep" are September; fewer than three letters are nothing.
std::optional<int> month_of(std::string_view word) {
    constexpr std::size_t kFewest = 3;
    const std::string small = lower_ascii(word);
    for (std::size_t i = 0; i < kMonths.size(); ++i) {
        if (small.size() >= kFewest && kMonths[i].starts_with(small)) return static_cast<int>(i) + 1;
    }
    return std::nullopt;
}

void put(DatePieces& pieces, std::string_view word) {
    constexpr std::size_t kYear = 4;
    if (all_digits(word) && word.size() < kYear - 1) {
        pieces.numbers.push_back(small_number(word));
    } else if (all_digits(word) && word.size() == kYear && !pieces.year) {
        pieces.year = small_number(word);
    } else if (const auto month = month_of(word); month && !pieces.month) {
        pieces.month = month;
    } else {
        pieces.odd = true;
    }
}

DatePieces date_pieces(std::string_view typed) {
    std::string text(typed);
    for (char& c : text) {
        if (c == '/' || c == '.' || c == '-' || c == ',') c = ' ';
    }
    DatePieces pieces;
    for (const std::string& word : split(text, ' ')) {
        if (!word.empty()) put(pieces, word);
    }
    return pieces;
}

std::string two(int number) { return number < 10 ? "0" + std::to_string(number) : std::to_string(number); }

std::string month_text(int year, int month) { return std::to_string(year) + "-" + two(month); }

std::string day_text(int year, int month, int day) { return month_text(year, month) + "-" + two(day); }

Fault no_day(std::string_view typed, std::string why, std::string clears) {
    return {Code::time_malformed, "'" + shown(typed) + "' " + std::move(why), {}, std::move(clears)};
}

Fault no_day(std::string_view typed) {
    return no_day(typed, "is not a day",
                  "type it like 2027-01-31 or 31 Jan 2027; a month alone like 2026-11");
}

// Two numbers and a year: some read day first, some month first.
Fault two_ways(std::string_view typed, int first, int second, int year) {
    constexpr int kMost = 12;
    const std::string day_first = day_text(year, second, first);
    const std::string month_first = day_text(year, first, second);
    if (first > kMost && second > kMost) return no_day(typed);
    if (second > kMost) return no_day(typed, "can be read two ways", "type " + month_first);
    if (first > kMost || first == second) return no_day(typed, "can be read two ways", "type " + day_first);
    return no_day(typed, "can be read two ways", "type " + day_first + " or " + month_first);
}

std::optional<int> clock_seconds(std::string_view text) {
    constexpr int kMinute = 60;
    const auto pieces = split(text, ':');
    if (pieces.size() < 2 || pieces.size() > 3) return std::nullopt;
    int seconds = 0;
    for (const std::string& piece : pieces) {
        const bool first = &piece == &pieces.front();
        if (!all_digits(piece) || piece.size() > 2 || (!first && piece.size() != 2)) return std::nullopt;
        const int value = small_number(piece);
        if (value >= (first ? 24 : kMinute)) return std::nullopt;
        seconds = seconds * kMinute + value;
    }
    return pieces.size() == 2 ? seconds * kMinute : seconds;
}

} // namespace

Result<entry::Date> typed_date(std::string_view typed) {
    const std::string_view text = trimmed(typed);
    if (auto written = entry::parse_date(text)) return written;
    const DatePieces pieces = date_pieces(text);
    const std::size_t count = pieces.numbers.size();
    if (pieces.odd) return no_day(typed);
    if (!pieces.year) {
        const bool two_digits = count > 0 && (pieces.month || count == 3);
        return two_digits ? no_day(typed, "has no year of four digits", "type it like 2027-01-31")
                          : no_day(typed);
    }
    if (pieces.month && count == 0) return entry::parse_date(month_text(*pieces.year, *pieces.month));
    if (pieces.month && count == 1) {
        return entry::parse_date(day_text(*pieces.year, *pieces.month, pieces.numbers[0]));
    }
    if (!pieces.month && count == 1) return entry::parse_date(month_text(*pieces.year, pieces.numbers[0]));
    if (!pieces.month && count == 2)
        return two_ways(typed, pieces.numbers[0], pieces.numbers[1], *pieces.year);
    return no_day(typed);
}

Result<entry::Time> typed_time(std::string_view typed, const entry::Time& when) {
    constexpr std::int64_t kDay = 86400;
    const std::string_view text = trimmed(typed);
    if (text.find('T') != std::string_view::npos) return entry::parse_time(text);
    const auto seconds = clock_seconds(text);
    if (!seconds || when.text.empty()) {
        const std::string why = "'" + shown(typed) + "' is not a time";
        return Fault{Code::time_malformed,
                     why,
                     {},
                     "type it like 11:20, or 2027-01-31T11:20:00+00:00 for another day"};
    }
    const std::int64_t midnight = entry::day_number(entry::date_of(when)) * kDay;
    return entry::time_at(midnight + *seconds - std::int64_t{when.offset_min} * 60, when.offset_min);
}

} // namespace undersheet::method
