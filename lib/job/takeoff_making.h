// A take-off while it is being made: what it is made from, and how a line is put down. One file a subject puts its lines.
//
// Promises: amounts are set to a millionth of their unit, so that what is a whole number with a pencil is one here.
// Does not: know any figure; a rate the method does not have is our own mistake (rates_there() refuses such a method first).
#pragma once

#include "job/takeoff.h"
#include "job/takeoff_roof.h"

namespace undersheet::job {

struct Making {
    const Job& job;
    const method::Method& method;
    const method::PriceList* prices; // nullptr without one
    CountedRoof roof;
    TakeOff made = {};

    [[nodiscard]] double rate(std::string_view key) const { return method.limit(key); }
    [[nodiscard]] Allowances rows(const std::vector<std::string_view>& keys) const;
    // The working's last line for a spare: "+ 10 % = 12.0505 l", and the amount with it.
    double with_spare(double amount, std::string_view key, std::string_view unit, Working& working) const;
};

// The subjects, in the order of the lines.
[[nodiscard]] Done add_areas(Making& making); // refused for openings the deck cannot hold
void add_sheet(Making& making);               // the sheet, its weight
void add_adhesives(Making& making);           // field and contact adhesive
void add_patches(Making& making);             // tape, primer, lap sealant
void add_chase(Making& making);               // chase sealant, wedges
void add_trims(Making& making);               // plates, covers, kerb and wall trims, from the lengths on sale
void add_fittings(Making& making);            // corners, stop ends, foam, pins, nails, what openings bring
void add_hours(Making& making);
void add_price(Making& making);
void add_used(Making& making); // beside the lines that are there

// Puts the line down and buys it, where the price list has it in packs.
TakeOffLine& add_material(Making& making, TakeOffLine line);
// As many as the whole packs hold, and what they cost; a remark where that cannot be said.
void buy(const Making& making, TakeOffLine& line);

// An amount that cannot be kept, from a rate or a price list far from anything on a roof; take_off() makes a fault of it.
struct TooGreat {};
[[nodiscard]] Decimal in_millionths(double amount); // or TooGreat
[[nodiscard]] double rounded_up(double amount);     // to the next whole one, a millionth forgiven
[[nodiscard]] std::string in_words(double amount, std::string_view unit); // "43.82 m²"
[[nodiscard]] std::string in_metres(std::int64_t mm);                     // "3.600"
[[nodiscard]] Worded item_worded(const TakeOffLine& line);                // its title, as the papers call it

// The rates the take-off asks for: all there, and those that are divided by above 0; method_malformed names the first that
// is not.
[[nodiscard]] Done rates_there(const method::Method& method);

} // namespace undersheet::job
