// Photographs as files beside the book, named by their content: "<book>.photos/<sha256>".
//
// Promises: byte for byte as they came, on the disk before keep returns; a file whose bytes do not give its name is refused.
// Does not: decode, turn or shrink anything.
#pragma once

#include "entry/hash.h"

namespace undersheet::book {

inline constexpr std::size_t kMostPhotoBytes = 32U << 20U;

[[nodiscard]] Result<entry::Hash> keep_photo_file(const std::string& folder, std::string_view bytes);
[[nodiscard]] Result<std::string> read_photo_file(const std::string& folder, const entry::Hash& hash);

} // namespace undersheet::book
