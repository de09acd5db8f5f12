// What it all comes to: materials, labour, costs of the job, overhead, profit, VAT.
#include "job/money.h"
#include "job/takeoff_making.h"

#include "base/text.h"

namespace undersheet::job {
namespace {

// The build-up while it goes on: the sum so far, or why there is none.
class BuildUp {
public:
    explicit BuildUp(Making& making) : making_(making), prices_(*making.prices) {}

    void make() {
        materials();
        labour();
        for (const method::Cost& cost : prices_.costs) put(cost.name, cost.says, {}, cost.price);
        if (!missing_.empty()) return no_total();
        if (prices_.overhead_pct) share("overhead", *prices_.overhead_pct);
        if (prices_.profit_pct) share("profit", *prices_.profit_pct);
        put_sum("net", "net", {"the lines above"});
        vat();
    }

private:
    void put(const std::string& name, const std::string& title, Working working, std::int64_t price) {
        put_line(name, title, std::move(working), price);
        sum_ += price;
    }

    void put_sum(const std::string& name, const std::string& title, Working working) {
        put_line(name, title, std::move(working), sum_);
    }

    void put_line(const std::string& name, const std::string& title, Working working, std::int64_t price) {
        making_.made.lines.push_back({.section = "price",
                                      .name = name,
                                      .title = title,
                                      .amount = {},
                                      .unit = {},
                                      .working = std::move(working),
                                      .price = price});
    }

    void materials() {
        std::int64_t all = 0;
        for (const TakeOffLine* line : making_.made.of("materials")) {
            if (line->price)
                all += *line->price;
            else
                missing_.push_back(item_worded(*line));
        }
        if (missing_.empty())
            put("materials", "materials", {"every line of the order, each to the unit"}, all);
    }

    void labour() {
        const TakeOffLine* hours = making_.made.line("hours");
        const auto cost = prices_.labour_h ? cost_of(hours->amount, *prices_.labour_h)
                                           : Result<std::int64_t>(Fault{Code::prices_malformed, {}, {}, {}});
        if (!cost) {
            missing_.emplace_back("an hour's work");
            return;
        }
        put("labour", "labour",
            {in_words(hours->amount.value(), "h") + " x " + prices_.money(*prices_.labour_h)}, *cost);
    }

    void share(const std::string& name, const Decimal& pct) {
        const auto part = share_of(sum_, pct);
        if (!part) {
            missing_.emplace_back(name);
            return;
        }
        put(name, name, {pct.text() + " % of " + prices_.money(sum_)}, *part);
    }

    void vat() {
        if (!prices_.vat) {
            making_.made.remarks.emplace_back("no VAT: the price list chooses no rate");
            return;
        }
        const auto part = share_of(sum_, prices_.vat->pct);
        if (!part) return;
        put("vat", "VAT",
            {prices_.vat->rate + " rate, " + prices_.vat->pct.text() + " % of " + prices_.money(sum_) + ": " +
             prices_.vat->reason},
            *part);
        put_sum("total", "total", {"net and VAT"});
    }

    void no_total() {
        making_.made.remarks.push_back(
            worded("no total: no price for {items}", {{"items", worded_list(missing_)}}));
    }

    Making& making_;
    const method::PriceList& prices_;
    std::int64_t sum_ = 0;
    std::vector<Worded> missing_;
};

} // namespace

void add_price(Making& making) {
    if (making.prices == nullptr) return;
    making.made.currency = making.prices->currency;
    BuildUp(making).make();
}

} // namespace undersheet::job
