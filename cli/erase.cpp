#include "cli/show.h"
#include "cli/verb.h"

#include "base/text.h"

namespace undersheet::cli {
namespace {

void show_erased(const desk::ErasedAll& erased, Screen& screen) {
    screen.line("Erased: " + erased.person, Ink::strong);
    for (const auto& line : erased.jobs) {
        std::string what = std::to_string(line.values) + " values";
        if (line.photos > 0) what += ", " + std::to_string(line.photos) + " photographs";
        screen.set_in("  " + (line.job.empty() ? "the firm" : "job " + line.job) + ": ", what);
    }
    if (!erased.still_named.empty())
        screen.set_in("", "The name stands in free text, which is signed and stays:", Ink::yellow);
    for (const auto& line : erased.still_named) screen.set_in("  ", line);
    screen.set_in(
        "", "Every signature still holds. Copies that were given away are not reached: tell who has one, "
            "and hand the jobs over again to your other devices.");
}

int run_erase(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const desk::Erase wanted = {arguments.one("PERSON"), arguments.one("--why"), arguments.one("--although"),
                                arguments.all("--photo")};
    const auto erased = desk->erase(asked(arguments), wanted);
    if (!erased) return screen.refuse(erased.fault());
    if (arguments.has("--json"))
        screen.bytes(desk::json_of(*erased));
    else
        show_erased(*erased, screen);
    return 0;
}

int run_retention(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const auto kept = desk->keep_for(asked(arguments), arguments.one("YEARS"), arguments.one("--why"));
    if (!kept) return screen.refuse(kept.fault());
    screen.set_in("",
                  "Personal values are kept for " + arguments.one("YEARS") + " years after the hand-over.");
    return 0;
}

void show_device(const desk::DeviceLine& line, Screen& screen) {
    screen.set_in("  " + line.device + " ",
                  std::to_string(line.entries) + " entries, " + day_and_time(line.first_when) + " to " +
                      day_and_time(line.last_when) + (line.is_this ? "; this device" : ""));
    if (!line.revoked.empty()) screen.set_in("      lost: ", line.revoked, Ink::red);
}

int run_devices(const Arguments& arguments, Screen& screen) {
    return answer(
        arguments, screen, [](desk::Desk& desk) { return desk.devices(); },
        [&](const std::vector<desk::DeviceLine>& devices) {
            for (const auto& line : devices) show_device(line, screen);
        });
}

int run_revoke(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const auto lost = desk->revoke(asked(arguments), arguments.one("DEVICE"), arguments.one("--why"));
    if (!lost) return screen.refuse(lost.fault());
    if (arguments.has("--json")) {
        screen.bytes(desk::json_of(std::vector<desk::DeviceLine>{*lost}));
        return 0;
    }
    screen.set_in("",
                  "What device " + lost->device.substr(0, 8) +
                      " wrote and is not here yet will not count. Hand your jobs over to the other devices.");
    return 0;
}

std::vector<Option> office_writing(std::vector<Option> own) {
    own.push_back({"--by", "NAME", "who says so: initials or name; else UNDERSHEET_BY"});
    own.push_back(book_option());
    own.push_back({"--when", "TIME", "with offset; else now"});
    return own;
}

std::vector<Option> with_json(std::vector<Option> options) {
    options.push_back({"--json", "", "write JSON for scripts"});
    return options;
}

} // namespace

std::vector<Verb> erase_verbs() {
    return {{"erase",
             "takes a person's name, address, signature and other personal values out of the book for good",
             "undersheet erase \"Caspar Dunmoor\" --why \"asked for by letter of 3 March\" --by IP",
             {{"PERSON", "somebody of the book, or a name as it was recorded"}},
             with_json(office_writing(
                 {{"--why", "TEXT", "why", true},
                  {"--although", "TEXT", "why before the time for which records are kept is over"},
                  {"--photo", "ENTRY", "a photograph that shows the person; may be given several times"}})),
             run_erase},
            {"retention",
             "says for how long after the hand-over personal values are kept, and why",
             "undersheet retention 12 --why \"guarantee of ten years, then claims\" --by IP",
             {{"YEARS", "whole years after the hand-over"}},
             office_writing({{"--why", "TEXT", "why so long", true}}),
             run_retention},
            {"devices",
             "the devices that wrote in the book",
             "undersheet devices",
             {},
             {book_option(), {"--json", "", "write JSON for scripts"}},
             run_devices},
            {"revoke",
             "a device is lost: what it wrote and nobody had seen does not count any more",
             "undersheet revoke 3fa2c1d0 --why \"phone left on a train\" --by IP",
             {{"DEVICE", "its name, or 4 digits of it and more"}},
             with_json(office_writing({{"--why", "TEXT", "what happened", true}})),
             run_revoke}};
}

} // namespace undersheet::cli
