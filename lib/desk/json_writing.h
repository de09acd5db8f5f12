// What the desk's JSON files write alike: lists, members that are left out when they say nothing. Only json_*.cpp and json.cpp
// include this.
#pragma once

#include "desk/answers.h"
#include "entry/json.h"

namespace undersheet::desk {

[[nodiscard]] inline entry::Value list_of(const Lines& lines) {
    entry::Value list = entry::List{};
    for (const auto& line : lines) list.push(line);
    return list;
}

[[nodiscard]] inline entry::Value count_of(std::size_t count) {
    return entry::Value(static_cast<std::int64_t>(count));
}

template <class Row, class Write>
[[nodiscard]] entry::Value rows_of(const std::vector<Row>& rows, Write written) {
    entry::Value list = entry::List{};
    for (const auto& row : rows) list.push(written(row));
    return list;
}

[[nodiscard]] inline std::string text_of(const entry::Value& value) {
    return entry::write_pretty(value) + "\n";
}

// Members that say nothing are left out.
inline void put(entry::Value& object, std::string_view key, const std::string& text) {
    if (!text.empty()) object.set(key, text);
}
inline void put(entry::Value& object, std::string_view key, const Lines& lines) {
    if (!lines.empty()) object.set(key, list_of(lines));
}

} // namespace undersheet::desk
