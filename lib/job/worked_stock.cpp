// Tins, tape and sealant: dates, frost, and the photographs of their labels.
#include "job/rules.h"
#include "job/stock.h"

namespace undersheet::job {
namespace {

using method::Rule;
using method::Severity;

// A tin is judged on the day it was used; one that was not used yet on the day asked about, and then only as a warning.
void tin_date(const Context& context, const Rule& rule, Findings& out) {
    for (const Reading* tin : context.job.all("tin")) {
        const auto use_by = entry::parse_date(tin->word("use_by"));
        if (!use_by) continue;
        const auto used_on = last_use_of(context.job, tin->label);
        if (!used_on && context.job.handed_over != nullptr) continue;
        const entry::Date day = used_on ? *used_on : entry::date_of(context.job.as_of);
        const double left_days = static_cast<double>(entry::day_number(*use_by) - entry::day_number(day));
        const bool past = left_days < context.limit("zero");
        if (!past && left_days > context.limit("use_by_warn_days")) continue;
        const Severity severity = past && used_on ? Severity::stop : Severity::note;
        Finding finding = make_finding(
            context, rule, *rule.level(severity),
            {.reading = tin,
             .value = worded(past ? "{date}, past" : "{date}, {days} days left",
                             {{"date", date_worded(*use_by)}, {"days", shortest(left_days, 0)}})});
        if (past && !used_on) clear_by(finding, rule.clears);
        out.push_back(std::move(finding));
    }
}

void tin_frost(const Context& context, const Rule& rule, Findings& out) {
    for (const Reading* tin : context.job.all("tin")) {
        const std::string stored = tin->word("stored");
        if (stored != "below_5c" && stored != "frozen") continue;
        const Severity severity = last_use_of(context.job, tin->label) ? Severity::stop : Severity::note;
        out.push_back(make_finding(context, rule, *rule.level(severity),
                                   {.reading = tin, .value = stored == "frozen" ? "frozen" : "below 5 °C"}));
    }
}

void tin_two_dates(const Context& context, const Rule& rule, Findings& out) {
    const auto tins = context.job.all("tin");
    for (std::size_t i = 0; i < tins.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
            const std::string batch = tins[i]->word("batch");
            if (batch.empty() || batch == "unknown" || tins[k]->word("batch") != batch) continue;
            if (tins[i]->word("use_by").empty() || tins[k]->word("use_by").empty()) continue;
            if (tins[i]->word("use_by") == tins[k]->word("use_by")) continue;
            out.push_back(
                make_finding(context, rule, rule.levels.front(),
                             {.reading = tins[i], .value = typed(batch), .entries = {tins[k]->entry}}));
        }
    }
}

// The label goes with the wrap: the sheet's and that of each tin that was used have to be photographed.
void labels(const Context& context, const Rule& rule, Findings& out) {
    for (const Reading* tin : context.job.all("tin")) {
        if (!last_use_of(context.job, tin->label) || has_label_photo(context.job, *tin)) continue;
        out.push_back(make_finding(context, rule, rule.levels.front(), {.reading = tin}));
    }
    for (const Reading* sheet : context.job.all("sheet")) {
        if (has_label_photo(context.job, *sheet)) continue;
        out.push_back(make_finding(
            context, rule, rule.levels.front(),
            {.reading = sheet, .label = sheet->label.empty() ? "the sheet" : typed(sheet->label)}));
    }
}

} // namespace

void add_worked_stock(WorkedTable& table) {
    table["tin_date"] = tin_date;
    table["tin_frost"] = tin_frost;
    table["tin_two_dates"] = tin_two_dates;
    table["labels"] = labels;
}

} // namespace undersheet::job
