// The air at the deck: dew point and margin of a reading, when it last rained, and "can I bond now?" in one line.
//
// Promises: the dew point is trade/air's, over water, WMO constants; ages are worked from when the reading was taken.
// Does not: forecast.
#pragma once

#include "job/judge.h"
#include "trade/air.h"

namespace undersheet::job {

[[nodiscard]] std::optional<trade::Air> dew_margin(const Reading& air);
[[nodiscard]] std::vector<std::string> dew_working(const Reading& air, const trade::Air& result);

[[nodiscard]] std::string age_words(double minutes); // "91 min", "14 h", "3 days"

// When rain was last on the deck, as far as the record says: rain in an air reading, its end, or a pause for rain.
[[nodiscard]] std::optional<entry::Time> last_rain(const Job& job);

// From the latest air reading and the findings that hold a start; nothing without an air reading.
[[nodiscard]] std::optional<BondNow> bond_now(const Job& job, const Judgement& judgement,
                                              const method::Method& method);

} // namespace undersheet::job
