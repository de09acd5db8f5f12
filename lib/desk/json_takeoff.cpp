#include "desk/json.h"

#include "entry/json.h"

namespace undersheet::desk {
namespace {

using entry::List;
using entry::Value;

template <class Row>
Value rows_of(const std::vector<Row>& rows, Value (*written)(const Row&)) {
    Value list = List{};
    for (const auto& row : rows) list.push(written(row));
    return list;
}

Value text_value(const std::string& text) { return text; }
Value whole_value(const std::int64_t& whole) { return whole; }

// Amounts are decimals that the desk wrote itself, so they read.
Value number_value(const std::string& digits) { return *Decimal::parse(digits); }

Value allowance_value(const AllowanceLine& line) {
    return Value()
        .set("key", line.key)
        .set("value", number_value(line.value))
        .set("mark", line.mark)
        .set("source", line.source)
        .set("says", line.says);
}

Value pack_value(const PackLine& pack) {
    return Value().set("size", number_value(pack.size)).set("count", pack.count);
}

Value line_value(const TakeOffLine& line) {
    Value object;
    object.set("section", line.section).set("name", line.name).set("title", line.title);
    object.set("working", rows_of(line.working, text_value));
    object.set("allowances", rows_of(line.allowances, allowance_value));
    if (!line.unit.empty()) object.set("amount", number_value(line.amount)).set("unit", line.unit);
    if (!line.packs.empty()) object.set("packs", rows_of(line.packs, pack_value));
    if (line.has_price) object.set("price_minor", line.price_minor);
    if (!line.remark.empty()) object.set("remark", line.remark);
    return object;
}

Value run_value(const TrimRunLine& run) {
    return Value()
        .set("edge", run.edge)
        .set("length_mm", run.length_mm)
        .set("pieces_mm", rows_of(run.pieces_mm, whole_value));
}

Value bar_value(const TrimBarLine& bar) {
    return Value().set("stock_mm", bar.stock_mm).set("pieces_mm", rows_of(bar.pieces_mm, whole_value));
}

Value used_value(const UsedLine& line) {
    Value object;
    object.set("name", line.name).set("title", line.title).set("unit", line.unit);
    object.set("planned", number_value(line.planned)).set("used", number_value(line.used));
    object.set("working", rows_of(line.working, text_value));
    if (!line.remark.empty()) object.set("remark", line.remark);
    return object;
}

Value trim_value(const TrimLine& trim) {
    Value object;
    object.set("item", trim.item).set("joint", trim.joint).set("joint_mm", trim.joint_mm);
    object.set("best", trim.best).set("runs", rows_of(trim.runs, run_value));
    return object.set("bars", rows_of(trim.bars, bar_value));
}

} // namespace

std::string json_of(const TakeOff& made) {
    Value object;
    object.set("job", made.job.ref).set("as_of", made.as_of).set("lines", rows_of(made.lines, line_value));
    object.set("trims", rows_of(made.trims, trim_value)).set("used", rows_of(made.used, used_value));
    object.set("remarks", rows_of(made.remarks, text_value));
    if (!made.currency.empty()) object.set("currency", made.currency).set("price_list", made.price_list);
    return entry::write_pretty(object) + "\n";
}

} // namespace undersheet::desk
