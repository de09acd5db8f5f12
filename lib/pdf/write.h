// Pages as the bytes of a PDF file.
//
// Promises: PDF 1.4, the same pages give the same bytes: no date, no chance. Both weights of the font are embedded as far as they are used.
//   Letters can be copied and searched, in the order of their marks.
// Does not: claim PDF/A, tag the structure, or encrypt.
// Threads: pure function.
#pragma once

#include "pdf/marks.h"

namespace undersheet::pdf {

[[nodiscard]] std::string write(const File& file);

} // namespace undersheet::pdf
