// What is ordered and cut: sheet, packs, cuts, trims, movement.
#include "desk/reckon_topics.h"

#include "desk/reckon_places.h"
#include "trade/cuts.h"
#include "trade/movement.h"
#include "trade/packs.h"
#include "trade/sheet.h"
#include "trade/trims.h"

namespace undersheet::desk {
namespace {

using entry::List;
using entry::Value;

trade::SheetInput sheet_input(const Value& in) {
    trade::SheetInput given;
    given.outline = polygon_of(in);
    for (const Value& edge : in.list_of("edges")) given.extra_mm.push_back(number(edge, "extra_mm"));
    for (const Value& width : in.list_of("rolls_m")) given.rolls_m.push_back(width.number()->value());
    given.cut_to_m = number(in, "cut_to_m");
    given.thickness_mm = number(in, "thickness_mm");
    given.density_kg_m3 = number(in, "density_kg_m3");
    return given;
}

Result<Value> sheet(const Value& in) {
    const auto found = trade::sheet(sheet_input(in));
    if (!found) return found.fault();
    Value out;
    put(out, "roll_width_m", found->roll_width_m);
    put(out, "length_m", found->length_m);
    put(out, "turn_deg", found->turn_deg);
    put(out, "area_m2", found->area_m2);
    put(out, "waste_pct", found->waste_pct);
    put(out, "weight_kg", found->weight_kg);
    put(out, "needs_across_m", found->needs_across_m);
    put(out, "needs_along_m", found->needs_along_m);
    return out;
}

Result<Value> packs(const Value& in) {
    trade::PacksInput given{.need = exact(in, "need")};
    for (const Value& pack : in.list_of("packs"))
        given.packs.push_back({.size = exact(pack, "size"), .price = count(pack, "price")});
    const auto found = trade::packs(given);
    if (!found) return found.fault();
    Value mix = List{};
    for (const trade::PackCount& row : found->mix)
        mix.push(Value().set("size", row.size).set("count", row.count));
    return Value()
        .set("mix", std::move(mix))
        .set("total", found->total)
        .set("spare", found->spare)
        .set("price", found->price);
}

std::vector<Decimal> exact_list(const Value& in, std::string_view key) {
    std::vector<Decimal> all;
    for (const Value& each : in.list_of(key)) all.push_back(*each.number());
    return all;
}

Value list_of_lengths(const std::vector<Decimal>& all) {
    Value list = List{};
    for (const Decimal& each : all) list.push(each);
    return list;
}

Result<Value> cuts(const Value& in) {
    trade::CutsInput given{exact_list(in, "pieces_mm"), exact_list(in, "stock_mm"), exact(in, "kerf_mm"), {}};
    for (const Decimal& price : exact_list(in, "prices")) given.prices.push_back(price.whole());
    const auto found = trade::cuts(given);
    if (!found) return found.fault();
    Value bars = List{};
    for (const trade::Bar& bar : found->bars)
        bars.push(Value()
                      .set("stock_mm", bar.stock_mm)
                      .set("pieces_mm", list_of_lengths(bar.pieces_mm))
                      .set("offcut_mm", bar.offcut_mm));
    Value out;
    out.set("bars", std::move(bars))
        .set("bars_used", static_cast<std::int64_t>(found->bars.size()))
        .set("bought_mm", found->bought_mm)
        .set("waste_mm", found->waste_mm)
        .set("best", found->best);
    if (given.prices.empty()) return out.set("at_least_mm", found->at_least_mm);
    return out.set("price", found->price).set("at_least_price", found->at_least_price);
}

Result<Value> trims(const Value& in) {
    const auto found = trade::trim_pieces({.run_mm = count(in, "run_mm"),
                                           .stock_mm = count(in, "stock_mm"),
                                           .joint_mm = count(in, "joint_mm"),
                                           .is_lapped = in.text_of("joint") == "lap",
                                           .least_mm = count(in, "least_mm")});
    if (!found) return found.fault();
    Value pieces = List{};
    for (const std::int64_t piece : *found) pieces.push(piece);
    const auto joints = static_cast<std::int64_t>(found->size()) - 1;
    return Value().set("pieces_mm", std::move(pieces)).set("joints", joints);
}

Result<Value> movement(const Value& in) {
    const auto found = trade::movement({.length_mm = number(in, "length_mm"),
                                        .coefficient_per_k = number(in, "coefficient_per_k"),
                                        .from_c = number(in, "from_c"),
                                        .to_c = number(in, "to_c")});
    if (!found) return found.fault();
    Value out;
    put(out, "movement_mm", found->movement_mm);
    return out;
}

} // namespace

std::vector<Topic> order_topics() {
    return {{"sheet", sheet}, {"packs", packs}, {"cuts", cuts}, {"trims", trims}, {"movement", movement}};
}

} // namespace undersheet::desk
