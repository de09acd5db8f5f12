#include "cli/help.h"

#include "base/text.h"

namespace undersheet::cli {
namespace {

constexpr std::size_t kNameRoom = 24;

std::string word_usage(const Word& word) {
    switch (word.count) {
    case Count::maybe:
        return "[" + word.name + "]";
    case Count::some:
        return word.name + "...";
    case Count::any:
        return "[" + word.name + "...]";
    case Count::one:
        break;
    }
    return word.name;
}

std::string option_usage(const Option& option) {
    const std::string plain = option.value.empty() ? option.name : option.name + " " + option.value;
    return option.required ? plain : "[" + plain + "]";
}

void row(std::string_view name, std::string_view says, Screen& screen) {
    screen.set_in("  " + padded(name, kNameRoom) + " ", says);
}

std::string bounds(const std::string& least, const std::string& most) {
    if (least.empty()) return most.empty() ? "" : "up to " + most;
    return most.empty() ? "from " + least : least + " to " + most;
}

std::string choice_words(const desk::FieldLine& field) {
    std::vector<std::string> words;
    for (const auto& choice : field.choices) {
        words.push_back(choice.meaning.empty() ? choice.word : choice.word + " (" + choice.meaning + ")");
    }
    return joined(words, ", ");
}

std::string field_name(const desk::FieldLine& field) { return field.name + (field.required ? " *" : ""); }

} // namespace

std::string usage(const Verb& verb) {
    std::string line = "undersheet " + verb.name;
    for (const Word& word : verb.words) line += " " + word_usage(word);
    for (const Option& option : verb.options) line += " " + option_usage(option);
    return line;
}

void show_overview(Screen& screen) {
    screen.line("undersheet: the record of what lies under the sheet", Ink::strong);
    screen.line();
    for (const Verb& verb : verbs()) row(verb.name, verb.says, screen);
    screen.line();
    screen.set_in(
        "",
        "Each command explains itself: undersheet record --help. What can be recorded: undersheet kinds.");
    screen.line();
    screen.line("Begin like this:", Ink::strong);
    for (const char* name : {"start", "people add", "jobs new", "record"})
        screen.line("  " + find_verb(name)->example);
    screen.line();
    screen.set_in("", "Answers go to the screen, messages beside them (stderr). It ends with 0 when done, 1 "
                      "when the answer is "
                      "no, 2 when the command was wrong, 3 when the book cannot be read or written.");
}

void show_help(const Verb& verb, Screen& screen) {
    screen.set_in("undersheet " + verb.name + ": ", verb.says, Ink::strong);
    screen.line();
    screen.set_in("  ", usage(verb));
    screen.line();
    for (const Word& word : verb.words) row(word.name, word.says, screen);
    for (const Option& option : verb.options) {
        row(option.value.empty() ? option.name : option.name + " " + option.value, option.says, screen);
    }
    if (!verb.more.empty()) screen.line();
    if (!verb.more.empty()) screen.set_in("", verb.more);
    screen.line();
    screen.line("For example:", Ink::strong);
    screen.line("  " + verb.example);
}

std::string field_words(const desk::FieldLine& field) {
    std::vector<std::string> pieces = {field.prompt};
    if (!field.choices.empty()) pieces.push_back(choice_words(field));
    if (const auto range = bounds(field.least, field.most); !range.empty())
        pieces.push_back(range + " " + field.unit);
    if (const auto usual = bounds(field.usual_least, field.usual_most); !usual.empty())
        pieces.push_back("usually " + usual);
    if (!field.odd.empty()) pieces.push_back("look twice: " + field.odd);
    if (field.may_skip) pieces.emplace_back("or not_looked, cant_reach");
    if (field.personal) pieces.emplace_back("personal, can be erased");
    return joined(pieces, "; ");
}

void show_kind(const desk::KindLine& kind, Screen& screen) {
    screen.set_in(kind.name + ": ", kind.heading, Ink::strong);
    if (!kind.prompt.empty()) screen.set_in("", kind.prompt);
    screen.line();
    if (!kind.place.empty()) row(kind.place_required ? "--at *" : "--at", kind.place, screen);
    if (kind.part_required) row("--part *", "the part it belongs to, like band/AB", screen);
    for (const auto& field : kind.fields) row(field_name(field), field_words(field), screen);
    screen.line();
    screen.set_in("", "* is needed. " + kind.judging);
    if (kind.example.empty()) return;
    screen.line();
    screen.line("For example:", Ink::strong);
    screen.line("  " + kind.example);
}

} // namespace undersheet::cli
