#include "desk/drafts.h"

#include "base/text.h"
#include "desk/people.h"
#include "desk/shape.h"
#include "desk/supplements.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

using entry::Value;

// A record about an earlier time does not slip in before the hand-over.
Result<bool> is_closed(const Case& on) {
    if (on.job.handed_over != nullptr) return true;
    const Moment latest = moment_of(on.moment.as_of, false, on.entries);
    if (latest.as_of.unix_s <= on.moment.as_of.unix_s) return false;
    auto folded = job::fold(on.entries, *on.method, *on.kinds, latest.as_of);
    if (!folded) return folded.fault();
    return folded->handed_over != nullptr;
}

bool has_same_keys(const job::Reading& reading, const method::Kind& kind, const Typed& typed) {
    return std::all_of(kind.key_fields.begin(), kind.key_fields.end(),
                       [&](const std::string& key) { return reading.word(key) == typed.text(key); });
}

// What was said before about the same thing, for kinds that fill in field by field.
Value said_before(const job::Job& job, const method::Kind& kind, const Typed& typed) {
    if (kind.judging != method::Judging::fills) return {};
    for (const job::Reading* reading : job.all(kind.name)) {
        if (entry::place_text(reading->place) == typed.place && has_same_keys(*reading, kind, typed))
            return reading->data;
    }
    return {};
}

std::vector<std::string> part_names(const job::Job& job) {
    std::vector<std::string> names;
    for (const auto& part : job.parts) names.push_back(part.name);
    return names;
}

std::vector<std::string> parts_of_stage(const job::Job& job, const std::string& stage) {
    std::vector<std::string> names;
    for (const auto& part : job.parts) {
        if (lower_ascii(part.stage) == lower_ascii(stage)) names.push_back(part.name);
    }
    return names;
}

// band/BA is band/AB.
std::string turned(const std::string& part) {
    const auto slash = part.find('/');
    if (slash == std::string::npos || part.size() != slash + 3) return part;
    return part.substr(0, slash + 1) + part[slash + 2] + part[slash + 1];
}

Fault no_such_part(const job::Job& job, const std::string& typed) {
    const auto siblings = parts_of_stage(job, split(typed, '/')[0]);
    if (!siblings.empty())
        return {Code::no_such_part,
                "this roof has no part '" + typed + "'",
                {},
                "there are " + joined(siblings, ", ")};
    const std::string near = nearest_word(typed, part_names(job));
    return {Code::no_such_part,
            "this roof has no part '" + typed + "'",
            {},
            near.empty() ? "undersheet stages lists them" : "did you mean '" + near + "'?"};
}

Done check_office(const method::Kind& kind) {
    if (kind.automatic)
        return Fault{Code::argument_wrong, "the program writes this itself", kind.name, "nobody types it"};
    if (kind.group != method::Group::office) return {};
    return Fault{Code::argument_wrong, "this is not recorded on a job", kind.name,
                 kind.name == "person" ? "use undersheet people add"
                 : kind.name == "open" ? "use undersheet jobs new"
                                       : "use undersheet start"};
}

Result<Drafted> draft_reading(const Writing& writing, const Typed& typed) {
    if (typed.kind == "work") return draft_move(writing, typed, job::Event::tick);
    return checked_draft(writing, typed);
}

Result<Drafted> draft_event(const Writing& writing, Typed typed) {
    if (typed.kind == "settle") return draft_settle(writing, std::move(typed));
    if (const auto event = job::event_of(typed.kind)) return draft_move(writing, typed, *event);
    if (typed.kind == "correct") return draft_correction(writing, typed);
    if (typed.kind == "withdraw") return draft_withdrawal(writing, std::move(typed));
    if (typed.kind.starts_with("punch_")) return draft_punch(writing, std::move(typed));
    if (typed.kind == "decide" || typed.kind == "reason" || typed.kind == "told")
        return draft_answer(writing, std::move(typed));
    return Fault{Code::kind_unknown, "this cannot be recorded yet", typed.kind,
                 "undersheet kinds lists what can"};
}

} // namespace

std::string Typed::text(std::string_view field) const {
    for (const auto& [name, value] : fields) {
        if (name == field && value.text() != nullptr) return *value.text();
        if (name == field && value.number() != nullptr) return value.number()->text();
    }
    return {};
}

void Typed::put(std::string field, Value value) {
    if (value.text() != nullptr && value.text()->empty()) return;
    fields.emplace_back(std::move(field), std::move(value));
}

void Typed::set(std::string_view field, Value value) {
    std::erase_if(fields, [&](const auto& member) { return member.first == field; });
    fields.emplace_back(std::string(field), std::move(value));
}

Result<Typed> typed_of(const std::string& kind, const std::string& place, const std::string& part,
                       const Fields& fields) {
    Typed typed = {kind, place, part, {}};
    for (const auto& field : fields) {
        const auto equals = field.find('=');
        if (equals == std::string::npos || equals == 0) {
            return Fault{Code::argument_wrong, "'" + field + "' is no field=value", kind,
                         "write it like air_c=13, text between quotes"};
        }
        typed.fields.emplace_back(field.substr(0, equals), Value(field.substr(equals + 1)));
    }
    return typed;
}

method::FindPerson finder(const std::vector<job::Person>& people) {
    return [&people](std::string_view name) -> Result<std::string> {
        auto person = person_meant(people, std::string(name));
        if (!person) return person.fault();
        return person->id;
    };
}

Result<const job::Part*> part_meant(const job::Job& job, const std::string& typed) {
    for (const auto& name : {typed, turned(typed)}) {
        if (const auto* part = job.part(name)) return part;
    }
    for (const auto& part : job.parts) {
        if (lower_ascii(part.name) == lower_ascii(typed)) return &part;
    }
    const auto siblings = parts_of_stage(job, typed);
    if (siblings.size() == 1) return job.part(siblings[0]); // a stage with one part needs no second half
    return no_such_part(job, typed);
}

Result<Drafted> checked_draft(const Writing& writing, const Typed& typed) {
    const Case& on = writing.on;
    const method::Kind* kind = on.kinds->find(typed.kind);
    if (kind == nullptr) return method::unknown_kind(*on.kinds, typed.kind);
    const method::Input input = {typed.fields, typed.place, on.moment.when, finder(on.job.people),
                                 said_before(on.job, *kind, typed)};
    auto checked = method::check(*on.kinds, *kind, input);
    if (!checked) return checked.fault();
    auto place = entry::parse_place(checked->place);
    if (!place) return place.fault();
    *place = named_as_on(on.job.roof, *place);
    if (auto there = job::place_is_on(on.job.roof, *place); !there) return there.fault();
    if (auto fits = fits_the_shape(on.job.roof, *kind, *place, checked->data); !fits) return fits.fault();
    Drafted drafted;
    drafted.asked = std::move(checked->questions);
    drafted.draft = {typed.kind,
                     on.id,
                     writing.by.id,
                     entry::place_text(*place),
                     typed.part,
                     on.within,
                     on.moment.when,
                     std::move(checked->data),
                     std::move(checked->raw),
                     std::move(checked->personal),
                     {}};
    return drafted;
}

Result<Drafted> draft_of(const Writing& writing, Typed typed) {
    Case& on = writing.on;
    const method::Kind* kind = on.kinds->find(typed.kind);
    if (kind == nullptr) return method::unknown_kind(*on.kinds, typed.kind);
    if (auto office = check_office(*kind); !office) return office.fault();
    auto over = is_closed(on);
    if (!over) return over.fault();
    if (*over && typed.kind != "settle") { // what was said apart is settled at any age
        if (auto goes_on = supplement_takes_more(on.job); !goes_on) return goes_on.fault();
    }
    if (!typed.part.empty()) {
        auto part = part_meant(on.job, typed.part);
        if (!part) return part.fault();
        typed.part = (*part)->name;
    } else if (kind->part_required) {
        return Fault{Code::field_missing, "say which part", typed.kind, "undersheet stages lists them"};
    }
    return kind->group == method::Group::event ? draft_event(writing, std::move(typed))
                                               : draft_reading(writing, typed);
}

Result<entry::Draft> office_draft(const method::Catalogue& kinds, const Typed& typed, const entry::Time& when,
                                  const std::string& author) {
    const method::Kind* kind = kinds.find(typed.kind);
    if (kind == nullptr) return method::unknown_kind(kinds, typed.kind);
    auto checked = method::check(kinds, *kind, {typed.fields, {}, when, {}, {}});
    if (!checked) return checked.fault();
    entry::Draft draft;
    draft.kind = typed.kind;
    draft.author = author;
    draft.when = when;
    draft.data = std::move(checked->data);
    draft.raw = std::move(checked->raw);
    draft.personal = std::move(checked->personal);
    return draft;
}

} // namespace undersheet::desk
