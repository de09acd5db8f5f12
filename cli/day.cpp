#include "cli/show.h"
#include "cli/verb.h"

#include "base/text.h"

namespace undersheet::cli {
namespace {

// "2026-09-22T08:00:00+01:00" is "2026-09-22 08:00" to people.
std::string day_and_clock(const std::string& time) {
    return time.size() < 16 ? time : time.substr(0, 10) + " " + time.substr(11, 5);
}

void show_work(const desk::DayAnswer& made, Screen& screen) {
    screen.line("What is left, at the earliest it can be done", Ink::strong);
    for (const auto& work : made.row) {
        const std::string when = work.from.empty()
                                     ? std::string("not within this forecast")
                                     : day_and_clock(work.from) + " to " + work.to.substr(11, 5);
        screen.set_in("  " + padded(when, 28) + " ",
                      work.part + " (" + work.hours + " h of one person)" +
                          (work.wait_min > 0 ? ", then wait " + std::to_string(work.wait_min) + " min" : ""));
    }
}

void show_spoiled(const desk::DayLine& day, Screen& screen) {
    std::string heading = day.date;
    if (!day.light_from.empty()) heading += ", light from " + day.light_from + " to " + day.light_to;
    screen.line(heading, Ink::strong);
    if (day.spoiled.empty()) screen.line("  nothing spoils it");
    for (const auto& line : day.spoiled)
        screen.set_in("  " + line.from + " to " + line.to + "  ",
                      line.why + ": " + joined(line.stages, ", "));
}

void show_day(const desk::DayAnswer& made, Screen& screen) {
    job_heading(made.job, made.as_of, screen);
    if (!made.made.empty()) screen.line("Forecast made " + made.made);
    if (made.row.empty()) return screen.line("Nothing is left to do on this roof.");
    show_work(made, screen);
    screen.line(made.one_go_from.empty() ? "In one go it fits nowhere in these hours."
                                         : "In one go: from " + day_and_clock(made.one_go_from) + " to " +
                                               day_and_clock(made.one_go_to) + ".");
    for (const auto& day : made.days) show_spoiled(day, screen);
    for (const auto& line : made.assumed) screen.set_in("Assumed: ", line, Ink::faint);
    screen.line("A plan; the reading on the day decides.", Ink::faint);
}

int run_day(const Arguments& arguments, Screen& screen) {
    const auto forecast = read_file(arguments.one("--forecast"), "forecast");
    if (!forecast) return screen.refuse(forecast.fault());
    return answer(
        arguments, screen, [&](desk::Desk& desk) { return desk.day(asked(arguments), *forecast); },
        [&](const desk::DayAnswer& made) { show_day(made, screen); });
}

} // namespace

std::vector<Verb> day_verbs() {
    return {
        {"day",
         "which hours of a forecast suit the work that is left, and what spoils the others",
         "undersheet day --forecast hours.csv",
         {},
         reading({{"--forecast", "FILE", "hour by hour, JSON or CSV (docs/forecast.md)", true, Sort::file}}),
         run_day}};
}

} // namespace undersheet::cli
