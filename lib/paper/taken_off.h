// The take-off a paper is made from.
#pragma once

#include "job/takeoff.h"
#include "paper/setting.h"

namespace undersheet::paper {

// Refused without a price list: `paper` is named in what would clear it.
[[nodiscard]] Result<job::TakeOff> taken_off(const job::Job& job, const Setting& setting,
                                             std::string_view paper);

} // namespace undersheet::paper
