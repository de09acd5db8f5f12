#include "job/worded.h"

#include "base/text.h"

namespace undersheet::job {
namespace {

Worded or_plain(const Worded& worded, const std::string& plain) {
    return worded.empty() ? Worded(plain) : worded;
}

} // namespace

Worded typed(std::string text) { return worded_typed(std::move(text)); }

Worded detail_worded(const Fault& fault) { return or_plain(fault.detail_as, fault.detail); }

Worded fault_worded(const Fault& fault, const Worded& where) {
    Worded all = detail_worded(fault);
    if (!fault.clears.empty())
        all = worded("{detail}; {clears}",
                     {{"detail", all}, {"clears", or_plain(fault.clears_as, fault.clears)}});
    if (!fault.where.empty())
        all = worded("{where}: {detail}", {{"where", or_plain(where, fault.where)}, {"detail", all}});
    all.text = one_line(fault);
    return all;
}
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
