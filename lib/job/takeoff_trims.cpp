// The trims: each run laid in pieces, the pieces cut out of the lengths on sale.
#include "job/money.h"
#include "job/takeoff_making.h"

#include "base/text.h"
#include "trade/cuts.h"
#include "trade/movement.h"
#include "trade/trims.h"

#include <algorithm>

namespace undersheet::job {
namespace {

struct HoleRule {
    const char* first = nullptr; // nullptr: one hole at each end, none further apart than `every`
    const char* every = nullptr; // nullptr: no holes
};

struct TrimRow {
    const char *item, *title;
    const char* stage; // of the edges it goes on
    bool is_lapped;
    HoleRule holes;
};
const TrimRow kTrims[] = {
    {"plate", "back plate", "plate", false, {nullptr, "plate_hole_mm"}},
    {"cover", "cover plate", "cover", false, {"cover_first_mm", "cover_hole_mm"}},
    {"kerb", "kerb trim", "kerb", false, {"kerb_first_mm", "kerb_hole_mm"}},
    {"wall", "wall trim", "chase", true, {}},
};

std::int64_t whole_mm(double mm) { return static_cast<std::int64_t>(rounded_up(mm)); }

// What a full length grows by in the sun, in whole mm, and never less than the least gap.
std::int64_t gap_mm(const Making& making, std::int64_t stock_mm) {
    const auto grows = trade::movement({.length_mm = static_cast<double>(stock_mm),
                                        .coefficient_per_k = making.rate("trim_coefficient_per_k"),
                                        .from_c = making.rate("trim_laid_c"),
                                        .to_c = making.rate("trim_hot_c")});
    const std::int64_t least_mm = whole_mm(making.rate("trim_gap_mm"));
    return grows ? std::max(least_mm, whole_mm(grows->movement_mm)) : least_mm;
}

Result<std::vector<std::int64_t>> laid(const Making& making, const TrimCuts& cuts, std::int64_t run_mm,
                                       std::int64_t stock_mm) {
    return trade::trim_pieces({.run_mm = run_mm,
                               .stock_mm = stock_mm,
                               .joint_mm = cuts.joint_mm,
                               .is_lapped = cuts.is_lapped,
                               .least_mm = whole_mm(making.rate("trim_least_mm"))});
}

std::int64_t holes_in(const Making& making, const HoleRule& rule, std::int64_t piece_mm) {
    const auto length = static_cast<double>(piece_mm);
    if (rule.first == nullptr)
        return static_cast<std::int64_t>(rounded_up(length / making.rate(rule.every))) + 1;
    const double after_first = length - making.rate(rule.first);
    return after_first < 0 ? 0 : static_cast<std::int64_t>(after_first / making.rate(rule.every)) + 1;
}

Result<TrimRun> run_along(const Making& making, const TrimRow& row, const TrimCuts& cuts,
                          const CountedEdge& edge, std::int64_t stock_mm) {
    auto pieces = laid(making, cuts, edge.length_mm, stock_mm);
    if (!pieces) return pieces.fault();
    TrimRun run{.edge = edge.name, .length_mm = edge.length_mm, .pieces_mm = *std::move(pieces)};
    if (row.holes.every == nullptr) return run;
    for (const std::int64_t piece : run.pieces_mm) run.holes.push_back(holes_in(making, row.holes, piece));
    return run;
}

// Laid from the longest on sale: the fewest joints.
Result<TrimCuts> laid_trims(const Making& making, const TrimRow& row, std::int64_t stock_mm) {
    TrimCuts cuts{.item = row.item, .is_lapped = row.is_lapped};
    cuts.joint_mm = row.is_lapped ? whole_mm(making.rate("trim_lap_mm")) : gap_mm(making, stock_mm);
    for (const CountedEdge& edge : making.roof.edges) {
        if (!edge.has(row.stage)) continue;
        auto run = run_along(making, row, cuts, edge, stock_mm);
        if (!run) return run.fault();
        cuts.runs.push_back(*std::move(run));
    }
    return cuts;
}

bool all_priced(const std::vector<method::LengthOnSale>& lengths) {
    return std::all_of(lengths.begin(), lengths.end(),
                       [](const method::LengthOnSale& length) { return length.price.has_value(); });
}

trade::CutsInput cuts_input(const Making& making, const TrimCuts& cuts,
                            const std::vector<method::LengthOnSale>& on_sale) {
    trade::CutsInput in;
    in.kerf_mm = in_millionths(making.rate("trim_kerf_mm"));
    for (const TrimRun& run : cuts.runs)
        for (const std::int64_t piece : run.pieces_mm) in.pieces_mm.push_back(Decimal::of(piece));
    for (const auto& length : on_sale) {
        in.stock_mm.push_back(Decimal::of(length.length_mm));
        if (all_priced(on_sale)) in.prices.push_back(*length.price);
    }
    return in;
}

void add_bar(const trade::Bar& bar, TrimCuts& cuts, TakeOffLine& line) {
    TrimBar& kept = cuts.bars.emplace_back();
    kept.stock_mm = bar.stock_mm.whole();
    kept.left_mm = bar.offcut_mm.whole();
    for (const Decimal& piece : bar.pieces_mm) kept.pieces_mm.push_back(piece.whole());
    const Decimal stock_m = *Decimal::scaled(kept.stock_mm, 3);
    const auto same = [&](const trade::PackCount& pack) { return pack.size == stock_m; };
    const auto found = std::find_if(line.packs.begin(), line.packs.end(), same);
    if (found != line.packs.end())
        ++found->count;
    else
        line.packs.push_back({stock_m, 1});
}

std::string pieces_words(const std::vector<std::int64_t>& pieces_mm) {
    std::vector<std::string> words;
    for (const std::int64_t piece : pieces_mm) words.push_back(in_metres(piece));
    return joined(words, " + ");
}

void explain(const TrimCuts& cuts, TakeOffLine& line) {
    for (const TrimRun& run : cuts.runs)
        line.working.push_back(run.edge + " " + in_metres(run.length_mm) +
                               " m: " + pieces_words(run.pieces_mm));
    line.working.push_back((cuts.is_lapped ? "laps of " : "gaps of ") + std::to_string(cuts.joint_mm) +
                           " mm");
    for (const TrimBar& bar : cuts.bars)
        line.working.push_back("out of " + in_metres(bar.stock_mm) + " m: " + pieces_words(bar.pieces_mm));
    if (cuts.is_best) line.working.emplace_back("proved: nothing cheaper will do");
}

void cut_bars(Making& making, Result<TrimCuts> laid, const std::vector<method::LengthOnSale>& on_sale,
              TakeOffLine& line) {
    if (!laid) {
        line.remark = fault_worded(laid.fault());
        return;
    }
    TrimCuts& cuts = *laid;
    const auto found = trade::cuts(cuts_input(making, cuts, on_sale));
    if (!found) {
        line.remark = fault_worded(found.fault());
        return;
    }
    for (const trade::Bar& bar : found->bars) add_bar(bar, cuts, line);
    cuts.is_best = found->best;
    if (all_priced(on_sale))
        line.price = found->price;
    else
        line.remark = "a length of it has no price";
    explain(cuts, line);
    making.made.trims.push_back(std::move(cuts));
}

std::vector<std::string_view> keys_of(const TrimRow& row) {
    std::vector<std::string_view> keys{"trim_kerf_mm", "trim_least_mm"};
    if (row.is_lapped)
        keys.emplace_back("trim_lap_mm");
    else
        keys.insert(keys.end(), {"trim_gap_mm", "trim_coefficient_per_k", "trim_laid_c", "trim_hot_c"});
    return keys;
}

void add_trim(Making& making, const TrimRow& row) {
    const double run_m = metres_of(making.roof, row.stage);
    if (run_m <= 0) return;
    TakeOffLine line{.section = "materials",
                     .name = row.item,
                     .title = row.title,
                     .amount = in_millionths(run_m),
                     .unit = "m",
                     .allowances = making.rows(keys_of(row))};
    if (making.prices != nullptr) {
        auto on_sale = making.prices->lengths_of(row.item);
        const auto shorter = [](const method::LengthOnSale& a, const method::LengthOnSale& b) {
            return a.length_mm < b.length_mm;
        };
        const auto longest = std::max_element(on_sale.begin(), on_sale.end(), shorter);
        if (longest == on_sale.end())
            line.remark = "not on the price list";
        else
            cut_bars(making, laid_trims(making, row, longest->length_mm), on_sale, line);
    }
    making.made.lines.push_back(std::move(line));
}

} // namespace

void add_trims(Making& making) {
    for (const TrimRow& row : kTrims) add_trim(making, row);
}

} // namespace undersheet::job
