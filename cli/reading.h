// Reads what somebody named on the command line: a file, "-" for the standard input, or a pipe like `<(...)`.
//
// Promises: a folder is refused, an endless stream too; a pipe into which nobody writes is refused after two seconds and
//   never waited for. A pipe with a writer is read to its end, as the standard input is, however slow the writer.
#pragma once

#include "base/result.h"

#include <string>
#include <string_view>

namespace undersheet::cli {

// More than that nobody feeds: it is the largest photograph that the book keeps. What is smaller has limits of its own.
inline constexpr std::size_t kMostFileBytes = 32U << 20U;

// `what` names it in the fault: "photograph", "method file".
[[nodiscard]] Result<std::string> read_file(const std::string& path, std::string_view what);

} // namespace undersheet::cli
