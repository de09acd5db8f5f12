#include "entry/value.h"

#include <algorithm>

namespace undersheet::entry {
namespace {

template <class Members>
auto slot_of(Members& members, std::string_view key) {
    return std::lower_bound(
        members.begin(), members.end(), key,
        [](const Member& member, std::string_view wanted) { return member.key.compare(wanted) < 0; });
}

} // namespace

Value::Value(bool yes) : held_(yes) {}
Value::Value(Decimal number) : held_(number) {}
Value::Value(int number) : held_(Decimal::of(number)) {}
Value::Value(std::int64_t number) : held_(Decimal::of(number)) {}
Value::Value(std::string text) : held_(std::move(text)) {}
Value::Value(std::string_view text) : held_(std::string(text)) {}
Value::Value(const char* text) : held_(std::string(text)) {}
Value::Value(List list) : held_(std::move(list)) {}

Value::Value(const Value& other) : line(other.line) { held_ = other.held_; }

Value Value::object(Map ascending) {
    Value made;
    made.held_ = std::move(ascending);
    return made;
}

Value Value::rounded(double value, int places) {
    auto number = Decimal::rounded(value, places);
    return number.ok() ? Value(*number) : Value("?");
}

const Value* Value::find(std::string_view key) const {
    const Map* members = map();
    if (members == nullptr) return nullptr;
    const auto at = slot_of(*members, key);
    return at != members->end() && at->key == key ? &at->value : nullptr;
}

std::string Value::text_of(std::string_view key, std::string_view fallback) const {
    const Value* member = find(key);
    const std::string* held = member == nullptr ? nullptr : member->text();
    return held == nullptr ? std::string(fallback) : *held;
}

double Value::number_of(std::string_view key, double fallback) const {
    const Value* member = find(key);
    const Decimal* held = member == nullptr ? nullptr : member->number();
    return held == nullptr ? fallback : held->value();
}

bool Value::is_yes(std::string_view key) const {
    const Value* member = find(key);
    if (member == nullptr) return false;
    if (const bool* yes = member->boolean()) return *yes;
    return member->text() != nullptr && *member->text() == "yes";
}

const List& Value::list_of(std::string_view key) const {
    static const List kNone;
    const Value* member = find(key);
    const List* held = member == nullptr ? nullptr : member->list();
    return held == nullptr ? kNone : *held;
}

std::vector<std::string> Value::texts_of(std::string_view key) const {
    std::vector<std::string> texts;
    for (const Value& item : list_of(key)) {
        if (item.text() != nullptr) texts.push_back(*item.text());
    }
    return texts;
}

Value& Value::set(std::string_view key, Value value) {
    if (map() == nullptr) held_ = Map{};
    Map& members = std::get<Map>(held_);
    const auto at = slot_of(members, key);
    if (at != members.end() && at->key == key) {
        at->value = std::move(value);
    } else {
        members.insert(at, Member{std::string(key), std::move(value)});
    }
    return *this;
}

void Value::erase(std::string_view key) {
    Map* members = std::get_if<Map>(&held_);
    if (members == nullptr) return;
    const auto at = slot_of(*members, key);
    if (at != members->end() && at->key == key) members->erase(at);
}

Value& Value::push(Value value) {
    if (list() == nullptr) held_ = List{};
    std::get<List>(held_).push_back(std::move(value));
    return *this;
}

bool operator==(const Value& a, const Value& b) { return a.held_ == b.held_; }

bool operator==(const Member& a, const Member& b) { return a.key == b.key && a.value == b.value; }

} // namespace undersheet::entry
