#include "method/field_rules.h"

#include "base/text.h"
#include "entry/time.h"

#include <algorithm>

namespace undersheet::method {
namespace {

using entry::Value;

// A number, a time or a day as something that can be compared; nothing when there is none.
std::optional<Decimal> comparable(const Kind& kind, const std::string& name, const FindValue& value) {
    const Value* held = value(name);
    if (held == nullptr) return std::nullopt;
    if (const auto* number = held->number()) return *number;
    if (held->text() == nullptr) return std::nullopt;
    const FieldType type = kind.field(name)->type;
    if (type == FieldType::time) {
        const auto time = entry::parse_time(*held->text());
        if (time) return Decimal::of(time->unix_s);
    }
    if (type == FieldType::date) {
        const auto date = entry::parse_date(*held->text());
        if (date) return Decimal::of(entry::day_number(*date));
    }
    return std::nullopt;
}

std::string value_text(const FindValue& value, const std::string& name) {
    const Value* held = value(name);
    if (held == nullptr) return "0";
    if (const auto* number = held->number()) return number->text();
    return held->text() == nullptr ? std::string() : *held->text();
}

// "" when the rule holds, else the breach in words.
std::string breach_of_sum(const FieldRule& rule, const Kind& kind, const FindValue& value) {
    const auto whole = comparable(kind, rule.field, value);
    if (!whole) return {};
    std::int64_t sum = 0;
    std::vector<std::string> terms;
    bool any = false;
    for (const std::string& part : rule.parts) {
        const auto number = comparable(kind, part, value);
        any = any || number.has_value();
        if (number) sum += number->whole();
        terms.push_back(part + " " + value_text(value, part));
    }
    if (!any || sum == whole->whole()) return {};
    return joined(terms, " + ") + " makes " + std::to_string(sum) + ", not " + whole->text();
}

std::string breach_of_order(const FieldRule& rule, const Kind& kind, const FindValue& value) {
    const auto lesser = comparable(kind, rule.field, value);
    const auto greater = comparable(kind, rule.other, value);
    if (!lesser || !greater || !(*greater < *lesser)) return {};
    const FieldType type = kind.field(rule.field)->type;
    const bool moment = type == FieldType::time || type == FieldType::date;
    return value_text(value, rule.field) + (moment ? " is after " : " is more than ") + rule.other + " " +
           value_text(value, rule.other);
}

std::string breach_of_wants(const FieldRule& rule, const Kind&, const FindValue& value) {
    const Value* held = value(rule.field);
    if (held == nullptr || held->text() == nullptr || value(rule.other) != nullptr) return {};
    const bool applies = std::find(rule.words.begin(), rule.words.end(), *held->text()) != rule.words.end();
    return applies ? *held->text() + " was typed, but no " + rule.other : std::string();
}

std::string breach(const FieldRule& rule, const Kind& kind, const FindValue& value) {
    switch (rule.sort) {
    case FieldRule::Sort::sum:
        return breach_of_sum(rule, kind, value);
    case FieldRule::Sort::at_most:
        return breach_of_order(rule, kind, value);
    case FieldRule::Sort::wants:
        return breach_of_wants(rule, kind, value);
    }
    return {};
}

} // namespace

Result<std::vector<std::string>> hold_rules(const Kind& kind, const FindValue& value) {
    std::vector<std::string> questions;
    for (const FieldRule& rule : kind.rules) {
        const std::string what = breach(rule, kind, value);
        if (what.empty()) continue;
        const Fault fault{Code::field_out_of_range, what, kind.name + " " + rule.field, {}};
        if (!rule.asks) return fault;
        questions.push_back(one_line(fault));
    }
    return questions;
}

} // namespace undersheet::method
