// The topics of reckon.h: one row each, its function beside others of its subject. Only the desk includes this.
//
// Promises: a function is given an input that fits its schema, defaults filled in, and gives an output that fits its own.
// Does not: do arithmetic; that is in lib/trade. A figure that is the method's choice comes from the method.
#pragma once

#include "entry/value.h"

#include <optional>

namespace undersheet::desk {

struct Topic {
    std::string_view name;
    Result<entry::Value> (*work_out)(const entry::Value& input);
};

// One function for each file of topics.
[[nodiscard]] std::vector<Topic> air_topics();
[[nodiscard]] std::vector<Topic> deck_topics();
[[nodiscard]] std::vector<Topic> outline_topics();
[[nodiscard]] std::vector<Topic> falls_topics();
[[nodiscard]] std::vector<Topic> order_topics();
[[nodiscard]] std::vector<Topic> weather_topics();
[[nodiscard]] std::vector<Topic> heat_topics();

// --- what they share ---
// The member, which the schema has made sure of.
[[nodiscard]] double number(const entry::Value& of, std::string_view key);
[[nodiscard]] std::int64_t count(const entry::Value& of, std::string_view key);
[[nodiscard]] const Decimal& exact(const entry::Value& of, std::string_view key);
[[nodiscard]] std::optional<double> optional_number(const entry::Value& of, std::string_view key);

// A figure that was worked out. What cannot be written as a number becomes text, which no output's schema lets pass.
[[nodiscard]] entry::Value figure(double value);
void put(entry::Value& out, std::string_view key, double value);
void put(entry::Value& out, std::string_view key, const std::optional<double>& value); // nothing: left out

} // namespace undersheet::desk
