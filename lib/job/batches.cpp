#include "job/batches.h"

#include "base/text.h"

#include <algorithm>
#include <set>

namespace undersheet::job {
namespace {

// Capitals, blanks and hyphens are how somebody wrote it, not which batch it is.
std::string plain(std::string_view batch) {
    std::string out = lower_ascii(batch);
    std::erase_if(out, [](char c) { return c == ' ' || c == '-' || c == '\t' || c == '\n'; });
    return out;
}

// Letters that a tired eye takes for figures.
std::string as_figures(std::string text) {
    constexpr std::pair<char, char> kAlike[] = {{'o', '0'}, {'i', '1'}, {'l', '1'},
                                                {'s', '5'}, {'b', '8'}, {'z', '2'}};
    for (char& c : text)
        for (const auto& [letter, figure] : kAlike)
            if (c == letter) c = figure;
    return text;
}

bool is_one_step_apart(const std::string& a, const std::string& b) {
    const std::string& shorter = a.size() <= b.size() ? a : b;
    const std::string& longer = a.size() <= b.size() ? b : a;
    if (longer.size() - shorter.size() > 1) return false;
    const auto [in_short, in_long] = std::mismatch(shorter.begin(), shorter.end(), longer.begin());
    const auto skip = shorter.size() == longer.size() && in_short != shorter.end() ? 1 : 0;
    return std::equal(in_short + skip, shorter.end(), in_long + (in_long == longer.end() ? 0 : 1),
                      longer.end());
}

bool is_unknown(std::string_view batch) {
    const std::string said = plain(batch);
    return said.empty() || said == "unknown" || said == "not_looked" || said == "cant_reach";
}

bool is_in_window(const entry::Entry& entry, const BatchWanted& wanted) {
    const entry::Date day = entry::date_of(entry.when);
    return (!wanted.from || !(day < *wanted.from)) && (!wanted.to || !(*wanted.to < day));
}

void add_part(BatchFound& found, const std::string& part) {
    const bool is_known = std::find(found.parts.begin(), found.parts.end(), part) != found.parts.end();
    if (!part.empty() && !is_known) found.parts.push_back(part);
}

class Sorter {
public:
    Sorter(const Job& job, const BatchWanted& wanted) : job_(job), wanted_(wanted), uses_(tin_uses(job)) {}

    BatchesOn sorted() {
        for (const Reading* tin : job_.all("tin")) take(of_tin(*tin));
        for (const Reading* sheet : job_.all("sheet")) take(of_sheet(*sheet));
        for (const Part& part : job_.parts)
            for (const Tick& tick : part.ticks) take_tick(part, tick);
        return std::move(found_);
    }

private:
    BatchFound of_tin(const Reading& tin) const {
        BatchFound found{tin.word("batch"), tin.word("product"), tin.entry, {}, {}};
        for (const TinUse& use : uses_) {
            if (use.tin != &tin) continue;
            add_part(found, use.part);
            const double amount_l = use.entry->data.number_of("amount_l", 0);
            if (amount_l > 0) found.amount_l = found.amount_l.value_or(0) + amount_l;
        }
        return found;
    }

    BatchFound of_sheet(const Reading& sheet) const {
        BatchFound found{sheet.word("batch"), "sheet", sheet.entry, {}, {}};
        for (const Part& part : job_.parts)
            if (part.stage == "field" && part.has_begun()) add_part(found, part.name);
        return found;
    }

    // A step may name a batch of which no tin was written down.
    void take_tick(const Part& part, const Tick& tick) {
        for (const NamedBatch& named : batches_named(part, tick))
            if (tins_of(job_, named).empty()) take({named.batch, named.product, tick.entry, {part.name}, {}});
    }

    void take(BatchFound found) {
        const bool is_product = wanted_.product.empty() || wanted_.product == found.product;
        if (is_unknown(found.printed)) {
            if (is_product && !found.parts.empty() && is_in_window(*found.entry, wanted_))
                found_.open.push_back(std::move(found));
            return;
        }
        switch (alike(wanted_.batch, found.printed)) {
        case Alike::same: {
            auto& where = found.parts.empty() ? found_.unused : found_.certain;
            where.push_back(std::move(found));
            break;
        }
        case Alike::nearly:
            found_.nearly.push_back(std::move(found));
            break;
        case Alike::not_at_all:
            break;
        }
    }

    const Job& job_;
    const BatchWanted& wanted_;
    std::vector<TinUse> uses_;
    BatchesOn found_ = {};
};

} // namespace

Alike alike(std::string_view asked, std::string_view printed) {
    const std::string a = plain(asked), b = plain(printed);
    if (a.empty() || b.empty()) return Alike::not_at_all;
    if (a == b) return Alike::same;
    if (as_figures(a) == as_figures(b) || is_one_step_apart(a, b)) return Alike::nearly;
    return Alike::not_at_all;
}

BatchesOn batches_on(const Job& job, const BatchWanted& wanted) { return Sorter(job, wanted).sorted(); }

void rule_out(std::vector<BatchesOn>& roofs, const BatchWanted& wanted) {
    std::set<std::string> products;
    for (const BatchesOn& roof : roofs)
        for (const auto* found : {&roof.certain, &roof.unused})
            for (const BatchFound& one : *found) products.insert(one.product);
    for (BatchesOn& roof : roofs) {
        if (!roof.certain.empty()) roof.open.clear();
        if (!wanted.product.empty() || products.empty()) continue;
        std::erase_if(roof.open, [&](const BatchFound& one) { return !products.contains(one.product); });
    }
}

} // namespace undersheet::job
