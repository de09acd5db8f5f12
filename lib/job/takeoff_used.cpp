// What was used, beside what was planned: litres that went out of the tins, hours of the days.
#include "base/text.h"
#include "job/takeoff_making.h"

#include <algorithm>
#include <map>

namespace undersheet::job {
namespace {

// One product while its uses are added up.
struct Sum {
    double amount = 0;
    Working working = {};
    std::size_t without_amount = 0;
};

void add_use(const Job& job, const Reading& use, std::map<std::string, Sum>& sums) {
    const std::string label = use.word("tin");
    const Reading* tin = job.tin(label);
    if (tin == nullptr) return;
    Sum& sum = sums[tin->word("product")];
    const auto amount_l = use.number("amount_l");
    if (!amount_l) {
        ++sum.without_amount;
        return;
    }
    sum.amount += *amount_l;
    sum.working.push_back(label + ": " + shortest(*amount_l, 3) + " l, " + part_words(use.part));
}

std::map<std::string, Sum> sums_of_uses(const Job& job) {
    std::map<std::string, Sum> sums;
    for (const Reading* use : job.all("use")) add_use(job, *use, sums);
    return sums;
}

Worded not_said(std::size_t count) {
    if (count == 0) return {};
    return worded(count == 1 ? "{n} use without an amount: more was used than this"
                             : "{n} uses without an amount: more was used than this",
                  {{"n", std::to_string(count)}});
}

void put_used(Making& making, const TakeOffLine& planned, const Sum& sum) {
    TakeOffUsed used{planned.name, planned.title, planned.amount, in_millionths(sum.amount), planned.unit};
    used.working = sum.working;
    used.remark = not_said(sum.without_amount);
    making.made.used.push_back(std::move(used));
}

void add_litres(Making& making) {
    for (const auto& [product, sum] : sums_of_uses(making.job)) {
        const TakeOffLine* planned = making.made.line(product);
        if (planned != nullptr && planned->unit == "l" && sum.amount > 0) put_used(making, *planned, sum);
    }
}

// A day's hours are those of each person on it.
void add_days_hours(Making& making) {
    Sum sum;
    for (const Reading* day : making.job.all("day")) {
        const auto hours_h = day->number("hours_h");
        const std::size_t people = day->data.list_of("people").size();
        if (!hours_h || people == 0) continue;
        sum.amount += *hours_h * static_cast<double>(people);
        sum.working.push_back(day->word("date") + ": " + counted(people, "person", "people") + " x " +
                              shortest(*hours_h, 2) + " h");
    }
    const TakeOffLine* planned = making.made.line("hours");
    if (planned != nullptr && sum.amount > 0) put_used(making, *planned, sum);
}

} // namespace

void add_used(Making& making) {
    add_litres(making);
    add_days_hours(making);
}

} // namespace undersheet::job
