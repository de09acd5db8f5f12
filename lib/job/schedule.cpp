#include "job/schedule.h"

namespace undersheet::job {
namespace {

std::int64_t up_to_grid(std::int64_t unix_s) { return (unix_s + kGrid_s - 1) / kGrid_s * kGrid_s; }

std::int64_t length_s(int minutes) { return up_to_grid(std::int64_t{minutes} * 60); }

bool all_suit(const Work& work, std::int64_t from_s, const Suits& suits) {
    for (std::int64_t t = from_s; t < from_s + length_s(work.minutes); t += kGrid_s) {
        if (!suits(work, t)) return false;
    }
    return true;
}

std::optional<std::vector<Slot>> in_one_go_from(const std::vector<Work>& row, std::int64_t start_s,
                                                std::int64_t until_s, const Suits& suits) {
    std::vector<Slot> slots;
    std::int64_t at = start_s;
    for (std::size_t i = 0; i < row.size(); ++i) {
        const std::int64_t end = at + length_s(row[i].minutes);
        if (end > until_s || !all_suit(row[i], at, suits)) return std::nullopt;
        slots.push_back({i, at, end});
        at = end + length_s(row[i].wait_min);
    }
    return slots;
}

} // namespace

std::vector<Slot> fit_in_order(const std::vector<Work>& row, std::int64_t from_s, std::int64_t until_s,
                               const Suits& suits) {
    std::vector<Slot> slots;
    std::int64_t at = up_to_grid(from_s);
    for (std::size_t i = 0; i < row.size(); ++i) {
        const std::int64_t length = length_s(row[i].minutes);
        while (at + length <= until_s && !all_suit(row[i], at, suits)) at += kGrid_s;
        if (at + length > until_s) break;
        slots.push_back({i, at, at + length});
        at += length + length_s(row[i].wait_min);
    }
    return slots;
}

std::optional<std::vector<Slot>> fit_in_one_go(const std::vector<Work>& row, std::int64_t from_s,
                                               std::int64_t until_s, const Suits& suits) {
    for (std::int64_t start = up_to_grid(from_s); start <= until_s; start += kGrid_s) {
        if (auto slots = in_one_go_from(row, start, until_s, suits)) return slots;
    }
    return std::nullopt;
}

} // namespace undersheet::job
