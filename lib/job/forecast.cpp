#include "job/forecast.h"

#include "base/decimal.h"
#include "base/text.h"
#include "entry/json.h"

#include <algorithm>
#include <array>
#include <map>

namespace undersheet::job {
namespace {

using entry::Value;

struct Column {
    const char* name; // most of them as in the catalogue's kind "air"
    bool needed;
};
constexpr std::array<Column, 6> kColumns{{{"air_c", true},
                                          {"rh_pct", true},
                                          {"surface_c", false},
                                          {"wind_ms", false},
                                          {"gust_ms", false},
                                          {"rain_mm", false}}};
constexpr std::string_view kForm = "undersheet.forecast.1";

using Cells = std::map<std::string, std::string>; // column -> what stands there, empty left out

Fault wrong_cell(std::size_t row, const std::string& column, const std::string& what,
                 const std::string& right) {
    return {Code::argument_wrong, what, "forecast, hour " + std::to_string(row) + ", " + column, right};
}

// What a figure can be is what an air reading can be; rain is no reading of ours, and only never below nothing.
std::optional<method::Range> range_of(const Column& column, const method::Catalogue& kinds) {
    const method::Kind* air = kinds.find("air");
    const method::Field* field = air == nullptr ? nullptr : air->field(column.name);
    return field == nullptr ? std::nullopt : field->range;
}

Result<double> figure(const std::string& text, const Column& column, const method::Catalogue& kinds,
                      std::size_t row) {
    const auto read = Decimal::parse(replaced(text, ",", "."));
    if (!read) return wrong_cell(row, column.name, "'" + text + "' is no number", "plain digits, 12.5");
    const double value = read->value();
    const auto range = range_of(column, kinds);
    if (range && (*read < range->least || range->most < *read))
        return wrong_cell(row, column.name, text + " is outside " + range->words(), "look at the unit");
    if (!range && value < 0) return wrong_cell(row, column.name, text + " is below 0", "look at the sign");
    return value;
}

void put(ForecastHour& hour, std::string_view column, double value) {
    if (column == "air_c") hour.air_c = value;
    if (column == "rh_pct") hour.rh_pct = value;
    if (column == "surface_c") hour.surface_c = value;
    if (column == "wind_ms") hour.wind_ms = value;
    if (column == "gust_ms") hour.gust_ms = value;
    if (column == "rain_mm") hour.rain_mm = value;
}

bool is_column(const std::string& name) {
    return name == "from" || std::any_of(kColumns.begin(), kColumns.end(),
                                         [&](const Column& column) { return name == column.name; });
}

Done no_strangers(const Cells& cells, std::size_t row) {
    for (const auto& [name, text] : cells) {
        if (!is_column(name))
            return wrong_cell(row, name, "there is no such column",
                              "from, air_c, rh_pct, surface_c, wind_ms, gust_ms, rain_mm");
    }
    return {};
}

Result<ForecastHour> hour_from(const Cells& cells, const method::Catalogue& kinds, std::size_t row) {
    if (auto known = no_strangers(cells, row); !known) return known.fault();
    ForecastHour hour;
    const auto from = cells.find("from");
    if (from == cells.end()) return wrong_cell(row, "from", "it is missing", "2026-09-22T08:00:00+01:00");
    auto time = entry::parse_time(from->second);
    if (!time) return wrong_cell(row, "from", time.fault().detail, time.fault().clears);
    hour.from = *std::move(time);
    for (const Column& column : kColumns) {
        const auto cell = cells.find(column.name);
        if (cell == cells.end() && column.needed)
            return wrong_cell(row, column.name, "it is missing", "every hour needs it");
        if (cell == cells.end()) continue;
        auto value = figure(cell->second, column, kinds, row);
        if (!value) return value.fault();
        put(hour, column.name, *value);
    }
    return hour;
}

Done add_hour(Forecast& forecast, const Cells& cells, const method::Catalogue& kinds) {
    const std::size_t row = forecast.hours.size() + 1;
    if (row > kMostForecastHours)
        return wrong_cell(row, "from", "more than " + std::to_string(kMostForecastHours) + " hours",
                          "sixteen days at most");
    auto hour = hour_from(cells, kinds, row);
    if (!hour) return hour.fault();
    if (!forecast.hours.empty() && hour->from.unix_s < forecast.hours.back().from.unix_s + kHour_s)
        return wrong_cell(row, "from", hour->from.text + " does not follow the hour before",
                          "one row an hour, in order");
    forecast.hours.push_back(*std::move(hour));
    return {};
}

Result<Cells> cells_of(const Value& hour, std::size_t row) {
    if (hour.map() == nullptr)
        return wrong_cell(row, "hour", "it is no object", R"({"from": "...", "air_c": ...})");
    Cells cells;
    for (const auto& member : *hour.map()) {
        const Value& value = member.value;
        if (value.number() == nullptr && value.text() == nullptr)
            return wrong_cell(row, member.key, "neither a number nor a text", "12.5");
        cells[member.key] = value.number() != nullptr ? value.number()->text() : *value.text();
    }
    return cells;
}

Result<Forecast> from_json(std::string_view text, const method::Catalogue& kinds) {
    const auto read = entry::read_json(text);
    if (!read) return read.fault();
    if (read->text_of("format") != kForm)
        return Fault{Code::argument_wrong, "this is no forecast of the form " + std::string(kForm),
                     "forecast, format",
                     R"({"format": "undersheet.forecast.1", "made": "...", "hours": [...]})"};
    Forecast forecast{.made = read->text_of("made")};
    for (const Value& hour : read->list_of("hours")) {
        const auto cells = cells_of(hour, forecast.hours.size() + 1);
        if (!cells) return cells.fault();
        if (auto added = add_hour(forecast, *cells, kinds); !added) return added.fault();
    }
    return forecast;
}

// A table without quotes: cells of a forecast hold no separators. A semicolon in the head says commas are decimals.
std::vector<std::string> cells_of_line(const std::string& line, char between) {
    std::vector<std::string> cells;
    for (const auto& cell : split(line, between)) cells.emplace_back(trimmed(cell));
    return cells;
}

Result<Forecast> from_table(std::string_view text, const method::Catalogue& kinds) {
    Forecast forecast;
    std::vector<std::string> head;
    char between = ',';
    for (const auto& raw : split(text, '\n')) {
        const std::string line(trimmed(raw));
        if (line.empty()) continue;
        if (head.empty()) {
            between = line.find(';') != std::string::npos ? ';' : ',';
            head = cells_of_line(line, between);
            continue;
        }
        const auto row = cells_of_line(line, between);
        if (row.size() != head.size())
            return wrong_cell(forecast.hours.size() + 1, "the row",
                              std::to_string(row.size()) + " cells under " + std::to_string(head.size()) +
                                  " columns",
                              "one cell for each column");
        Cells cells;
        for (std::size_t i = 0; i < row.size(); ++i) {
            if (!row[i].empty()) cells[head[i]] = row[i];
        }
        if (auto added = add_hour(forecast, cells, kinds); !added) return added.fault();
    }
    return forecast;
}

} // namespace

const ForecastHour* Forecast::at(std::int64_t unix_s) const {
    const auto after =
        std::upper_bound(hours.begin(), hours.end(), unix_s,
                         [](std::int64_t t, const ForecastHour& hour) { return t < hour.from.unix_s; });
    if (after == hours.begin()) return nullptr;
    const ForecastHour& hour = *(after - 1);
    return unix_s < hour.from.unix_s + kHour_s ? &hour : nullptr;
}

Result<Forecast> read_forecast(std::string_view text, const method::Catalogue& kinds) {
    constexpr std::size_t kMostBytes = 1U << 20U;
    if (text.size() > kMostBytes)
        return Fault{Code::json_too_large, "this is larger than 1 MiB", "forecast", "sixteen days at most"};
    const auto first = text.find_first_not_of(" \t\r\n");
    const bool json = first != std::string_view::npos && text[first] == '{';
    auto forecast = json ? from_json(text, kinds) : from_table(text, kinds);
    if (!forecast) return forecast;
    if (forecast->hours.empty())
        return Fault{Code::argument_wrong, "there is no hour in it", "forecast",
                     "one row an hour (docs/forecast.md)"};
    return forecast;
}

} // namespace undersheet::job
