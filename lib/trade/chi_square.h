// The chi-square distribution: how large a sum of squared errors still is by chance.
//
// Promises: relative error below 1e-12 for 1 to 1000 degrees of freedom.
// Comes from: the incomplete gamma function, by its power series below the mean and its continued fraction above
//   (both in NIST's Digital Library of Mathematical Functions, 8.7 and 8.9); docs/formulas.md#chi-square.
// Does not: judge; the caller chooses the side. Both arguments are the program's own and are not refused.
#pragma once

namespace undersheet::trade {

// The share of sums that come out at or below `sum`.
[[nodiscard]] double chi_square_share(double sum, int degrees);
// The sum that a share of all sums stays at or below: 3.8415 for 0.95 and one degree of freedom.
[[nodiscard]] double chi_square_at(double share, int degrees);

} // namespace undersheet::trade
