// The punch list: what is still to be put right, from the findings by themselves and from what people added by hand.
//
// Promises: put-right and stop findings stand on it until they are cleared or let go; duplicates are shown once with
//   "also raised as"; when a finding came and went is worked out from the entries themselves.
// Does not: hold anything for a note added by hand.
#pragma once

#include "job/judge.h"

namespace undersheet::job {

struct PunchRow {
    std::string number = {}; // "3" for a hand-added item, the finding's id for a finding
    bool open = true;
    method::Severity severity{};
    std::string place = {}, part = {}, says = {}, clears = {};
    std::vector<std::string> holds = {}; // sign-offs and starts in words
    Worded says_as = {}, clears_as = {}; // the same three, for another language
    std::vector<Worded> holds_as = {};
    const entry::Entry* raised = nullptr;
    const entry::Entry* cleared = nullptr;
    const entry::Entry* second_look = nullptr;
    const Decision* decided = nullptr; // let go rather than cleared
    std::vector<std::string> also_raised_as = {};
    std::vector<std::string> photos_before = {}, photos_after = {}; // SHA-256
};

// Open first, then stop, put right, note. Replays the job entry by entry to find when findings came and went.
[[nodiscard]] std::vector<PunchRow> punch_list(const Job& job, const Judgement& judgement,
                                               const method::Method& method, const method::Catalogue& kinds);

// What is open now and what people cleared by hand, without the findings that came and went; cheap.
[[nodiscard]] std::vector<PunchRow> punch_now(const Job& job, const Judgement& judgement);

// Only what is open now; cheap.
[[nodiscard]] std::vector<PunchRow> open_punch(const Job& job, const Judgement& judgement);

} // namespace undersheet::job
