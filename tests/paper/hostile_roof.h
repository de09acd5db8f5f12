// The troubled roof again, and with it one entry of every other kind there is, where every text that a person could have
// written is an attack followed by where it stands: "<script>~punch_add.text~". Driven by the catalogue, so a field that is
// added to it is attacked without a line being added here.
#pragma once

#include "tests/paper/troubled_roof.h"

#include <set>

namespace undersheet::test {

job::EntryList hostile_roof(const std::string& attack);

// The "kind.field" of every text that is written on a paper.
std::set<std::string> named_in(std::string_view text);
// "" when each text that is named stands behind the whole attack, else its name.
std::string torn(std::string_view text, std::string_view attack);

} // namespace undersheet::test
