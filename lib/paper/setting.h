// What a paper is made from besides the job: the words, the method, which issue of it this is, where pictures come from, the prices.
#pragma once

#include "method/kinds.h"
#include "method/method.h"
#include "method/prices.h"
#include "paper/words.h"

#include <functional>

namespace undersheet::paper {

// The bytes of a photograph as it is to be shown, by its SHA-256; "" when it is not at hand.
using PictureSource = std::function<std::string(std::string_view sha256)>;

struct Setting {
    const Words& words;
    const method::Method& method;
    const method::Catalogue& kinds;
    std::string number = {};  // of this paper; "" prints none
    std::string issue = {};   // "" prints none
    std::string program = {}; // "undersheet 0.1.0"
    PictureSource picture = {};
    const method::PriceList* prices = nullptr; // for the order and the offer
};

} // namespace undersheet::paper
