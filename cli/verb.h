// One command of the program: its words, its options, an example, and the function that carries it out.
//
// Help, completion and the manual page are written from these rows, so a command that works is a command that is explained.
#pragma once

#include "cli/arguments.h"
#include "cli/screen.h"

#include <string>
#include <vector>

namespace undersheet::cli {

enum class Count { one, maybe, some, any }; // exactly one, none or one, at least one, any number

// What a word is, for completion.
enum class Sort { free, file, kind, field, part, step, paper, shell, topic };

struct Word {
    std::string name; // "PART"
    std::string says;
    Count count = Count::one;
    Sort sort = Sort::free;
};

struct Option {
    std::string name;       // "--by"
    std::string value = {}; // "NAME"; "" for one that is only there or not
    std::string says = {};
    bool required = false;
    Sort sort = Sort::free;
};

struct Verb {
    std::string name;    // "stages", "punch add"
    std::string says;    // one line
    std::string example; // one whole command
    std::vector<Word> words = {};
    std::vector<Option> options = {};
    int (*run)(const Arguments&, Screen&) = nullptr;
    std::string more = {}; // further lines of help
};

// The options that many commands share.
[[nodiscard]] Option book_option();
// --book, --job, --supplement, --when, --json, after those of the command's own.
[[nodiscard]] std::vector<Option> reading(std::vector<Option> own = {});
// As reading(), and --by.
[[nodiscard]] std::vector<Option> writing(std::vector<Option> own = {});

// As writing(), and --pin-from: what a person answers for.
[[nodiscard]] std::vector<Option> signing(std::vector<Option> own = {});

// Every command, in the order of the help page.
[[nodiscard]] const std::vector<Verb>& verbs();
[[nodiscard]] const Verb* find_verb(const std::string& name);

// One function for each file of commands.
[[nodiscard]] std::vector<Verb> start_verbs();
[[nodiscard]] std::vector<Verb> people_verbs();
[[nodiscard]] std::vector<Verb> pin_verbs();
[[nodiscard]] std::vector<Verb> job_verbs();
[[nodiscard]] std::vector<Verb> record_verbs();
[[nodiscard]] std::vector<Verb> kind_verbs();
[[nodiscard]] std::vector<Verb> correct_verbs();
[[nodiscard]] std::vector<Verb> photo_verbs();
[[nodiscard]] std::vector<Verb> finding_verbs();
[[nodiscard]] std::vector<Verb> stage_verbs();
[[nodiscard]] std::vector<Verb> part_verbs();
[[nodiscard]] std::vector<Verb> decide_verbs();
[[nodiscard]] std::vector<Verb> punch_verbs();
[[nodiscard]] std::vector<Verb> supplement_verbs();
[[nodiscard]] std::vector<Verb> recall_verbs();
[[nodiscard]] std::vector<Verb> hand_verbs();
[[nodiscard]] std::vector<Verb> erase_verbs();
[[nodiscard]] std::vector<Verb> paper_verbs();
[[nodiscard]] std::vector<Verb> history_verbs();
[[nodiscard]] std::vector<Verb> verify_verbs();
[[nodiscard]] std::vector<Verb> salvage_verbs();
[[nodiscard]] std::vector<Verb> takeoff_verbs();
[[nodiscard]] std::vector<Verb> day_verbs();
[[nodiscard]] std::vector<Verb> reckon_verbs();
[[nodiscard]] std::vector<Verb> completion_verbs();

} // namespace undersheet::cli
