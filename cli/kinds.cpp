#include "cli/help.h"
#include "cli/show.h"
#include "cli/verb.h"

namespace undersheet::cli {
namespace {

void show_group(const std::vector<desk::KindLine>& kinds, const std::string& group,
                const std::string& heading, Screen& screen) {
    screen.line(heading, Ink::strong);
    for (const auto& kind : kinds) {
        if (kind.group == group && kind.typed)
            screen.set_in("  " + padded(kind.name, 12) + " ", kind.heading);
    }
}

int run_kinds(const Arguments& arguments, Screen& screen) {
    if (arguments.has("KIND")) {
        const auto kind = desk::kind(arguments.one("KIND"));
        if (!kind) return screen.refuse(kind.fault());
        if (arguments.has("--json")) {
            screen.bytes(desk::json_of(std::vector<desk::KindLine>{*kind}));
        } else {
            show_kind(*kind, screen);
        }
        return 0;
    }
    const auto kinds = desk::kinds();
    if (arguments.has("--json")) {
        screen.bytes(desk::json_of(kinds));
        return 0;
    }
    show_group(kinds, "reading", "What you see, measure and do (undersheet record KIND):", screen);
    show_group(kinds, "event",
               "What moves a part or answers a finding (a command each, or a line of --from):", screen);
    screen.line();
    screen.line("The fields of one of them: undersheet kinds moisture");
    return 0;
}

} // namespace

std::vector<Verb> kind_verbs() {
    return {{"kinds",
             "what can be recorded, each field with its unit, range and meaning",
             "undersheet kinds moisture",
             {{"KIND", "only this one, with all its fields", Count::maybe, Sort::kind}},
             {{"--json", "", "write JSON for scripts"}},
             run_kinds}};
}

} // namespace undersheet::cli
