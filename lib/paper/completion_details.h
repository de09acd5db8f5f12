// The second page of the completion record: what was underneath and how dry, the weather while bonding, falls before and
// after, heights at the walls, batches, who did and who checked, departures in plain words, building control, photographs.
#pragma once

#include "paper/making.h"

namespace undersheet::paper {

void add_details(Making& making);

} // namespace undersheet::paper
