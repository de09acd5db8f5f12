#include "entry/witness.h"

#include "base/text.h"

#include <algorithm>

namespace undersheet::entry {
namespace {

constexpr std::string_view kWitnessForm = "undersheet.receipt.1";
constexpr std::size_t kHashDigits = 2 * std::tuple_size_v<Hash>;

Fault witness_malformed(std::string what) {
    return {Code::body_malformed, std::move(what), "receipt",
            "it reads: undersheet.receipt.1, 64 digits, 64 digits"};
}

} // namespace

Receipt receipt_of(const std::vector<Entry>& entries, const Causality& causality, std::size_t entry) {
    std::vector<Hash> past;
    for (std::size_t i = 0; i <= entry; ++i) {
        if (causality.knew(entry, i)) past.push_back(entries[i].hash);
    }
    return {entries[entry].hash, digest_of(past)};
}

std::string receipt_text(const Receipt& receipt) {
    return std::string(kWitnessForm) + " " + hash_text(receipt.entry) + " " + hash_text(receipt.digest);
}

Result<Receipt> parse_receipt(std::string_view text) {
    std::vector<std::string> pieces;
    for (auto& piece : split(replaced(std::string(trimmed(text)), "\n", " "), ' ')) {
        if (!piece.empty()) pieces.push_back(std::move(piece));
    }
    if (pieces.size() < 2 || pieces[0] != kWitnessForm) return witness_malformed("this is no receipt");
    std::string digits; // on paper they go over as many lines as it is narrow
    for (std::size_t i = 1; i < pieces.size(); ++i) digits += lower_ascii(pieces[i]);
    if (digits.size() != 2 * kHashDigits) return witness_malformed("a digit of it is missing or wrong");
    const auto entry = parse_hash(digits.substr(0, kHashDigits));
    const auto digest = parse_hash(digits.substr(kHashDigits));
    if (!entry || !digest) return witness_malformed("a digit of it is missing or wrong");
    return Receipt{*entry, *digest};
}

Bracket bracket_of(const std::vector<Entry>& entries, const Causality& causality, std::size_t entry) {
    Bracket bracket;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (entries[i].device == entries[entry].device) continue;
        if (causality.knew(entry, i)) bracket.after = i;
        if (!bracket.before && causality.knew(i, entry)) bracket.before = i;
    }
    return bracket;
}

// The first entry of a device that knew of another's stands on an entry of another device at once; the later ones add nothing.
std::size_t count_unwitnessed(const std::vector<Entry>& entries, const Causality& causality,
                              const std::vector<Receipt>& receipts) {
    std::vector<bool> is_witnessed(entries.size());
    const auto witness = [&](std::size_t by, bool also_own) {
        for (std::size_t i = 0; i <= by; ++i) {
            const bool is_own = entries[i].device == entries[by].device;
            if ((also_own || !is_own) && causality.knew(by, i)) is_witnessed[i] = true;
        }
    };
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const auto& parents = causality.parents(i);
        const bool meets_another = std::any_of(parents.begin(), parents.end(), [&](std::size_t parent) {
            return entries[parent].device != entries[i].device;
        });
        if (meets_another) witness(i, false);
    }
    for (const Receipt& receipt : receipts) {
        if (const auto at = causality.find(receipt.entry)) witness(*at, true);
    }
    return static_cast<std::size_t>(std::count(is_witnessed.begin(), is_witnessed.end(), false));
}

} // namespace undersheet::entry
