// What stands in an entry, a method file or an answer: yes/no, a number as typed, text, a list, or named members.
//
// Promises: numbers are exact decimals; members are kept in ascending order of key and no key stands twice;
//   comparing two values ignores the line they were read from. There is no null and no NaN.
// Does not: convert. A reader asks for the type it wants and gets nothing (nullptr) when it is another.
// Threads: plain values.
#pragma once

#include "base/decimal.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace undersheet::entry {

class Value;
struct Member;
using List = std::vector<Value>;
using Map = std::vector<Member>; // ascending by key

class Value {
public:
    Value() = default;            // an object without members
    Value(bool yes);              // NOLINT: made from what it holds on purpose, here and below
    Value(Decimal number);        // NOLINT
    Value(int number);            // NOLINT
    Value(std::int64_t number);   // NOLINT
    Value(std::string text);      // NOLINT
    Value(std::string_view text); // NOLINT
    Value(const char* text);      // NOLINT
    Value(List list);             // NOLINT
    // By hand, since GCC 12's copy of a variant whose types all move without throwing destroys what it never made when
    // memory runs out half-way.
    Value(const Value& other);
    Value(Value&&) noexcept = default;
    Value& operator=(const Value&) = default;
    Value& operator=(Value&&) noexcept = default;
    ~Value() = default;
    static Value object(Map ascending);             // for who has the members already sorted, none twice
    static Value rounded(double value, int places); // the decimal nearest; text "?" when it is no number

    // Each gives what is held, or nullptr when it is another type.
    [[nodiscard]] const bool* boolean() const { return std::get_if<bool>(&held_); }
    [[nodiscard]] const Decimal* number() const { return std::get_if<Decimal>(&held_); }
    [[nodiscard]] const std::string* text() const { return std::get_if<std::string>(&held_); }
    [[nodiscard]] const List* list() const { return std::get_if<List>(&held_); }
    [[nodiscard]] const Map* map() const { return std::get_if<Map>(&held_); }

    [[nodiscard]] const Value* find(std::string_view key) const; // nullptr when no such member, or no object
    // Short cuts for members: the fallback (or false) when missing or of another type.
    [[nodiscard]] std::string text_of(std::string_view key, std::string_view fallback = {}) const;
    [[nodiscard]] double number_of(std::string_view key, double fallback) const;
    [[nodiscard]] bool is_yes(std::string_view key) const;         // true, or the text "yes"
    [[nodiscard]] const List& list_of(std::string_view key) const; // an empty list when there is none
    [[nodiscard]] std::vector<std::string> texts_of(std::string_view key) const; // what of that list is text

    Value& set(std::string_view key, Value value); // adds or replaces; makes this an object if it is none
    void erase(std::string_view key);
    Value& push(Value value); // adds to a list; makes this a list if it is none

    int line = 0; // where it was read, 1 for the first line; 0 when made in memory

    friend bool operator==(const Value& a, const Value& b);

private:
    std::variant<Map, bool, Decimal, std::string, List> held_;
};

struct Member {
    std::string key;
    Value value;
};

bool operator==(const Member& a, const Member& b);

} // namespace undersheet::entry
