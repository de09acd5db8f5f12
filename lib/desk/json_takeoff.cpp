#include "desk/json.h"

#include "desk/json_writing.h"

namespace undersheet::desk {
namespace {

using entry::Value;

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
    object.set("working", list_of(line.working));
    object.set("allowances", rows_of(line.allowances, allowance_value));
    if (!line.unit.empty()) object.set("amount", number_value(line.amount)).set("unit", line.unit);
    if (!line.packs.empty()) object.set("packs", rows_of(line.packs, pack_value));
    if (line.has_price) object.set("price_minor", line.price_minor);
    put(object, "remark", line.remark);
    return object;
}

Value lengths_of(const std::vector<std::int64_t>& lengths_mm) {
    return rows_of(lengths_mm, [](std::int64_t mm) { return Value(mm); });
}

Value run_value(const TrimRunLine& run) {
    return Value()
        .set("edge", run.edge)
        .set("length_mm", run.length_mm)
        .set("pieces_mm", lengths_of(run.pieces_mm));
}

Value bar_value(const TrimBarLine& bar) {
    return Value()
        .set("stock_mm", bar.stock_mm)
        .set("pieces_mm", lengths_of(bar.pieces_mm))
        .set("left_mm", bar.left_mm);
}

Value used_value(const UsedLine& line) {
    Value object;
    object.set("name", line.name).set("title", line.title).set("unit", line.unit);
    object.set("planned", number_value(line.planned)).set("used", number_value(line.used));
    object.set("working", list_of(line.working));
    put(object, "remark", line.remark);
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
    object.set("remarks", list_of(made.remarks));
    if (!made.currency.empty()) object.set("currency", made.currency).set("price_list", made.price_list);
    return text_of(object);
}

} // namespace undersheet::desk
