#include "paper/order.h"

#include "base/text.h"
#include "paper/bars.h"
#include "paper/making.h"
#include "paper/order_words.h"
#include "paper/taken_off.h"

namespace undersheet::paper {
namespace {

constexpr int kWeightPlaces = 1, kThicknessPlaces = 1;

void add_verdict(Making& making, const job::TakeOff& made) {
    const auto lines = made.of("materials").size();
    const job::TakeOffLine* all = made.line("materials");
    const std::string sum = all == nullptr || !all->price
                                ? making.say("order.no_sum")
                                : money_words(*all->price, *making.setting.prices, making.words);
    making.paper.add(Verdict{making.words.count("order.verdict", lines, {{"sum", sum}})});
}

void add_remarks(Making& making, const job::TakeOff& made) {
    if (made.remarks.empty()) return;
    making.heading("section.look_first");
    Listing listing;
    for (const job::Worded& remark : made.remarks) listing.points.emplace_back(making.said.again(remark));
    making.paper.add(std::move(listing));
}

Row row_of(const Making& making, const job::TakeOff& made, const job::TakeOffLine& line) {
    const std::string price =
        line.price ? money_figures(*line.price, *making.setting.prices, making.words) : "";
    Row row{{item_words(line, making.words), amount_words(line, making.words),
             packs_words(made, line, making.words), price}};
    if (!line.remark.empty()) row.beneath.emplace_back(making.said.again(line.remark));
    return row;
}

void add_lines(Making& making, const job::TakeOff& made) {
    making.heading("section.to_order");
    std::vector<Row> rows;
    for (const job::TakeOffLine* line : made.of("materials")) rows.push_back(row_of(making, made, *line));
    if (const job::TakeOffLine* all = made.line("materials"); all != nullptr && all->price)
        rows.push_back({{strong(making.say("order.sum")), "", "",
                         strong(money_figures(*all->price, *making.setting.prices, making.words))}});
    making.table(making.say("order.prices_by", {{"list", making.setting.prices->name},
                                                {"currency", making.setting.prices->currency}}),
                 {"item", "needed", "to_buy", "price#"}, std::move(rows));
}

void add_sheet(Making& making, const job::TakeOff& made) {
    const job::TakeOffLine* weight = made.line("sheet_weight");
    if (!made.sheet || weight == nullptr) return;
    making.sentence("order.weight", {{"kg", making.words.number(weight->amount.value(), kWeightPlaces)}});
    const job::Reading* recorded = making.job.latest("sheet");
    const std::string thick = recorded == nullptr ? "" : making.said.bare(*recorded, "thickness_mm");
    const std::string colour = recorded == nullptr ? "" : making.said.value(*recorded, "colour");
    const std::string usual =
        making.words.number(making.setting.method.limit("sheet_thickness_mm"), kThicknessPlaces);
    making.sentence("order.thickness", {{"mm", thick.empty() ? usual : thick}});
    if (colour.empty())
        making.sentence("order.no_colour");
    else
        making.sentence("order.colour", {{"colour", colour}});
}

std::string mm_words(const Making& making, std::int64_t mm) {
    return making.say("mm", {{"n", std::to_string(mm)}});
}

void add_trim(Making& making, const job::TrimCuts& cuts) {
    const std::string title = making.say("item." + cuts.item);
    making.paper.heading(title, 3);
    making.sentence(cuts.is_lapped ? "order.laps" : "order.gaps", {{"mm", mm_words(making, cuts.joint_mm)}});
    std::vector<Row> rows;
    for (const job::TrimRun& run : cuts.runs) {
        std::vector<std::string> pieces;
        for (const std::int64_t piece : run.pieces_mm) pieces.push_back(std::to_string(piece));
        rows.push_back({{run.edge, std::to_string(run.length_mm), joined(pieces, " + ")}});
    }
    making.table("", {"edge", "run_mm#", "pieces_mm"}, std::move(rows));
    making.paper.add(bars_drawing(cuts, title, making.words));
    if (cuts.is_best) making.sentence("order.proved");
}

void add_cuts(Making& making, const job::TakeOff& made) {
    if (made.trims.empty()) return;
    making.paper.add(PageBreak{}); // the saw list goes to another pair of hands
    making.heading("section.to_cut");
    for (const job::TrimCuts& cuts : made.trims) add_trim(making, cuts);
}

void add_delivery(Making& making, const std::string& address) {
    making.heading("section.deliver_to");
    std::vector<Fact> facts;
    const auto add = [&](std::string_view key, const std::string& value) {
        if (!value.empty()) facts.push_back({making.say(key), value});
    };
    add("head.address", address);
    add("order.access", making.job.said("site", "access_text"));
    add("order.parking", making.job.said("site", "parking"));
    making.facts(std::move(facts));
}

} // namespace

Result<Document> order(const job::Job& job, const job::Judgement& judgement, const Setting& setting) {
    const auto made = taken_off(job, setting, "order");
    if (!made) return made.fault();
    Making making(job, judgement, setting, "order.name");
    const std::string address = making.paper.head.customer_address;
    making.paper.foot.standing = making.say("order.standing");
    making.paper.head.customer.clear();
    making.paper.head.customer_address.clear();
    add_verdict(making, *made);
    add_remarks(making, *made);
    add_lines(making, *made);
    add_sheet(making, *made);
    add_delivery(making, address);
    add_cuts(making, *made);
    return std::move(making.paper);
}

} // namespace undersheet::paper
