// Who knew what: which entries of one job lie in the past of another.
//
// An entry's past is what it names as `prev` and `seen`, and their pasts. Two entries of which neither lies in the other's
// past were written apart: their writers did not know of each other.
// Promises: an answer takes a look at two numbers, however long the job is.
// Does not: check anything. What an entry names and is not there is left out; order.h says that it is missing.
// Source: C. J. Fidge and F. Mattern, vector time, 1988 (from memory); one count for each unbroken run of a device.
#pragma once

#include "entry/entry.h"

#include <unordered_map>

namespace undersheet::entry {

class Causality {
public:
    // Sorted by comes_before. Entries are spoken of by their place in that list.
    explicit Causality(const std::vector<Entry>& entries);

    [[nodiscard]] std::size_t size() const { return at_.size(); }
    [[nodiscard]] bool knew(std::size_t later, std::size_t earlier) const; // true of an entry and itself
    [[nodiscard]] bool apart(std::size_t a, std::size_t b) const { return !knew(a, b) && !knew(b, a); }
    // Everything was written by one device, one entry behind the other.
    [[nodiscard]] bool is_one_run() const { return runs_ <= 1; }
    // What the entry stands on at once: those named in prev and seen that lie in the past of no other of them.
    [[nodiscard]] const std::vector<std::size_t>& parents(std::size_t entry) const { return parents_[entry]; }
    // Those that lie in no other's past.
    [[nodiscard]] std::vector<std::size_t> tips() const;
    [[nodiscard]] std::optional<std::size_t> find(const Hash& hash) const;

private:
    struct Hasher {
        std::size_t operator()(const Hash& hash) const;
    };
    struct At {
        std::size_t run = 0; // a device's entries, one behind the other, until it was copied
        std::uint32_t count = 0;
    };
    void place(const std::vector<Entry>& entries, std::size_t entry);
    [[nodiscard]] std::vector<std::size_t> named(const Entry& entry) const;
    void keep_parents(std::size_t entry, const std::vector<std::size_t>& named);
    [[nodiscard]] At stand_behind(std::optional<std::size_t> before);

    std::unordered_map<Hash, std::size_t, Hasher> index_ = {};
    std::vector<At> at_ = {};
    std::vector<bool> is_followed_ = {};                 // by another entry of the same run
    std::vector<std::vector<std::uint32_t>> known_ = {}; // of each run, how many
    std::vector<std::vector<std::size_t>> parents_ = {};
    std::size_t runs_ = 0;
};

} // namespace undersheet::entry
