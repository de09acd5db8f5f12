// The sections of the inspection that are about what stands round the deck and what is laid on it: safety, walls, gutters,
// openings, the sheet and its creases, tins.
#pragma once

#include "paper/making.h"

namespace undersheet::paper {

void add_safety(Making& making);
void add_walls(Making& making);
void add_gutters(Making& making);
void add_openings(Making& making);
void add_sheet(Making& making);
void add_tins(Making& making);

} // namespace undersheet::paper
