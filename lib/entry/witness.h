// What stands outside an entry: who else knew of it, and the receipt that somebody else can hold.
//
// Nothing within one device's book can show that its newest entries were taken away. An entry is witnessed when another
// device wrote on top of it, or when a receipt names it or something that stands on it.
// Promises: a receipt made from the same entries is the same on every device and for ever, whatever is written later.
// Does not: say whether a key belongs to anybody.
#pragma once

#include "entry/causality.h"

namespace undersheet::entry {

// "undersheet.receipt.1 <entry, 64 digits> <digest, 64 digits>": the digest is that of the entry and its whole past, in order.
struct Receipt {
    Hash entry = {};
    Hash digest = {};
};

[[nodiscard]] Receipt receipt_of(const std::vector<Entry>& entries, const Causality& causality,
                                 std::size_t entry);
[[nodiscard]] std::string receipt_text(const Receipt& receipt);
[[nodiscard]] Result<Receipt> parse_receipt(std::string_view text);

// The entries of other devices around one: the last it stands on, the first that stands on it.
struct Bracket {
    std::optional<std::size_t> after = {};
    std::optional<std::size_t> before = {};
};
[[nodiscard]] Bracket bracket_of(const std::vector<Entry>& entries, const Causality& causality,
                                 std::size_t entry);

// How many entries neither another device nor one of the receipts has witnessed.
[[nodiscard]] std::size_t count_unwitnessed(const std::vector<Entry>& entries, const Causality& causality,
                                            const std::vector<Receipt>& receipts);

} // namespace undersheet::entry
