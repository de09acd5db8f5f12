#include "paper/words.h"

#include "base/text.h"
#include "entry/json.h"
#include "paper/clean.h"
#include "schema/embedded.h"

#include <span>

namespace undersheet::paper {

namespace {

Fault malformed(std::string detail) {
    return {Code::method_malformed, std::move(detail), "words file",
            "language, decimal_sign, twelve months and an object of phrases"};
}

// Unicode Standard Annex 9: first strong isolate ... pop directional isolate.
std::string kept_apart(const std::string& value) {
    return has_right_to_left(value) ? "\xE2\x81\xA8" + value + "\xE2\x81\xA9" : value;
}

const std::string* value_of(std::string_view name, std::span<const Filling> fillings) {
    for (const Filling& filling : fillings)
        if (filling.name == name) return &filling.value;
    return nullptr;
}

// One pass from left to right, so braces inside a name that is filled in stay what they are.
std::string filled(std::string_view phrase, std::span<const Filling> fillings) {
    std::string out;
    while (!phrase.empty()) {
        const auto open = phrase.find('{');
        const auto close = phrase.find('}', open);
        if (open == std::string_view::npos || close == std::string_view::npos) break;
        const auto* value = value_of(phrase.substr(open + 1, close - open - 1), fillings);
        out += phrase.substr(0, open);
        out += value != nullptr ? kept_apart(*value) : std::string(phrase.substr(open, close - open + 1));
        phrase.remove_prefix(close + 1);
    }
    return out.append(phrase);
}

} // namespace

Result<Words> Words::read(std::string_view json) {
    const auto file = entry::read_json(json);
    if (!file) return file.fault();
    Words words;
    words.language_ = file->text_of("language");
    words.decimal_sign_ = file->text_of("decimal_sign");
    for (const entry::Value& month : file->list_of("months"))
        if (const auto* name = month.text()) words.months_.push_back(*name);
    const auto* phrases = file->find("phrases");
    if (words.language_.empty() || words.decimal_sign_.empty() || words.months_.size() != 12)
        return malformed("the head of the file is incomplete");
    if (phrases == nullptr || phrases->map() == nullptr) return malformed("there are no phrases");
    for (const entry::Member& phrase : *phrases->map()) {
        const auto* text = phrase.value.text();
        if (text == nullptr) return malformed("\"" + phrase.key + "\" is not text");
        words.phrases_.emplace(phrase.key, *text);
    }
    return words;
}

const Words& Words::english() {
    static const Words words = read(schema::words_en_json()).value();
    return words;
}

std::string Words::say(std::string_view key, Fillings fillings) const {
    return filled(phrase(key), {fillings.begin(), fillings.size()});
}

std::string Words::count(std::string_view key, std::size_t n, Fillings fillings) const {
    std::vector<Filling> all(fillings);
    all.push_back({"n", std::to_string(n)});
    return filled(phrase(std::string(key) + (n == 1 ? ".one" : ".many")), all);
}

std::string Words::phrase(std::string_view key) const {
    const auto found = phrases_.find(key);
    return found == phrases_.end() ? std::string(key) : found->second;
}

bool Words::has(std::string_view key) const { return phrases_.find(key) != phrases_.end(); }

std::string Words::number(double value, int places) const {
    return replaced(fixed(value, places), ".", decimal_sign_);
}

std::string Words::number(const Decimal& as_typed) const {
    return replaced(as_typed.text(), ".", decimal_sign_);
}

std::string Words::date(const entry::Date& date) const {
    if (date.month < 1 || date.month > 12) return {};
    return say("date", {{"day", std::to_string(date.day)},
                        {"month", months_[static_cast<std::size_t>(date.month - 1)]},
                        {"year", std::to_string(date.year)}});
}

std::string Words::date_and_time(const entry::Time& time) const {
    return say("date.time", {{"date", date(entry::date_of(time))}, {"time", entry::clock_text(time)}});
}

std::string Words::listed(const std::vector<std::string>& things) const {
    if (things.size() < 2) return things.empty() ? "" : kept_apart(things.front());
    std::string all = kept_apart(things.front());
    for (std::size_t i = 1; i + 1 < things.size(); ++i) all += ", " + kept_apart(things[i]);
    return say("listed", {{"all", all}, {"last", things.back()}});
}

std::vector<std::string> Words::keys() const {
    std::vector<std::string> all;
    for (const auto& [key, phrase] : phrases_) all.push_back(key);
    return all;
}

} // namespace undersheet::paper
