// Bytes made small and made whole again, by zlib.
//
// Promises: the same bytes give the same bytes with the same zlib. inflated() gives nothing unless what comes out has exactly the expected
//   size, and never asks for more memory than that.
// Threads: pure functions.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace undersheet::pdf {

[[nodiscard]] std::string deflated(std::string_view bytes);
[[nodiscard]] std::optional<std::string> inflated(std::string_view bytes, std::size_t expected);

} // namespace undersheet::pdf
