#include "cli/show.h"
#include "cli/verb.h"

namespace undersheet::cli {
namespace {

std::string value_words(const desk::FindingLine& finding) {
    std::string words;
    if (!finding.value.empty()) words += "found " + finding.value;
    if (!finding.limit.empty()) words += (words.empty() ? "limit " : ", limit ") + finding.limit;
    if (!finding.source.empty()) words += " (" + finding.source + ")";
    return words;
}

void show_finding(const desk::FindingLine& finding, Screen& screen) {
    screen.set_in("  ",
                  finding.severity_text + (finding.near ? ", near the limit" : "") + ": " + finding.says,
                  ink_of(finding.severity));
    if (const auto words = value_words(finding); !words.empty()) screen.set_in("      ", words);
    if (!finding.clears.empty()) screen.set_in("      to clear: ", finding.clears);
    if (!finding.decided.empty()) screen.set_in("      let go: ", finding.decided);
    if (!finding.reason.empty()) screen.set_in("      reason: ", finding.reason);
    if (!finding.told.empty()) screen.set_in("      told: ", finding.told);
    screen.set_in("      ", finding.id, Ink::faint);
}

void show_findings(const desk::Findings& findings, Screen& screen) {
    job_heading(findings.job, findings.as_of, screen);
    if (findings.open.empty()) screen.line("Nothing wrong or doubtful in what was recorded.");
    for (const auto& finding : findings.open) show_finding(finding, screen);
    if (!findings.let_go.empty()) screen.line("Let go by a named decision:", Ink::strong);
    for (const auto& finding : findings.let_go) show_finding(finding, screen);
    if (!findings.not_looked.empty()) screen.line("Not looked at:", Ink::strong);
    for (const auto& line : findings.not_looked) screen.set_in("  ", line);
}

int run_findings(const Arguments& arguments, Screen& screen) {
    return answer(
        arguments, screen, [&](desk::Desk& desk) { return desk.findings(asked(arguments)); },
        [&](const desk::Findings& findings) { show_findings(findings, screen); });
}

int run_why(const Arguments& arguments, Screen& screen) {
    return answer(
        arguments, screen,
        [&](desk::Desk& desk) { return desk.why(asked(arguments), arguments.one("WHAT")); },
        [&](const desk::Why& why) { show_why(why, screen); });
}

} // namespace

std::vector<Verb> finding_verbs() {
    return {{"findings",
             "what the record says is wrong or doubtful, worst first",
             "undersheet findings --job A-07",
             {},
             reading(),
             run_findings},
            {"why",
             "the chain behind a verdict: what was recorded, the arithmetic, the limit, its source",
             "undersheet why band/AB",
             {{"WHAT", "a finding's id, a stage or a part", Count::one, Sort::part}},
             reading(),
             run_why}};
}

} // namespace undersheet::cli
