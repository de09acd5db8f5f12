#include "job/day_work.h"

#include "base/text.h"
#include "job/takeoff.h"
#include "job/takeoff_roof.h"

#include <algorithm>
#include <cmath>

namespace undersheet::job {
namespace {

constexpr double kMm_a_m = 1000;
constexpr double kMin_an_h = 60;
constexpr double kForgiven_min = 1e-6; // what sums of doubles are off by

// The hours of one part, by its stage.
class Hours {
public:
    Hours(const Job& job, const method::Method& method, const CountedRoof& roof, const trade::Areas& areas)
        : job_(job), method_(method), roof_(roof), areas_(areas) {}

    [[nodiscard]] double of(const Part& part) const {
        if (part.stage == "deck") return rate("hours_set_up_h") + areas_.deck_m2 * rate("hours_deck_h_m2");
        if (part.stage == "lay-out")
            return rate("hours_lay_out_h") + areas_.deck_m2 * rate("hours_lay_out_h_m2");
        if (part.stage == "field") return areas_.field_m2 * rate("hours_field_h_m2") / sections();
        if (part.stage == "openings") return opening(part.what);
        if (part.stage == "patches") return rate("hours_patch_h");
        if (part.stage == "corners") return rate("hours_corner_h");
        if (const auto length_m = edge_m(part.what)) return *length_m * rate("hours_" + part.stage + "_h_m");
        return rate("hours_" + replaced(part.stage, "-", "_") + "_h");
    }

private:
    // 0 for a stage of the firm's own, which no rate is known for.
    [[nodiscard]] double rate(const std::string& key) const {
        const method::Limit* limit = method_.find_limit(key);
        return limit == nullptr ? 0 : limit->value;
    }
    // Sections share the field alike: what each of them is as large as is seldom recorded.
    [[nodiscard]] double sections() const {
        const auto count = std::count_if(job_.parts.begin(), job_.parts.end(),
                                         [](const Part& part) { return part.stage == "field"; });
        return static_cast<double>(std::max<std::ptrdiff_t>(1, count));
    }
    [[nodiscard]] double opening(const std::string& label) const {
        for (const CountedOpening& opening : roof_.openings)
            if (opening.label == label) return rate("hours_" + opening.type + "_h");
        return 0;
    }
    [[nodiscard]] std::optional<double> edge_m(const std::string& name) const {
        for (const CountedEdge& edge : roof_.edges)
            if (edge.name == name) return static_cast<double>(edge.length_mm) / kMm_a_m;
        return std::nullopt;
    }

    const Job& job_;
    const method::Method& method_;
    const CountedRoof& roof_;
    const trade::Areas& areas_;
};

bool is_left(const Part& part) {
    return part.state != State::signed_off && part.state != State::closed && part.state != State::left_out &&
           part.state != State::not_needed && part.stage != "hand-over";
}

// Longer than any forecast there is, and still an int.
constexpr double kMost_min = 60 * 24 * 60;

int minutes_of(double hours_h, double people) {
    const double minutes = std::min(hours_h / people * kMin_an_h, kMost_min);
    return static_cast<int>(std::ceil(minutes / kGrid_min - kForgiven_min)) * kGrid_min;
}

std::vector<Work> worked_out(const Job& job, const method::Method& method, const Hours& hours) {
    std::vector<Work> row;
    for (const Part& part : job.parts) {
        if (!is_left(part)) continue;
        const bool joins = !row.empty() && row.back().stage == part.stage && part.stage != "field";
        if (!joins) row.push_back({part.name, part.stage});
        if (joins) row.back().part += ", " + part.what;
        row.back().hours_h += hours.of(part);
    }
    const double people = method.limit("crew_people");
    for (Work& work : row) {
        work.minutes = minutes_of(work.hours_h, people);
        if (work.stage == "lay-out")
            work.wait_min = static_cast<int>(std::clamp(method.limit("rest_min"), 0.0, kMost_min));
    }
    return row;
}

} // namespace

Result<std::vector<Work>> work_left(const Job& job, const method::Method& method) {
    const auto made = take_off(job, method);
    if (!made) return made.fault();
    const auto roof = counted_roof(job);
    if (!roof) return roof.fault();
    return worked_out(job, method, Hours(job, method, *roof, made->areas));
}

} // namespace undersheet::job
