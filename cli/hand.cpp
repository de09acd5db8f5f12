#include "cli/pin.h"
#include "cli/show.h"
#include "cli/verb.h"

#include "base/text.h"

namespace undersheet::cli {
namespace {

int run_hand(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const std::string ref = arguments.has("REF") ? arguments.one("REF") : arguments.one("--job");
    const auto handed = desk->hand({ref, arguments.has("--all"), arguments.one("-o")});
    if (!handed) return screen.refuse(handed.fault());
    if (arguments.has("--json")) {
        screen.bytes(desk::json_of(*handed));
        return 0;
    }
    screen.set_in("", (handed->job.empty() ? "The whole book" : "Job " + handed->job) +
                          " as one file: " + handed->file);
    screen.set_in("  ", counted(handed->entries, "entry", "entries") + ", " +
                            counted(handed->photos, "photograph", "photographs"));
    for (const auto& photo : handed->missing_photos)
        screen.set_in("  not in it: ",
                      "photograph " + photo.substr(0, 8) + ", which is not there as recorded", Ink::red);
    screen.set_in("  check value: ", handed->digest);
    screen.set_in("  ", "It holds names and addresses: give it only to who may have them.");
    return 0;
}

void show_taken(const desk::TakenIn& taken, Screen& screen) {
    screen.line(taken.fresh == 0 ? taken.file + ": nothing new (0 of " + std::to_string(taken.entries) + ")"
                                 : taken.file + ": " + std::to_string(taken.fresh) + " new of " +
                                       counted(taken.entries, "entry", "entries"),
                Ink::strong);
    for (const auto& line : taken.jobs) {
        screen.set_in("  " + (line.job.empty() ? "the firm" : "job " + line.job) + ": ",
                      std::to_string(line.fresh) + " new of " + std::to_string(line.in_file));
    }
    if (taken.photos > 0) screen.set_in("  ", counted(taken.photos, "new photograph", "new photographs"));
    for (const auto& device : taken.new_devices)
        screen.set_in("  met for the first time: ", "device " + device);
    for (const auto& remark : taken.remarks) screen.set_in("  note: ", remark, Ink::yellow);
    if (taken.to_settle > 0)
        screen.set_in("  to settle: ", std::to_string(taken.to_settle) + "; undersheet settle lists them",
                      Ink::yellow);
}

int run_take(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    std::vector<desk::TakenIn> all;
    int code = 0;
    for (const auto& file : arguments.all("FILE")) {
        auto taken = desk->take(file);
        if (!taken) {
            code = screen.refuse(taken.fault());
            break;
        }
        if (!arguments.has("--json")) show_taken(*taken, screen);
        all.push_back(std::move(*taken));
    }
    if (arguments.has("--json")) screen.bytes(desk::json_of(all));
    return code;
}

void show_item(const desk::SettleLine& item, Screen& screen) {
    screen.set_in("  " + item.id + ": ", item.says, item.open ? Ink::yellow : Ink::faint);
    for (const auto& side : item.sides) {
        screen.set_in("      " + side.name + " ", side.says + " (" + side.by + ", " +
                                                      day_and_time(side.when) + ", device " +
                                                      side.device.substr(0, 8) + ")");
    }
    if (item.holds)
        screen.set_in("      holds: ",
                      item.part.empty() ? "the final look" : item.part + " and the final look");
    if (!item.open)
        screen.set_in("      settled: ", item.kept.substr(0, 8) + " holds, " + item.settled_by + ", " +
                                             day_and_time(item.settled_at) + ": " + item.why);
}

void show_list(const desk::SettleList& list, Screen& screen) {
    if (list.items.empty()) screen.line("Nothing is to be settled.");
    for (const auto& item : list.items) show_item(item, screen);
    for (const auto& item : list.items) {
        if (!item.open) continue;
        screen.set_in("next: ", item.about == "punch_rows"
                                    ? "undersheet punch join " + item.sides[0].says + " " + item.sides[1].says
                                    : "undersheet settle " + item.id + " --keep ENTRY --why TEXT");
        return;
    }
}

int run_settle(const Arguments& arguments, Screen& screen) {
    if (!arguments.has("ITEM")) {
        return answer(
            arguments, screen, [&](desk::Desk& desk) { return desk.to_settle(asked(arguments)); },
            [&](const desk::SettleList& list) { show_list(list, screen); });
    }
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const desk::Settle settled = {arguments.one("ITEM"), arguments.one("--keep"), arguments.one("--why")};
    return show_kept(with_pin(arguments, [&](const desk::Asked& by) { return desk->settle(by, settled); }),
                     arguments, screen);
}

} // namespace

std::vector<Verb> hand_verbs() {
    return {
        {"hand",
         "one job, or the whole book, as one file for another device or the customer",
         "undersheet hand A-07 -o a-07.hand",
         {{"REF", "the job; else the one last worked on", Count::maybe}},
         {{"-o", "FILE", "where it is to lie; a file that is there already is left alone", true, Sort::file},
          {"--all", "", "every job and the firm's own journal: for a new phone, or as a copy"},
          book_option(),
          {"--job", "REF", "the job, as in other commands"},
          {"--json", "", "write JSON for scripts"}},
         run_hand},
        {"take",
         "takes in what such files hold: all of a file or nothing, in any order, as often as you like",
         "undersheet take a-07.hand",
         {{"FILE", "a file that was handed over", Count::some, Sort::file}},
         {book_option(), {"--json", "", "write JSON for scripts"}},
         run_take},
        {"settle",
         "what two devices said apart, and which of it holds",
         "undersheet settle M5e5e5e5e --keep 1a2b3c4d --why \"measured twice\" --by IP",
         {{"ITEM", "an open item; without one all are listed", Count::maybe}},
         signing({{"--keep", "ENTRY", "the entry of the side that holds; the other stays in the history"},
                  {"--why", "TEXT", "why it does"}}),
         run_settle}};
}

} // namespace undersheet::cli
