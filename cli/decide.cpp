#include "cli/pin.h"
#include "cli/show.h"
#include "cli/verb.h"

namespace undersheet::cli {
namespace {

const Word kFinding = {
    "FINDING", "its id, as undersheet findings prints it; for a step that holds a part step@PART:STEP"};

int run_decide(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const desk::Decide decision = {arguments.one("FINDING"), arguments.one("--decider"),
                                   arguments.one("--role"), arguments.one("--why")};
    return show_kept(with_pin(arguments, [&](const desk::Asked& by) { return desk->decide(by, decision); }),
                     arguments, screen);
}

int run_reason(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    return show_kept(desk->give_reason(asked(arguments), {arguments.one("FINDING"), arguments.one("TEXT")}),
                     arguments, screen);
}

int run_told(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    return show_kept(desk->note_told(asked(arguments), {arguments.one("FINDING"), arguments.one("--whom")}),
                     arguments, screen);
}

} // namespace

std::vector<Verb> decide_verbs() {
    return {{"decide",
             "lets a limit go by a named decision, where the method allows one",
             "undersheet decide chase_height@CD --decider \"Caspar Dunmoor\" --role customer --why \"door "
             "cannot be raised, told of the risk\" --by IP",
             {kFinding},
             signing({{"--decider", "NAME", "who decided", true},
                      {"--role", "ROLE", "customer, surveyor, architect …", true},
                      {"--why", "TEXT", "the reason, in ten letters or more", true}}),
             run_decide},
            {"reason",
             "answers a warning with a reason",
             "undersheet reason moisture@B2 \"new board, acclimatised two days\" --by IP",
             {kFinding, {"TEXT", "the reason"}},
             writing(),
             run_reason},
            {"told",
             "notes who was told of a finding",
             "undersheet told fall@roof --whom \"Caspar Dunmoor\" --by IP",
             {kFinding},
             writing({{"--whom", "NAME", "who was told", true}}),
             run_told}};
}

} // namespace undersheet::cli
