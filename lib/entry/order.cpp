#include "entry/order.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace undersheet::entry {
namespace {

using Index = std::map<Hash, const Entry*>;

const Entry* find(const Index& index, const Hash& hash) {
    const auto at = index.find(hash);
    return at == index.end() ? nullptr : at->second;
}

// Collects what is wrong with one entry at a time.
class JobCheck {
public:
    explicit JobCheck(const std::vector<Entry>& entries) {
        for (const Entry& entry : entries) index_.emplace(entry.hash, &entry);
    }

    std::vector<ChainFault> run(const std::vector<Entry>& entries) {
        for (const Entry& entry : entries) {
            check_before(entry);
            check_number_is_single(entry);
            check_lam(entry);
        }
        return std::move(faults_);
    }

private:
    void add(const Entry& entry, std::string what) {
        faults_.push_back({entry.hash, entry.device, entry.seq, std::move(what)});
    }

    void check_before(const Entry& entry) {
        if (!entry.prev) return;
        const Entry* before = find(index_, *entry.prev);
        if (before == nullptr) {
            add(entry, "the chain is broken: number " + std::to_string(entry.seq - 1) +
                           " before it is missing or was changed");
        } else if (before->device != entry.device || before->seq + 1 != entry.seq ||
                   before->job != entry.job) {
            add(entry,
                "the chain is broken: what stands before it is not number " + std::to_string(entry.seq - 1));
        }
    }

    void check_number_is_single(const Entry& entry) {
        if (!numbers_.emplace(entry.device, entry.seq).second) {
            faults_.push_back(
                {entry.hash, entry.device, entry.seq,
                 "the device was copied: there are two entries number " + std::to_string(entry.seq),
                 ChainFault::Sort::copied});
        }
    }

    void check_lam(const Entry& entry) {
        std::int64_t greatest = lam_of(entry.prev);
        for (const Hash& head : entry.seen) {
            const Entry* known = find(index_, head);
            if (known == nullptr)
                return add(entry, "it knew entry " + short_name(head) + ", which is missing or was changed");
            greatest = std::max(greatest, known->lam);
        }
        if (entry.prev && greatest == 0) return; // said already: what stands before it is missing
        if (entry.lam != greatest + 1)
            add(entry, "its lam is " + std::to_string(entry.lam) + ", not " + std::to_string(greatest + 1));
    }

    std::int64_t lam_of(const std::optional<Hash>& hash) const {
        const Entry* entry = hash ? find(index_, *hash) : nullptr;
        return entry == nullptr ? 0 : entry->lam;
    }

    Index index_ = {};
    std::set<std::pair<std::string, std::int64_t>> numbers_ = {};
    std::vector<ChainFault> faults_ = {};
};

const DeviceLink* find(const std::vector<DeviceLink>& by_hash, const Hash& hash) {
    const auto at =
        std::lower_bound(by_hash.begin(), by_hash.end(), hash,
                         [](const DeviceLink& link, const Hash& wanted) { return link.hash < wanted; });
    return at != by_hash.end() && at->hash == hash ? &*at : nullptr;
}

// What is wrong with how one entry follows the device's entry before it; empty when nothing is.
std::string wrong_link(const DeviceLink& link, const std::vector<DeviceLink>& by_hash, bool must_be_here) {
    if (!link.dprev) return {};
    const DeviceLink* before = find(by_hash, *link.dprev);
    const std::string number = std::to_string(link.dctr - 1);
    if (before == nullptr) {
        return must_be_here ? "this device's entry " + number + " of all jobs is missing or was changed"
                            : std::string();
    }
    const bool follows = before->device == link.device && before->dctr + 1 == link.dctr;
    return follows ? std::string()
                   : "what it names as this device's entry before is not entry " + number + " of all jobs";
}

// Within one job the chain itself shows it (check_job).
void add_copied(const std::vector<DeviceLink>& links, std::vector<ChainFault>& faults) {
    std::map<std::pair<std::string, std::int64_t>, const DeviceLink*> numbers;
    for (const DeviceLink& link : links) {
        const DeviceLink*& first = numbers[{link.device, link.dctr}];
        if (first == nullptr)
            first = &link;
        else if (first->job != link.job)
            faults.push_back({link.hash, link.device, link.seq,
                              "the device was copied: there are two entries number " +
                                  std::to_string(link.dctr) + " of all jobs",
                              ChainFault::Sort::copied});
    }
}

} // namespace

std::vector<ChainFault> check_job(const std::vector<Entry>& entries) {
    return JobCheck(entries).run(entries);
}

DeviceLink device_link(const Entry& entry) {
    return {entry.hash, entry.dprev, entry.device, entry.seq, entry.dctr, entry.job};
}

std::vector<ChainFault> check_devices(std::vector<DeviceLink> links,
                                      const std::vector<std::string>& complete) {
    std::sort(links.begin(), links.end(),
              [](const DeviceLink& a, const DeviceLink& b) { return a.hash < b.hash; });
    std::vector<ChainFault> faults;
    for (const DeviceLink& link : links) {
        const bool must_be_here = std::find(complete.begin(), complete.end(), link.device) != complete.end();
        const std::string what = wrong_link(link, links, must_be_here);
        if (!what.empty()) faults.push_back({link.hash, link.device, link.seq, what});
    }
    add_copied(links, faults);
    return faults;
}

std::vector<Hash> heads_of(const std::vector<Entry>& entries) {
    std::set<Hash> heads;
    for (const Entry& entry : entries) heads.insert(entry.hash);
    for (const Entry& entry : entries) {
        if (entry.prev) heads.erase(*entry.prev);
    }
    return {heads.begin(), heads.end()};
}

} // namespace undersheet::entry
