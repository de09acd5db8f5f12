#include "cli/photo.h"
#include "cli/show.h"
#include "cli/verb.h"

#include "base/text.h"

namespace undersheet::cli {
namespace {

std::string at_words(const desk::PunchLine& row) {
    if (row.place.empty() && row.part.empty()) return "";
    return " (" + row.place + (row.place.empty() || row.part.empty() ? "" : ", ") + row.part + ")";
}

std::string who_when(const std::string& who, const std::string& when) {
    return who.empty() ? day_and_time(when) : who + ", " + day_and_time(when);
}

void show_row(const desk::PunchLine& row, Screen& screen) {
    const std::string standing = row.open ? row.severity_text : !row.let_go.empty() ? "let go" : "cleared";
    screen.set_in("  " + row.number + ": ", standing + ": " + row.says + at_words(row),
                  row.open ? ink_of(row.severity) : Ink::faint);
    if (row.open && !row.holds.empty()) screen.set_in("      holds: ", joined(row.holds, ", "));
    if (row.open && !row.clears.empty()) screen.set_in("      to clear: ", row.clears);
    if (!row.raised_at.empty()) screen.set_in("      raised: ", who_when(row.raised_by, row.raised_at));
    if (!row.cleared_at.empty()) screen.set_in("      cleared: ", who_when(row.cleared_by, row.cleared_at));
    if (!row.looked_at.empty()) screen.set_in("      second look: ", who_when(row.looked_by, row.looked_at));
    if (!row.let_go.empty()) screen.set_in("      let go: ", row.let_go);
    if (!row.also_raised_as.empty()) screen.set_in("      also raised as ", joined(row.also_raised_as, ", "));
}

void show_punch(const desk::Punch& punch, Screen& screen) {
    job_heading(punch.job, punch.as_of, screen);
    std::size_t open = 0;
    for (const auto& row : punch.rows) open += row.open ? 1 : 0;
    screen.line(open == 0 ? "Nothing is open." : std::to_string(open) + " open:", Ink::strong);
    for (const auto& row : punch.rows) show_row(row, screen);
}

int run_punch(const Arguments& arguments, Screen& screen) {
    return answer(
        arguments, screen,
        [&](desk::Desk& desk) {
            return arguments.has("--all") ? desk.punch_ever(asked(arguments)) : desk.punch(asked(arguments));
        },
        [&](const desk::Punch& punch) { show_punch(punch, screen); });
}

template <class Act>
int act(const Arguments& arguments, Screen& screen, Act wanted) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    return show_kept(wanted(*desk, asked(arguments)), arguments, screen);
}

Done take_photo(const Arguments& arguments, desk::Photograph& into) {
    if (!arguments.has("--photo")) return {};
    auto photo = read_photo(arguments.one("--photo"));
    if (!photo) return photo.fault();
    into = std::move(*photo);
    return {};
}

int run_punch_add(const Arguments& arguments, Screen& screen) {
    desk::PunchAdd item = {arguments.one("TEXT"),
                           arguments.one("--at"),
                           arguments.one("--part"),
                           arguments.one("--severity"),
                           {}};
    if (const auto taken = take_photo(arguments, item.photo); !taken) return screen.refuse(taken.fault());
    return act(arguments, screen,
               [&](desk::Desk& desk, const desk::Asked& asked) { return desk.punch_add(asked, item); });
}

int run_clear(const Arguments& arguments, Screen& screen) {
    desk::PunchClear clear = {arguments.one("NUMBER"), arguments.one("--why"), {}};
    if (const auto taken = take_photo(arguments, clear.photo); !taken) return screen.refuse(taken.fault());
    return act(arguments, screen,
               [&](desk::Desk& desk, const desk::Asked& asked) { return desk.punch_clear(asked, clear); });
}

int run_look(const Arguments& arguments, Screen& screen) {
    return act(arguments, screen, [&](desk::Desk& desk, const desk::Asked& asked) {
        return desk.punch_look(asked, arguments.one("NUMBER"), arguments.one("--note"));
    });
}

int run_join(const Arguments& arguments, Screen& screen) {
    return act(arguments, screen, [&](desk::Desk& desk, const desk::Asked& asked) {
        return desk.punch_join(asked, arguments.one("NUMBER"), arguments.one("WITH"));
    });
}

std::vector<Option> with_all() {
    auto options = reading();
    options.push_back({"--all", "", "also the findings that came and went"});
    return options;
}

const Word kNumber = {"NUMBER", "its number on the list"};

} // namespace

std::vector<Verb> punch_verbs() {
    return {{"punch",
             "the punch list: what is still to be put right, open rows first",
             "undersheet punch --job A-07",
             {},
             with_all(),
             run_punch},
            {"punch add",
             "puts something on the list by hand",
             "undersheet punch add \"scuff on the kerb trim\" --at BC --severity put_right --by WP",
             {{"TEXT", "what is to be put right"}},
             writing({{"--at", "PLACE", "where"},
                      {"--part", "PART", "the part it concerns", false, Sort::part},
                      {"--photo", "FILE", "what it looks like", false, Sort::file},
                      {"--severity", "WORD", "note (holds nothing), put_right or stop; else put_right"}}),
             run_punch_add},
            {"punch clear",
             "says a row is put right",
             "undersheet punch clear 3 --photo after.jpg --by WP",
             {kNumber},
             writing({{"--photo", "FILE", "what it looks like now", false, Sort::file},
                      {"--why", "TEXT", "why there is no photograph"}}),
             run_clear},
            {"punch look",
             "notes a second look at a cleared row",
             "undersheet punch look 3 --by IP",
             {kNumber},
             writing({{"--note", "TEXT", "what was seen"}}),
             run_look},
            {"punch join",
             "shows two rows that mean the same as one",
             "undersheet punch join 3 5 --by IP",
             {{"NUMBER", "the row that stays"}, {"WITH", "the row that means the same"}},
             writing(),
             run_join}};
}

} // namespace undersheet::cli
