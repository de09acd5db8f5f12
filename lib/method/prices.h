// The price list: what is on sale, in which widths, packs and lengths, and what it costs this firm.
//
// Promises: read() checks the file against its JSON Schema and then for sense: each article in the unit it is counted in, no
//   pack twice, pieces whole, a VAT rate that goes with its percentage. A price that is not given stays unknown, not 0.
//   Money is in minor units (pence, cents) of one currency.
// Does not: come with the program. schema/prices_example.json is invented, to be copied and filled in.
// Threads: read once, then share freely.
#pragma once

#include "base/decimal.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace undersheet::method {

using Price = std::optional<std::int64_t>; // minor units; nothing when it is not given

struct RollOnSale {
    Decimal width_m;
    Price price_m2 = {};
};

struct PackOnSale {
    std::string item; // "deck_adhesive"
    Decimal size;
    std::string unit; // l, m, cartridge, piece
    Price price = {};
};

struct LengthOnSale {
    std::string item; // plate, cover, kerb, wall
    std::int64_t length_mm = 0;
    Price price = {};
};

struct Cost { // of the job as a whole: access, waste, delivery
    std::string name, says;
    std::int64_t price = 0;
};

struct Vat {
    std::string rate; // standard, reduced, zero, exempt, reverse_charge
    Decimal pct;
    std::string reason;
};

struct PriceList {
    std::string name, currency;
    int minor_digits = 2;
    Decimal cut_to_m = {}; // rolls are cut to whole steps of this
    std::vector<RollOnSale> rolls = {};
    std::vector<PackOnSale> packs = {};
    std::vector<LengthOnSale> lengths = {};
    Price labour_h = {};
    std::vector<Cost> costs = {};
    std::optional<Decimal> overhead_pct = {}, profit_pct = {};
    std::optional<Vat> vat = {};
    std::optional<int> offer_days = {};  // an offer holds for so long
    std::vector<std::string> terms = {}; // of an offer, as they are to be printed

    static Result<PriceList> read(std::string_view json_text); // prices_malformed, with line and reason

    [[nodiscard]] std::vector<PackOnSale> packs_of(std::string_view item) const;
    [[nodiscard]] std::vector<LengthOnSale> lengths_of(std::string_view item) const;
    // 358883 of a currency with two digits is "3588.83".
    [[nodiscard]] std::string money(std::int64_t minor) const;
};

// The unit an article is counted and sold in; "" for one that is not sold in packs.
[[nodiscard]] std::string_view unit_of_item(std::string_view item);

} // namespace undersheet::method
