#include "trade/heads.h"

#include "trade/field_check.h"
#include "trade/sample.h"

namespace undersheet::trade {
namespace {

constexpr int kConfidencePlaces = 6;
constexpr int kAllowPlaces = 9;

std::int64_t power_of_ten(int exponent) {
    std::int64_t power = 1;
    for (int i = 0; i < exponent; ++i) power *= 10;
    return power;
}

// The smallest number in [low, high] for which `holds`, given that it holds at `high` and from some number
// on.
template <class Claim>
std::int64_t first_that(std::int64_t low, std::int64_t high, Claim holds) {
    while (low < high) {
        const std::int64_t middle = low + (high - low) / 2;
        if (holds(middle))
            high = middle;
        else
            low = middle + 1;
    }
    return low;
}

std::optional<Fault> wrong_count(const char* field, std::int64_t found, std::int64_t least,
                                 std::int64_t most) {
    if (found >= least && found <= most) return std::nullopt;
    return impossible(field, std::to_string(found) + " heads cannot be",
                      "it must be from " + std::to_string(least) + " to " + std::to_string(most));
}

std::optional<Fault> wrong_confidence(const Decimal& pct) {
    if (Decimal() < pct && pct < Decimal::of(100) && pct.places() <= kConfidencePlaces) return std::nullopt;
    return impossible("confidence_pct", pct.text() + " % cannot be",
                      "give more than 0 and less than 100, usually 95");
}

std::optional<Fault> wrong_allowance(const Decimal& pct) {
    const bool fits = !(pct < Decimal()) && !(Decimal::of(100) < pct) && pct.places() <= kAllowPlaces;
    if (fits) return std::nullopt;
    return impossible("allow_pct", pct.text() + " % cannot be", "give 0 to 100 with at most nine places");
}

std::optional<Fault> wrong_field(const HeadsInput& in) {
    if (auto wrong = wrong_count("total", in.total, 1, kMostInLot)) return wrong;
    if (auto wrong = wrong_count("checked", in.checked, 1, in.total)) return wrong;
    if (auto wrong = wrong_count("proud", in.proud, 0, in.checked)) return wrong;
    if (auto wrong = wrong_confidence(in.confidence_pct)) return wrong;
    return in.allow_pct ? wrong_allowance(*in.allow_pct) : std::nullopt;
}

// 1 - confidence, exactly: 95 % gives 5 parts of 100, 99.5 % gives 5 of 1000.
Share doubt_left(const Decimal& confidence_pct) {
    const std::int64_t of = 100 * power_of_ten(confidence_pct.places());
    return {static_cast<std::uint32_t>(of - confidence_pct.digits()), static_cast<std::uint32_t>(of)};
}

std::int64_t allowed_heads(std::int64_t total, const Decimal& allow_pct) {
    return allow_pct.digits() * total / (100 * power_of_ten(allow_pct.places()));
}

// More proud heads make a good sample less likely, so the first number that is ruled out follows the last
// that is not.
std::int64_t most_proud(const HeadsInput& in, Share doubt) {
    const std::int64_t all_unseen_proud = in.total - in.checked + in.proud;
    const auto ruled_out = [&](std::int64_t bad) {
        return bad > all_unseen_proud || !is_likelier({in.total, bad, in.checked, in.proud}, doubt);
    };
    return first_that(in.proud, all_unseen_proud + 1, ruled_out) - 1;
}

// The allowance holds as soon as one head more than allowed is ruled out.
std::int64_t further_heads(std::int64_t total, std::int64_t checked, std::int64_t proud, std::int64_t allowed,
                           Share doubt) {
    const auto enough = [&](std::int64_t more) {
        const std::int64_t left = total - checked - more;
        return allowed >= left + proud || !is_likelier({total, allowed + 1, checked + more, proud}, doubt);
    };
    return first_that(0, total - checked, enough);
}

double percent(std::int64_t part, std::int64_t whole) {
    return 100 * static_cast<double>(part) / static_cast<double>(whole);
}

} // namespace

Result<Heads> heads(const HeadsInput& in) {
    if (const auto wrong = wrong_field(in)) return *wrong;
    const Share doubt = doubt_left(in.confidence_pct);
    Heads out;
    out.found_pct = percent(in.proud, in.checked);
    out.at_most = most_proud(in, doubt);
    out.at_most_pct = percent(out.at_most, in.total);
    if (!in.allow_pct) return out;
    const std::int64_t allowed = allowed_heads(in.total, *in.allow_pct);
    if (in.proud <= allowed) out.check_more = further_heads(in.total, in.checked, in.proud, allowed, doubt);
    return out;
}

Result<std::int64_t> heads_to_check(std::int64_t total, const Decimal& allow_pct,
                                    const Decimal& confidence_pct) {
    if (const auto wrong = wrong_count("total", total, 1, kMostInLot)) return *wrong;
    if (const auto wrong = wrong_allowance(allow_pct)) return *wrong;
    if (const auto wrong = wrong_confidence(confidence_pct)) return *wrong;
    return further_heads(total, 0, 0, allowed_heads(total, allow_pct), doubt_left(confidence_pct));
}

} // namespace undersheet::trade
