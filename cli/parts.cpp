#include "cli/pin.h"
#include "cli/show.h"
#include "cli/verb.h"

namespace undersheet::cli {
namespace {

const Word kPart = {"PART", "which part: deck, field/1, band/AB, patches/D", Count::one, Sort::part};
const Word kFields = {"FIELD=VALUE", "what goes with it (undersheet kinds gives the fields)", Count::any,
                      Sort::field};
const Option kAt = {"--at", "PLACE", "where on the roof, when it matters"};
const Option kWhy = {"--why", "TEXT", "the reason", true};

// The options that are fields under another name.
constexpr std::pair<const char*, const char*> kOptionFields[] = {{"--why", "why"},
                                                                 {"--tin", "tin"},
                                                                 {"--agreed-by", "agreed_by"},
                                                                 {"--customer", "customer"},
                                                                 {"--not-present", "not_present"}};

desk::Move wanted(const char* event, const Arguments& arguments) {
    desk::Move move = {event, arguments.one("PART"), arguments.one("--at"), arguments.all("FIELD=VALUE")};
    if (arguments.has("STEP")) move.fields.insert(move.fields.begin(), "step=" + arguments.one("STEP"));
    for (const auto& [option, field] : kOptionFields) {
        if (arguments.has(option)) move.fields.push_back(std::string(field) + "=" + arguments.one(option));
    }
    if (arguments.has("--rain")) move.fields.emplace_back("rain=yes");
    return move;
}

int run_event(const char* event, const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    return show_kept(
        with_pin(arguments, [&](const desk::Asked& by) { return desk->move(by, wanted(event, arguments)); }),
        arguments, screen);
}

int run_begin(const Arguments& arguments, Screen& screen) { return run_event("begin", arguments, screen); }
int run_tick(const Arguments& arguments, Screen& screen) { return run_event("tick", arguments, screen); }
int run_pause(const Arguments& arguments, Screen& screen) { return run_event("pause", arguments, screen); }
int run_resume(const Arguments& arguments, Screen& screen) { return run_event("resume", arguments, screen); }
int run_sign(const Arguments& arguments, Screen& screen) { return run_event("sign", arguments, screen); }
int run_send_back(const Arguments& arguments, Screen& screen) {
    return run_event("send_back", arguments, screen);
}
int run_confirm(const Arguments& arguments, Screen& screen) {
    return run_event("confirm", arguments, screen);
}
int run_reopen(const Arguments& arguments, Screen& screen) { return run_event("reopen", arguments, screen); }
int run_leave_out(const Arguments& arguments, Screen& screen) {
    return run_event("leave_out", arguments, screen);
}
int run_take_back(const Arguments& arguments, Screen& screen) {
    return run_event("take_back", arguments, screen);
}

Verb event_verb(const char* name, const char* says, const char* example, std::vector<Option> own,
                int (*run)(const Arguments&, Screen&)) {
    own.insert(own.begin(), kAt);
    return {name, says, example, {kPart, kFields}, signing(std::move(own)), run};
}

Verb tick_verb() {
    return {"tick",
            "ticks a step of a part, with what was measured",
            "undersheet tick band/AB finger finger_deck=clean finger_sheet=clean --by WP",
            {kPart, {"STEP", "which step (undersheet stages names them)", Count::one, Sort::step}, kFields},
            writing({kAt, {"--tin", "LABEL", "the tin it came from"}}),
            run_tick};
}

} // namespace

std::vector<Verb> part_verbs() {
    const Option tin = {"--tin", "LABEL", "the tin to be used; it is judged here"};
    return {
        event_verb("begin", "begins a part, if nothing holds it",
                   "undersheet begin band/AB --tin CA-3 --by WP", {tin}, run_begin),
        tick_verb(),
        event_verb("pause", "stops work on a part for now",
                   "undersheet pause band/AB --why \"shower\" --rain --by WP",
                   {kWhy, {"--rain", "", "because of rain: an open coat is spoilt"}}, run_pause),
        event_verb("resume", "goes on with a part", "undersheet resume band/AB --tin CA-3 --by WP", {tin},
                   run_resume),
        event_verb("sign", "signs a part that is done", "undersheet sign band/AB --by WP",
                   {{"--customer", "NAME", "for the hand-over: who signed for the customer"},
                    {"--not-present", "TEXT", "for the hand-over: \"sent on 12 June\""}},
                   run_sign),
        event_verb("send-back", "sends a part that is done back to be worked on",
                   "undersheet send-back patches/D --why \"bead has a gap\" --by IP", {kWhy}, run_send_back),
        event_verb("confirm", "says after a new look that a doubted part is good",
                   "undersheet confirm band/AB --why \"edge lifted and pressed, sound\" --by IP", {kWhy},
                   run_confirm),
        event_verb("reopen", "opens a signed part again; its signature is struck and kept",
                   "undersheet reopen field/1 --at 1.20,0.60 --why \"blister\" --by IP", {kWhy}, run_reopen),
        event_verb("leave-out", "leaves a part out, with the reason and who agreed",
                   "undersheet leave-out openings/R1 --why \"rooflight is the joiner's work\" --agreed-by "
                   "\"Caspar Dunmoor\" --by IP",
                   {kWhy, {"--agreed-by", "NAME", "who agreed", true}}, run_leave_out),
        event_verb("take-back", "takes a left-out part back in",
                   "undersheet take-back openings/R1 --why \"joiner is not coming\" --by IP", {kWhy},
                   run_take_back)};
}

} // namespace undersheet::cli
