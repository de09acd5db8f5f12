#include "method/words.h"

#include "base/text.h"
#include "method/meant.h"

#include <algorithm>
#include <array>

namespace undersheet::method {
namespace {

struct Spelling {
    std::string_view typed;
    std::string_view word;
};

constexpr std::array kGaps{Spelling{"not_looked", "not_looked"}, Spelling{"cant_reach", "cant_reach"},
                           Spelling{"cannot_reach", "cant_reach"}, Spelling{"can_not_reach", "cant_reach"}};

constexpr std::array kYesNo{Spelling{"yes", "yes"}, Spelling{"y", "yes"}, Spelling{"true", "yes"},
                            Spelling{"no", "no"},   Spelling{"n", "no"},  Spelling{"false", "no"}};

// "Can't reach" and "cant-reach" are cant_reach; the second apostrophe is the curled one of telephones.
std::string plain_word(std::string_view typed) {
    std::string word = lower_ascii(trimmed(typed));
    word = replaced(replaced(word, "'", ""), "’", "");
    for (char& c : word) {
        if (c == ' ' || c == '-') c = '_';
    }
    return word;
}

template <class Spellings>
std::string_view spelt(const Spellings& spellings, std::string_view typed) {
    const std::string plain = plain_word(typed);
    const auto found = std::find_if(spellings.begin(), spellings.end(),
                                    [&](const Spelling& spelling) { return spelling.typed == plain; });
    return found == spellings.end() ? std::string_view() : found->word;
}

} // namespace

std::string_view gap_word(std::string_view typed) { return spelt(kGaps, typed); }

Result<std::string> yes_or_no(std::string_view typed) {
    const std::string_view word = spelt(kYesNo, typed);
    if (!word.empty()) return std::string(word);
    return Fault{Code::choice_unknown, "'" + shown(typed) + "' is neither yes nor no", {}, "type yes or no"};
}

Result<std::string> one_of_choices(const Field& field, std::string_view typed) {
    const std::string plain = plain_word(typed);
    const auto found = std::find(field.choices.begin(), field.choices.end(), plain);
    if (found != field.choices.end()) return *found;
    return Fault{Code::choice_unknown,
                 "'" + shown(typed) + "' is not one of its words",
                 {},
                 did_you_mean(plain, field.choices)};
}

Done check_text(const Field& field, std::string_view typed) {
    constexpr std::size_t kMost = 4000;
    if (typed.empty())
        return Fault{Code::field_missing, "nothing was typed", {}, "leave it out, or type " + field.prompt};
    if (!is_utf8(typed))
        return Fault{Code::text_not_utf8, "holds bytes that are no text", {}, "type it again"};
    const bool breaks = typed.find('\n') != std::string_view::npos && field.type != FieldType::words;
    if (breaks || has_control_characters(typed)) {
        const std::string what = breaks ? "has several lines" : "holds a control character";
        return Fault{Code::text_not_utf8, what, {}, "type plain text on one line"};
    }
    if (auto done = check_seen(typed, Joiners::allowed); !done) return done;
    const std::size_t length = character_count(typed);
    if (length <= kMost) return {};
    return Fault{Code::field_out_of_range,
                 "has " + std::to_string(length) + " characters",
                 {},
                 "at most 4000 are kept"};
}

Done check_seen(std::string_view typed, Joiners joiners) {
    const auto unseen = find_unseen(typed, joiners);
    if (!unseen) return {};
    return Fault{Code::text_not_utf8,
                 "character " + std::to_string(unseen->at) + " of it is " + code_name(unseen->code) +
                     ", which nobody can see",
                 {},
                 "type it again without that"};
}

Done check_length(const Field& field, std::string_view typed) {
    if (static_cast<int>(character_count(typed)) >= field.shortest) return {};
    return Fault{Code::reason_needed,
                 "'" + shown(typed) + "' is too short",
                 {},
                 "type " + std::to_string(field.shortest) + " characters or more"};
}

} // namespace undersheet::method
