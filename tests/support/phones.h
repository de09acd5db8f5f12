// Several phones on one job that write apart and meet now and then. No book, no signatures: for tests of judgement.
#pragma once

#include "tests/support/site.h"

#include <algorithm>
#include <deque>
#include <set>

namespace undersheet::test {

class Phones {
public:
    Phones(std::size_t count, const Site& begun) : phones_(count) {
        for (const auto& entry : begun.entries()) {
            all_.push_back(entry);
            for (Phone& phone : phones_) phone.learn(all_.size() - 1);
        }
        for (std::size_t i = 0; i < count; ++i) phones_[i].device = "phone" + std::to_string(i);
    }

    // What the phone writes now, knowing what it knows. "now" is HH:MM of the phone's clock.
    const entry::Entry& record(std::size_t phone, const std::string& kind, const std::string& now,
                               const std::string& data = "{}", const std::string& place = {},
                               const std::string& part = {}, const std::string& by = "ip") {
        entry::Entry made;
        made.kind = kind;
        made.job = "job";
        made.author = by;
        made.device = phones_[phone].device;
        made.when = made.clock = time(now, phones_[phone].years_wrong);
        made.part = part;
        made.data = *entry::read_json(data);
        made.place = *entry::parse_place(place);
        stand(made, phones_[phone]);
        made.id = std::to_string(all_.size()); // copies of a phone may write the same in the same minute
        made.hash = entry::sha256(made.id + " " + kind + now + data + place + part + by);
        all_.push_back(made);
        phones_[phone].learn(all_.size() - 1);
        return all_.back();
    }
    // Each takes what the other has, behind what it has itself.
    void meet(std::size_t a, std::size_t b) {
        const auto told_by_a = phones_[a].known;
        for (const std::size_t entry : phones_[b].known) phones_[a].learn(entry);
        for (const std::size_t entry : told_by_a) phones_[b].learn(entry);
    }
    // From here on another phone writes under this one's name, knowing what it knew at this moment.
    std::size_t copy_of(std::size_t phone) {
        phones_.push_back(Phone(phones_[phone]));
        return phones_.size() - 1;
    }
    void set_clock_wrong(std::size_t phone, int years) { phones_[phone].years_wrong = years; }

    [[nodiscard]] std::size_t count() const { return phones_.size(); }
    // In the order in which the phone came to know them.
    [[nodiscard]] std::vector<entry::Entry> known_to(std::size_t phone) const {
        std::vector<entry::Entry> known;
        for (const std::size_t at : phones_[phone].known) known.push_back(all_[at]);
        return known;
    }
    [[nodiscard]] bool know_the_same(std::size_t a, std::size_t b) const {
        return phones_[a].knows == phones_[b].knows;
    }
    [[nodiscard]] job::Job fold(std::size_t phone, const std::string& now = "20:00") const {
        return fold_at(phone, time(now, 0));
    }
    // As a phone does that is asked for no time: at the latest anybody claims, however wrong that clock is.
    [[nodiscard]] job::Job fold_latest(std::size_t phone) const {
        entry::Time latest = time("20:00", 0);
        for (const std::size_t at : phones_[phone].known) {
            if (all_[at].when.unix_s > latest.unix_s) latest = all_[at].when;
        }
        return fold_at(phone, latest);
    }

private:
    struct Phone {
        std::string device = {};
        int years_wrong = 0;
        std::vector<std::size_t> known = {};
        std::set<std::size_t> knows = {};

        void learn(std::size_t entry) {
            if (knows.insert(entry).second) known.push_back(entry);
        }
    };

    static entry::Time time(const std::string& now, int years_wrong) {
        return *entry::parse_time(std::to_string(2026 + years_wrong) + "-06-11T" + now + ":00+01:00");
    }
    [[nodiscard]] job::Job fold_at(std::size_t phone, const entry::Time& as_of) const {
        return *job::fold(known_to(phone), default_method(), default_kinds(), as_of);
    }

    // The entries that the phone has and no later one of the same device stands on, by their hashes.
    [[nodiscard]] std::vector<const entry::Entry*> heads_of(const Phone& phone) const {
        std::set<entry::Hash> followed;
        for (const std::size_t at : phone.known) {
            if (all_[at].prev) followed.insert(*all_[at].prev);
        }
        std::vector<const entry::Entry*> heads;
        for (const std::size_t at : phone.known) {
            if (!followed.contains(all_[at].hash)) heads.push_back(&all_[at]);
        }
        std::sort(heads.begin(), heads.end(), [](const auto* a, const auto* b) { return a->hash < b->hash; });
        return heads;
    }
    void stand(entry::Entry& made, const Phone& phone) const {
        for (const entry::Entry* head : heads_of(phone)) {
            made.lam = std::max(made.lam, head->lam);
            const bool is_longer = head->device == made.device && head->seq > made.seq;
            if (is_longer && made.prev) made.seen.push_back(*made.prev);
            if (is_longer) {
                made.prev = head->hash;
                made.seq = head->seq;
            } else {
                made.seen.push_back(head->hash);
            }
        }
        ++made.lam;
        ++made.seq;
    }

    std::deque<entry::Entry> all_ = {}; // stays where it is: record() hands out references
    std::vector<Phone> phones_;
};

// A roof with one gutter edge, its deck done and to be signed.
inline Site deck_done() {
    Site site;
    site.opened();
    site.record("edge", "08:01", R"({"kind":"gutter"})", "AB");
    site.record("begin", "08:02", "{}", "", "deck");
    site.record("finish", "08:03", "{}", "", "deck");
    return site;
}

inline job::State state(const job::Job& job, const std::string& part) { return job.part(part)->state; }

// The data of settling an item.
inline std::string keep(const entry::Entry& side, const std::string& item) {
    return R"({"item":")" + item + R"(","keep":")" + entry::hash_text(side.hash) +
           R"(","why":"we looked again"})";
}

} // namespace undersheet::test
