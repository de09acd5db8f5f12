// An L-shaped extension of 27 m² with two walls, two gutters, two kerbs, a rooflight and an outlet, recorded entry by entry.
#pragma once

#include "job/takeoff.h"
#include "tests/support/site.h"

#include <cmath>

namespace undersheet::test {

inline const method::PriceList& example_prices() {
    static const method::PriceList made = [] {
        auto read = method::PriceList::read(schema::prices_example_json());
        if (!read) throw std::runtime_error(one_line(read.fault()));
        return *std::move(read);
    }();
    return made;
}

using Places = std::vector<std::pair<std::string, std::string>>;

inline void record_edges(Site& site, const Places& edges) {
    for (const auto& [edge, kind] : edges)
        site.record("edge", "09:00", R"({"kind":")" + kind + R"("})", edge);
}

// Every length between two corners, taped without error.
inline void tape_all(Site& site, const std::vector<std::pair<char, trade::Point>>& corners) {
    for (std::size_t a = 0; a < corners.size(); ++a) {
        for (std::size_t b = a + 1; b < corners.size(); ++b) {
            const double m = trade::distance_m(corners[a].second, corners[b].second);
            site.record("tape", "09:05", R"({"m":)" + shortest(m, 6) + "}",
                        std::string{corners[a].first, corners[b].first});
        }
    }
}

inline const Places kEllEdges{{"AB", "gutter"}, {"BC", "kerb"}, {"CD", "gutter"},
                              {"DE", "wall"},   {"EF", "wall"}, {"FA", "kerb"}};
inline const std::vector<std::pair<char, trade::Point>> kEllCorners{
    {'A', {0, 0}}, {'B', {3.6, 0}}, {'C', {3.6, 1.5}}, {'D', {6, 1.5}}, {'E', {6, 5.1}}, {'F', {0, 5.1}}};

inline void record_openings(Site& site) {
    site.record(
        "opening", "09:10",
        R"({"label":"R1","type":"rooflight","size_x_mm":1000,"size_y_mm":1000,"upstand_mm":150,"supplied_by":"the customer"})",
        "1.8,3.3");
    site.record("opening", "09:10", R"({"label":"O1","type":"outlet","bore_mm":75,"clamp":"yes"})",
                "3.0,0.8");
}

inline Site ell(const Places& edges = kEllEdges) {
    Site site;
    site.opened();
    record_edges(site, edges);
    tape_all(site, kEllCorners);
    site.record("abutment", "09:08", R"({"type":"brick"})", "DE");
    site.record("abutment", "09:08", R"({"type":"brick"})", "EF");
    record_openings(site);
    return site;
}

inline job::TakeOff taken_off(const Site& site, const method::PriceList* prices = &example_prices()) {
    auto made = job::take_off(site.fold("18:00"), site.method(), prices);
    if (!made) throw std::runtime_error(one_line(made.fault()));
    return *std::move(made);
}

inline const job::TakeOffLine& line(const job::TakeOff& made, const std::string& name) {
    const job::TakeOffLine* found = made.line(name);
    if (found == nullptr) throw std::runtime_error("there is no line " + name);
    return *found;
}

inline std::string amount(const job::TakeOff& made, const std::string& name) {
    const auto& found = line(made, name);
    return found.amount.text() + (found.unit.empty() ? "" : " " + found.unit);
}

// "1 x 10, 1 x 2.5 for 11800"
inline std::string bought(const job::TakeOff& made, const std::string& name) {
    std::string text;
    for (const auto& pack : line(made, name).packs)
        text += (text.empty() ? "" : ", ") + std::to_string(pack.count) + " x " + pack.size.text();
    const auto& price = line(made, name).price;
    return text + (price ? " for " + std::to_string(*price) : " without price");
}

inline std::vector<std::string> remarks(const job::TakeOff& made) {
    std::vector<std::string> texts;
    for (const auto& remark : made.remarks) texts.push_back(remark.text);
    return texts;
}

inline const job::TrimCuts& trims(const job::TakeOff& made, const std::string& item) {
    for (const auto& cuts : made.trims)
        if (cuts.item == item) return cuts;
    throw std::runtime_error("there are no trims " + item);
}

} // namespace undersheet::test
