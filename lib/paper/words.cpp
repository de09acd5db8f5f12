#include "paper/words.h"

#include "base/text.h"
#include "entry/json.h"
#include "paper/clean.h"
#include "schema/embedded.h"

#include <algorithm>
#include <span>

namespace undersheet::paper {

namespace {

Fault words_malformed(std::string detail) {
    return {Code::method_malformed, std::move(detail), "words file",
            "language, decimal_sign, twelve months and an object of phrases"};
}

using Texts = std::map<std::string, std::string, std::less<>>;

Done read_texts(const entry::Value& file, std::string_view member, Texts& into) {
    const auto* rows = file.find(member);
    if (rows == nullptr) return {};
    if (rows->map() == nullptr) return words_malformed("\"" + std::string(member) + "\" is no object");
    for (const entry::Member& row : *rows->map()) {
        const auto* text = row.value.text();
        if (text == nullptr) return words_malformed("\"" + row.key + "\" is not text");
        into.emplace(row.key, *text);
    }
    return {};
}

// From five figures on, as is usual in print: 2500, but 12.500.
std::string grouped(std::string number, const std::string& sign) {
    constexpr std::size_t kGroup = 3, kFrom = 5;
    const std::size_t begin = number.starts_with('-') ? 1 : 0;
    std::size_t end = std::min(number.find('.'), number.size());
    if (sign.empty() || end - begin < kFrom) return number;
    while (end - begin > kGroup) number.insert(end -= kGroup, "\x1f");
    return number;
}

const std::vector<Words>& all_languages() {
    static const std::vector<Words> all = [] {
        std::vector<Words> made;
        for (const std::string_view name : schema::file_names())
            if (name.starts_with("words_")) made.push_back(Words::read(*schema::find(name)).value());
        return made;
    }();
    return all;
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
    words.group_sign_ = file->text_of("group_sign");
    if (file->find("place_sign") != nullptr) words.place_sign_ = file->text_of("place_sign");
    for (const entry::Value& month : file->list_of("months"))
        if (const auto* name = month.text()) words.months_.push_back(*name);
    if (words.language_.empty() || words.decimal_sign_.empty() || words.months_.size() != 12)
        return words_malformed("the head of the file is incomplete");
    if (file->find("phrases") == nullptr) return words_malformed("there are no phrases");
    if (const auto read = read_texts(*file, "phrases", words.phrases_); !read) return read.fault();
    if (const auto read = read_texts(*file, "texts", words.texts_); !read) return read.fault();
    return words;
}

std::vector<std::string> Words::languages() {
    std::vector<std::string> tags;
    for (const Words& words : all_languages()) tags.push_back(words.language());
    return tags;
}

Result<const Words*> Words::of(std::string_view language) {
    const std::string wanted = lower_ascii(language);
    for (const std::string& tag : {wanted, wanted.substr(0, wanted.find('-'))})
        for (const Words& words : all_languages())
            if (lower_ascii(words.language()) == tag) return &words;
    return Fault{Code::no_such_words,
                 "there are no words for papers in '" + std::string(language) + "'",
                 {},
                 joined(languages(), ", ")};
}

Words Words::for_programs() const {
    Words plain = *this;
    plain.decimal_sign_ = ".";
    plain.group_sign_.clear();
    plain.place_sign_ = ",";
    return plain;
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

const std::string* Words::find_text(std::string_view english) const {
    const auto found = texts_.find(english);
    return found == texts_.end() ? nullptr : &found->second;
}

std::string Words::text(std::string_view english) const {
    const std::string* found = find_text(english);
    return found == nullptr ? std::string(english) : *found;
}

std::string Words::held(const std::string& personal) const {
    return personal == "(erased)" ? text(personal) : personal;
}

std::string Words::fill(std::string_view form, const std::vector<Filling>& fillings) {
    return filled(form, fillings);
}

std::string Words::number(double value, int places) const {
    const std::string number = replaced(grouped(fixed(value, places), group_sign_), ".", decimal_sign_);
    return replaced(number, "\x1f", group_sign_);
}

std::string Words::figures(std::string_view written) const {
    return replaced(replaced(replaced(std::string(written), ",", "\x1f"), ".", decimal_sign_), "\x1f",
                    place_sign_);
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
