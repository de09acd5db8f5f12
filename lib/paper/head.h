// The lines at the head of every paper after its name: job, roof, customer, number, issue and date, with their words.
//
// Promises: the same lines in the same order in every renderer; what is not known is left out.
#pragma once

#include "paper/document.h"
#include "paper/words.h"

namespace undersheet::paper {

[[nodiscard]] std::vector<Fact> head_facts(const Head& head, const Words& words);

} // namespace undersheet::paper
