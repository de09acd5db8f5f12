#include "job/rules.h"

#include "base/text.h"

#include <algorithm>
#include <map>
#include <stdexcept>

namespace undersheet::job {
namespace {

using method::Condition;
using method::Level;
using method::Rule;
using method::Test;

bool is_one_of(const std::string& word, const std::vector<std::string>& words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

bool holds_true(Test test, double value, double limit) {
    switch (test) {
    case Test::under:
        return value < limit;
    case Test::at_or_under:
        return value <= limit;
    case Test::over:
        return value > limit;
    case Test::at_or_over:
        return value >= limit;
    default:
        return false;
    }
}

bool word_matches(const Reading& reading, const std::string& field, Test test, const std::string& other,
                  const std::vector<std::string>& words) {
    const std::string word = reading.word(field);
    switch (test) {
    case Test::one_of:
        return is_one_of(word, words);
    case Test::not_words:
        return !word.empty() && !reading.not_looked(field) && !is_one_of(word, words);
    case Test::not_field:
        return !word.empty() && !reading.word(other).empty() && word != reading.word(other);
    case Test::missing:
        return word.empty();
    case Test::present:
        return !word.empty();
    case Test::not_looked:
        return reading.not_looked(field);
    case Test::is_yes:
        return word == "yes";
    case Test::is_no:
        return word == "no";
    case Test::not_yes:
        return word != "yes";
    default:
        return false;
    }
}

bool level_matches(const Context& context, const Rule& rule, const Level& level, const Reading& reading,
                   const std::string& field) {
    if (!compares(rule.test)) return word_matches(reading, field, rule.test, rule.other, level.words);
    const auto value = reading.number(field);
    return value && holds_true(rule.test, *value, context.limit(level.limit));
}

bool applies(const Context& context, const std::vector<Condition>& conditions, const Reading& reading) {
    return std::all_of(conditions.begin(), conditions.end(), [&](const Condition& condition) {
        if (!compares(condition.test)) {
            return word_matches(reading, condition.field, condition.test, condition.other, condition.words);
        }
        const auto value = reading.number(condition.field);
        return value && holds_true(condition.test, *value, context.limit(condition.limit));
    });
}

// On the good side of the limit, no further from it than the limit's `near`.
bool is_near(const Context& context, const Rule& rule, const Level& level, const Reading& reading,
             const std::string& field) {
    const method::Limit* limit = context.method.find_limit(level.limit);
    const auto value = reading.number(field);
    if (limit == nullptr || !limit->near || !value) return false;
    if (rule.test == Test::under) return *value >= limit->value && *value <= *limit->near;
    if (rule.test == Test::over) return *value <= limit->value && *value >= *limit->near;
    return false;
}

// A number as it is, a word of the catalogue as one, and whatever somebody wrote as theirs.
Worded spoken(const Context& context, const Reading& reading, const std::string& name) {
    const method::Kind* kind = context.kinds.find(reading.kind);
    const method::Field* field = kind == nullptr ? nullptr : kind->field(name);
    if (reading.number(name)) return {reading.word(name)};
    const bool is_word =
        field != nullptr && (field->type == method::FieldType::choice ||
                             field->type == method::FieldType::yes_no || reading.not_looked(name));
    return is_word ? choice_worded(name, reading.word(name)) : typed(replaced(reading.word(name), "_", " "));
}

// The worst level of the ladder that one of the fields meets.
void check_reading(const Context& context, const Rule& rule, const Reading& reading, Findings& out) {
    if (!applies(context, rule.only_if, reading)) return;
    for (const Level& level : rule.levels) {
        for (const auto& field : rule.fields) {
            if (!level_matches(context, rule, level, reading, field)) continue;
            out.push_back(make_finding(context, rule, level,
                                       {.reading = &reading, .value = spoken(context, reading, field)}));
            return;
        }
    }
    for (const Level& level : rule.levels) {
        for (const auto& field : rule.fields) {
            if (!is_near(context, rule, level, reading, field)) continue;
            out.push_back(make_near(context, rule, level,
                                    {.reading = &reading, .value = spoken(context, reading, field)}));
            return;
        }
    }
}

std::string finding_id(const Rule& rule, const Finding& finding) {
    std::string at = finding.label.empty() ? finding.place : finding.label;
    if (at.empty()) at = finding.part;
    return at.empty() ? rule.name : rule.name + "@" + at;
}

bool is_untyped(const std::string& figure) {
    constexpr std::size_t kMostTyped = 3; // decimals; more of them come out of another unit
    const auto dot = figure.find('.');
    return dot != std::string::npos && figure.size() - dot - 1 > kMostTyped && Decimal::parse(figure).ok();
}

std::string with_places(const std::string& figure, int places) {
    return is_untyped(figure) ? fixed(Decimal::parse(figure)->value(), places) : figure;
}

// A value and its limit as people read them: 23 mph is 10.28192 m/s to a program and 10.3 to them. Both keep as many
// decimals as it takes for the one to stand to the other as it really does.
struct Figures {
    std::string value, limit;
};
Figures for_people(const Context& context, const Rule& rule, const std::string& value,
                   const std::string& limit) {
    constexpr int kMostPlaces = 5;
    if (!is_untyped(value) && !is_untyped(limit)) return {value, limit};
    const auto of = [](const std::string& figure) { return Decimal::parse(figure); };
    const method::Kind* kind = context.kinds.find(rule.kind);
    const method::Field* field =
        kind == nullptr || rule.fields.empty() ? nullptr : kind->field(rule.fields.front());
    for (int places = field == nullptr ? 1 : field->places; places < kMostPlaces; ++places) {
        const Figures shown{with_places(value, places), with_places(limit, places)};
        if (!of(value) || !of(limit)) return shown;
        if ((*of(value) < *of(limit)) == (*of(shown.value) < *of(shown.limit)) &&
            (*of(limit) < *of(value)) == (*of(shown.limit) < *of(shown.value)))
            return shown;
    }
    return {value, limit};
}

Worded filled(const std::string& form, const Finding& finding, const About& about, const Figures& figures) {
    const bool has_place = !finding.place.empty(), has_label = !finding.label.empty();
    const Worded place = place_worded(finding.place);
    const Worded label = about.label.empty() ? typed(finding.label) : about.label;
    const bool is_short = figures.value == about.value.text;
    return worded(form, {{"value", is_short ? about.value : Worded{figures.value}},
                         {"limit", figures.limit},
                         {"place", has_place   ? place
                                   : has_label ? label
                                               : "the roof"},
                         {"label", has_label   ? label
                                   : has_place ? place
                                               : "the deck"},
                         {"part", part_worded(finding.part)}});
}

void number_twins(Findings& findings) {
    std::map<std::string, int> seen;
    for (Finding& finding : findings) {
        const int count = ++seen[finding.id];
        if (count > 1) finding.id += "#" + std::to_string(count);
    }
}

} // namespace

std::vector<const Reading*> Context::readings_of(const std::string& kind) const {
    if (kind == "air")
        return air == nullptr ? std::vector<const Reading*>{} : std::vector<const Reading*>{air};
    if (kind != "work") return job.all(kind);
    std::vector<const Reading*> out;
    for (const Reading& reading : work) out.push_back(&reading);
    return out;
}

std::optional<double> Context::area_m2() const {
    return job.roof.outline ? std::optional(job.roof.outline->area_m2) : std::nullopt;
}

Context make_context(const Job& job, const method::Method& method, const method::Catalogue& kinds) {
    Context context{.job = job, .method = method, .kinds = kinds, .recorded = recorded_of(job), .work = {}};
    for (const Part& part : job.parts) {
        const method::Stage* stage = method.stage(part.stage);
        for (const method::Step& step : stage->steps) {
            const Tick* tick = part.last_tick(step.name);
            if (tick == nullptr) continue;
            context.work.push_back({.entry = tick->entry,
                                    .stands_on = {tick->entry},
                                    .kind = "work",
                                    .label = {},
                                    .part = part.name});
            context.work.back().data = tick->data;
        }
    }
    const Reading* air = job.latest("air");
    const bool young =
        air != nullptr && entry::minutes_between(air->when(), job.as_of) <= method.limit("reading_age_min");
    context.air = young ? air : nullptr;
    return context;
}

namespace {

bool speaks_of(const entry::Value& data, const Rule& rule) {
    if (rule.fields.empty()) return true; // worked out from the whole of it
    const auto named = [&](std::string_view field) { return data.find(field) != nullptr; };
    return std::any_of(rule.fields.begin(), rule.fields.end(), named) ||
           std::any_of(rule.only_if.begin(), rule.only_if.end(),
                       [&](const method::Condition& condition) { return named(condition.field); });
}

// The entries a finding stands on, corrections among them: only those that say something the rule looks at, so that an
// answer given to the finding outlives a later entry about something else, and does not outlive another value.
std::vector<const entry::Entry*> entries_behind(const Context& context, const Reading& reading,
                                                const Rule& rule) {
    std::vector<const entry::Entry*> behind;
    for (const entry::Entry* from : reading.stands_on) {
        if (speaks_of(from->data, rule)) behind.push_back(from);
        const auto corrected = context.job.corrections.find(from->hash);
        if (corrected == context.job.corrections.end()) continue;
        for (const entry::Entry* correction : corrected->second) {
            const entry::Value* fields = correction->data.find("fields");
            if (fields != nullptr && speaks_of(*fields, rule)) behind.push_back(correction);
        }
    }
    return behind.empty() ? reading.stands_on : behind;
}

} // namespace

Finding make_finding(const Context& context, const Rule& rule, const Level& level, const About& about) {
    Finding finding{.id = {}, .rule = rule.name, .severity = level.severity};
    if (about.reading != nullptr) {
        finding.place = entry::place_text(about.reading->place);
        finding.part = about.reading->part;
        finding.label = about.reading->label;
        finding.entries = entries_behind(context, *about.reading, rule);
    }
    if (!about.place.empty()) finding.place = about.place;
    if (!about.label.empty()) finding.label = about.label.text;
    finding.entries.insert(finding.entries.end(), about.entries.begin(), about.entries.end());
    finding.value = about.value.text;
    const method::Limit* limit = context.method.find_limit(about.limit.empty() ? level.limit : about.limit);
    if (limit != nullptr) {
        finding.limit = shortest(limit->value, 5);
        finding.source = limit->source;
        finding.mark = limit->mark;
    }
    finding.working = about.working;
    finding.holds = level.holds;
    finding.by_reason = rule.by_reason;
    finding.decidable = rule.decidable && level.severity != method::Severity::note;
    const Figures figures = for_people(context, rule, finding.value, finding.limit);
    clear_by(finding, filled(level.clears.empty() ? rule.clears : level.clears, finding, about, figures));
    say(finding, filled(rule.text, finding, about, figures));
    finding.id = finding_id(rule, finding);
    return finding;
}

void say(Finding& finding, Worded says) {
    finding.says = says.text;
    finding.says_as = std::move(says);
}

void clear_by(Finding& finding, Worded clears) {
    finding.clears = clears.text;
    finding.clears_as = std::move(clears);
}

Finding make_near(const Context& context, const Rule& rule, const Level& level, const About& about) {
    Finding finding = make_finding(context, rule, level, about);
    finding.severity = method::Severity::note;
    finding.near = true;
    finding.holds.clear();
    finding.decidable = false;
    say(finding, worded("near the limit: {says}", {{"says", finding.says_as}}));
    clear_by(finding, "measure again if it matters: the instrument's own error could hide a fail");
    return finding;
}

const WorkedTable& worked_table() {
    static const WorkedTable table = [] {
        WorkedTable made;
        add_worked_site(made);
        add_worked_deck(made);
        add_worked_levels(made);
        add_worked_falls(made);
        add_worked_ponds(made);
        add_worked_outline(made);
        add_worked_sheet(made);
        add_worked_stock(made);
        add_worked_air(made);
        add_worked_work(made);
        return made;
    }();
    return table;
}

namespace {

Findings findings_where(const Context& context, const std::function<bool(const Rule&)>& wanted) {
    Findings found;
    for (const Rule& rule : context.method.rules()) {
        if (!wanted(rule)) continue;
        if (!rule.worked.empty()) {
            const auto worked = worked_table().find(rule.worked);
            if (worked != worked_table().end()) worked->second(context, rule, found);
            continue;
        }
        for (const Reading* reading : context.readings_of(rule.kind))
            check_reading(context, rule, *reading, found);
    }
    number_twins(found);
    return found;
}

} // namespace

Findings all_findings(const Context& context) {
    return findings_where(context, [](const Rule&) { return true; });
}

Findings findings_about(const Context& context, std::string_view kind) {
    return findings_where(context, [&](const Rule& rule) { return rule.kind == kind; });
}

} // namespace undersheet::job
