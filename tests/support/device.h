// A device for tests: a world, a key made from the same seed every time, and drafts that say something.
#pragma once

#include "entry/compose.h"
#include "entry/names.h"
#include "tests/support/fixed_world.h"

namespace undersheet {

inline const std::string kJob = "0123456789abcdef0123456789abcdef";

inline entry::Seed seed_of(std::uint8_t number) {
    entry::Seed seed{};
    seed.fill(number);
    return seed;
}

inline entry::Draft air_draft(double air_c = 13) {
    entry::Draft draft;
    draft.kind = "air";
    draft.job = kJob;
    draft.when = *entry::parse_time("2026-06-11T08:05:00+01:00");
    draft.data.set("air_c", entry::Value::rounded(air_c, 1)).set("rh_pct", 66);
    return draft;
}

// Writes one entry after another in one job, as a phone would.
struct Device {
    explicit Device(std::uint8_t number) : world(number), signer(entry::signer_from(seed_of(number))) {}

    entry::Entry write(const entry::Draft& draft) {
        auto composed = entry::compose(draft, chain, world, *signer);
        if (!composed.ok()) throw std::logic_error(one_line(composed.fault()));
        chain = entry::advanced(chain, composed->entry);
        return composed->entry;
    }
    void sees(const std::vector<entry::Entry>& heads) {
        chain.seen.clear();
        for (const auto& head : heads) {
            chain.seen.push_back(head.hash);
            chain.lam = std::max(chain.lam, head.lam);
        }
    }

    FixedWorld world;
    std::unique_ptr<entry::Signer> signer;
    entry::Chain chain = {};
};

} // namespace undersheet
