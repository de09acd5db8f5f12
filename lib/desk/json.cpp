#include "desk/json.h"

#include "desk/json_writing.h"

#include <optional>

namespace undersheet::desk {
namespace {

using entry::List;
using entry::Value;

Value held_value(const Held& held) {
    Value object;
    object.set("why", held.why).set("clears", held.clears).set("decidable", held.decidable);
    put(object, "finding", held.finding);
    put(object, "after", held.after);
    return object;
}

Value fault_value(const Fault& fault) {
    Value object;
    object.set("code", static_cast<int>(fault.code)).set("says", one_line(fault));
    put(object, "where", fault.where);
    return object;
}

Value bad_value(const BadLine& bad) { return fault_value(bad.fault).set("line", count_of(bad.line)); }

Value person_value(const PersonLine& person) {
    Value object;
    object.set("id", person.id)
        .set("name", person.name)
        .set("initials", person.initials)
        .set("role", person.role);
    put(object, "firm", person.firm);
    put(object, "ends", person.ends);
    if (person.has_pin) object.set("pin", true);
    return object;
}

Value job_value(const JobLine& line) {
    Value object;
    object.set("ref", line.job.ref)
        .set("roof", line.job.roof)
        .set("id", line.id)
        .set("standing", line.standing);
    object.set("opened", line.opened).set("entries", count_of(line.entries));
    object.set("from_paper", line.from_paper).set("current", line.current);
    put(object, "handed_over", line.handed_over);
    put(object, "finished", line.finished);
    return object;
}

Value finding_value(const FindingLine& finding) {
    Value object;
    object.set("id", finding.id)
        .set("rule", finding.rule)
        .set("severity", finding.severity)
        .set("place", finding.place);
    object.set("value", finding.value)
        .set("limit", finding.limit)
        .set("source", finding.source)
        .set("clears", finding.clears);
    object.set("near", finding.near).set("entries", list_of(finding.entries));
    object.set("says", finding.says).set("decidable", finding.decidable);
    put(object, "part", finding.part);
    put(object, "mark", finding.mark);
    put(object, "decided", finding.decided);
    put(object, "reason", finding.reason);
    put(object, "told", finding.told);
    return object;
}

Value step_value(const StepLine& step) {
    Value object;
    object.set("name", step.name).set("says", step.says).set("must", step.must).set("done", step.done);
    put(object, "entry", step.entry);
    return object;
}

Value part_value(const PartLine& part) {
    Value object;
    object.set("part", part.part).set("stage", part.stage).set("title", part.title).set("state", part.state);
    object.set("may", list_of(part.may)).set("steps", rows_of(part.steps, step_value));
    object.set("held_by", rows_of(part.held_by, held_value));
    put(object, "signed_by", part.signed_by);
    put(object, "signed_at", part.signed_at);
    put(object, "note", part.note);
    return object;
}

Value punch_value(const PunchLine& row) {
    Value object;
    object.set("number", row.number)
        .set("open", row.open)
        .set("severity", row.severity)
        .set("place", row.place);
    object.set("part", row.part)
        .set("says", row.says)
        .set("clears", row.clears)
        .set("holds", list_of(row.holds));
    put(object, "also_raised_as", row.also_raised_as);
    put(object, "raised_by", row.raised_by);
    put(object, "raised_at", row.raised_at);
    put(object, "cleared_by", row.cleared_by);
    put(object, "cleared_at", row.cleared_at);
    put(object, "looked_by", row.looked_by);
    put(object, "looked_at", row.looked_at);
    put(object, "let_go", row.let_go);
    return object;
}

Value history_value(const HistoryLine& line) {
    Value object;
    object.set("entry", line.entry).set("kind", line.kind).set("when", line.when).set("clock", line.clock);
    object.set("by", line.by).set("device", line.device).set("says", line.says);
    put(object, "place", line.place);
    put(object, "part", line.part);
    put(object, "marks", line.marks);
    put(object, "changes", line.changes);
    return object;
}

Value signature_value(const SignatureLine& line) {
    Value object;
    object.set("job", line.job).set("part", line.part).set("kind", line.kind).set("entry", line.entry);
    object.set("device", line.device).set("when", line.when);
    put(object, "after", line.after);
    put(object, "after_when", line.after_when);
    put(object, "before", line.before);
    put(object, "before_when", line.before_when);
    put(object, "own_key", line.own_key);
    return object;
}

Value verify_fault_value(const VerifyFault& fault) {
    return Value()
        .set("entry", fault.entry)
        .set("device", fault.device)
        .set("seq", fault.seq)
        .set("what", fault.what);
}

Value choice_value(const ChoiceLine& choice) {
    Value object;
    object.set("word", choice.word);
    put(object, "means", choice.meaning);
    return object;
}

Value field_value(const FieldLine& field) {
    Value object;
    object.set("name", field.name)
        .set("type", field.type)
        .set("prompt", field.prompt)
        .set("required", field.required);
    put(object, "unit", field.unit);
    put(object, "least", field.least);
    put(object, "most", field.most);
    put(object, "usual_least", field.usual_least);
    put(object, "usual_most", field.usual_most);
    put(object, "suspicious", field.odd);
    put(object, "fallback", field.fallback);
    if (!field.choices.empty()) object.set("choices", rows_of(field.choices, choice_value));
    if (field.personal) object.set("personal", true);
    if (field.may_skip) object.set("may_skip", true);
    return object;
}

Value kind_value(const KindLine& kind) {
    Value object;
    object.set("name", kind.name)
        .set("heading", kind.heading)
        .set("group", kind.group)
        .set("typed", kind.typed);
    object.set("fields", rows_of(kind.fields, field_value)).set("judging", kind.judging);
    object.set("place_required", kind.place_required).set("part_required", kind.part_required);
    put(object, "prompt", kind.prompt);
    put(object, "place", kind.place);
    put(object, "example", kind.example);
    return object;
}

Value why_step_value(const WhyStep& step) {
    return Value().set("heading", step.heading).set("lines", list_of(step.lines));
}

// Names the job in every row, since the list itself has no room for it.
Value with_job(const Value& rows, const JobName& job) {
    Value named = List{};
    for (const auto& row : *rows.list()) {
        Value copy = row;
        copy.set("job", job.ref);
        put(copy, "supplement", job.supplement);
        named.push(copy);
    }
    return named;
}

void put_kept(Value& object, const Kept& kept) {
    object.set("entry", kept.entry).set("says", kept.says);
    put(object, "asked", kept.asked);
    put(object, "marks", kept.marks);
    put(object, "bond_now", kept.bond_now);
    put(object, "receipt", kept.receipt);
    put(object, "now", kept.now);
}

} // namespace

std::string json_of(const Started& started) {
    return text_of(Value().set("book", started.book).set("firm", started.firm).set("device", started.device));
}

std::string json_of(const Firm& firm) {
    Value object;
    object.set("name", firm.name);
    put(object, "address", firm.address);
    put(object, "phone", firm.phone);
    put(object, "email", firm.email);
    put(object, "registration", firm.registration);
    put(object, "language", firm.language);
    return text_of(object);
}

std::string json_of(const std::vector<PersonLine>& people) { return text_of(rows_of(people, person_value)); }
std::string json_of(const std::vector<JobLine>& jobs) { return text_of(rows_of(jobs, job_value)); }

std::string json_of(const Kept& kept) {
    Value object;
    object.set("job", kept.job.ref).set("kind", kept.kind).set("when", kept.when).set("by", kept.by);
    put(object, "supplement", kept.job.supplement);
    put(object, "place", kept.place);
    put(object, "part", kept.part);
    if (kept.is_kept()) put_kept(object, kept);
    if (!kept.is_kept()) object.set("held_by", rows_of(kept.held_by, held_value));
    return text_of(object);
}

std::string json_of(const KeptMany& kept) {
    Value object;
    object.set("job", kept.job.ref).set("kept", count_of(kept.kept)).set("bad", rows_of(kept.bad, bad_value));
    put(object, "asked", kept.asked);
    put(object, "bond_now", kept.bond_now);
    return text_of(object);
}

std::string json_of(const Findings& findings) {
    return text_of(with_job(rows_of(findings.open, finding_value), findings.job));
}
std::string json_of(const Stages& stages) {
    return text_of(with_job(rows_of(stages.parts, part_value), stages.job));
}
std::string json_of(const Punch& punch) {
    return text_of(with_job(rows_of(punch.rows, punch_value), punch.job));
}
std::string json_of(const History& history) {
    return text_of(with_job(rows_of(history.lines, history_value), history.job));
}

std::string json_of(const Why& why) {
    Value object;
    object.set("job", why.job.ref).set("about", why.about).set("verdict", why.verdict);
    return text_of(object.set("steps", rows_of(why.steps, why_step_value)));
}

std::string json_of(const Verified& verified) {
    Value object;
    object.set("ok", verified.ok).set("entries", count_of(verified.entries)).set("digest", verified.digest);
    object.set("witnessed", verified.witnessed).set("faults", rows_of(verified.faults, verify_fault_value));
    object.set("unwitnessed", count_of(verified.unwitnessed)).set("receipts", count_of(verified.receipts));
    object.set("doubts", rows_of(verified.doubts, verify_fault_value));
    object.set("clock_by_hand", count_of(verified.clock_by_hand));
    object.set("missing_personal", count_of(verified.missing_personal));
    object.set("signatures", rows_of(verified.signatures, signature_value));
    return text_of(object);
}

std::string json_of(const std::vector<KindLine>& kinds) { return text_of(rows_of(kinds, kind_value)); }

} // namespace undersheet::desk
