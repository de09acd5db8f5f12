// What a job is after phones met, as one text to compare, and what must hold of it however it came about.
#pragma once

#include "job/job.h"
#include "job/settle.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

namespace undersheet::test {

inline std::string picture_of(const job::Job& job) {
    std::string picture = job.handed_over == nullptr ? "open " : "handed over ";
    for (const auto& part : job.parts) {
        picture += part.name + " " + std::string(job::state_word(part.state));
        for (const auto* said : {&part.note, &part.begun_by, &part.left_out_why, &part.agreed_by})
            picture += " " + *said;
        for (const auto& event : part.events) picture += " " + entry::short_name(event.entry->hash);
        for (const auto& signature : part.signatures)
            picture += entry::short_name(signature.entry->hash) + (signature.struck ? " struck" : "");
        for (const auto& doubt : part.doubts) picture += " " + doubt;
        picture += "\n";
    }
    for (const auto& item : job.to_settle) picture += item.id + "\n";
    for (const auto& item : job.settled) picture += item.id + " settled\n";
    for (const auto& reading : job.readings) picture += entry::short_name(reading.entry->hash);
    for (const auto& item : job.punch) picture += item.name + entry::short_name(item.raised->hash);
    return picture;
}

// What must hold of any record, however it came about.
inline void check_sound(const job::Job& job) {
    std::set<std::string> items;
    for (const auto& item : job.to_settle) {
        CHECK(items.insert(item.id).second);
        CHECK(item.sides.size() >= 2);
        CHECK(item.settled == nullptr);
    }
    for (const auto& part : job.parts) {
        job::State most = part.state;
        for (const auto& tip : part.tips) most = job::more_careful(most, tip.state);
        CHECK(most == part.state); // never better than what any device left it in
        const bool is_named = std::any_of(job.to_settle.begin(), job.to_settle.end(), [&](const auto& item) {
            return item.about == job::Apart::part_state && item.part == part.name;
        });
        CHECK(is_named == part.is_contested());
        if (is_named) CHECK(part.signature() == nullptr);
    }
}

} // namespace undersheet::test
