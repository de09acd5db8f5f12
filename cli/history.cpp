#include "cli/show.h"
#include "cli/verb.h"

#include "base/text.h"

namespace undersheet::cli {
namespace {

std::string about(const desk::HistoryLine& line) {
    std::string words = line.heading;
    if (!line.part.empty()) words += " " + line.part;
    if (!line.place.empty()) words += " at " + line.place;
    return line.says.empty() ? words : words + ": " + line.says;
}

void show_line(const desk::HistoryLine& line, Screen& screen) {
    screen.set_in(line.name + "  ",
                  day_and_time(line.when) + ", " + (line.by.empty() ? "-" : line.by) + ": " + about(line));
    for (const auto& change : line.changes) screen.set_in("          changed: ", change);
    for (const auto& mark : line.marks) screen.set_in("          ", mark, Ink::yellow);
}

int run_history(const Arguments& arguments, Screen& screen) {
    return answer(
        arguments, screen,
        [&](desk::Desk& desk) { return desk.history(asked(arguments), arguments.one("ENTRY")); },
        [&](const desk::History& history) {
            job_heading(history.job, "", screen);
            for (const auto& line : history.lines) show_line(line, screen);
        });
}

} // namespace

std::vector<Verb> history_verbs() {
    return {{"history",
             "the journal, as it happened; corrections as old -> new",
             "undersheet history --job A-07",
             {{"ENTRY", "only this entry and what was said about it later", Count::maybe}},
             reading(),
             run_history}};
}

} // namespace undersheet::cli
