// This machine as a world: its clock and offset, its steady clock, its chance.
//
// Promises: random bytes come from the system's generator; boot is new in every process.
// With a clock set by hand, that clock stands still and every entry says that it was simulated.
#pragma once

#include "entry/world.h"

#include <memory>
#include <optional>

namespace undersheet::book {

[[nodiscard]] std::unique_ptr<entry::World> this_machine(std::optional<entry::Time> clock_set_by_hand = {});

} // namespace undersheet::book
