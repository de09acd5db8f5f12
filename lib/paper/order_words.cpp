#include "paper/order_words.h"

#include "base/text.h"

#include <algorithm>
#include <cmath>

namespace undersheet::paper {
namespace {

constexpr int kAmountPlaces = 2;
constexpr int kRollPlaces = 2;

std::string unit_words(const std::string& unit, const Words& words) {
    return words.has("unit." + unit) ? words.say("unit." + unit) : unit;
}

std::string with_unit(const std::string& figure, const std::string& unit, const Words& words) {
    return unit == "piece" ? figure : figure + " " + unit_words(unit, words);
}

std::string sheet_words(const trade::Sheet& sheet, const Words& words) {
    return words.say("order.cut", {{"length", words.number(sheet.length_m, kRollPlaces)},
                                   {"width", words.number(sheet.roll_width_m, kRollPlaces)}});
}

// "2", "2 packs of 100", "1 × 2.5 L".
std::string pack_words(const trade::PackCount& pack, const std::string& unit, const Words& words) {
    const std::string count = std::to_string(pack.count);
    const bool is_counted = unit == "piece" || unit == "cartridge";
    if (is_counted && pack.size == Decimal::of(1)) return count;
    const std::string size = words.number(pack.size);
    if (is_counted)
        return words.count("order.packs_of", static_cast<std::size_t>(pack.count), {{"size", size}});
    return words.say("order.pack", {{"n", count}, {"size", with_unit(size, unit, words)}});
}

} // namespace

std::string item_words(const job::TakeOffLine& line, const Words& words) {
    const std::string key = "item." + line.name;
    if (words.has(key)) return words.say(key);
    const std::string opening = "choice." + line.name; // ours to bring: a pipe, an outlet
    return words.has(opening) ? words.say(opening) : words.text(line.title);
}

std::string amount_words(const job::TakeOffLine& line, const Words& words) {
    if (line.unit.empty()) return "";
    if (line.unit == "piece") return words.number(line.amount);
    return with_unit(words.number(line.amount.value(), kAmountPlaces), line.unit, words);
}

std::string packs_words(const job::TakeOff& made, const job::TakeOffLine& line, const Words& words) {
    if (line.name == "sheet") return made.sheet ? sheet_words(*made.sheet, words) : "";
    auto packs = line.packs; // the largest first, as one asks for them
    std::sort(packs.begin(), packs.end(), [](const auto& a, const auto& b) { return b.size < a.size; });
    std::vector<std::string> all;
    for (const trade::PackCount& pack : packs) all.push_back(pack_words(pack, line.unit, words));
    return joined(all, ", ");
}

std::string money_figures(std::int64_t minor, const method::PriceList& prices, const Words& words) {
    const double unit = std::pow(10.0, prices.minor_digits);
    return words.number(static_cast<double>(minor) / unit, prices.minor_digits);
}

std::string money_words(std::int64_t minor, const method::PriceList& prices, const Words& words) {
    const std::string key = "money." + prices.currency;
    const std::string figures = money_figures(minor, prices, words);
    return words.has(key) ? words.say(key, {{"n", figures}}) : figures + " " + prices.currency;
}

} // namespace undersheet::paper
