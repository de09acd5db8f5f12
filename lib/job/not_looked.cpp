#include "job/not_looked.h"

#include "base/text.h"

#include <algorithm>

namespace undersheet::job {
namespace {

bool has_such(const Roof& roof, const std::string& of) {
    if (of == "roof") return true;
    return std::any_of(roof.edges.begin(), roof.edges.end(),
                       [&](const Edge& edge) { return edge.kind == of; });
}

std::string where(const Reading& reading) {
    if (!reading.label.empty()) return " " + reading.label;
    const std::string place = entry::place_text(reading.place);
    return place.empty() ? "" : " at " + place;
}

void skipped_fields(const Reading& reading, const method::Kind& kind, std::vector<std::string>& lines) {
    for (const auto& member : *reading.data.map()) {
        if (!reading.not_looked(member.key)) continue;
        const bool reach = reading.word(member.key) == "cant_reach";
        lines.push_back(kind.heading + where(reading) + ": " + replaced(member.key, "_", " ") +
                        (reach ? ", could not be reached" : ", not looked at"));
    }
}

} // namespace

std::vector<std::string> not_looked_list(const Context& context) {
    std::vector<std::string> lines;
    for (const auto& row : context.method.looked_for()) {
        const method::Kind* kind = context.kinds.find(row.kind);
        if (kind == nullptr || !has_such(context.job.roof, row.of)) continue;
        const auto readings = context.job.all(row.kind);
        if (readings.empty()) lines.push_back(kind->heading + ": nothing recorded");
        for (const Reading* reading : readings) skipped_fields(*reading, *kind, lines);
    }
    return lines;
}

} // namespace undersheet::job
