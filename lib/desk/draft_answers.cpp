#include "base/text.h"
#include "desk/drafts.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

using entry::Value;

std::vector<std::string> ids_of(const std::vector<job::Finding>& findings) {
    std::vector<std::string> ids;
    for (const auto& finding : findings) ids.push_back(finding.id);
    return ids;
}

Fault no_such_finding(const Case& on, const std::string& typed) {
    const std::string near = nearest_word(typed, ids_of(on.judgement->findings));
    return {Code::no_such_finding,
            "job " + on.job.ref + " has no finding '" + typed + "' now",
            {},
            near.empty() ? "undersheet findings lists them" : "did you mean '" + near + "'?"};
}

Value entries_of(const job::Finding& finding) {
    std::vector<std::string> names;
    for (const auto* entry : finding.entries) names.push_back(entry::hash_text(entry->hash));
    std::sort(names.begin(), names.end());
    names.erase(std::unique(names.begin(), names.end()), names.end());
    Value list = entry::List{};
    for (auto& name : names) list.push(std::move(name));
    return list;
}

// What the answer is about is pinned down: the rule, the limit and reading of that moment, the entries behind them.
void pin(Typed& typed, const job::Finding& finding) {
    typed.set("finding", finding.id);
    if (!finding.entries.empty()) typed.set("stands_on", entries_of(finding));
    if (typed.kind != "decide") return;
    typed.set("rule", finding.rule);
    if (!finding.limit.empty()) typed.set("limit", finding.limit);
    if (!finding.value.empty()) typed.set("reading", finding.value);
}

Fault no_number(const job::Job& job, const std::string& typed) {
    std::vector<std::string> numbers;
    for (const auto& item : job.punch) numbers.push_back(item.name);
    return {Code::no_such_finding,
            "there is no row '" + typed + "' put on the punch list by hand",
            {},
            numbers.empty()
                ? "rows from findings clear by themselves when a new reading is good"
                : "there are " + joined(numbers, ", ") + "; rows from findings clear by themselves"};
}

const job::PunchItem* item_of(const job::Job& job, const std::string& typed) {
    const auto found = std::find_if(job.punch.begin(), job.punch.end(), [&](const job::PunchItem& item) {
        return item.name == lower_ascii(typed);
    });
    return found == job.punch.end() ? nullptr : &*found;
}

int next_item_number(const job::Job& job) {
    int highest = 0;
    for (const auto& item : job.punch) highest = std::max(highest, item.number);
    return highest + 1;
}

// What only eyes found is cleared by a photograph of it, or by a reason why there is none.
Done check_clear(const job::PunchItem& item, const Typed& typed) {
    const bool shown = !typed.text("photo").empty() || !typed.text("why").empty();
    if (item.cleared != nullptr)
        return Fault{Code::not_from_here, "row " + item.name + " is cleared already", {}, {}};
    if (shown || item.severity == method::Severity::note) return {};
    return Fault{Code::reason_needed,
                 "row " + item.name + " needs a photograph of what it looks like now",
                 {},
                 "give --photo FILE, or --why with the reason there is none"};
}

Done check_row(const job::Job& job, const Typed& typed) {
    const job::PunchItem* item = item_of(job, typed.text("number"));
    if (item == nullptr) return no_number(job, typed.text("number"));
    if (typed.kind == "punch_clear") return check_clear(*item, typed);
    if (typed.kind == "punch_look" && item->cleared == nullptr) {
        return Fault{Code::not_from_here,
                     "row " + typed.text("number") + " is not cleared yet",
                     {},
                     "clear it first: undersheet punch clear"};
    }
    if (typed.kind != "punch_join") return {};
    if (item_of(job, typed.text("with")) == nullptr) return no_number(job, typed.text("with"));
    if (typed.text("with") != typed.text("number")) return {};
    return Fault{Code::argument_wrong, "a row cannot be joined to itself", {}, "name two rows"};
}

// Two devices may have given one number to two rows: the entry that raised the row says which is meant.
void pin_row(const job::Job& job, Typed& typed, std::string_view number, std::string_view raised) {
    const job::PunchItem* item = item_of(job, typed.text(number));
    if (item == nullptr) return;
    typed.set(number, std::to_string(item->number));
    typed.set(raised, entry::hash_text(item->raised->hash));
}

// A must-do step that holds a part is let go under the name its refusal gives: step@band/AB:smooth.
const job::Held* step_that_holds(Case& on, const Typed& typed) {
    const std::string id = typed.text("finding");
    if (typed.kind != "decide" || !id.starts_with("step@")) return nullptr;
    for (const auto& part : on.judged().parts) {
        for (const auto& held : part.held_by) {
            if (held.finding == id) return &held;
        }
    }
    return nullptr;
}

Result<Drafted> draft_step_let_go(const Writing& writing, const Typed& typed, const job::Held& step) {
    if (step.decidable) return checked_draft(writing, typed);
    return Fault{Code::not_decidable, "nobody can let this go: " + step.why, step.finding, step.clears};
}

} // namespace

Result<Drafted> draft_answer(const Writing& writing, Typed typed) {
    if (const job::Held* step = step_that_holds(writing.on, typed))
        return draft_step_let_go(writing, typed, *step);
    const job::Finding* finding = writing.on.judged().finding(typed.text("finding"));
    if (finding == nullptr) return no_such_finding(writing.on, typed.text("finding"));
    if (typed.kind == "decide" && !finding->decidable) {
        return Fault{Code::not_decidable, "nobody can let this go: " + finding->says, finding->id,
                     finding->clears};
    }
    pin(typed, *finding);
    return checked_draft(writing, typed);
}

Result<Drafted> draft_punch(const Writing& writing, Typed typed) {
    const job::Job& job = writing.on.job;
    if (typed.kind == "punch_add") {
        typed.set("number", std::to_string(next_item_number(job)));
    } else if (auto row = check_row(job, typed); !row) {
        return row.fault();
    } else {
        pin_row(job, typed, "number", "of");
        pin_row(job, typed, "with", "with_of");
    }
    return checked_draft(writing, typed);
}

} // namespace undersheet::desk
