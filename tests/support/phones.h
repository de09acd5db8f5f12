// Several phones on one job that write apart and meet now and then. No book, no signatures: for tests of judgement.
#pragma once

#include "entry/order.h"
#include "tests/support/site.h"

#include <set>

namespace undersheet::test {

class Phones {
public:
    explicit Phones(std::size_t count, const Site& begun) : known_(count), day_("2026-06-11") {
        for (const auto& entry : begun.entries()) {
            all_.push_back(entry);
            for (auto& known : known_) known.insert(known.size());
        }
    }

    // What the phone writes now, knowing what it knows. "now" is HH:MM.
    const entry::Entry& record(std::size_t phone, const std::string& kind, const std::string& now,
                               const std::string& data = "{}", const std::string& place = {},
                               const std::string& part = {}, const std::string& by = "ip") {
        entry::Entry made;
        made.kind = kind;
        made.job = "job";
        made.author = by;
        made.device = "phone" + std::to_string(phone);
        made.when = made.clock = *entry::parse_time(day_ + "T" + now + ":00+01:00");
        made.part = part;
        made.data = *entry::read_json(data);
        made.place = *entry::parse_place(place);
        stand(made, phone);
        made.hash = entry::sha256(kind + now + data + place + part + made.device + std::to_string(made.seq) +
                                  std::to_string(made.lam) + by + std::to_string(copies_));
        all_.push_back(made);
        known_[phone].insert(all_.size() - 1);
        return all_.back();
    }
    void meet(std::size_t a, std::size_t b) {
        known_[a].insert(known_[b].begin(), known_[b].end());
        known_[b] = known_[a];
    }
    // From here on another phone writes under this one's name, knowing what it knew at this moment.
    std::size_t copy_of(std::size_t phone) {
        known_.push_back(known_[phone]);
        copied_[known_.size() - 1] = phone;
        ++copies_;
        return known_.size() - 1;
    }

    [[nodiscard]] std::vector<entry::Entry> known_to(std::size_t phone) const {
        std::vector<entry::Entry> known;
        for (const std::size_t at : known_[phone]) known.push_back(all_[at]);
        return known;
    }
    [[nodiscard]] job::Job fold(std::size_t phone, const std::string& now = "20:00") const {
        return *job::fold(known_to(phone), default_method(), default_kinds(),
                          *entry::parse_time(day_ + "T" + now + ":00+01:00"));
    }

private:
    std::string name_of(std::size_t phone) const {
        const auto copied = copied_.find(phone);
        return "phone" + std::to_string(copied == copied_.end() ? phone : copied->second);
    }
    void stand(entry::Entry& made, std::size_t phone) const {
        made.device = name_of(phone);
        const auto known = known_to(phone);
        for (const auto& head : entry::heads_of(known)) {
            for (const auto& other : known) {
                if (other.hash != head) continue;
                made.lam = std::max(made.lam, other.lam);
                const bool is_longer = other.device == made.device && other.seq > made.seq;
                if (is_longer && made.prev) made.seen.push_back(*made.prev);
                if (is_longer) {
                    made.prev = head;
                    made.seq = other.seq;
                } else {
                    made.seen.push_back(head);
                }
            }
        }
        ++made.lam;
        ++made.seq;
    }

    std::vector<entry::Entry> all_ = {};
    std::vector<std::set<std::size_t>> known_;
    std::map<std::size_t, std::size_t> copied_ = {};
    std::string day_;
    int copies_ = 0;
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
