#include "job/takeoff.h"

#include "base/text.h"
#include "desk/desk.h"
#include "desk/own.h"
#include "desk/prices.h"
#include "desk/session.h"
#include "desk/words.h"

namespace undersheet::desk {
namespace {

// A take-off with what it was made from; the lines point into the case's method.
struct Made {
    Case on;
    std::optional<method::PriceList> prices;
    job::TakeOff takeoff;
};

Result<Made> made_for(Session& session, const Asked& asked, const TakeOffBy& by) {
    auto on = take_up(session, asked);
    if (!on) return on.fault();
    Made made{*std::move(on), std::nullopt, {}};
    auto prices = given_prices(by.prices);
    if (!prices) return prices.fault();
    made.prices = *std::move(prices);
    auto takeoff = job::take_off(made.on.job, *made.on.method, made.prices ? &*made.prices : nullptr);
    if (!takeoff) return takeoff.fault();
    made.takeoff = *std::move(takeoff);
    return made;
}

// Digits that help on a scaffold: pieces whole, a litre and a metre to the hundredth, a m² too.
std::string amount_words(const Decimal& amount, const std::string& unit) {
    if (unit.empty()) return "";
    if (unit == "piece") return amount.text();
    return fixed(amount.value(), 2) + " " + (unit == "m2" ? "m²" : unit);
}

AllowanceLine allowance_line(const method::Limit& limit) {
    return {limit.key, shortest(limit.value, 6), limit.mark, limit.source, limit.says};
}

// Of pieces the count says all; of the rest the unit is named once.
std::string packs_words(const TakeOffLine& line) {
    std::vector<std::string> words;
    for (const auto& pack : line.packs) words.push_back(std::to_string(pack.count) + " x " + pack.size);
    const std::string all = joined(words, " + ");
    return all.empty() || line.unit == "piece" ? all : all + " " + line.unit;
}

TakeOffLine line_of(const Made& made, const job::TakeOffLine& line) {
    TakeOffLine out{.section = line.section, .name = line.name, .title = line.title};
    out.amount = line.unit.empty() ? "" : line.amount.text();
    out.unit = line.unit;
    out.amount_words = amount_words(line.amount, line.unit);
    for (const auto& pack : line.packs) out.packs.push_back({pack.size.text(), pack.count});
    out.packs_words = packs_words(out);
    out.has_price = line.price.has_value();
    out.price_minor = line.price.value_or(0);
    if (line.price) out.price_words = made.prices->money(*line.price);
    out.remark = line.remark.text;
    out.working = line.working;
    for (const method::Limit* limit : line.allowances) out.allowances.push_back(allowance_line(*limit));
    return out;
}

UsedLine used_line(const job::TakeOffUsed& used) {
    UsedLine line{used.name, used.title, used.planned.text(), used.used.text(), used.unit};
    line.planned_words = amount_words(used.planned, used.unit);
    line.used_words = amount_words(used.used, used.unit);
    if (used.planned.value() > 0)
        line.share_words = fixed(100 * used.used.value() / used.planned.value(), 0) + " % of it";
    line.remark = used.remark.text;
    line.working = used.working;
    return line;
}

TrimLine trim_line(const job::TrimCuts& cuts) {
    TrimLine line{.item = cuts.item,
                  .joint = cuts.is_lapped ? "lap" : "gap",
                  .joint_mm = cuts.joint_mm,
                  .best = cuts.is_best};
    for (const auto& run : cuts.runs) line.runs.push_back({run.edge, run.length_mm, run.pieces_mm});
    for (const auto& bar : cuts.bars) line.bars.push_back({bar.stock_mm, bar.pieces_mm, bar.left_mm});
    return line;
}

std::string source_words(const method::Limit& limit) {
    if (limit.mark == "M") return limit.source + " (published, quoted from memory)";
    return limit.source;
}

std::string verdict_of(const TakeOffLine& line, const std::string& currency) {
    std::vector<std::string> words;
    if (!line.amount_words.empty()) words.push_back(line.title + ", " + line.amount_words);
    if (!line.packs.empty()) words.push_back("bought as " + line.packs_words);
    if (line.has_price) words.push_back(line.price_words + " " + currency);
    if (!line.remark.empty()) words.push_back(line.remark);
    return joined(words, "; ");
}

Why why_line(const Made& made, const job::TakeOffLine& found) {
    const TakeOffLine line = line_of(made, found);
    Why why{made.on.name(), "takeoff:" + line.name, verdict_of(line, made.takeoff.currency), {}};
    why.add("Worked out", line.working);
    Lines allowances;
    for (const method::Limit* limit : found.allowances)
        allowances.push_back(limit->says + ": " + shortest(limit->value, 6) + " (" + limit->key + "; " +
                             source_words(*limit) + ")");
    why.add("Allowances of the method", allowances);
    if (made.prices) why.add("Price list", {made.prices->name});
    return why;
}

Fault no_such_line(const Made& made, const std::string& wanted) {
    std::vector<std::string> known;
    for (const auto& line : made.takeoff.lines) known.push_back(line.name);
    const std::string near = nearest_word(wanted, known);
    return {Code::no_such_finding,
            "the take-off has no line '" + wanted + "'",
            {},
            (near.empty() ? "undersheet takeoff --json lists their names" : "did you mean '" + near + "'?") +
                (made.prices ? "" : " With --prices FILE there are more: trims, pins, money.")};
}

} // namespace

std::string_view example_prices() { return own_text("prices_example.json"); }

Result<TakeOff> Desk::take_off(const Asked& asked, const TakeOffBy& by) {
    const auto made = made_for(*session_, asked, by);
    if (!made) return made.fault();
    TakeOff out{.job = made->on.name(), .as_of = made->on.moment.as_of.text};
    if (made->prices) out.price_list = made->prices->name;
    out.currency = made->takeoff.currency;
    for (const auto& line : made->takeoff.lines) out.lines.push_back(line_of(*made, line));
    for (const auto& cuts : made->takeoff.trims) out.trims.push_back(trim_line(cuts));
    for (const auto& used : made->takeoff.used) out.used.push_back(used_line(used));
    for (const auto& remark : made->takeoff.remarks) out.remarks.push_back(remark.text);
    return out;
}

Result<Why> Desk::why_take_off(const Asked& asked, const TakeOffBy& by) {
    const auto made = made_for(*session_, asked, by);
    if (!made) return made.fault();
    const job::TakeOffLine* line = made->takeoff.line(by.line);
    if (line == nullptr) return no_such_line(*made, by.line);
    return why_line(*made, *line);
}

} // namespace undersheet::desk
