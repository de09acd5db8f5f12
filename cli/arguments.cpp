#include "cli/arguments.h"

#include "base/text.h"
#include "cli/verb.h"

#include <CLI/CLI.hpp>

#include <algorithm>

namespace undersheet::cli {
namespace {

constexpr int kMany = 100'000; // words of one command: far more than a shell passes

Fault wrong(std::string detail, std::string clears) {
    return {Code::argument_wrong, std::move(detail), {}, std::move(clears)};
}

bool takes_value(const std::string& option) {
    return option == "--book" || option == "--job" || option == "--by" || option == "--when";
}

// "undersheet --job A-07 stages" means "undersheet stages --job A-07".
void move_leading_options_back(std::vector<std::string>& typed) {
    std::size_t first = 0;
    while (first + 1 < typed.size() && takes_value(typed[first])) first += 2;
    std::rotate(typed.begin(), typed.begin() + static_cast<std::ptrdiff_t>(first), typed.end());
}

std::vector<std::string> words_after(const std::string& first) {
    std::vector<std::string> known;
    for (const Verb& verb : verbs()) {
        const auto pieces = split(verb.name, ' ');
        if (first.empty()) known.push_back(pieces[0]);
        if (!first.empty() && pieces.size() == 2 && pieces[0] == first) known.push_back(pieces[1]);
    }
    return known;
}

Fault unknown_command(const std::string& word) {
    const std::string near = nearest_word(word, words_after(""));
    return wrong("there is no command '" + word + "'",
                 near.empty() ? "undersheet --help lists them" : "did you mean '" + near + "'?");
}

// "punch add" takes two words, "punch" one. What is left in `typed` belongs to the command.
Result<const Verb*> take_verb(std::vector<std::string>& typed) {
    const std::string first = typed[0];
    if (typed.size() > 1) {
        if (const Verb* verb = find_verb(first + " " + typed[1])) {
            typed.erase(typed.begin(), typed.begin() + 2);
            return verb;
        }
    }
    const Verb* verb = find_verb(first);
    if (verb == nullptr) return unknown_command(first);
    const auto seconds = words_after(first);
    if (typed.size() > 1 && !typed[1].starts_with("-") && !seconds.empty() && verb->words.empty()) {
        return wrong("'" + first + " " + typed[1] + "' is no command",
                     first + " can be followed by " + joined(seconds, ", "));
    }
    typed.erase(typed.begin());
    return verb;
}

std::string usage_hint(const Verb& verb) { return "undersheet " + verb.name + " --help shows how"; }

Fault unexpected(const Verb& verb, const std::string& word) {
    if (!word.starts_with("-")) {
        return wrong("'" + word + "' is one word too many for " + verb.name,
                     "put text of several words between quotes");
    }
    std::vector<std::string> known = {"--help"};
    for (const Option& option : verb.options) known.push_back(option.name);
    const std::string near = nearest_word(split(word, '=')[0], known);
    return wrong(verb.name + " has no option " + word,
                 near.empty() ? usage_hint(verb) : "did you mean " + near + "?");
}

bool takes_many(const Word& word) { return word.count == Count::some || word.count == Count::any; }

// The words in their order; the last of them may take any number. What is left over is one word too many.
std::vector<std::string> give_out(const Verb& verb, const std::vector<std::string>& words,
                                  Arguments& arguments) {
    std::size_t next = 0;
    for (const Word& word : verb.words) {
        std::vector<std::string> own;
        while (next < words.size() && (own.empty() || takes_many(word))) own.push_back(words[next++]);
        if (!own.empty()) arguments.put(word.name, std::move(own));
    }
    return {words.begin() + static_cast<std::ptrdiff_t>(next), words.end()};
}

void add_option(CLI::App& app, const Option& option, std::vector<std::string>& into, bool& there) {
    if (option.value.empty()) {
        app.add_flag(option.name, there, option.says);
    } else {
        app.add_option(option.name, into, option.says)
            ->expected(1)
            ->allow_extra_args(
                false) // a word after the value is a word of the command, not more of the value
            ->multi_option_policy(CLI::MultiOptionPolicy::TakeLast);
    }
}

Done all_there(const Verb& verb, const Arguments& arguments) {
    for (const Word& word : verb.words) {
        if ((word.count == Count::one || word.count == Count::some) && !arguments.has(word.name)) {
            return wrong(verb.name + " needs " + word.name + " (" + word.says + ")",
                         "for example: " + verb.example);
        }
    }
    for (const Option& option : verb.options) {
        if (option.required && !arguments.has(option.name)) {
            return wrong(verb.name + " needs " + option.name + " " + option.value + " (" + option.says + ")",
                         "for example: " + verb.example);
        }
    }
    return {};
}

struct Slot {
    std::vector<std::string> values = {};
    bool there = false;
};

Arguments collected(const std::map<std::string, Slot>& slots) {
    Arguments arguments;
    for (const auto& [name, slot] : slots) {
        if (slot.there || !slot.values.empty()) arguments.put(name, slot.values);
    }
    return arguments;
}

Result<Arguments> read_arguments(const Verb& verb, std::vector<std::string> typed) {
    CLI::App app;
    app.set_help_flag();
    app.allow_extras();
    std::map<std::string, Slot> slots;
    for (const Option& option : verb.options) {
        add_option(app, option, slots[option.name].values, slots[option.name].there);
    }
    app.add_flag("--help,-h", slots["--help"].there);
    std::vector<std::string> words;
    app.add_option("WORDS", words)->expected(0, kMany);
    std::reverse(typed.begin(), typed.end()); // CLI11 takes them from the back
    try {
        app.parse(typed);
    } catch (const CLI::ArgumentMismatch& mismatch) {
        return wrong(split(mismatch.what(), ':')[0] + " is not followed by what it needs", usage_hint(verb));
    } catch (const CLI::ParseError& error) {
        return wrong(error.what(), usage_hint(verb));
    }
    Arguments arguments = collected(slots);
    if (arguments.has("--help")) return arguments;
    if (const auto extras = app.remaining(); !extras.empty()) return unexpected(verb, extras.front());
    if (const auto extras = give_out(verb, words, arguments); !extras.empty())
        return unexpected(verb, extras.front());
    if (const auto there = all_there(verb, arguments); !there) return there.fault();
    return arguments;
}

} // namespace

std::string Arguments::one(const std::string& name) const {
    const auto found = given_.find(name);
    return found == given_.end() || found->second.empty() ? std::string() : found->second.front();
}

std::vector<std::string> Arguments::all(const std::string& name) const {
    const auto found = given_.find(name);
    return found == given_.end() ? std::vector<std::string>() : found->second;
}

bool Arguments::has(const std::string& name) const { return given_.contains(name); }

Result<Command> read_command(std::vector<std::string> typed) {
    move_leading_options_back(typed);
    Command command;
    if (typed.empty()) return wrong("no command was given", "undersheet --help lists them");
    if (typed[0] == "--help" || typed[0] == "-h" || typed[0] == "help" || typed[0] == "--version") {
        command.arguments.put(typed[0] == "--version" ? "--version" : "--help", {});
        return command;
    }
    auto verb = take_verb(typed);
    if (!verb) return verb.fault();
    auto arguments = read_arguments(**verb, std::move(typed));
    if (!arguments) return arguments.fault();
    command.verb = *verb;
    command.arguments = std::move(*arguments);
    return command;
}

} // namespace undersheet::cli
