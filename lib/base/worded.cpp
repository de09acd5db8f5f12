#include "base/worded.h"

namespace undersheet {
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

Worded worded_typed(std::string text) { return {Worded::Sort::typed, std::move(text), {}}; }

Worded worded_list(const std::vector<Worded>& things) {
    Worded all(Worded::Sort::list, {}, {});
    for (const Worded& thing : things) all.text += (all.text.empty() ? "" : ", ") + thing.text;
    all.fillings = things;
    return all;
}

} // namespace undersheet
