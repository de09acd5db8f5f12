#include "cli/verb.h"

namespace undersheet::cli {
namespace {

std::vector<Verb> all_verbs() {
    std::vector<Verb> all;
    for (auto* group : {start_verbs,   people_verbs,  pin_verbs,   job_verbs,        record_verbs,
                        kind_verbs,    correct_verbs, photo_verbs, finding_verbs,    stage_verbs,
                        part_verbs,    decide_verbs,  punch_verbs, supplement_verbs, recall_verbs,
                        hand_verbs,    erase_verbs,   paper_verbs, history_verbs,    verify_verbs,
                        salvage_verbs, takeoff_verbs, day_verbs,   reckon_verbs,     completion_verbs}) {
        for (Verb& verb : group()) all.push_back(std::move(verb));
    }
    return all;
}

} // namespace

Option book_option() {
    return {"--book", "FILE", "the book; else UNDERSHEET_BOOK, else your data folder", false, Sort::file};
}

std::vector<Option> reading(std::vector<Option> own) {
    own.push_back(book_option());
    own.push_back({"--job", "REF", "the job; else the one last worked on"});
    own.push_back({"--supplement", "N",
                   "the later visit that is meant; else the one that is open, 0 is the first record"});
    own.push_back({"--when", "TIME", "the time it is about, with offset; else now"});
    own.push_back({"--json", "", "write JSON for scripts"});
    return own;
}

std::vector<Option> writing(std::vector<Option> own) {
    own.push_back({"--by", "NAME", "who says so: initials or name; else UNDERSHEET_BY"});
    return reading(std::move(own));
}

std::vector<Option> signing(std::vector<Option> own) {
    own.push_back({"--pin-from", "FILE",
                   "a file with the writer's PIN, - is the standard input; else it is asked for", false,
                   Sort::file});
    return writing(std::move(own));
}

const std::vector<Verb>& verbs() {
    static const std::vector<Verb> all = all_verbs();
    return all;
}

const Verb* find_verb(const std::string& name) {
    for (const Verb& verb : verbs()) {
        if (verb.name == name) return &verb;
    }
    return nullptr;
}

} // namespace undersheet::cli
