#include "cli/show.h"
#include "cli/verb.h"

namespace undersheet::cli {
namespace {

void show_started(const desk::Started& started, Screen& screen) {
    screen.set_in("", "A new book for " + started.firm + ": " + started.book);
    if (!started.device.empty()) screen.set_in("", "This device signs as " + started.device + ".");
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
    const desk::Firm firm = {arguments.one("--firm"),         arguments.one("--address"),
                             arguments.one("--phone"),        arguments.one("--email"),
                             arguments.one("--registration"), arguments.one("--language")};
    const auto started = desk::Desk::start(book, firm, arguments.one("--when"));
    if (!started) return screen.refuse(started.fault());
    if (arguments.has("--json")) {
        screen.bytes(desk::json_of(*started));
        return 0;
    }
    show_started(*started, screen);
    screen.set_in("next: ", "undersheet people add NAME --role installer --book " + started->book);
    return 0;
}

} // namespace

std::vector<Verb> start_verbs() {
    return {{"start",
             "makes a new book and this device's key",
             "undersheet start roofs.book --firm \"Pell & Daughter\" --phone \"01632 960 118\"",
             {{"FILE", "where the book is to be; a file that is there already is left alone", Count::one,
               Sort::file}},
             {{"--firm", "NAME", "the firm whose book it is"},
              {"--from", "FILE", "a whole book handed over by another device: hand --all", false, Sort::file},
              {"--address", "TEXT", "where the firm is, for the papers"},
              {"--phone", "NUMBER", "whom the customer rings"},
              {"--email", "ADDRESS", "for the papers"},
              {"--registration", "TEXT", "company or trade registration, as it should be printed"},
              {"--language", "TAG", "what its papers are written in: en or de; else English"},
              {"--when", "TIME", "with offset; else now"},
              {"--json", "", "write JSON for scripts"}},
             run_start}};
}

} // namespace undersheet::cli
