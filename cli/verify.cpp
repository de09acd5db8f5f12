#include "cli/show.h"
#include "cli/verb.h"

namespace undersheet::cli {
namespace {

void show_verified(const desk::Verified& verified, Screen& screen) {
    screen.line(verified.ok
                    ? "Every one of " + std::to_string(verified.entries) + " entries verifies."
                    : "Not everything verifies; " + std::to_string(verified.entries) + " entries read:",
                Ink::strong);
    for (const auto& fault : verified.faults) {
        screen.set_in("  ",
                      "entry " + std::to_string(fault.seq) + " of device " + fault.device.substr(0, 8) +
                          ": " + fault.what,
                      Ink::red);
    }
    screen.set_in("", "Check value: " + verified.digest);
    if (!verified.witnessed) screen.set_in("", "Nobody outside this book has witnessed its last entries.");
}

int run_verify(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const auto verified = desk->verify();
    if (!verified) return screen.refuse(verified.fault());
    if (arguments.has("--json")) {
        screen.bytes(desk::json_of(*verified));
    } else {
        show_verified(*verified, screen);
    }
    return verified->ok ? 0 : 1;
}

} // namespace

std::vector<Verb> verify_verbs() {
    return {{"verify",
             "checks every hash, signature and chain of the book",
             "undersheet verify",
             {},
             {book_option(), {"--json", "", "write JSON for scripts"}},
             run_verify}};
}

} // namespace undersheet::cli
