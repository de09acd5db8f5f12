// What two devices said apart, and what a person has to settle.
//
// Promises: an item has the same name on every device, made from the entries it is about. A clock settles nothing.
// Does not: decide. Until it is settled the more careful state of a part stands, of two readings both are judged, and of two
//   words about one field the later in the order of the entries counts.
#pragma once

#include "job/job.h"

namespace undersheet::job {

// "M" and 8 digits of the SHA-256 over what it is about and the entries of its sides.
[[nodiscard]] std::string settle_id(const SettleItem& item);

// "band, edge AB: signed on one device, paused on another".
[[nodiscard]] Worded settle_worded(const SettleItem& item);
[[nodiscard]] std::string settle_words(const SettleItem& item);

// The open item meant by its name, or as much of the beginning as is unmistakable.
[[nodiscard]] Result<const SettleItem*> settle_item_meant(const Job& job, std::string_view typed);

// Punch rows that two devices added apart in the same words: offered to be shown as one.
void offer_same_punch_rows(Job& job);

} // namespace undersheet::job
