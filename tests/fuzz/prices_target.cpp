// The price list: articles in the units they are counted in, no price below nothing.
#include "method/prices.h"
#include "tests/fuzz/targets.h"

namespace undersheet::fuzz {
namespace {

void promise_price(const method::Price& price) { promise(!price || *price >= 0, "a price is below nothing"); }

} // namespace

void read_prices(std::string_view bytes) {
    const auto read = method::PriceList::read(bytes);
    if (!read) return promise_readable(read.fault());
    for (const auto& roll : read->rolls) {
        promise(Decimal() < roll.width_m, "a roll has no width");
        promise_price(roll.price_m2);
    }
    for (const auto& pack : read->packs) {
        promise(Decimal() < pack.size, "a pack is empty");
        promise(pack.unit == method::unit_of_item(pack.item), "a pack is counted in another unit");
        promise(!read->packs_of(pack.item).empty(), "a pack is not found again");
        promise_price(pack.price);
    }
    for (const auto& length : read->lengths) {
        promise(length.length_mm > 0, "a length is none");
        promise(!read->lengths_of(length.item).empty(), "a length is not found again");
        promise_price(length.price);
    }
    promise_price(read->labour_h);
    for (const auto& cost : read->costs) promise(!read->money(cost.price).empty(), "money without digits");
}

} // namespace undersheet::fuzz
