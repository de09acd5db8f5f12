#include "paper/offer.h"

#include "base/text.h"
#include "paper/making.h"
#include "paper/order_words.h"
#include "paper/taken_off.h"

#include <algorithm>
#include <array>

namespace undersheet::paper {
namespace {

std::string area(const Making& making, const job::TakeOff& made) {
    return making.say("m2", {{"n", making.words.number(made.areas.deck_m2, 1)}});
}

std::string metres(const Making& making, const job::TakeOffLine& line) {
    return making.say("m", {{"n", making.words.number(line.amount.value(), 1)}});
}

std::string price(const Making& making, const job::TakeOffLine& line) {
    return money_words(*line.price, *making.setting.prices, making.words);
}

void add_edges(const Making& making, const job::TakeOff& made, Listing& listing) {
    for (const auto& [line, key] : {std::pair{"wall_edges", "offer.walls"},
                                    {"gutter_edges", "offer.gutters"},
                                    {"kerb_edges", "offer.kerbs"}}) {
        const job::TakeOffLine* found = made.line(line);
        if (found != nullptr && found->amount.value() > 0)
            listing.points.emplace_back(making.say(key, {{"m", metres(making, *found)}}));
    }
}

void add_openings(const Making& making, Listing& listing) {
    for (const job::Opening& opening : making.job.roof.openings) {
        const std::string type = making.said.choice("type", opening.type);
        listing.points.emplace_back(making.say("offer.opening", {{"type", type}, {"label", opening.label}}));
    }
}

void add_work(Making& making, const job::TakeOff& made) {
    making.heading("section.what_we_do");
    Listing listing;
    listing.points.emplace_back(making.say("offer.sheet", {{"area", area(making, made)}}));
    add_edges(making, made, listing);
    add_openings(making, listing);
    listing.points.emplace_back(making.say("offer.record"));
    making.paper.add(std::move(listing));
}

void add_price(Making& making, const job::TakeOff& made) {
    making.heading("section.price");
    const method::PriceList& prices = *making.setting.prices;
    std::vector<Row> rows{{{making.say("offer.net"), price(making, *made.line("net"))}}};
    if (const job::TakeOffLine* vat = made.line("vat"); vat != nullptr)
        rows.push_back({{making.say("offer.vat", {{"pct", making.words.number(prices.vat->pct)},
                                                  {"reason", prices.vat->reason}}),
                         price(making, *vat)}});
    rows.push_back({{strong(making.say("offer.total")), strong(price(making, *made.line("total")))}});
    making.table("", {"what", "price#"}, std::move(rows));
    std::vector<std::string> included;
    for (const method::Cost& cost : prices.costs) included.push_back(cost.says);
    if (!included.empty()) making.sentence("offer.included", {{"all", making.words.listed(included)}});
}

// The customer is told of the roof. What has no place is about papers and people, but for what was looked at on the
// whole deck at once.
bool is_about_roof(const Making& making, const job::PunchRow& row) {
    constexpr std::array<std::string_view, 4> kWholeDeck{"heads", "board", "joint", "structure"};
    if (!row.place.empty()) return true;
    const job::Finding* finding = making.judgement.finding(row.number);
    const method::Rule* rule = finding == nullptr ? nullptr : making.setting.method.rule(finding->rule);
    return rule != nullptr && std::find(kWholeDeck.begin(), kWholeDeck.end(), rule->kind) != kWholeDeck.end();
}

void add_findings_to_settle(Making& making) {
    Listing listing;
    for (const job::PunchRow& row : making.punch) {
        if (row.severity == method::Severity::note || !is_about_roof(making, row)) continue;
        const std::string what = making.said.again(row.says_as);
        listing.points.emplace_back(
            row.place.empty()
                ? what
                : making.say("offer.found", {{"what", what}, {"place", making.said.place(row.place)}}));
    }
    if (listing.points.empty()) return;
    making.heading("section.settle_first");
    making.sentence("offer.settle_first");
    making.paper.add(std::move(listing));
}

void add_terms(Making& making) {
    making.heading("section.terms");
    Listing listing;
    listing.points.emplace_back(making.say("offer.weather"));
    listing.points.emplace_back(making.say("offer.unseen"));
    for (const std::string& term : making.setting.prices->terms) listing.points.emplace_back(term);
    if (const auto days = making.setting.prices->offer_days) {
        const auto today = entry::day_number(entry::date_of(making.job.as_of));
        const auto last = entry::date_from_day_number(today + *days);
        listing.points.emplace_back(making.say("offer.until", {{"date", making.words.date(last)}}));
    }
    making.paper.add(std::move(listing));
}

Fault no_total(const job::TakeOff& made) {
    std::vector<std::string> remarks;
    for (const job::Worded& remark : made.remarks) remarks.push_back(remark.text);
    return {Code::prices_malformed,
            "an offer needs a total: " + joined(remarks, "; "),
            {},
            "complete the price list; undersheet takeoff --prices FILE shows what is missing"};
}

} // namespace

Result<Document> offer(const job::Job& job, const job::Judgement& judgement, const Setting& setting) {
    const auto made = taken_off(job, setting, "offer");
    if (!made) return made.fault();
    if (made->line("total") == nullptr) return no_total(*made);
    Making making(job, judgement, setting, "offer.name");
    making.paper.foot.standing = making.say("offer.standing");
    making.paper.add(Verdict{making.say(
        "offer.verdict", {{"area", area(making, *made)}, {"total", price(making, *made->line("total"))}})});
    add_work(making, *made);
    add_price(making, *made);
    add_findings_to_settle(making);
    add_terms(making);
    making.heading("section.signatures");
    making.paper.add(Signature{.meaning = making.say("offer.accepted"), .name = ""});
    making.paper.add(Signature{.meaning = making.say("offer.for_firm"), .name = ""});
    return std::move(making.paper);
}

} // namespace undersheet::paper
