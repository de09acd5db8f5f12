#include "cli/show.h"
#include "cli/verb.h"

#include "base/text.h"

namespace undersheet::cli {
namespace {

void show_started(const desk::Started& started, Screen& screen) {
    screen.set_in("", "A new book for " + started.firm + ": " + started.book);
    if (!started.device.empty()) screen.set_in("", "This device signs as " + started.device + ".");
}

desk::Firm firm_in(const Arguments& arguments, const char* name) {
    return {arguments.one(name),      arguments.one("--address"),      arguments.one("--phone"),
            arguments.one("--email"), arguments.one("--registration"), arguments.one("--language")};
}

// The firm's name comes out of the file, and this device gets its key with the first thing it writes.
int run_start_from(const Arguments& arguments, const desk::BookAt& book, Screen& screen) {
    const auto started = desk::Desk::start_from(book, arguments.one("--from"));
    if (!started) return screen.refuse(started.fault());
    if (arguments.has("--json")) {
        screen.bytes(desk::json_of(*started));
    } else {
        show_started(*started, screen);
        screen.set_in("next: ", "undersheet jobs --book " + started->book);
    }
    return 0;
}

int run_start(const Arguments& arguments, Screen& screen) {
    desk::BookAt book = book_at(arguments);
    book.file = arguments.one("FILE");
    if (arguments.has("--from")) return run_start_from(arguments, book, screen);
    if (!arguments.has("--firm"))
        return screen.refuse({Code::argument_wrong, "say whose book it is", "start",
                              "--firm NAME, or --from FILE for a whole book that was handed over"});
    const auto started = desk::Desk::start(book, firm_in(arguments, "--firm"), arguments.one("--when"));
    if (!started) return screen.refuse(started.fault());
    if (arguments.has("--json")) {
        screen.bytes(desk::json_of(*started));
        return 0;
    }
    show_started(*started, screen);
    screen.set_in("next: ", "undersheet people add NAME --role installer --book " + started->book);
    return 0;
}

void show_firm(const desk::Firm& firm, Screen& screen) {
    screen.line(firm.name);
    for (const auto& [name, value] : {std::pair{"address", firm.address},
                                      {"phone", firm.phone},
                                      {"email", firm.email},
                                      {"registration", firm.registration},
                                      {"papers in", firm.language}})
        if (!value.empty()) screen.set_in("  " + padded(name, 13) + " ", value);
}

int run_firm(const Arguments& arguments, Screen& screen) {
    return answer(
        arguments, screen, [](desk::Desk& desk) { return desk.firm(); },
        [&](const desk::Firm& firm) { show_firm(firm, screen); });
}

int run_firm_change(const Arguments& arguments, Screen& screen) {
    return answer(
        arguments, screen,
        [&](desk::Desk& desk) { return desk.change_firm(asked(arguments), firm_in(arguments, "--name")); },
        [&](const desk::Firm& firm) {
            screen.set_in("", "On every open job, and in the book:");
            show_firm(firm, screen);
        });
}

// What a firm is said to be, at the start and later.
std::vector<Option> with_firm(std::vector<Option> first, std::vector<Option> last) {
    for (const Option& option :
         {Option{"--address", "TEXT", "where the firm is, for the papers"},
          {"--phone", "NUMBER", "whom the customer rings"},
          {"--email", "ADDRESS", "for the papers"},
          {"--registration", "TEXT", "company or trade registration, as it should be printed"},
          {"--language", "TAG", "what its papers are written in: en or de; else English"}})
        first.push_back(option);
    first.insert(first.end(), last.begin(), last.end());
    return first;
}

} // namespace

std::vector<Verb> start_verbs() {
    return {
        {"start",
         "makes a new book and this device's key",
         "undersheet start roofs.book --firm \"Pell & Daughter\" --phone \"01632 960 118\"",
         {{"FILE", "where the book is to be; a file that is there already is left alone", Count::one,
           Sort::file}},
         with_firm({{"--firm", "NAME", "the firm whose book it is"},
                    {"--from", "FILE", "a whole book handed over by another device: hand --all", false,
                     Sort::file}},
                   {{"--when", "TIME", "with offset; else now"}, {"--json", "", "write JSON for scripts"}}),
         run_start},
        {"firm",
         "whose book it is",
         "undersheet firm",
         {},
         {book_option(), {"--json", "", "write JSON for scripts"}},
         run_firm},
        {"firm change",
         "says what is new about the firm: its number, its address, the language of its papers",
         "undersheet firm change --phone \"01632 960 119\" --by IP",
         {},
         with_firm({{"--name", "NAME", "what the firm is called now"}},
                   {{"--by", "NAME", "who says so"},
                    book_option(),
                    {"--when", "TIME", "with offset; else now"},
                    {"--json", "", "write JSON for scripts"}}),
         run_firm_change}};
}

} // namespace undersheet::cli
