// How answers look that several commands give.
#pragma once

#include "cli/arguments.h"
#include "cli/screen.h"
#include "desk/desk.h"
#include "desk/json.h"

namespace undersheet::cli {

[[nodiscard]] std::string
job_words(const desk::JobName& job); // "A-07, small dormer", "A-07 supplement 1, small dormer"
[[nodiscard]] std::string day_and_time(const std::string& time); // "11 Jun 2026 08:05"
void job_heading(const desk::JobName& job, const std::string& as_of, Screen& screen);

[[nodiscard]] Ink ink_of(const std::string& severity);
[[nodiscard]] std::string plain_words(std::string word); // "put_right" -> "put right"

// The format of a paper is the ending of the file's name; the screen is read by people.
[[nodiscard]] std::string paper_format(const std::string& path);

// The text of the price list behind --prices; "" without one.
[[nodiscard]] Result<std::string> prices_of(const Arguments& arguments);

void show_why(const desk::Why& why, Screen& screen); // the chain, step by step

// What was kept, what looks odd about it, or every line that holds it. Gives the exit code.
int show_kept(const Result<desk::Kept>& kept, const Arguments& arguments, Screen& screen);

// Opens the desk, asks, and shows: as JSON with --json, else with `show`.
template <class Ask, class Show>
int answer(const Arguments& arguments, Screen& screen, Ask ask, Show show);

} // namespace undersheet::cli

#include "cli/book.h"

namespace undersheet::cli {

template <class Ask, class Show>
int answer(const Arguments& arguments, Screen& screen, Ask ask, Show show) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const auto told = ask(*desk);
    if (!told) return screen.refuse(told.fault());
    if (arguments.has("--json")) {
        screen.bytes(desk::json_of(*told));
    } else {
        show(*told);
    }
    return 0;
}

} // namespace undersheet::cli
