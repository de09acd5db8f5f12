#include "trade/trims.h"

#include "trade/field_check.h"

#include <algorithm>
#include <optional>

namespace undersheet::trade {
namespace {

constexpr std::int64_t kLongestRun_mm = 1'000'000;
constexpr std::int64_t kLongestStock_mm = 100'000;

std::optional<Fault> wrong_field(const TrimRunInput& in) {
    const auto whole = [](std::int64_t mm) { return static_cast<double>(mm); };
    return FieldCheck()
        .between("run_mm", whole(in.run_mm), 1, kLongestRun_mm)
        .between("stock_mm", whole(in.stock_mm), 1, kLongestStock_mm)
        .between("joint_mm", whole(in.joint_mm), 0, whole(in.stock_mm / 2))
        .between("least_mm", whole(in.least_mm), 0, whole((in.stock_mm - in.joint_mm) / 2))
        .fault();
}

// How far along the edge one more piece reaches.
std::int64_t step_of(const TrimRunInput& in) {
    return in.is_lapped ? in.stock_mm - in.joint_mm : in.stock_mm + in.joint_mm;
}

} // namespace

Result<std::vector<std::int64_t>> trim_pieces(const TrimRunInput& in) {
    if (const auto wrong = wrong_field(in)) return *wrong;
    std::vector<std::int64_t> pieces;
    std::int64_t left_mm = in.run_mm;
    for (; left_mm > in.stock_mm; left_mm -= step_of(in)) pieces.push_back(in.stock_mm);
    // A gap can be wider than what is left; then there is less than no room for a last piece, and the one before gives it.
    const std::int64_t least_mm = std::max<std::int64_t>(1, in.least_mm);
    if (!pieces.empty() && left_mm < least_mm) {
        pieces.back() -= least_mm - left_mm;
        left_mm = least_mm;
    }
    pieces.push_back(left_mm);
    return pieces;
}

} // namespace undersheet::trade
