#include "cli/show.h"
#include "cli/verb.h"

namespace undersheet::cli {
namespace {

int run_correct(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const desk::Correction correction = {arguments.one("ENTRY"), arguments.all("FIELD=VALUE"),
                                         arguments.one("--why")};
    return show_kept(desk->correct(asked(arguments), correction), arguments, screen);
}

int run_withdraw(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    return show_kept(desk->withdraw(asked(arguments), {arguments.one("ENTRY"), arguments.one("--why")}),
                     arguments, screen);
}

const Word kEntry = {"ENTRY", "its short name, as printed when it was kept and by undersheet history"};

} // namespace

std::vector<Verb> correct_verbs() {
    return {{"correct",
             "puts a new value in an entry's place; the old one stays in the history",
             "undersheet correct 3f2a91c0 reading_pct=12.9 --why \"read the wrong line\" --by IP",
             {kEntry, {"FIELD=VALUE", "what it should say", Count::some, Sort::field}},
             writing({{"--why", "TEXT", "what was wrong with it", true}}),
             run_correct},
            {"withdraw",
             "takes an entry back: a reading until the hand-over, a mis-tap within ten minutes",
             "undersheet withdraw 3f2a91c0 --why \"wrong roof\" --by IP",
             {kEntry},
             writing({{"--why", "TEXT", "why it should not count", true}}),
             run_withdraw}};
}

} // namespace undersheet::cli
