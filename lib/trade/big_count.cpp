#include "trade/big_count.h"

#include <algorithm>

namespace undersheet::trade {
namespace {

constexpr unsigned kLimbBits = 32;

std::uint32_t low_half(std::uint64_t wide) { return static_cast<std::uint32_t>(wide & 0xFFFF'FFFFU); }

} // namespace

BigCount::BigCount(std::uint32_t small) {
    if (small != 0) limbs_.push_back(small);
}

BigCount BigCount::choose(std::uint32_t from, std::uint32_t count) {
    BigCount ways(count > from ? 0 : 1);
    const std::uint32_t fewer = count > from ? 0 : std::min(count, from - count);
    for (std::uint32_t i = 0; i < fewer; ++i)
        ways.times(from - i).over(i + 1); // C(n, i+1) = C(n, i) (n-i) / (i+1)
    return ways;
}

BigCount& BigCount::times(std::uint32_t factor) {
    std::uint64_t carry = 0;
    for (auto& limb : limbs_) {
        carry += static_cast<std::uint64_t>(limb) * factor;
        limb = low_half(carry);
        carry >>= kLimbBits;
    }
    if (carry != 0) limbs_.push_back(low_half(carry));
    drop_leading_zeros();
    return *this;
}

BigCount& BigCount::over(std::uint32_t divisor) {
    std::uint64_t rest = 0;
    for (auto limb = limbs_.rbegin(); limb != limbs_.rend(); ++limb) {
        rest = (rest << kLimbBits) | *limb;
        *limb = low_half(rest / divisor);
        rest %= divisor;
    }
    drop_leading_zeros();
    return *this;
}

BigCount& BigCount::plus(const BigCount& other) {
    if (limbs_.size() < other.limbs_.size()) limbs_.resize(other.limbs_.size());
    std::uint64_t carry = 0;
    for (std::size_t i = 0; i < limbs_.size(); ++i) {
        carry += limbs_[i];
        if (i < other.limbs_.size()) carry += other.limbs_[i];
        limbs_[i] = low_half(carry);
        carry >>= kLimbBits;
    }
    if (carry != 0) limbs_.push_back(low_half(carry));
    return *this;
}

void BigCount::drop_leading_zeros() {
    while (!limbs_.empty() && limbs_.back() == 0) limbs_.pop_back();
}

bool operator<(const BigCount& a, const BigCount& b) {
    if (a.limbs_.size() != b.limbs_.size()) return a.limbs_.size() < b.limbs_.size();
    return std::lexicographical_compare(a.limbs_.rbegin(), a.limbs_.rend(), b.limbs_.rbegin(),
                                        b.limbs_.rend());
}

} // namespace undersheet::trade
