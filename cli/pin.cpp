#include "cli/pin.h"

#include "base/text.h"
#include "cli/show.h"
#include "cli/verb.h"

#ifndef _WIN32
#include <cstdio>
#include <memory>
#include <termios.h>
#include <unistd.h>
#endif

namespace undersheet::cli {
namespace {

#ifndef _WIN32
// What is typed is not shown until this goes.
class Unseen {
public:
    explicit Unseen(int terminal) : terminal_(terminal), is_set_(tcgetattr(terminal, &before_) == 0) {
        termios now = before_;
        now.c_lflag &= ~static_cast<tcflag_t>(ECHO);
        if (is_set_) is_set_ = tcsetattr(terminal_, TCSAFLUSH, &now) == 0;
    }
    Unseen(const Unseen&) = delete;
    Unseen& operator=(const Unseen&) = delete;
    ~Unseen() {
        if (is_set_) tcsetattr(terminal_, TCSAFLUSH, &before_);
    }

private:
    int terminal_;
    termios before_ = {};
    bool is_set_;
};
#endif

// The new PIN: from a file, or typed twice.
Result<std::string> new_pin(const Arguments& arguments) {
    if (arguments.has("--new-from")) return pin_from(arguments, "--new-from");
    const auto once = typed_unseen("New PIN: ");
    const Fault nobody = {Code::argument_wrong,
                          "there is nobody to type a PIN",
                          {},
                          "name a file that holds it: --new-from FILE"};
    if (!once) return nobody;
    const auto again = typed_unseen("And once more: ");
    if (!again) return nobody;
    if (*once != *again) return Fault{Code::pin_wrong, "these are two different PINs", {}, "begin again"};
    return *once;
}

int run_pin(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    desk::PinChange change;
    change.forgotten = arguments.one("--forgotten");
    const auto fresh = new_pin(arguments);
    if (!fresh) return screen.refuse(fresh.fault());
    change.pin = *fresh;
    const auto set = with_pin(arguments, [&](const desk::Asked& by) {
        change.old_pin = by.pin;
        return desk->set_pin(by, change);
    });
    if (!set) return screen.refuse(set.fault());
    screen.set_in("",
                  set->name + " signs with this PIN on this device from now on. It is written down nowhere.");
    screen.set_in("", "A PIN keeps others from signing in that name; against whoever has the phone and time, "
                      "it only delays. "
                      "Report a lost phone: undersheet revoke DEVICE.");
    return 0;
}

} // namespace

Result<std::string> pin_from(const Arguments& arguments, const char* option) {
    if (!arguments.has(option)) return std::string();
    const auto text = read_file(arguments.one(option), "PIN");
    if (!text) return text.fault();
    return std::string(trimmed(split(*text, '\n')[0]));
}

std::optional<std::string> typed_unseen(const std::string& question) {
#ifdef _WIN32
    return std::nullopt;
#else
    if (isatty(STDIN_FILENO) == 0) return std::nullopt;
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> terminal(std::fopen("/dev/tty", "r+"), std::fclose);
    if (!terminal) return std::nullopt;
    std::fputs(question.c_str(), terminal.get());
    std::fflush(terminal.get());
    const Unseen unseen(fileno(terminal.get()));
    std::string line;
    for (int c = std::fgetc(terminal.get()); c != EOF && c != '\n'; c = std::fgetc(terminal.get()))
        line += static_cast<char>(c);
    std::fputs("\n", terminal.get());
    return line;
#endif
}

std::vector<Verb> pin_verbs() {
    return {{"pin",
             "sets a person's PIN on this device: sign-offs then carry that person's own signature",
             "undersheet pin --by IP",
             {},
             {{"--pin-from", "FILE", "the PIN until now; - is the standard input; else it is asked for",
               false, Sort::file},
              {"--new-from", "FILE", "the new PIN; else it is asked for, twice", false, Sort::file},
              {"--forgotten", "TEXT", "why there is to be a new key, without the old PIN"},
              {"--by", "NAME", "whose PIN it is: initials or name; else UNDERSHEET_BY"},
              book_option(),
              {"--when", "TIME", "the time it is about, with offset; else now"}},
             run_pin}};
}

} // namespace undersheet::cli
