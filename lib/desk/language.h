// The language a paper is made in: the one asked for, else the firm's own, else English. Only the desk includes this.
#pragma once

#include "paper/words.h"

namespace undersheet::desk {

[[nodiscard]] Result<const paper::Words*> words_for(std::string_view asked, const std::string& firms);

} // namespace undersheet::desk
