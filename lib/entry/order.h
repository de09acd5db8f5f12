// Do entries stand behind each other as they say? Sequence, forks, what is missing, and the Lamport number worked out again.
//
// Promises: every fault names the entry, its device and its number, in words. The order it trusts is the one it has just
//   recomputed, so a lam that somebody made up is found.
// Does not: look at signatures (sign.h) or at clocks. Pure functions over entries that were already read.
// Source: L. Lamport, Time, Clocks, and the Ordering of Events in a Distributed System, 1978.
#pragma once

#include "entry/entry.h"

namespace undersheet::entry {

struct ChainFault {
    enum class Sort { broken, copied }; // copied: one device's chain goes on twice, and both are kept
    Hash entry = {};
    std::string device = {};
    std::int64_t seq = 0;
    std::string what = {};
    Sort sort = Sort::broken;
};

// One job: prev, seq, seen and lam of each entry. Takes them in any order.
[[nodiscard]] std::vector<ChainFault> check_job(const std::vector<Entry>& entries);

// What ties one device's entries together across jobs.
struct DeviceLink {
    Hash hash = {};
    std::optional<Hash> dprev = {};
    std::string device = {};
    std::int64_t seq = 0;
    std::int64_t dctr = 0;
    std::string job = {};
};
[[nodiscard]] DeviceLink device_link(const Entry& entry);
// dprev and dctr over all jobs at hand: a device that was copied and wrote in different jobs has a number twice. An entry whose dprev is not at hand is a fault only for the devices in `complete`
// (those whose every job must be here: the book's own).
[[nodiscard]] std::vector<ChainFault> check_devices(std::vector<DeviceLink> links,
                                                    const std::vector<std::string>& complete);

// The entries of one job that no later entry of the same device stands on.
[[nodiscard]] std::vector<Hash> heads_of(const std::vector<Entry>& entries);

} // namespace undersheet::entry
