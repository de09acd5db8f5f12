// A job made up entry by entry for tests of judgement: no book, no signatures, the default method and catalogue.
//
// `record` always writes; `wish` asks refusal_of first and writes only what may go ahead, as the desk does.
#pragma once

#include "entry/json.h"
#include "job/judge.h"
#include "schema/embedded.h"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

namespace undersheet::test {

inline const method::Method& default_method() {
    static const method::Method made = [] {
        auto read = method::Method::read(schema::method_json());
        if (!read) throw std::runtime_error(one_line(read.fault()));
        return *std::move(read);
    }();
    return made;
}

inline const method::Catalogue& default_kinds() {
    static const method::Catalogue made = [] {
        auto read = method::Catalogue::read(schema::kinds_json());
        if (!read) throw std::runtime_error(one_line(read.fault()));
        return *std::move(read);
    }();
    return made;
}

class Site {
public:
    explicit Site(std::string day = "2026-06-11", const method::Method& method = default_method())
        : day_(std::move(day)), method_(&method) {}

    // The job and two people, everybody safe, on a plain rectangle 3.20 by 2.10 m with a wall at the back.
    Site& opened(const std::string& at = "08:00") {
        record("open", at, R"({"ref":"T-1","roof":"test roof"})");
        person("ip", "Isolde Pell", "IP", at);
        person("wp", "Wren Pell", "WP", at);
        return *this;
    }
    Site& person(const std::string& id, const std::string& name, const std::string& initials,
                 const std::string& at) {
        record("person", at, R"({"person":")" + id + R"(","role":"installer"})");
        entries_.back().personal = {{"name", name}, {"initials", initials}};
        entries_.back().data.set("name", entry::Value("kept apart"));
        entries_.back().data.set("initials", entry::Value("kept apart"));
        return *this;
    }

    // `data` is JSON; "now" is HH:MM on the site's day, or a whole RFC 3339 time.
    const entry::Entry& record(const std::string& kind, const std::string& now, const std::string& data,
                               const std::string& place = {}, const std::string& part = {},
                               const std::string& by = "ip") {
        entry::Entry made;
        made.kind = kind;
        made.job = "job";
        made.author = by;
        made.device = "device";
        made.when = time(now);
        made.clock = made.when;
        made.part = part;
        made.supplement = supplement_;
        made.lam = made.seq = static_cast<std::int64_t>(entries_.size()) + 1;
        auto read = entry::read_json(data);
        auto where = entry::parse_place(place);
        INFO(kind << " " << data << " at " << place);
        REQUIRE(read.ok());
        REQUIRE(where.ok());
        made.data = *read;
        made.place = *where;
        made.hash = entry::sha256(kind + now + data + place + part + std::to_string(made.lam));
        if (!entries_.empty()) made.prev = entries_.back().hash;
        entries_.push_back(made);
        return entries_.back();
    }

    // What holds it; written down only when nothing does.
    job::Refusal wish(const std::string& event, const std::string& part, const std::string& now,
                      const std::string& data = "{}", const std::string& by = "ip",
                      const std::string& place = {}) {
        const auto what = job::event_of(event);
        REQUIRE(what.has_value());
        auto read = entry::read_json(data);
        REQUIRE(read.ok());
        const auto folded = fold(now);
        const auto judged = job::judge(folded, *method_, default_kinds());
        auto refusal =
            job::refusal_of(folded, judged, *method_,
                            {.part = part, .event = *what, .by = by, .when = time(now), .data = *read});
        if (refusal.exists && refusal.held_by.empty()) record(event, now, data, place, part, by);
        return refusal;
    }
    // As wish(), for moves that are expected to go ahead.
    void act(const std::string& event, const std::string& part, const std::string& now,
             const std::string& data = "{}", const std::string& by = "ip", const std::string& place = {}) {
        const auto refusal = wish(event, part, now, data, by, place);
        INFO(event << " " << part << " at " << now << ": "
                   << (refusal.held_by.empty() ? "" : refusal.held_by.front().why));
        REQUIRE(refusal.exists);
        REQUIRE(refusal.held_by.empty());
    }

    [[nodiscard]] job::Job fold(const std::string& now) const {
        auto folded = job::fold(entries_, *method_, default_kinds(), time(now), supplement_);
        if (!folded) throw std::runtime_error(one_line(folded.fault()));
        return *std::move(folded);
    }
    [[nodiscard]] job::Judgement judge(const std::string& now) const {
        kept_.push_back(std::make_shared<const job::Job>(fold(now))); // findings point into it
        return job::judge(*kept_.back(), *method_, default_kinds());
    }
    [[nodiscard]] entry::Time time(const std::string& now) const {
        auto read = entry::parse_time(now.size() > 5 ? now : day_ + "T" + now + ":00+01:00");
        if (!read) throw std::runtime_error(one_line(read.fault()));
        return *read;
    }
    void move_to(std::string day) { day_ = std::move(day); }
    // From here on everything belongs to the supplement that this entry opened, and the job is seen with it; {} is the first record.
    void go_on_in(std::optional<entry::Hash> supplement) { supplement_ = supplement; }
    [[nodiscard]] const std::vector<entry::Entry>& entries() const { return entries_; }
    [[nodiscard]] const method::Method& method() const { return *method_; }

private:
    std::string day_;
    const method::Method* method_;
    std::vector<entry::Entry> entries_;
    std::optional<entry::Hash> supplement_ = {};
    mutable std::vector<std::shared_ptr<const job::Job>> kept_;
};

// The rules that speak, as "rule@place severity", for a compact comparison.
inline std::vector<std::string> spoken(const job::Judgement& judgement) {
    std::vector<std::string> out;
    for (const auto& finding : judgement.findings)
        out.push_back(finding.id + " " + std::string(method::severity_word(finding.severity)) +
                      (finding.near ? " near" : ""));
    return out;
}

} // namespace undersheet::test
