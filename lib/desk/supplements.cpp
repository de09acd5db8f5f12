#include "desk/supplements.h"

#include "base/text.h"
#include "desk/desk.h"
#include "desk/keep.h"
#include "desk/own.h"
#include "desk/people.h"
#include "job/supplements.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

constexpr std::string_view kFirstRecord = "0";

std::vector<std::string> names_of(const job::Job& job, bool only_open) {
    std::vector<std::string> names;
    for (const job::Supplement& supplement : job.supplements) {
        if (!only_open || supplement.is_open()) names.push_back(supplement.name);
    }
    return names;
}

Done fold_within(Case& on, const std::string& name) {
    for (const job::Supplement& supplement : on.job.supplements) {
        if (supplement.name != name) continue;
        on.within = supplement.opened->hash;
        return on.fold_again();
    }
    const auto names = names_of(on.job, false);
    return Fault{Code::supplement_unknown, "job " + on.job.ref + " has no supplement '" + name + "'",
                 "--supplement",
                 names.empty() ? "undersheet supplement open begins one after the hand-over"
                               : "there is " + joined(names, ", ")};
}

SupplementLine line_of(const job::Job& job, const job::Supplement& supplement) {
    SupplementLine line;
    line.job = {job.ref, job.roof_name, supplement.name};
    line.number = supplement.name;
    line.why = supplement.why;
    line.complaint = supplement.opened->field_text("complaint");
    line.opened_at = supplement.opened->when.text;
    line.opened_by = job.person_name(supplement.opened->author);
    line.entries = supplement.entries.size();
    if (supplement.is_open()) return line;
    line.signed_at = supplement.signatures.front()->when.text;
    line.signed_by = job.person_name(supplement.signatures.front()->author);
    return line;
}

int next_supplement_number(const job::Job& job) {
    int greatest = 0;
    for (const job::Supplement& supplement : job.supplements)
        greatest = std::max(greatest, static_cast<int>(supplement.opened->data.number_of("number", 0)));
    return greatest + 1;
}

// By the program's own catalogue: the job may have been opened before there were supplements.
Result<Drafted> supplement_draft(const Writing& writing, const Typed& typed) {
    const Case& on = writing.on;
    auto drafted = office_draft(own_catalogue(), typed, on.moment.when, writing.by.id);
    if (!drafted) return drafted.fault();
    drafted->job = on.id;
    drafted->supplement = on.within;
    return Drafted{std::move(*drafted), {}, {}};
}

Result<Drafted> opening_draft(const Writing& writing, const NewSupplement& wanted) {
    const job::Job& job = writing.on.job;
    if (job.handed_over == nullptr) {
        return Fault{Code::argument_wrong,
                     "job " + job.ref + " is not handed over yet",
                     {},
                     "record it on the job itself"};
    }
    Typed typed = {"supplement", {}, {}, {}};
    typed.put("number", std::to_string(next_supplement_number(job)));
    typed.put("why", wanted.why);
    typed.put("complaint", wanted.complaint);
    typed.put("told_on", wanted.told_on);
    return supplement_draft(writing, typed);
}

Result<Drafted> sign_draft(const Writing& writing, const SupplementSign& sign) {
    const job::Job& job = writing.on.job;
    if (auto goes_on = supplement_takes_more(job); !goes_on) return goes_on.fault();
    Typed typed = {"supplement_sign", {}, {}, {}};
    typed.put("customer", sign.customer);
    typed.put("not_present", sign.not_present);
    auto drafted = supplement_draft(writing, typed);
    if (!drafted) return drafted;
    for (const job::OpenThing& open : job::open_in(job, *job.supplement()))
        drafted->held_by.push_back({.why = open.why, .clears = open.clears});
    if (const auto why = job::customer_unsaid(!sign.customer.empty(), !sign.not_present.empty()))
        drafted->held_by.push_back(
            {.why = *why, .clears = "--customer NAME, or --not-present \"sent on …\""});
    return drafted;
}

} // namespace

Done choose_supplement(Case& on, const std::string& typed) {
    if (typed == kFirstRecord) return {};
    if (!typed.empty()) return fold_within(on, lower_ascii(typed));
    const auto open = names_of(on.job, true);
    return open.size() == 1 ? fold_within(on, open.front()) : Done();
}

Done supplement_takes_more(const job::Job& job) {
    const job::Supplement* supplement = job.supplement();
    if (supplement != nullptr && supplement->is_open()) return {};
    if (supplement != nullptr)
        return Fault{Code::closed,
                     "supplement " + supplement->name + " of job " + job.ref + " is signed",
                     {},
                     "undersheet supplement open begins another"};
    const auto open = names_of(job, true);
    return Fault{Code::closed,
                 "job " + job.ref + " is closed since the hand-over",
                 {},
                 open.empty() ? "undersheet supplement open --why yearly|call|claim|recall"
                              : "say which: --supplement " + joined(open, " or ")};
}

Result<std::vector<SupplementLine>> Desk::supplements(const Asked& asked) {
    auto on = take_up(*session_, asked);
    if (!on) return on.fault();
    std::vector<SupplementLine> lines;
    for (const job::Supplement& supplement : on->job.supplements)
        lines.push_back(line_of(on->job, supplement));
    return lines;
}

Result<SupplementLine> Desk::open_supplement(const Asked& asked, const NewSupplement& wanted) {
    Asked first = asked;
    first.supplement = kFirstRecord;
    auto kept = keep_drafted(*session_, first, [&](const Writing& writing, book::Book&) {
        return opening_draft(writing, wanted);
    });
    if (!kept) return kept.fault();
    auto on = take_up(*session_, first);
    if (!on) return on.fault();
    for (const job::Supplement& supplement : on->job.supplements) {
        if (entry::hash_text(supplement.opened->hash) == kept->entry) return line_of(on->job, supplement);
    }
    throw std::logic_error("a supplement was kept and is not there");
}

Result<Kept> Desk::sign_supplement(const Asked& asked, const SupplementSign& sign) {
    return keep_drafted(*session_, asked,
                        [&](const Writing& writing, book::Book&) { return sign_draft(writing, sign); });
}

} // namespace undersheet::desk
