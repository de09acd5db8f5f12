#include "desk/reckon.h"
#include "cli/book.h"
#include "cli/verb.h"

namespace undersheet::cli {
namespace {

int show_list(const Arguments& arguments, Screen& screen) {
    if (arguments.has("--json")) {
        screen.bytes(desk::json_of(desk::topics()));
        return 0;
    }
    for (const auto& line : desk::topics()) screen.set_in(padded(line.topic, 10), line.says);
    return 0;
}

int run_reckon(const Arguments& arguments, Screen& screen) {
    if (arguments.has("--list")) return show_list(arguments, screen);
    if (!arguments.has("TOPIC")) {
        return screen.refuse(
            {Code::argument_wrong, "reckon needs a topic", {}, "undersheet reckon --list names them"});
    }
    const std::string topic = arguments.one("TOPIC");
    if (arguments.has("--schema")) {
        const auto schema = desk::reckon_schema(topic);
        if (!schema) return screen.refuse(schema.fault());
        screen.bytes(*schema);
        return 0;
    }
    const auto input = read_file(arguments.has("FILE") ? arguments.one("FILE") : "-", "file of values");
    if (!input) return screen.refuse(input.fault());
    const auto answer = desk::reckon(topic, *input);
    if (!answer) return screen.refuse(answer.fault());
    screen.bytes(*answer);
    return 0;
}

} // namespace

std::vector<Verb> reckon_verbs() {
    return {{"reckon",
             "one computation on its own, JSON in and JSON out; needs no book",
             "undersheet reckon air <<< '{\"air_c\": 15, \"rh_pct\": 65, \"surface_c\": 11.5}'",
             {{"TOPIC", "what to work out: air, heads, outline, falls … (undersheet reckon --list)",
               Count::maybe, Sort::topic},
              {"FILE", "the values, as JSON; - or nothing is stdin", Count::maybe, Sort::file}},
             {{"--list", "", "name the topics"},
              {"--schema", "", "print what the topic takes and gives, as JSON Schema"},
              {"--json", "", "the list as JSON; an answer always is"}},
             run_reckon,
             "Each topic with an example: docs/reckon.md."}};
}

} // namespace undersheet::cli
