#include "job/heads_sample.h"

#include "trade/heads.h"

#include <algorithm>
#include <cmath>

namespace undersheet::job {
namespace {

std::int64_t whole(const Reading& reading, std::string_view field, double fallback) {
    return static_cast<std::int64_t>(std::llround(reading.number(field).value_or(fallback)));
}

// `other_heads=yes` opens a new sample; squares of one sample add up.
void add_reading(HeadsSample& sample, const Reading& reading) {
    sample.total = std::max(sample.total, whole(reading, "total", 0));
    sample.checked += whole(reading, "checked", 0);
    sample.below += whole(reading, "below", 0);
    sample.flush += whole(reading, "flush", 0);
    sample.proud += whole(reading, "proud", 0);
    sample.squares += whole(reading, "squares", 1);
    sample.worst_mm = std::max(sample.worst_mm, reading.number("worst_mm").value_or(0));
    const bool bad = whole(reading, "flush", 0) + whole(reading, "proud", 0) > 0;
    if (bad && !reading.word("board").empty()) sample.boards.insert(reading.word("board"));
    sample.entries.push_back(reading.entry);
}

bool starts_new_sample(const Reading& reading, const HeadsSample& so_far) {
    const bool full =
        reading.number("checked") && whole(reading, "checked", 0) == whole(reading, "total", -1);
    return so_far.checked > 0 && (reading.word("other_heads") == "yes" || full);
}

bool wants_all(const HeadsSample& sample, const method::Method& method) {
    const double share_pct = 100.0 * static_cast<double>(sample.bad) / static_cast<double>(sample.checked);
    return share_pct > method.limit("heads_all_over_pct") ||
           static_cast<double>(sample.boards.size()) > method.limit("heads_all_over_boards");
}

void say(HeadsSample& sample) {
    const auto text = [](std::int64_t n) { return std::to_string(n); };
    const auto found =
        worded(sample.flush > 0 ? "{bad} of {checked} ({flush} flush)" : "{bad} of {checked}",
               {{"bad", text(sample.bad)}, {"checked", text(sample.checked)}, {"flush", text(sample.flush)}});
    sample.line = worded(sample.is_full ? "{found}, all {total} checked"
                                        : "{found}; could be up to {at_most} of {total} ({pct} %)",
                         {{"found", found},
                          {"total", text(sample.total)},
                          {"at_most", text(sample.at_most)},
                          {"pct", fixed(sample.at_most_pct, 1)}});
}

void work_out(HeadsSample& sample, const method::Method& method) {
    sample.bad = sample.flush + sample.proud;
    sample.is_full = sample.checked == sample.total;
    sample.all_wanted = wants_all(sample, method);
    const auto confidence = Decimal::rounded(method.limit("heads_confidence_pct"), 6);
    if (!confidence) return;
    const auto bound = trade::heads({.total = sample.total,
                                     .checked = sample.checked,
                                     .proud = sample.bad,
                                     .confidence_pct = *confidence,
                                     .allow_pct = {}});
    if (!bound) return;
    sample.found_pct = bound->found_pct;
    sample.at_most = bound->at_most;
    sample.at_most_pct = bound->at_most_pct;
    sample.working.push_back("largest D with P(X <= " + std::to_string(sample.bad) + " | " +
                             std::to_string(sample.total) + ", D, " + std::to_string(sample.checked) +
                             ") over " + shortest(100 - confidence->value(), 6) + " % is " +
                             std::to_string(sample.at_most));
    say(sample);
}

} // namespace

std::optional<HeadsSample> judge_heads(const Job& job, const method::Method& method) {
    HeadsSample sample;
    bool bad_before = false;
    bool all_wanted_before = false;
    std::int64_t reset = 0;
    for (const Reading* reading : job.all("heads")) {
        if (!reading->number("checked")) continue;
        if (starts_new_sample(*reading, sample)) {
            work_out(sample, method);
            // A check of every head answers all the samples before it.
            const bool is_answered = sample.is_full && reset >= sample.bad;
            bad_before = !is_answered && (bad_before || sample.bad > 0);
            all_wanted_before = !is_answered && (all_wanted_before || sample.all_wanted || sample.is_full);
            sample = {};
        }
        add_reading(sample, *reading);
        reset = whole(*reading, "reset", 0);
    }
    if (sample.checked == 0 || sample.total < sample.checked) return std::nullopt;
    work_out(sample, method);
    sample.all_wanted = sample.all_wanted || all_wanted_before;
    const bool put_right = sample.bad == 0 || (sample.is_full && reset >= sample.bad);
    sample.cleared = put_right && (sample.is_full || !sample.all_wanted);
    if (!sample.cleared && sample.bad == 0 && bad_before)
        sample.line =
            worded("{line}; the earlier sample calls for every head to be checked", {{"line", sample.line}});
    return sample;
}

} // namespace undersheet::job
