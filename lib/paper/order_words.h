// How the lines of a take-off are said on the papers that are made from it.
//
// Promises: numbers with the language's decimal sign; a line whose name the words do not know keeps its own title.
// Threads: pure functions.
#pragma once

#include "job/takeoff.h"
#include "paper/words.h"

namespace undersheet::paper {

[[nodiscard]] std::string item_words(const job::TakeOffLine& line, const Words& words);
[[nodiscard]] std::string amount_words(const job::TakeOffLine& line, const Words& words); // "12.05 L"
// "1 × 10 L, 1 × 2.5 L"; the sheet's cut; "" for what is not bought in packs.
[[nodiscard]] std::string packs_words(const job::TakeOff& made, const job::TakeOffLine& line,
                                      const Words& words);
[[nodiscard]] std::string money_figures(std::int64_t minor, const method::PriceList& prices,
                                        const Words& words); // "388.57"
[[nodiscard]] std::string money_words(std::int64_t minor, const method::PriceList& prices,
                                      const Words& words); // "£388.57"

} // namespace undersheet::paper
