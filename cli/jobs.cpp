#include "cli/show.h"
#include "cli/verb.h"

namespace undersheet::cli {
namespace {

// Where two are called alike, what tells them apart stands beside.
std::string name_of(const desk::JobLine& line) {
    return job_words(line.job) + (line.asked_by == line.job.ref ? "" : " (--job " + line.asked_by + ")");
}

void show_job(const desk::JobLine& line, Screen& screen) {
    screen.set_in(line.current ? "* " : "  ",
                  name_of(line) + ": " + line.standing +
                      (line.opened.empty() ? "" : "; opened " + day_and_time(line.opened)) + ", " +
                      std::to_string(line.entries) + (line.entries == 1 ? " entry" : " entries"));
}

int run_jobs(const Arguments& arguments, Screen& screen) {
    return answer(
        arguments, screen, [](desk::Desk& desk) { return desk.jobs(); },
        [&](const std::vector<desk::JobLine>& jobs) {
            if (jobs.empty()) screen.line("No job yet: undersheet jobs new REF --roof \"back extension\"");
            for (const auto& line : jobs) show_job(line, screen);
        });
}

Result<desk::NewJob> wanted(const Arguments& arguments) {
    desk::NewJob job;
    job.ref = arguments.one("REF");
    job.roof = arguments.one("--roof");
    job.from_paper = arguments.has("--from-paper");
    job.finished = arguments.one("--finished");
    if (!arguments.has("--method")) return job;
    auto method = read_file(arguments.one("--method"), "method file");
    if (!method) return method.fault();
    job.method = std::move(*method);
    return job;
}

int run_new(const Arguments& arguments, Screen& screen) {
    auto job = wanted(arguments);
    if (!job) return screen.refuse(job.fault());
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const auto opened = desk->open_job(asked(arguments), *job);
    if (!opened) return screen.refuse(opened.fault());
    if (arguments.has("--json")) {
        screen.bytes(desk::json_of(std::vector<desk::JobLine>{*opened}));
    } else {
        screen.set_in("", "Opened " + job_words(opened->job) + "; from now on it is the job worked on.");
        if (!opened->from_paper)
            screen.set_in("next: ", "undersheet record edge kind=gutter --at AB, and the other edges");
    }
    return 0;
}

} // namespace

std::vector<Verb> job_verbs() {
    return {{"jobs",
             "lists the jobs; the one last worked on carries a star",
             "undersheet jobs",
             {},
             {book_option(), {"--json", "", "write JSON for scripts"}},
             run_jobs},
            {"jobs new",
             "opens a new job, or takes an old roof over from its papers",
             "undersheet jobs new A-07 --roof \"small dormer\" --by IP",
             {{"REF", "the firm's own number for it"}},
             {{"--roof", "TEXT", "which roof it is: \"back extension\""},
              {"--from-paper", "", "an old roof: accepted as it is, closed, marked 'from paper'"},
              {"--finished", "DATE", "the day an old roof was finished"},
              {"--method", "FILE", "the firm's own method file; else the one that comes with the program",
               false, Sort::file},
              {"--by", "NAME", "who says so: initials or name; else UNDERSHEET_BY"},
              book_option(),
              {"--when", "TIME", "with offset; else now"},
              {"--json", "", "write JSON for scripts"}},
             run_new}};
}

} // namespace undersheet::cli
