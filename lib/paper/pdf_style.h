// The look of a paper as PDF: sizes, air and greys, in one place as html_style.cpp has them for HTML.
//
// Only the files pdf*.cpp include this.
#pragma once

#include "pdf/strips.h"

namespace undersheet::paper::style {

constexpr double kPt = 72 / 25.4; // of one mm

constexpr double kPageWidth_pt = 210 * kPt, kPageHeight_pt = 297 * kPt;
constexpr double kSide_pt = 17 * kPt, kTop_pt = 20 * kPt, kFoot_pt = 19 * kPt;
constexpr double kWidth_pt = kPageWidth_pt - 2 * kSide_pt;
constexpr double kHeight_pt = kPageHeight_pt - kTop_pt - kFoot_pt;
constexpr double kRunningHead_pt = 10 * kPt, kRunningFoot_pt = kPageHeight_pt - 13 * kPt;
constexpr double kMostWhole_pt = kHeight_pt / 2; // what is higher may be parted

constexpr double kInk = 0.1, kQuiet = 0.36, kLine = 0.78, kTint = 0.92;
constexpr double kHair_pt = 0.5, kPen_pt = 0.8;

struct Look {
    pdf::Style style;
    pdf::Face face = pdf::Face::regular;
    double grey = kInk;
};
constexpr Look kName{{22, 26}, pdf::Face::bold};
constexpr Look kVerdict{{15, 19}};
constexpr Look kHeading{{14, 18}, pdf::Face::bold};
constexpr Look kSubheading{{11.5, 15}, pdf::Face::bold};
constexpr Look kItem{{11, 14}, pdf::Face::bold};
constexpr Look kStanding{{11, 14}, pdf::Face::regular, kQuiet};
constexpr Look kBody{{10.5, 13.6}};
constexpr Look kQuietBody{{10.5, 13.6}, pdf::Face::regular, kQuiet};
constexpr Look kCell{{9.6, 12}};
constexpr Look kRowName{{9.6, 12}, pdf::Face::bold};
constexpr Look kColumn{{9, 11}, pdf::Face::regular, kQuiet};
constexpr Look kBeneath{{9.2, 11.6}, pdf::Face::regular, kQuiet};
constexpr Look kSmall{{8.8, 11}, pdf::Face::regular, kQuiet};
constexpr Look kMissing{{8.8, 11}};

constexpr double kBlock_pt = 6;      // between blocks
constexpr double kColumnGap_pt = 13; // between columns of any sort
constexpr double kFactName_pt = 42 * kPt, kHeadName_pt = 21 * kPt;
constexpr double kIndent_pt = 11;
constexpr double kCellAir_pt = 2.6; // above and below a row
constexpr double kPictureHeight_pt = 75 * kPt;
constexpr double kPenRoom_pt = 12 * kPt; // to sign in

} // namespace undersheet::paper::style
