// Arguments in, one call of the desk, text out.
#include "cli/arguments.h"
#include "cli/help.h"
#include "cli/screen.h"
#include "cli/verb.h"
#include "desk/desk.h"

#include <csignal>
#include <cstdlib>
#include <cstring>
#include <exception>
#include <iostream>
#include <string>
#include <vector>

#ifdef _WIN32
#include <io.h>
#else
#include <poll.h>
#include <unistd.h>
#endif

namespace {

using namespace undersheet;

bool wants_colour() {
    const char* no_colour = std::getenv("NO_COLOR");
    const char* terminal = std::getenv("TERM");
    if (no_colour != nullptr && *no_colour != '\0') return false;
    if (terminal == nullptr || std::strcmp(terminal, "dumb") == 0) return false;
#ifdef _WIN32
    return _isatty(1) != 0;
#else
    return isatty(STDOUT_FILENO) != 0;
#endif
}

int carry_out(const cli::Command& command, cli::Screen& screen) {
    if (command.arguments.has("--version")) screen.line("undersheet " + std::string(desk::program_version()));
    if (command.arguments.has("--version")) return 0;
    if (command.verb == nullptr) {
        cli::show_overview(screen);
        return 0;
    }
    if (command.arguments.has("--help")) {
        cli::show_help(*command.verb, screen);
        return 0;
    }
    return command.verb->run(command.arguments, screen);
}

// A reader that has seen enough is no fault; a disk that took only half of the answer is.
bool reader_is_gone() {
#ifdef _WIN32
    return false;
#else
    pollfd out = {STDOUT_FILENO, POLLOUT, 0};
    return poll(&out, 1, 0) == 1 && (out.revents & POLLERR) != 0;
#endif
}

int when_written(int code, cli::Screen& screen) {
    std::cout.flush();
    if (!screen.is_broken() || reader_is_gone()) return code;
    screen.message("the answer could not be written to the end; make room, or send it somewhere else");
    return 3;
}

} // namespace

int main(int count, char** words) {
#ifdef SIGPIPE
    std::signal(SIGPIPE,
                SIG_IGN); // `undersheet history | head` ends quietly, and never in the middle of a record
#endif
#ifdef SIGXFSZ
    std::signal(SIGXFSZ, SIG_IGN); // a file over its limit then is a write that fails, and gets its one line
#endif
    std::ios::sync_with_stdio(false);
    cli::Screen screen(std::cout, std::cerr, wants_colour());
    try {
        const auto command = cli::read_command({words + 1, words + count});
        const int code = command ? carry_out(*command, screen) : screen.refuse(command.fault());
        return when_written(code, screen);
    } catch (const std::exception& mistake) {
        screen.message(std::string("undersheet made a mistake of its own: ") + mistake.what());
        return 3;
    }
}
