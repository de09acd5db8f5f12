#include "entry/place.h"

#include "base/text.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace undersheet::entry {
namespace {

constexpr std::size_t kLongestLabel = 24;

Fault place_malformed(std::string_view text, std::string why) {
    return {Code::place_malformed,
            "'" + std::string(text.substr(0, 80)) + "' is not a place: " + std::move(why),
            {},
            "write A, AB, AB+1.20, 2.10,0.80, B2|B3, 2.75,0>2.75,4.60 or a label"};
}

bool is_upper(char c) { return c >= 'A' && c <= 'Z'; }
bool is_label_start(char c) { return is_upper(c) || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); }
bool is_label_character(char c) { return is_label_start(c) || c == '-' || c == '_' || c == '.'; }

bool is_corner(std::string_view text) { return text.size() == 1 && is_upper(text[0]); }
bool is_pair(std::string_view text) { return text.size() == 2 && is_upper(text[0]) && is_upper(text[1]); }

bool is_label(std::string_view text) {
    return !text.empty() && text.size() <= kLongestLabel && is_label_start(text[0]) && !is_corner(text) &&
           !is_pair(text) && std::all_of(text.begin(), text.end(), is_label_character);
}

struct Point {
    Decimal x_m;
    Decimal y_m;
};

Result<Point> point(std::string_view text, std::string_view whole) {
    const auto comma = text.find(',');
    if (comma == std::string_view::npos) return place_malformed(whole, "a point needs x and y");
    const auto x = Decimal::parse(text.substr(0, comma));
    const auto y = Decimal::parse(text.substr(comma + 1));
    if (!x || !y) return place_malformed(whole, "a point is two numbers in metres with a decimal point");
    return Point{*x, *y};
}

Result<Place> point_place(std::string_view text) {
    const auto at = point(text, text);
    if (!at) return at.fault();
    Place place;
    place.form = PlaceForm::point;
    place.x_m = at->x_m;
    place.y_m = at->y_m;
    return place;
}

Result<Place> line_place(std::string_view text, std::size_t arrow) {
    const auto from = point(text.substr(0, arrow), text);
    if (!from) return from.fault();
    const auto to = point(text.substr(arrow + 1), text);
    if (!to) return to.fault();
    if (from->x_m == to->x_m && from->y_m == to->y_m)
        return place_malformed(text, "a line needs two different points");
    Place place;
    place.form = PlaceForm::line;
    place.x_m = from->x_m;
    place.y_m = from->y_m;
    place.x2_m = to->x_m;
    place.y2_m = to->y_m;
    return place;
}

Result<Place> corners_place(PlaceForm form, std::string_view pair, std::string_view whole) {
    if (!is_pair(pair) || pair[0] == pair[1])
        return place_malformed(whole, "an edge or diagonal needs two different corners");
    Place place;
    place.form = form;
    place.a = pair.substr(0, 1);
    place.b = pair.substr(1, 1);
    return place;
}

Result<Place> along_place(std::string_view text, std::size_t plus) {
    auto place = corners_place(PlaceForm::along, text.substr(0, plus), text);
    if (!place) return place;
    const auto along = Decimal::parse(text.substr(plus + 1));
    if (!along || *along < Decimal())
        return place_malformed(text, "after the + come the metres from the first corner");
    place->x_m = *along;
    return place;
}

// A joint is the same from both sides, so B3|B2 is written B2|B3 and B10|B9 is written B9|B10.
Result<Place> joint_place(std::string_view text, std::size_t bar) {
    std::string_view first = text.substr(0, bar);
    std::string_view second = text.substr(bar + 1);
    if (!is_label(first) || !is_label(second))
        return place_malformed(text, "a joint lies between two boards");
    if (first == second) return place_malformed(text, "a joint lies between two different boards");
    if (std::pair(second.size(), second) < std::pair(first.size(), first)) std::swap(first, second);
    Place place;
    place.form = PlaceForm::joint;
    place.a = first;
    place.b = second;
    return place;
}

Place named(PlaceForm form, std::string_view name) {
    Place place;
    place.form = form;
    place.a = name;
    return place;
}

// Metres with no decimals or at least two: 0, 1.20, 2.755.
std::string metres(const Decimal& m) {
    std::string text = m.text();
    const auto dot = text.find('.');
    if (dot != std::string::npos && text.size() - dot == 2) text += '0';
    return text;
}

} // namespace

Result<Place> parse_place(std::string_view text) {
    if (text.empty()) return Place{};
    if (const auto arrow = text.find('>'); arrow != std::string_view::npos) return line_place(text, arrow);
    if (const auto bar = text.find('|'); bar != std::string_view::npos) return joint_place(text, bar);
    if (const auto plus = text.find('+'); plus != std::string_view::npos) return along_place(text, plus);
    if (text.find(',') != std::string_view::npos) return point_place(text);
    if (is_corner(text)) return named(PlaceForm::corner, text);
    if (is_pair(text)) return corners_place(PlaceForm::pair, text, text);
    if (is_label(text)) return named(PlaceForm::label, text);
    return place_malformed(text, "a label is up to 24 letters, digits, '-', '_' or '.'");
}

std::string place_text(const Place& place) {
    switch (place.form) {
    case PlaceForm::nowhere:
        return {};
    case PlaceForm::corner:
    case PlaceForm::label:
        return place.a;
    case PlaceForm::pair:
        return place.a + place.b;
    case PlaceForm::along:
        return place.a + place.b + "+" + metres(place.x_m);
    case PlaceForm::point:
        return metres(place.x_m) + "," + metres(place.y_m);
    case PlaceForm::joint:
        return place.a + "|" + place.b;
    case PlaceForm::line:
        return metres(place.x_m) + "," + metres(place.y_m) + ">" + metres(place.x2_m) + "," +
               metres(place.y2_m);
    }
    return {};
}

} // namespace undersheet::entry
