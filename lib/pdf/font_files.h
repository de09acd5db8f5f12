// The two font files as they were when this library was built (lib/cmake/pdf.cmake embeds them).
#pragma once

#include <string_view>

namespace undersheet::pdf {

[[nodiscard]] std::string_view regular_ttf();
[[nodiscard]] std::string_view bold_ttf();

} // namespace undersheet::pdf
