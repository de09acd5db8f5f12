// Where on the roof: a corner, an edge, a point along an edge, a point on the deck, a board, a joint, a line.
//
// Written form, one parser and one printer (metres, corner A at 0,0, x along AB, y to its left, up the roof):
//   A           a corner            AB          an edge or a diagonal (the outline tells which)
//   AB+1.20     a point along AB    2.10,0.80   a point on the deck
//   R1          a label             B2|B3       the joint between two boards
//   2.75,0>2.75,4.60                            a line on the deck
// Printed with no decimals or at least two (AB+1.2 becomes AB+1.20); of a joint the shorter, then lower, name first.
// Does not: know the roof; whether AB is an edge of it is asked in job.
#pragma once

#include "base/decimal.h"

#include <string>
#include <string_view>

namespace undersheet::entry {

enum class PlaceForm { nowhere, corner, pair, along, point, label, joint, line };

struct Place {
    PlaceForm form = PlaceForm::nowhere;
    std::string a = {}; // corner; first corner of a pair; label; first board
    std::string b = {}; // second corner of a pair; second board
    Decimal x_m = {};   // along: metres from a; point and line: x of the first point
    Decimal y_m = {};
    Decimal x2_m = {}; // line: the second point
    Decimal y2_m = {};

    friend bool operator==(const Place& p, const Place& q) {
        return p.form == q.form && p.a == q.a && p.b == q.b && p.x_m == q.x_m && p.y_m == q.y_m &&
               p.x2_m == q.x2_m && p.y2_m == q.y2_m;
    }
};

// A label is up to 24 letters, digits, '-', '_' or '.', starting with a letter or digit, and reads as none of the other forms.
[[nodiscard]] Result<Place> parse_place(std::string_view text); // "" is nowhere
[[nodiscard]] std::string place_text(const Place& place);

} // namespace undersheet::entry
