// The words of --help: of the program, of one command, of one kind of thing that can be recorded.
#pragma once

#include "cli/verb.h"
#include "desk/desk.h"

namespace undersheet::cli {

[[nodiscard]] std::string usage(const Verb& verb); // "undersheet punch look NUMBER [--note TEXT]"
void show_overview(Screen& screen);
void show_help(const Verb& verb, Screen& screen);
void show_kind(const desk::KindLine& kind, Screen& screen);

[[nodiscard]] std::string field_words(const desk::FieldLine& field); // "°C, 5 to 35; worth a look: …"

} // namespace undersheet::cli
