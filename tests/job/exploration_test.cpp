// Every state that a small roof can reach, entry by entry, and what must never happen on the way.
// The roof has one gutter edge: nine parts, from the deck to the hand-over.
#include "job/guards.h"
#include "tests/support/site.h"

#include <deque>
#include <map>
#include <set>

using namespace undersheet;
using test::Site;

namespace {

using job::Event;
using job::State;

const std::string kNow = "12:00";

// The order of work of this roof, written down a second time.
const std::map<std::string, std::vector<std::string>>& comes_first() {
    static const std::map<std::string, std::vector<std::string>> order{
        {"deck", {}},
        {"plate/AB", {"deck"}},
        {"lay-out", {"deck"}},
        {"field/1", {"lay-out"}},
        {"band/AB", {"field/1", "plate/AB"}},
        {"cover/AB", {"band/AB"}},
        {"trim-off", {"cover/AB", "band/AB"}},
        {"final", {"trim-off"}},
        {"hand-over", {"final"}},
    };
    return order;
}

struct Step {
    std::string event, part;
};

// A way to a state: the entries that lead there, and how often a part was opened again on it.
struct Way {
    Site site;
    int reopenings = 0;
};

Way fresh() {
    Way way;
    way.site.opened();
    way.site.record("edge", "08:00", R"({"kind":"gutter"})", "AB");
    return way;
}

Way after(Way way, const Step& step) {
    way.site.record(step.event, kNow, R"({"why":"because"})", "", step.part);
    if (step.event == "reopen") ++way.reopenings;
    return way;
}

std::string key_of(const job::Job& job) {
    std::string key;
    for (const auto& part : job.parts) key += static_cast<char>('a' + static_cast<int>(part.state));
    return key;
}

bool may_begin(const job::Job& job, const job::Part& part) {
    const job::Wish wish{.part = part.name, .event = Event::begin, .by = {}, .when = job.as_of, .data = {}};
    const job::Recorded nothing;
    const std::vector<job::Finding> none;
    const auto& method = test::default_method();
    return job::earlier_parts({job, method, none, nothing, part, *method.stage(part.stage), wish}).empty();
}

// What people may do now, as far as the order of work goes; `finish` stands for the last must-do step. A way is followed
// through one reopening: with any number the states are the same ones again.
std::vector<Step> moves_from(const job::Job& job, const Way& way) {
    std::vector<Step> moves;
    for (const auto& part : job.parts) {
        for (const Event event : job::events_from(part.state)) {
            const bool wanted = event == Event::begin || event == Event::finish || event == Event::sign ||
                                event == Event::reopen || event == Event::confirm;
            const bool in_order = (event != Event::begin && event != Event::sign) || may_begin(job, part);
            if (event == Event::reopen && way.reopenings > 0) continue;
            if (wanted && in_order) moves.push_back({std::string(job::event_word(event)), part.name});
        }
    }
    return moves;
}

std::size_t signatures(const job::Job& job) {
    std::size_t count = 0;
    for (const auto& part : job.parts) count += part.signatures.size();
    return count;
}

void check_begun_over_signed(const job::Job& before, const Step& step) {
    if (step.event != "begin" && step.event != "sign") return;
    for (const auto& first : comes_first().at(step.part)) {
        const State state = before.part(first)->state;
        INFO(step.event << " " << step.part << " while " << first << " is " << job::state_text(state));
        REQUIRE((state == State::signed_off || state == State::left_out));
    }
}

void check_closed(const Site& site, const job::Job& job) {
    REQUIRE(job.handed_over != nullptr);
    for (const auto& part : job.parts) {
        for (int e = 0; e < job::kEvents; ++e) {
            Site after = site;
            after.record(std::string(job::event_word(static_cast<Event>(e))), kNow,
                         R"({"why":"because","step":"fit"})", "", part.name);
            REQUIRE(key_of(after.fold(kNow)) == key_of(job));
        }
    }
}

} // namespace

TEST_CASE("in every state a small roof can reach nothing was begun over something unsigned and no signature "
          "disappeared") {
    std::map<std::string, Way> ways{{key_of(fresh().site.fold(kNow)), fresh()}};
    std::deque<std::string> to_visit{ways.begin()->first};
    bool saw_hand_over = false;
    while (!to_visit.empty()) {
        const Way way = ways.at(to_visit.front());
        to_visit.pop_front();
        const auto here = way.site.fold(kNow);
        for (const Step& step : moves_from(here, way)) {
            check_begun_over_signed(here, step);
            const Way longer = after(way, step);
            const auto there = longer.site.fold(kNow);
            REQUIRE((there.problems.empty() && signatures(there) >= signatures(here)));
            if (there.handed_over != nullptr && !saw_hand_over) {
                saw_hand_over = true;
                check_closed(longer.site, there);
            }
            const std::string key = key_of(there) + (longer.reopenings > 0 ? "+" : "");
            if (ways.emplace(key, longer).second) to_visit.push_back(key);
        }
    }
    CHECK(saw_hand_over);
    CHECK(ways.size() > 100);
}

namespace {

// An independent notion of when faces may be joined, over the words of one band.
struct Oracle {
    bool coated = false, clean = false, mated = false;
    bool accepts_and_moves(const std::string& word) {
        if (word == "coat") {
            coated = true;
            clean = mated = false;
            return true;
        }
        if (word == "clean" || word == "dirty") {
            if (!coated) return false;
            clean = word == "clean";
            return true;
        }
        if (word == "mate") {
            if (!coated || !clean) return false;
            mated = true;
            return true;
        }
        // Rain on an open coat kills it: nothing may be joined before a new one.
        if (coated && !mated) coated = clean = false;
        return true;
    }
};

bool try_word(Site& site, const std::string& word, int minute) {
    const std::string now = "11:" + std::string(minute < 10 ? "0" : "") + std::to_string(minute);
    const std::string later = "11:" + std::string(minute + 1 < 10 ? "0" : "") + std::to_string(minute + 1);
    if (word == "rain") {
        site.record("pause", now, R"({"why":"rain","rain":"yes"})", "", "band/AB");
        site.record("resume", later, "{}", "", "band/AB");
        return true;
    }
    std::string data = R"({"step":"coat","coat_end":"2026-06-11T11:00:00+01:00"})";
    if (word == "clean") data = R"({"step":"finger","finger_deck":"clean","finger_sheet":"clean"})";
    if (word == "dirty") data = R"({"step":"finger","finger_deck":"clean","finger_sheet":"not_clean"})";
    if (word == "mate") data = R"({"step":"mate","mated_at":"2026-06-11T11:30:00+01:00"})";
    const auto entry = entry::read_json(data);
    const auto folded = site.fold(now);
    const auto& method = test::default_method();
    const job::Part& part = *folded.part("band/AB");
    const job::Wish wish{
        .part = "band/AB", .event = Event::tick, .by = "ip", .when = site.time(now), .data = *entry};
    const job::Recorded nothing;
    const std::vector<job::Finding> none;
    if (!job::step_holds({folded, method, none, nothing, part, *method.stage("band"), wish}).empty())
        return false;
    site.record("tick", now, data, "", "band/AB");
    return true;
}

void walk(const Site& site, const Oracle& oracle, int depth, int& words) {
    if (depth == 0) return;
    for (const std::string word : {"coat", "clean", "dirty", "mate", "rain"}) {
        Site next = site;
        Oracle expected = oracle;
        const bool accepted = expected.accepts_and_moves(word);
        INFO(word << " at depth " << depth);
        REQUIRE(try_word(next, word, 2 * (10 - depth)) == accepted);
        ++words;
        if (accepted) walk(next, expected, depth - 1, words);
    }
}

} // namespace

TEST_CASE("no faces are joined before a clean finger test on both after the last coat, in any order of five "
          "things done") {
    Site site;
    site.opened();
    site.record("edge", "08:00", R"({"kind":"gutter"})", "AB");
    site.record("begin", "10:00", "{}", "", "band/AB");
    int words = 0;
    walk(site, {}, 5, words);
    CHECK(words > 500);
}
