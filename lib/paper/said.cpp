#include "paper/said.h"

#include "base/text.h"

#include <algorithm>
#include <cctype>

namespace undersheet::paper {

namespace {

using method::Field;
using method::FieldType;

bool has_letter(std::string_view text) {
    return std::any_of(text.begin(), text.end(), [](unsigned char c) { return std::isalpha(c) != 0; });
}

// What was typed, where it was another unit; "" where it is the figure itself ("12,5").
std::string typed_otherwise(const job::Reading& reading, std::string_view field) {
    for (auto from = reading.stands_on.rbegin(); from != reading.stands_on.rend(); ++from) {
        if ((*from)->data.find(field) == nullptr) continue;
        const std::string typed = (*from)->raw.text_of(field);
        return has_letter(typed) ? typed : std::string();
    }
    return {};
}

bool is_number(std::string_view text) {
    return text.find_first_not_of("0123456789.-") == std::string_view::npos;
}

} // namespace

const Field* Said::field(std::string_view kind, std::string_view name) const {
    const method::Kind* found = kinds_.find(kind);
    return found == nullptr ? nullptr : found->field(name);
}

// A list of labels or places as it was typed, a list of people by their names.
std::string Said::names(const Field& field, const entry::Value& value) const {
    std::vector<std::string> all;
    for (const entry::Value& one : *value.list())
        if (const auto* name = one.text())
            all.push_back(field.type == FieldType::people ? job_.person_name(*name) : *name);
    return joined(all, ", ");
}

std::string Said::text(const job::Reading& reading, const Field& field, const std::string& unit) const {
    const entry::Value* value = reading.data.find(field.name);
    if (value == nullptr) return {};
    if (value->list() != nullptr) return names(field, *value);
    if (const Decimal* number = value->number()) {
        const std::string typed = typed_otherwise(reading, field.name);
        if (typed.empty()) return words_.number(*number) + unit;
        return words_.number(number->value(), field.places) + unit + " (" + typed + ")";
    }
    const std::string word = reading.word(field.name);
    if (field.type == FieldType::date)
        if (const auto date = entry::parse_date(word)) return words_.date(*date);
    if (field.type == FieldType::time)
        if (const auto time = entry::parse_time(word)) return words_.date_and_time(*time);
    const bool is_word =
        field.type == FieldType::choice || field.type == FieldType::yes_no || reading.not_looked(field.name);
    if (is_word) return choice(field.name, word);
    const std::string* agreed = words_.find_text(field.name + "." + word); // batch=unknown
    return agreed == nullptr ? word : *agreed;
}

std::string Said::value(const job::Reading& reading, std::string_view name) const {
    const Field* found = field(reading.kind, name);
    if (found == nullptr) return reading.word(name);
    const std::string unit = found->unit.empty() ? "" : words_.say("unit." + found->unit);
    return text(reading, *found, unit.empty() ? "" : " " + unit);
}

std::string Said::bare(const job::Reading& reading, std::string_view name) const {
    const Field* found = field(reading.kind, name);
    return found == nullptr ? reading.word(name) : text(reading, *found, "");
}

std::string Said::choice(std::string_view field, std::string_view word) const {
    const std::string own = std::string(field) + "." + std::string(word);
    if (words_.has("choice." + own)) return words_.say("choice." + own);
    if (const std::string* text = words_.find_text(own)) return *text;
    const std::string shared = "choice." + std::string(word);
    return words_.has(shared) ? words_.say(shared) : words_.text(replaced(std::string(word), "_", " "));
}

std::string Said::label(std::string_view kind, std::string_view name) const {
    for (const std::string& key :
         {"field." + std::string(kind) + "." + std::string(name), "field." + std::string(name)})
        if (words_.has(key)) return words_.say(key);
    const Field* found = field(kind, name);
    return found == nullptr ? std::string(name) : words_.text(found->prompt);
}

std::vector<Fact> Said::facts(const job::Reading& reading,
                              const std::vector<std::string_view>& leave_out) const {
    std::vector<Fact> all;
    const method::Kind* kind = kinds_.find(reading.kind);
    if (kind == nullptr) return all;
    for (const Field& field : kind->fields) {
        const bool skipped = std::find(leave_out.begin(), leave_out.end(), field.name) != leave_out.end();
        const std::string said = skipped || field.personal ? "" : value(reading, field.name);
        if (!said.empty()) all.push_back({label(reading.kind, field.name), said});
    }
    return all;
}

std::string Said::place(const entry::Place& place) const {
    const auto m = [this](const Decimal& metres) { return words_.number(metres.value(), 2); };
    switch (place.form) {
    case entry::PlaceForm::nowhere:
        return {};
    case entry::PlaceForm::corner:
        return words_.say("place.corner", {{"a", place.a}});
    case entry::PlaceForm::pair:
        return words_.say("place.pair", {{"a", place.a}, {"b", place.b}});
    case entry::PlaceForm::along:
        return words_.say("place.along", {{"a", place.a}, {"b", place.b}, {"m", m(place.x_m)}});
    case entry::PlaceForm::point:
        return words_.say("place.point", {{"x", m(place.x_m)}, {"y", m(place.y_m)}});
    case entry::PlaceForm::label:
        return place.a;
    case entry::PlaceForm::joint:
        return words_.say("place.joint", {{"a", place.a}, {"b", place.b}});
    case entry::PlaceForm::line:
        return words_.say(
            "place.line",
            {{"x", m(place.x_m)}, {"y", m(place.y_m)}, {"x2", m(place.x2_m)}, {"y2", m(place.y2_m)}});
    }
    return {};
}

std::string Said::place(std::string_view written) const {
    const auto read = entry::parse_place(written);
    return read ? place(*read) : std::string(written);
}

std::string Said::spot(const job::Reading& reading) const {
    return reading.label.empty() ? short_place(reading.place) : reading.label;
}

std::string Said::short_place(const entry::Place& place) const {
    const std::string written = entry::place_text(place);
    switch (place.form) {
    case entry::PlaceForm::point:
    case entry::PlaceForm::line:
    case entry::PlaceForm::along:
        return words_.figures(written);
    default:
        return written;
    }
}

std::string Said::again(const job::Worded& worded) const {
    using Sort = job::Worded::Sort;
    if (!words_.translates()) return worded.text;
    switch (worded.sort) {
    case Sort::typed:
        return worded.text;
    case Sort::choice: {
        // The lines of an order are no choices of the catalogue; a phrase says what each is called.
        if (worded.form.starts_with("item.") && words_.has(worded.form)) return words_.say(worded.form);
        const auto dot = worded.form.find('.');
        return choice(worded.form.substr(0, dot), worded.form.substr(dot + 1));
    }
    case Sort::place:
        return written_places(worded.form);
    case Sort::date: {
        const auto date = entry::parse_date(worded.form);
        return date ? words_.date(*date) : worded.text;
    }
    case Sort::list: {
        std::vector<std::string> things;
        for (const job::Worded& thing : worded.fillings) things.push_back(again(thing));
        return joined(things, ", ");
    }
    case Sort::words:
        break;
    }
    return from_form(worded);
}

// A form the language does not have stays English whole: half a sentence of each would be neither.
std::string Said::from_form(const job::Worded& worded) const {
    const std::string* form = words_.find_text(worded.form);
    if (form == nullptr) return is_number(worded.text) ? words_.figures(worded.text) : worded.text;
    std::vector<Filling> fillings;
    for (const job::Worded& filling : worded.fillings) fillings.push_back({filling.name, again(filling)});
    return Words::fill(*form, fillings);
}

// One place, or two of them with > between.
std::string Said::written_places(std::string_view written) const {
    std::vector<std::string> places;
    for (const auto& one : split(written, '>')) {
        const auto place = entry::parse_place(one);
        places.push_back(place ? short_place(*place) : std::string(one));
    }
    return joined(places, ">");
}

std::string Said::called(const job::Worded& says, const std::string& label) const {
    for (const job::Worded& filling : says.fillings)
        if (filling.name == "label" && filling.sort == job::Worded::Sort::words && filling.text == label)
            return again(filling);
    return label;
}

std::string Said::part(std::string_view name) const { return again(job::part_worded(name)); }

} // namespace undersheet::paper
