// A whole number of any size, for counting the ways in which a sample can fall.
//
// Promises: exact. over() is for divisions that leave no rest, which is how one binomial follows from
// another. Does not: know negative numbers or division by large numbers; nothing here needs them.
#pragma once

#include <cstdint>
#include <vector>

namespace undersheet::trade {

class BigCount {
public:
    explicit BigCount(std::uint32_t small = 0);
    static BigCount choose(std::uint32_t from, std::uint32_t count); // binomial coefficient

    BigCount& times(std::uint32_t factor);
    BigCount& over(std::uint32_t divisor); // divisor not 0, no rest
    BigCount& plus(const BigCount& other);

    friend bool operator<(const BigCount& a, const BigCount& b);
    friend bool operator==(const BigCount& a, const BigCount& b) { return a.limbs_ == b.limbs_; }

private:
    void drop_leading_zeros();
    std::vector<std::uint32_t> limbs_; // least first, no leading zero, empty for nought
};

} // namespace undersheet::trade
