#include "cli/show.h"

#include "base/text.h"

#include <array>

namespace undersheet::cli {
namespace {

constexpr std::array<const char*, 12> kMonths = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                 "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

int two_digits(const std::string& text, std::size_t at) {
    return (text[at] - '0') * 10 + (text[at + 1] - '0');
}

int show_held(const desk::Kept& kept, Screen& screen) {
    const std::string where = kept.job.ref + (kept.part.empty() ? "" : " " + kept.part) + ": ";
    for (const auto& held : kept.held_by) {
        screen.message(where + held.why + (held.clears.empty() ? "" : "; " + held.clears));
    }
    return 1;
}

void show_good(const desk::Kept& kept, Screen& screen) {
    std::vector<std::string> about = {kept.heading + (kept.place.empty() ? "" : " at " + kept.place)};
    if (!kept.part.empty()) about[0] += ", " + kept.part;
    about.push_back(day_and_time(kept.when) + (kept.by.empty() ? "" : ", " + kept.by));
    about.push_back("entry " + kept.name);
    screen.set_in(kept.job.ref + (kept.job.supplement.empty() ? "" : " supplement " + kept.job.supplement) +
                      ": ",
                  "kept: " + joined(about, "; "));
    if (!kept.says.empty()) screen.set_in("  ", kept.says);
    for (const auto& mark : kept.marks) screen.set_in("  ", mark, Ink::yellow);
    for (const auto& odd : kept.asked) screen.set_in("  asked: ", odd, Ink::yellow);
    if (!kept.bond_now.empty()) screen.set_in("  ", kept.bond_now, Ink::strong);
    if (!kept.now.empty()) screen.set_in("  ", kept.now);
    if (!kept.receipt.empty())
        screen.set_in("  receipt for the customer to keep: ", kept.receipt, Ink::strong);
}

} // namespace

std::string job_words(const desk::JobName& job) {
    const std::string ref = job.supplement.empty() ? job.ref : job.ref + " supplement " + job.supplement;
    return job.roof.empty() ? ref : ref + ", " + job.roof;
}

std::string day_and_time(const std::string& time) {
    if (time.size() < 16) return time;
    const int month = two_digits(time, 5);
    if (month < 1 || month > 12) return time;
    return std::to_string(two_digits(time, 8)) + " " + kMonths[static_cast<std::size_t>(month) - 1] + " " +
           time.substr(0, 4) + " " + time.substr(11, 5);
}

void job_heading(const desk::JobName& job, const std::string& as_of, Screen& screen) {
    screen.line(job_words(job) + (as_of.empty() ? "" : ", as of " + day_and_time(as_of)), Ink::strong);
}

Ink ink_of(const std::string& severity) {
    if (severity == "stop") return Ink::red;
    return severity == "put_right" ? Ink::yellow : Ink::plain;
}

std::string plain_words(std::string word) { return replaced(replaced(std::move(word), "_", " "), "  ", " "); }

std::string paper_format(const std::string& path) {
    const auto dot = path.find_last_of('.');
    return path == "-" ? "txt" : dot == std::string::npos ? "" : path.substr(dot + 1);
}

Result<std::string> prices_of(const Arguments& arguments) {
    if (!arguments.has("--prices")) return std::string();
    return read_file(arguments.one("--prices"), "price list");
}

void show_why(const desk::Why& why, Screen& screen) {
    job_heading(why.job, "", screen);
    screen.set_in(why.about + ": ", why.verdict, Ink::strong);
    for (const auto& step : why.steps) {
        screen.line(step.heading);
        for (const auto& line : step.lines) screen.set_in("    ", line);
    }
}

int show_kept(const Result<desk::Kept>& kept, const Arguments& arguments, Screen& screen) {
    if (!kept) return screen.refuse(kept.fault());
    if (arguments.has("--json")) screen.bytes(desk::json_of(*kept));
    if (!kept->is_kept()) return show_held(*kept, screen);
    if (!arguments.has("--json")) show_good(*kept, screen);
    return 0;
}

} // namespace undersheet::cli
