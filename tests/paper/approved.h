// Approved papers: a test compares what was written with the file of that name in tests/golden.
//
// To approve a change: run the test program with UNDERSHEET_APPROVE=1, read `git diff tests/golden` line by line, commit
// both together. A run that approves fails on purpose, so that it cannot be left on.
#pragma once

#include <string>

namespace undersheet::test {

// "" when the text is the approved one; else the first line that differs, both ways round.
std::string differs_from_approved(const std::string& file_name, const std::string& text);

} // namespace undersheet::test
