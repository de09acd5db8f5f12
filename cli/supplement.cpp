#include "cli/pin.h"
#include "cli/show.h"
#include "cli/verb.h"

namespace undersheet::cli {
namespace {

void show_supplement(const desk::SupplementLine& line, Screen& screen) {
    std::string says = line.why + ", opened " + day_and_time(line.opened_at) + " by " + line.opened_by +
                       ", " + std::to_string(line.entries) + (line.entries == 1 ? " entry" : " entries");
    says += line.signed_at.empty() ? "; open"
                                   : "; signed " + day_and_time(line.signed_at) + " by " + line.signed_by;
    screen.set_in("  " + line.number + "  ", says);
    if (!line.complaint.empty()) screen.set_in("     ", line.complaint);
}

int run_list(const Arguments& arguments, Screen& screen) {
    return answer(
        arguments, screen, [&](desk::Desk& desk) { return desk.supplements(asked(arguments)); },
        [&](const std::vector<desk::SupplementLine>& lines) {
            if (lines.empty())
                screen.line(
                    "No supplement yet: undersheet supplement open --why yearly, after the hand-over");
            else
                screen.line(lines.front().job.ref + ", supplements", Ink::strong);
            for (const auto& line : lines) show_supplement(line, screen);
        });
}

int run_open(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const desk::NewSupplement wanted = {arguments.one("--why"), arguments.one("--complaint"),
                                        arguments.one("--told-on")};
    const auto opened = desk->open_supplement(asked(arguments), wanted);
    if (!opened) return screen.refuse(opened.fault());
    if (arguments.has("--json")) {
        screen.bytes(desk::json_of(std::vector<desk::SupplementLine>{*opened}));
        return 0;
    }
    screen.set_in("", "Opened " + job_words(opened->job) + ": what is recorded now belongs to it.");
    screen.set_in("next: ", "undersheet record look seen=TEXT --at PLACE, photographs, then "
                            "undersheet supplement sign");
    return 0;
}

int run_supplement_sign(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const desk::SupplementSign sign = {arguments.one("--customer"), arguments.one("--not-present")};
    return show_kept(
        with_pin(arguments, [&](const desk::Asked& by) { return desk->sign_supplement(by, sign); }),
        arguments, screen);
}

} // namespace

std::vector<Verb> supplement_verbs() {
    return {{"supplement",
             "lists the later visits to a roof that was handed over",
             "undersheet supplement --job A-07",
             {},
             reading(),
             run_list},
            {"supplement open",
             "begins a later visit; the first record stays as it is",
             "undersheet supplement open --why call --complaint \"drip by the window\" --job A-07 --by IP",
             {},
             writing({{"--why", "WHY", "yearly, call, claim or recall", true},
                      {"--complaint", "TEXT", "in the customer's own words"},
                      {"--told-on", "DAY", "for a recall: when the customer was told"}}),
             run_open},
            {"supplement sign",
             "ends a later visit: what it says is signed, and takes no more",
             "undersheet supplement sign --customer \"Caspar Dunmoor\" --by IP",
             {},
             signing({{"--customer", "NAME", "who signed for the customer"},
                      {"--not-present", "TEXT", "\"sent on 12 June\""}}),
             run_supplement_sign}};
}

} // namespace undersheet::cli
