// The rules of the house: which room of lib may include what, and how long a file may grow.
//
// Promises: reads a source tree as text and names every offence by file and line; an empty list means the house is in order.
// Does not: understand C++; it sees include lines, string literals that start like SQL, and a few names of clocks and files.
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <vector>

namespace undersheet::house {

struct Offence {
    std::string file;     // from the top of the tree, "lib/trade/air.h"
    std::size_t line = 0; // 0 when it is about the file as a whole
    std::string what;
};

// "lib/trade/air.h:3: trade [1] may not include job [3] (job/job.h)"
[[nodiscard]] std::string text_of(const Offence& offence);

// Every offence in lib, cli, tests and at the top level of that tree, in the order of the file names.
[[nodiscard]] std::vector<Offence> offences_in(const std::filesystem::path& tree);

} // namespace undersheet::house
