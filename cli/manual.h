// The manual page, written from the table of commands. docs/undersheet.1 is this text, and a test holds the two together.
#pragma once

#include <string>

namespace undersheet::cli {

[[nodiscard]] std::string manual_page(); // man(7) macros

} // namespace undersheet::cli
