#include "job/worded.h"

#include "base/text.h"

namespace undersheet::job {
namespace {

const std::string* value_of(std::string_view name, const std::vector<Worded>& fillings) {
    for (const Worded& filling : fillings)
        if (filling.name == name) return &filling.text;
    return nullptr;
}

std::string filled(std::string_view form, const std::vector<Worded>& fillings) {
    std::string out;
    while (!form.empty()) {
        const auto open = form.find('{');
        const auto close = form.find('}', open);
        if (open == std::string_view::npos || close == std::string_view::npos) break;
        const std::string* value = value_of(form.substr(open + 1, close - open - 1), fillings);
        out += form.substr(0, open);
        out += value == nullptr ? std::string(form.substr(open, close - open + 1)) : *value;
        form.remove_prefix(close + 1);
    }
    return out.append(form);
}

} // namespace

Worded worded(std::string form, std::initializer_list<WordedFilling> fillings) {
    Worded made(std::move(form));
    for (const WordedFilling& filling : fillings) {
        made.fillings.push_back(filling.value);
        made.fillings.back().name = filling.name;
    }
    made.text = filled(made.form, made.fillings);
    return made;
}

Worded typed(std::string text) { return {Worded::Sort::typed, std::move(text), {}}; }

Worded choice_worded(std::string_view field, const std::string& word) {
    return {Worded::Sort::choice, replaced(word, "_", " "), std::string(field) + "." + word};
}

Worded place_worded(const std::string& written) { return {Worded::Sort::place, written, written}; }

Worded date_worded(const entry::Date& date) {
    return {Worded::Sort::date, entry::date_words(date), entry::date_text(date)};
}

Worded part_worded(std::string_view part) {
    const auto slash = part.find('/');
    if (slash == std::string_view::npos) return {replaced(std::string(part), "-", " ")};
    const std::string stage(part.substr(0, slash));
    const Worded what = typed(std::string(part.substr(slash + 1)));
    if (stage == "field") return worded("field section {what}", {{"what", what}});
    if (stage == "openings") return worded("opening {what}", {{"what", what}});
    if (stage == "patches") return worded("patch {what}", {{"what", what}});
    if (stage == "corners") return worded("corner {what}", {{"what", what}});
    return worded("{stage}, edge {what}", {{"stage", stage}, {"what", what}});
}

Worded opened_again(std::string_view part) {
    return worded("{part} was opened again", {{"part", part_worded(part)}});
}

Worded no_chase_at(const std::string& abutment) {
    return worded("no chase at a {wall}", {{"wall", choice_worded("type", abutment)}});
}

std::string part_words(std::string_view part) { return part_worded(part).text; }

} // namespace undersheet::job
