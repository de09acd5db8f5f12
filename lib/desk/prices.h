// The price list somebody gave with a question, if they did.
#pragma once

#include "method/prices.h"

namespace undersheet::desk {

// "" is none. prices_malformed, with line and reason.
[[nodiscard]] inline Result<std::optional<method::PriceList>> given_prices(std::string_view text) {
    if (text.empty()) return std::optional<method::PriceList>();
    auto read = method::PriceList::read(text);
    if (!read) return read.fault();
    return std::optional(*std::move(read));
}

} // namespace undersheet::desk
