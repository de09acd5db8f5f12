// A small roof on which something went wrong in most sections, for the papers: a low wall let go by the customer, a wet
// point read again, a pause for rain, a signature struck by a reopening, a part left out, punch rows, photographs.
// Everybody and everything in it is invented.
#pragma once

#include "paper/document.h"
#include "paper/setting.h"
#include "tests/support/site.h"

namespace undersheet::test {

Site troubled_roof();        // as it stands when it has been handed over, at kHandedOver
Site roof_being_inspected(); // the same roof on its first morning, nothing signed
inline const std::string kHandedOver = "2026-05-21T16:00:00+01:00";
inline const std::string kFirstMorning = "2026-05-20T10:00:00+01:00";

Site taped_roof(); // 4 by 3 m, the low side AB, a wall at CD; nothing else
paper::Setting test_setting();
paper::Setting test_setting(const paper::Words& words); // the same in other words

// All the words of a paper in plain text, for looking something up in.
std::string words_of(const paper::Document& document);

// The paper without what every change of the method file changes: its hash and the record's check value.
paper::Document settled(paper::Document document);

} // namespace undersheet::test
