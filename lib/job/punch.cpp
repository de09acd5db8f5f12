#include "job/punch.h"

#include <algorithm>
#include <array>

namespace undersheet::job {
namespace {

using method::Severity;

Worded sign_off_of(const Worded& part) { return worded("sign-off of {part}", {{"part", part}}); }

Worded hold_words(const method::Hold& hold) {
    const Worded stage = hold.stage.empty() ? "every part" : part_worded(hold.stage);
    return hold.moment == method::Moment::start ? worded("start of {part}", {{"part", stage}})
                                                : sign_off_of(stage);
}

// Each once.
void add_hold(PunchRow& row, Worded hold) {
    if (std::find(row.holds.begin(), row.holds.end(), hold.text) != row.holds.end()) return;
    row.holds.push_back(hold.text);
    row.holds_as.push_back(std::move(hold));
}

PunchRow row_of(const Finding& finding) {
    PunchRow row{.number = finding.id,
                 .open = true,
                 .severity = finding.severity,
                 .place = finding.place.empty() ? finding.label : finding.place};
    row.part = finding.part;
    row.says = finding.says;
    row.clears = finding.clears;
    row.says_as = finding.says_as;
    row.clears_as = finding.clears_as;
    for (const auto& hold : finding.holds) add_hold(row, hold_words(hold));
    row.raised = finding.entries.empty() ? nullptr : finding.entries.front();
    row.decided = finding.decided;
    return row;
}

PunchRow row_of(const PunchItem& item) {
    PunchRow row{.number = item.name,
                 .open = item.cleared == nullptr,
                 .severity = item.severity,
                 .place = entry::place_text(item.place)};
    row.part = item.part;
    row.says = item.text;
    row.says_as = typed(item.text);
    row.clears_as = typed("punch clear " + row.number);
    row.clears = row.clears_as.text;
    if (item.severity != Severity::note)
        add_hold(row, sign_off_of(part_worded(item.part.empty() ? "final" : item.part)));
    row.raised = item.raised;
    row.cleared = item.cleared;
    row.second_look = item.looked;
    row.also_raised_as = item.also_raised_as;
    return row;
}

bool stands_on_list(const Finding& finding) {
    return finding.severity != Severity::note && finding.rule != "punch";
}

bool is_same_day(const entry::Time& one, const entry::Time& other) {
    return entry::date_of(one) == entry::date_of(other);
}

// Of a finding: what was taken at its place until it was cleared, and on the day it was cleared afterwards.
void add_photos_of_place(const Job& job, PunchRow& row) {
    if (row.place.empty()) return;
    for (const Reading* photo : job.all("photo")) {
        if (entry::place_text(photo->place) != row.place && photo->label != row.place) continue;
        const bool after = row.cleared != nullptr && row.cleared->when.unix_s <= photo->when().unix_s;
        if (after && !is_same_day(photo->when(), row.cleared->when)) continue;
        (after ? row.photos_after : row.photos_before).push_back(photo->word("sha256"));
    }
}

void add_once(std::vector<std::string>& all, const std::string& one) {
    if (!one.empty() && std::find(all.begin(), all.end(), one) == all.end()) all.push_back(one);
}

// Of what somebody put on the list: the photographs that were given with it. Others of the same edge show other things.
void add_photos_given(const Job& job, const PunchItem& item, PunchRow& row) {
    add_once(row.photos_before, item.raised->data.text_of("photo"));
    for (const Reading* photo : job.all("photo")) {
        if (photo->word("of") != entry::hash_text(item.raised->hash)) continue;
        const bool after = item.cleared != nullptr && item.cleared->when.unix_s <= photo->when().unix_s;
        add_once(after ? row.photos_after : row.photos_before, photo->word("sha256"));
    }
    if (item.cleared != nullptr) add_once(row.photos_after, item.cleared->data.text_of("photo"));
}

PunchRow shown_row(const Job& job, const PunchItem& item) {
    PunchRow row = row_of(item);
    add_photos_given(job, item, row);
    return row;
}

PunchRow shown_row(const Job& job, PunchRow of_finding) {
    add_photos_of_place(job, of_finding);
    return of_finding;
}

void sort_rows(std::vector<PunchRow>& rows) {
    std::stable_sort(rows.begin(), rows.end(), [](const PunchRow& a, const PunchRow& b) {
        if (a.open != b.open) return a.open;
        return a.severity > b.severity;
    });
}

// Only these can make a finding come or go; the rest of the journal need not be replayed for it.
bool can_change_findings(const entry::Entry& entry, const method::Catalogue& kinds) {
    const method::Kind* kind = kinds.find(entry.kind);
    if (kind == nullptr) return false;
    constexpr std::array kOthers{"tick", "correct", "withdraw", "reopen", "begin", "resume", "decide"};
    return kind->group == method::Group::reading ||
           std::find(kOthers.begin(), kOthers.end(), entry.kind) != kOthers.end();
}

// Findings that came and went: judged again after each moment at which something was said, as of that moment.
class Past {
public:
    Past(const Job& job, const method::Method& method, const method::Catalogue& kinds)
        : job_(job), method_(method), kinds_(kinds) {}

    std::map<std::string, PunchRow> cleared(const std::set<std::string>& open_now) {
        EntryList so_far;
        const entry::Entry* unjudged = nullptr;
        for (const entry::Entry& entry : *job_.entries) {
            if (entry.when.unix_s > job_.as_of.unix_s) continue;
            if (unjudged != nullptr && unjudged->when.unix_s != entry.when.unix_s) {
                look(so_far, *unjudged);
                unjudged = nullptr;
            }
            so_far.push_back(entry);
            by_hash_[entry.hash] = &entry;
            if (can_change_findings(entry, kinds_)) unjudged = &entry;
        }
        if (unjudged != nullptr) look(so_far, *unjudged);
        std::erase_if(seen_, [&](const auto& row) {
            return row.second.cleared == nullptr || open_now.contains(row.first);
        });
        return std::move(seen_);
    }

private:
    void look(const EntryList& so_far, const entry::Entry& last) {
        entry::Time latest = last.when;
        for (const auto& entry : so_far) {
            if (entry.when.unix_s > latest.unix_s) latest = entry.when;
        }
        const auto then = fold(so_far, method_, kinds_, latest);
        if (!then) return;
        const Judgement judgement = judge_findings(*then, method_, kinds_);
        std::set<std::string> open;
        for (const Finding& finding : judgement.findings) {
            if (!stands_on_list(finding)) continue;
            open.insert(finding.id);
            const auto [at, is_new] = seen_.try_emplace(finding.id, row_of(finding));
            at->second.decided = nullptr; // it and `raised` point into a fold that goes away
            if (is_new) at->second.raised = raised_by(finding, last);
            at->second.cleared = nullptr;
            at->second.open = true;
        }
        for (auto& [id, row] : seen_) {
            if (row.cleared != nullptr || open.contains(id)) continue;
            row.open = false;
            row.cleared = &last;
        }
    }

    // The last entry the finding stands on; of one that stands on none, what was said last.
    const entry::Entry* raised_by(const Finding& finding, const entry::Entry& last) const {
        const entry::Entry* latest = nullptr;
        for (const entry::Entry* behind : finding.entries) {
            if (latest == nullptr || entry::comes_before(*latest, *behind)) latest = behind;
        }
        const auto kept = latest == nullptr ? by_hash_.end() : by_hash_.find(latest->hash);
        return kept == by_hash_.end() ? &last : kept->second;
    }

    const Job& job_;
    const method::Method& method_;
    const method::Catalogue& kinds_;
    std::map<std::string, PunchRow> seen_;
    std::map<entry::Hash, const entry::Entry*> by_hash_;
};

} // namespace

std::vector<PunchRow> open_punch(const Job& job, const Judgement& judgement) {
    std::vector<PunchRow> rows;
    for (const Finding& finding : judgement.findings) {
        if (stands_on_list(finding)) rows.push_back(shown_row(job, row_of(finding)));
    }
    for (const PunchItem& item : job.punch) {
        if (item.cleared == nullptr && !item.joined_away) rows.push_back(shown_row(job, item));
    }
    sort_rows(rows);
    return rows;
}

std::vector<PunchRow> punch_now(const Job& job, const Judgement& judgement) {
    std::vector<PunchRow> rows = open_punch(job, judgement);
    for (const PunchItem& item : job.punch) {
        if (item.cleared != nullptr && !item.joined_away) rows.push_back(shown_row(job, item));
    }
    sort_rows(rows);
    return rows;
}

std::vector<PunchRow> punch_list(const Job& job, const Judgement& judgement, const method::Method& method,
                                 const method::Catalogue& kinds) {
    std::vector<PunchRow> rows = punch_now(job, judgement);
    std::set<std::string> open_now;
    for (const PunchRow& row : rows) open_now.insert(row.number);
    for (auto& [id, row] : Past(job, method, kinds).cleared(open_now)) {
        if (const Finding* let_go = judgement.finding(id)) row.decided = let_go->decided;
        rows.push_back(shown_row(job, row));
    }
    sort_rows(rows);
    return rows;
}

} // namespace undersheet::job
