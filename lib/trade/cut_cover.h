// A cover in fractions: how much of each column to take so that every row has what it wants, for the least cost.
//
// Promises: after each step every row is covered and the cost has not risen. Each row's worth is what one more of it would cost.
//   Rounded like any sum of doubles: what is concluded from the worths is to be checked in whole numbers.
// Comes from: the revised simplex method with the inverse kept in full, docs/formulas.md#cuts.
// Does not: look for columns; whoever has one that is worth more than it costs brings it.
// Threads: plain values.
#pragma once

#include <vector>

namespace undersheet::trade {

class Cover {
public:
    // Begins with one column for each row that holds one of that row and nothing else.
    Cover(std::vector<double> wanted, std::vector<double> costs);

    [[nodiscard]] double cost() const;
    [[nodiscard]] const std::vector<double>& worths() const { return worths_; }
    // True as long as a row is worth less than nothing: it has too much, and now it may have.
    bool let_spare();
    void take(const std::vector<double>& column, double cost); // a column worth more than its cost

private:
    void settle_worths();

    std::vector<std::vector<double>> inverse_; // of the columns in use
    std::vector<double> amounts_;              // of the columns in use
    std::vector<double> costs_;
    std::vector<double> worths_;
};

} // namespace undersheet::trade
