// Is the record whole, and what is there to be said about it that is no fault: clocks, witnesses, receipts.
#include "base/text.h"
#include "desk/desk.h"
#include "desk/erased_apart.h"
#include "desk/journals.h"
#include "desk/own.h"
#include "desk/pins.h"
#include "entry/clocks.h"
#include "entry/order.h"
#include "entry/witness.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

using entry::Entry;

VerifyFault fault_of(const Entry& entry, std::string what) {
    return {entry::hash_text(entry.hash), entry.device, std::move(what), entry.seq};
}

bool is_signature(const Entry& entry) { return entry.kind == "sign" || entry.kind == "confirm"; }

Result<std::vector<entry::Receipt>> receipts_of(const Lines& texts) {
    std::vector<entry::Receipt> receipts;
    for (const auto& text : texts) {
        auto receipt = entry::parse_receipt(text);
        if (!receipt) return receipt.fault();
        receipts.push_back(*receipt);
    }
    return receipts;
}

entry::ClockLimits clock_limits() {
    const auto& method = own_method();
    return {method.limit("clock_step_s"), method.limit("clock_cause_s"), method.limit("clock_ahead_s")};
}

// One journal at a time: everything that can be said of it besides hashes and signatures.
class Looker {
public:
    Looker(Verified& into, const std::vector<entry::Receipt>& receipts, std::int64_t now)
        : into_(into), receipts_(receipts), met_(receipts.size()), now_(now) {}

    void look(const Journal& journal) {
        const entry::Causality causality(journal.entries);
        for (const auto& doubt : entry::clock_doubts(journal.entries, causality, clock_limits(), now_))
            into_.doubts.push_back(fault_of(journal.entries[doubt.entry], doubt.what));
        for (const auto& again : recorded_apart_from_erasing(journal.entries, causality))
            into_.doubts.push_back(fault_of(journal.entries[again.entry], again.says));
        for (std::size_t i = 0; i < journal.entries.size(); ++i) {
            if (is_signature(journal.entries[i])) into_.signatures.push_back(line_of(journal, causality, i));
        }
        for (std::size_t i = 0; i < receipts_.size(); ++i) hold_against(journal, causality, i);
        into_.clock_by_hand +=
            static_cast<std::size_t>(std::count_if(journal.entries.begin(), journal.entries.end(),
                                                   [](const Entry& entry) { return entry.simulated; }));
        into_.unwitnessed += entry::count_unwitnessed(journal.entries, causality, receipts_);
    }

    void finish() {
        for (std::size_t i = 0; i < receipts_.size(); ++i) {
            if (met_[i]) continue;
            into_.faults.push_back({entry::hash_text(receipts_[i].entry), "",
                                    "a receipt names this entry, and it is missing or was changed", 0});
        }
        into_.ok = into_.faults.empty();
        into_.witnessed = into_.unwitnessed == 0;
    }

private:
    static SignatureLine line_of(const Journal& journal, const entry::Causality& causality, std::size_t at) {
        const Entry& entry = journal.entries[at];
        SignatureLine line = {journal.ref,
                              entry.part,
                              entry.kind,
                              entry::hash_text(entry.hash),
                              entry.device,
                              entry.when.text,
                              {},
                              {},
                              {},
                              {},
                              {}};
        if (entry.own_key) line.own_key = hex(*entry.own_key);
        const auto bracket = entry::bracket_of(journal.entries, causality, at);
        if (bracket.after) {
            line.after = entry::hash_text(journal.entries[*bracket.after].hash);
            line.after_when = journal.entries[*bracket.after].clock.text;
        }
        if (bracket.before) {
            line.before = entry::hash_text(journal.entries[*bracket.before].hash);
            line.before_when = journal.entries[*bracket.before].clock.text;
        }
        return line;
    }

    void hold_against(const Journal& journal, const entry::Causality& causality, std::size_t receipt) {
        const auto at = causality.find(receipts_[receipt].entry);
        if (!at) return;
        met_[receipt] = true;
        if (entry::receipt_of(journal.entries, causality, *at).digest == receipts_[receipt].digest) {
            ++into_.receipts;
            return;
        }
        into_.faults.push_back(
            fault_of(journal.entries[*at],
                     "a receipt was given for it, and what stood before it is not what it was then"));
    }

    Verified& into_;
    const std::vector<entry::Receipt>& receipts_;
    std::vector<bool> met_;
    std::int64_t now_;
};

// By journal, in the order in which digests are made.
std::vector<Journal> journals_of(std::vector<Entry> entries) {
    std::vector<Journal> journals;
    for (Entry& entry : entries) {
        if (journals.empty() || journals.back().job != entry.job) journals.push_back({entry.job, {}, {}});
        if (entry.kind == "open") journals.back().ref = entry.data.text_of("ref");
        journals.back().entries.push_back(std::move(entry));
    }
    return journals;
}

Verified as_checked(const book::Verified& checked) {
    Verified verified;
    verified.entries = as_size(checked.entries);
    verified.missing_personal = as_size(checked.missing_personal);
    verified.digest = entry::hash_text(checked.digest);
    for (const auto& fault : checked.faults)
        verified.faults.push_back({entry::hash_text(fault.entry), fault.device, fault.what, fault.seq});
    return verified;
}

Result<Verified> verify_handed(const std::string& file, const Lines& texts) {
    auto receipts = receipts_of(texts);
    if (!receipts) return receipts.fault();
    auto looked_at = book::Book::look_at_handed(file);
    if (!looked_at && looked_at.fault().code != Code::not_handed) return looked_at.fault();
    if (!looked_at) {
        Verified nothing;
        nothing.faults.push_back({"", "", looked_at.fault().detail, 0});
        return nothing;
    }
    Verified verified = as_checked(looked_at->verified);
    Looker looker(verified, *receipts, INT64_MAX / 2);
    for (const Journal& journal : journals_of(std::move(looked_at->entries))) looker.look(journal);
    looker.finish();
    return verified;
}

} // namespace

Result<Verified> Desk::verify(const Lines& texts) {
    auto book = session_->reader();
    if (!book) return book.fault();
    auto receipts = receipts_of(texts);
    if (!receipts) return receipts.fault();
    auto checked = (*book)->verify();
    if (!checked) return checked.fault();
    Verified verified = as_checked(*checked);
    Looker looker(verified, *receipts, session_->world->clock().unix_s);
    auto journals = all_journals(**book);
    if (journals) {
        for (const Journal& journal : *journals) looker.look(journal);
        for (auto& doubt : own_hand_doubts(*journals)) verified.doubts.push_back(std::move(doubt));
    } else if (verified.faults.empty()) {
        return journals.fault();
    }
    looker.finish();
    return verified;
}

Result<Verified> Desk::verify_file(const std::string& file, const Lines& receipts) {
    if (book::Book::is_handed(file)) return verify_handed(file, receipts);
    auto desk = open(BookAt{file, {}});
    if (!desk) return desk.fault();
    return desk->verify(receipts);
}

} // namespace undersheet::desk
