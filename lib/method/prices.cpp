#include "method/prices.h"

#include "entry/json.h"
#include "method/json_schema.h"
#include "schema/embedded.h"

#include <algorithm>
#include <array>

namespace undersheet::method {
namespace {

using entry::Value;

struct ItemUnit {
    std::string_view item, unit;
};
constexpr std::array kItemUnits{ItemUnit{"deck_adhesive", "l"},
                                ItemUnit{"contact_adhesive", "l"},
                                ItemUnit{"flashing_tape", "m"},
                                ItemUnit{"primer", "l"},
                                ItemUnit{"lap_sealant", "cartridge"},
                                ItemUnit{"chase_sealant", "l"},
                                ItemUnit{"wedges", "piece"},
                                ItemUnit{"corner_outer", "piece"},
                                ItemUnit{"corner_inner", "piece"},
                                ItemUnit{"stop_end", "piece"},
                                ItemUnit{"foam", "m"},
                                ItemUnit{"pins", "piece"},
                                ItemUnit{"nails", "piece"},
                                ItemUnit{"rooflight", "piece"},
                                ItemUnit{"pipe", "piece"},
                                ItemUnit{"outlet", "piece"},
                                ItemUnit{"flue", "piece"}};

Fault wrong_price(int line, const std::string& what, const std::string& right) {
    return {Code::prices_malformed, what, "price list line " + std::to_string(line), right};
}

// Faults of reading and of the shape are the price list's own here.
Fault as_ours(const Fault& fault, const std::string& where) {
    return {Code::prices_malformed, fault.detail, where, fault.clears};
}

Price price_in(const Value& row, std::string_view key) {
    const Value* found = row.find(key);
    return found == nullptr ? Price() : Price(found->number()->whole());
}

std::optional<Decimal> number_in(const Value& row, std::string_view key) {
    const Value* found = row.find(key);
    return found == nullptr ? std::nullopt : std::optional(*found->number());
}

bool is_currency(const std::string& code) {
    return code.size() == 3 &&
           std::all_of(code.begin(), code.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
}

Done check_pack(const Value& row, const PriceList& so_far) {
    const std::string item = row.text_of("item");
    const Decimal size = *number_in(row, "size");
    if (row.text_of("unit") != unit_of_item(item)) {
        return wrong_price(row.line,
                           item + " is counted in '" + std::string(unit_of_item(item)) + "', not in '" +
                               row.text_of("unit") + "'",
                           "give the pack's size in that unit");
    }
    if (row.text_of("unit") == "piece" && !size.is_integer())
        return wrong_price(row.line, "a pack of " + size.text() + " " + item, "pieces are whole");
    const auto same = [&](const PackOnSale& pack) { return pack.item == item && pack.size == size; };
    if (std::any_of(so_far.packs.begin(), so_far.packs.end(), same))
        return wrong_price(row.line, item + " of " + size.text() + " stands twice", "keep one");
    return {};
}

Done check_length(const Value& row, const PriceList& so_far) {
    const auto same = [&](const LengthOnSale& length) {
        return length.item == row.text_of("item") && length.length_mm == number_in(row, "length_mm")->whole();
    };
    if (std::none_of(so_far.lengths.begin(), so_far.lengths.end(), same)) return {};
    return wrong_price(row.line, row.text_of("item") + " of that length stands twice", "keep one");
}

Done check_roll(const Value& row, const PriceList& so_far) {
    const auto same = [&](const RollOnSale& roll) { return roll.width_m == *number_in(row, "width_m"); };
    if (std::none_of(so_far.rolls.begin(), so_far.rolls.end(), same)) return {};
    return wrong_price(row.line, "a roll of that width stands twice", "keep one");
}

// A rate that charges nothing has nothing to charge, and the other way round.
Done check_vat(const Value& row) {
    const std::string rate = row.text_of("rate");
    const bool charges = rate == "standard" || rate == "reduced";
    const Decimal pct = *number_in(row, "pct");
    if (charges == (Decimal() < pct)) return {};
    return wrong_price(row.line, "VAT '" + rate + "' at " + pct.text() + " %",
                       charges ? "give its percentage" : "that rate charges 0");
}

Done read_rolls(const Value& file, PriceList& list) {
    for (const Value& row : file.list_of("rolls")) {
        if (auto done = check_roll(row, list); !done) return done;
        list.rolls.push_back({*number_in(row, "width_m"), price_in(row, "price_m2")});
    }
    return {};
}

Done read_packs(const Value& file, PriceList& list) {
    for (const Value& row : file.list_of("packs")) {
        if (auto done = check_pack(row, list); !done) return done;
        list.packs.push_back(
            {row.text_of("item"), *number_in(row, "size"), row.text_of("unit"), price_in(row, "price")});
    }
    return {};
}

Done read_lengths(const Value& file, PriceList& list) {
    for (const Value& row : file.list_of("lengths")) {
        if (auto done = check_length(row, list); !done) return done;
        list.lengths.push_back(
            {row.text_of("item"), number_in(row, "length_mm")->whole(), price_in(row, "price")});
    }
    return {};
}

Done read_build_up(const Value& file, PriceList& list) {
    list.labour_h = price_in(file, "labour_h");
    list.overhead_pct = number_in(file, "overhead_pct");
    list.profit_pct = number_in(file, "profit_pct");
    for (const Value& row : file.list_of("costs"))
        list.costs.push_back({row.text_of("name"), row.text_of("says"), *price_in(row, "price")});
    if (const Value* offer = file.find("offer"); offer != nullptr) {
        if (const auto days = number_in(*offer, "days")) list.offer_days = static_cast<int>(days->whole());
        for (const Value& term : offer->list_of("terms")) list.terms.push_back(*term.text());
    }
    const Value* vat = file.find("vat");
    if (vat == nullptr) return {};
    if (auto done = check_vat(*vat); !done) return done;
    list.vat = Vat{vat->text_of("rate"), *number_in(*vat, "pct"), vat->text_of("reason")};
    return {};
}

Result<PriceList> read_list(const Value& file) {
    PriceList list{.name = file.text_of("name"), .currency = file.text_of("currency")};
    if (!is_currency(list.currency)) {
        return wrong_price(file.find("currency")->line, "'" + list.currency + "' is no currency",
                           "three capital letters, as GBP");
    }
    list.minor_digits = static_cast<int>(number_in(file, "minor_digits")->whole());
    list.cut_to_m = *number_in(file, "cut_to_m");
    if (auto done = read_rolls(file, list); !done) return done.fault();
    if (auto done = read_packs(file, list); !done) return done.fault();
    if (auto done = read_lengths(file, list); !done) return done.fault();
    if (auto done = read_build_up(file, list); !done) return done.fault();
    return list;
}

template <class Row>
std::vector<Row> rows_of(const std::vector<Row>& rows, std::string_view item) {
    std::vector<Row> found;
    std::copy_if(rows.begin(), rows.end(), std::back_inserter(found),
                 [&](const Row& row) { return row.item == item; });
    return found;
}

} // namespace

std::string_view unit_of_item(std::string_view item) {
    for (const ItemUnit& row : kItemUnits) {
        if (row.item == item) return row.unit;
    }
    return {};
}

Result<PriceList> PriceList::read(std::string_view json_text) {
    const auto file = entry::read_json(json_text);
    if (!file) return as_ours(file.fault(), "price list " + file.fault().where);
    const auto schema = entry::read_json(schema::prices_schema_json());
    if (!schema) return schema.fault();
    if (auto fits = check_shape(*schema, *file, "price list"); !fits)
        return as_ours(fits.fault(), fits.fault().where);
    return read_list(*file);
}

std::vector<PackOnSale> PriceList::packs_of(std::string_view item) const { return rows_of(packs, item); }

std::vector<LengthOnSale> PriceList::lengths_of(std::string_view item) const {
    return rows_of(lengths, item);
}

std::string PriceList::money(std::int64_t minor) const {
    std::string digits = std::to_string(minor);
    if (minor_digits == 0) return digits;
    const auto places = static_cast<std::size_t>(minor_digits);
    if (digits.size() <= places) digits.insert(0, places + 1 - digits.size(), '0');
    return digits.insert(digits.size() - places, ".");
}

} // namespace undersheet::method
