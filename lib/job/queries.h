// Questions the papers ask of a job that nobody else asks: which photographs, which readings a part was bonded under,
// what a wood reading comes to, how high the sheet goes at a wall.
//
// Promises: pure; answers point into the job and live as long as it does. Places are matched as they are written.
// Does not: judge or word anything.
#pragma once

#include "job/judge.h"
#include "job/levels.h"
#include "trade/falls.h"
#include "trade/moisture.h"

namespace undersheet::job {

// The photographs that show an entry, a part, or something at that place or label; in the order they were taken.
[[nodiscard]] std::vector<const Reading*> photos_of(const Job& job, const Finding& finding);
[[nodiscard]] const Reading* photo_named(const Job& job,
                                         std::string_view sha256); // nullptr when there is none

// The reading corrected for the board's temperature by the method's own rule; nothing without a figure.
[[nodiscard]] std::optional<trade::Moisture> moisture_of(const Reading& reading,
                                                         const method::Method& method);

// The reading behind an entry, nullptr when it is no reading or no longer counts.
[[nodiscard]] const Reading* reading_of(const Job& job, const entry::Entry* entry);

// The air readings that parts which bond were begun or resumed under, each once, in order.
[[nodiscard]] std::vector<const Reading*> bonding_readings(const Job& job, const method::Method& method);

// Chase heights along one edge, in the order they were read.
[[nodiscard]] std::vector<const Reading*> heights_at(const Job& job, const Edge& edge);

// The findings, open or let go, that are about this one reading; what is about many of them (too few points) is not.
[[nodiscard]] std::vector<const Finding*> findings_on(const Judgement& judgement, const Reading& reading);

// The firm as was said last on this job, "" when nobody said.
[[nodiscard]] std::string firm_said(const Job& job, std::string_view field);
[[nodiscard]] std::string firm_said(const EntryList& entries, const entry::Time& as_of,
                                    std::string_view field);

// Who agreed that a part is left out; a personal value, so it is asked of the entry that says so.
[[nodiscard]] std::string agreed_by(const Part& part);

// Why a part is not needed, in doubt or its signature struck, in words that can be said in another language; what is
// neither of the method nor of the job's own making was typed.
[[nodiscard]] Worded why_worded(const Job& job, const method::Method& method, const Part& part,
                                const std::string& why);

// The levels of one run with the fall they make; nothing when they are too few or lie in one line.
struct Fall {
    std::vector<LevelPoint> points;
    trade::Falls falls;
};
enum class Surface { before_covering, finished };
[[nodiscard]] std::optional<Fall> fall_of(const Job& job, const method::Method& method, Surface surface);

// One thing nobody looked at: a whole kind of reading, or one field of one.
struct NotLooked {
    const method::Kind* kind = nullptr;
    const Reading* reading = nullptr; // nullptr: nothing of the kind was recorded
    std::string field = {};
};
[[nodiscard]] std::vector<NotLooked> not_looked(const Job& job, const method::Method& method,
                                                const method::Catalogue& kinds);

} // namespace undersheet::job
