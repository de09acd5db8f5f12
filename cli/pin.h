// A person's PIN: read from a file, or typed at the terminal without being shown.
#pragma once

#include "cli/book.h"

#include <optional>

namespace undersheet::cli {

// What --pin-from holds: the first line of the file; "" without that option.
[[nodiscard]] Result<std::string> pin_from(const Arguments& arguments, const char* option = "--pin-from");

// Nothing when nobody sits at a terminal.
[[nodiscard]] std::optional<std::string> typed_unseen(const std::string& question);

// Asks the desk, and once more with the PIN where it is needed and somebody is there to type it.
template <class Ask>
auto with_pin(const Arguments& arguments, Ask ask) -> decltype(ask(desk::Asked())) {
    auto pin = pin_from(arguments);
    if (!pin) return pin.fault();
    desk::Asked by = asked(arguments);
    by.pin = std::move(*pin);
    auto told = ask(by);
    if (told || told.fault().code != Code::pin_needed) return told;
    auto typed = typed_unseen(told.fault().detail + ". PIN: ");
    if (!typed) return told;
    by.pin = std::move(*typed);
    return ask(by);
}

} // namespace undersheet::cli
