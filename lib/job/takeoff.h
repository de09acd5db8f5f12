// What to order, and the price: the whole roof taken off from its record, line by line, each with the sum it comes from.
//
// Promises: pure; the same record, method and price list give the same take-off. Lengths are counted in whole mm, areas in whole
//   mm², other amounts to a millionth of their unit; whole packs, bars and rolls are the cheapest that are enough. Money is in
//   whole minor units, each line rounded half up. What has no price says so, and then there is no total.
// Does not: guess. An edge nobody named or an opening without a size is refused, all that is missing in one line.
//   No allowance or price stands here: they are the method's and the price list's.
// Threads: values; the allowances point into the method.
#pragma once

#include "job/job.h"
#include "method/prices.h"
#include "trade/areas.h"
#include "trade/packs.h"
#include "trade/sheet.h"

namespace undersheet::job {

using Allowances = std::vector<const method::Limit*>;
using Working = std::vector<std::string>;

// One thing that is counted, ordered, worked or charged.
struct TakeOffLine {
    std::string section; // areas, materials, labour, price
    std::string name;    // what one types to ask why: "deck_adhesive"
    std::string title;   // "field adhesive"
    Decimal amount;      // what the roof takes, spare included
    std::string unit;    // m2, m, l, kg, h, piece, cartridge; "" for money
    Working working = {};
    Allowances allowances = {};
    std::vector<trade::PackCount> packs = {}; // what is bought of it, where it comes in packs, bars or rolls
    method::Price price = {};
    Worded remark = {}; // why there is no price, or what to look at
};

// The trims of one sort: how each run is laid, and how the pieces come out of the lengths on sale.
struct TrimRun {
    std::string edge;
    std::int64_t length_mm = 0;
    std::vector<std::int64_t> pieces_mm = {};
    std::vector<std::int64_t> holes = {}; // in each piece; none in a wall trim
};
struct TrimBar {
    std::int64_t stock_mm = 0;
    std::vector<std::int64_t> pieces_mm = {};
    std::int64_t left_mm = 0; // after the last cut
};
struct TrimCuts {
    std::string item;          // plate, cover, kerb, wall
    bool is_lapped = false;    // else joined with a gap
    std::int64_t joint_mm = 0; // the gap or the lap
    std::vector<TrimRun> runs = {};
    std::vector<TrimBar> bars = {};
    bool is_best = false; // no fewer bars can do, proved
};

// What the record says was used of a line, beside what was planned.
struct TakeOffUsed {
    std::string name, title;
    Decimal planned, used;
    std::string unit;
    Working working = {};
    Worded remark = {};
};

struct TakeOff {
    trade::Areas areas;
    std::optional<trade::Sheet> sheet = {}; // nothing while no roll on sale is wide enough
    std::vector<TrimCuts> trims = {};
    std::vector<TakeOffLine> lines = {}; // in the order of the order
    std::vector<TakeOffUsed> used = {};  // nothing before anything was used
    std::vector<Worded> remarks = {};
    std::string currency = {};

    [[nodiscard]] const TakeOffLine* line(std::string_view name) const; // nullptr when there is none
    [[nodiscard]] std::vector<const TakeOffLine*> of(std::string_view section) const;
};

// Without a price list there are amounts, and nothing of packs, cut lengths and money.
[[nodiscard]] Result<TakeOff> take_off(const Job& job, const method::Method& method,
                                       const method::PriceList* prices = nullptr);

} // namespace undersheet::job
