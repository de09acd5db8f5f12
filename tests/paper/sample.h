// Two small papers for the renderers: a usual one with a block of every sort, and one where every name is an attack.
#pragma once

#include "paper/document.h"

namespace undersheet::test {

paper::Document usual_paper();
paper::Document hostile_paper(const std::string& name); // `name` stands wherever a person could have typed it

} // namespace undersheet::test
