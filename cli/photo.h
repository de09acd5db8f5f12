// A photograph from a file, for every command that takes one.
#pragma once

#include "base/result.h"
#include "desk/requests.h"

namespace undersheet::cli {

[[nodiscard]] Result<desk::Photograph> read_photo(const std::string& path);

} // namespace undersheet::cli
