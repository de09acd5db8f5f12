// One value as it was typed, read the way its field wants it: a word of its choices, a number, a day, names, places.
//
// Promises: what is kept is the exact form kinds.h names for the type; what was typed is kept as `raw` where it reads
//   differently, but never for names of people and never for a personal field. "not looked" and "can't reach" are kept as
//   not_looked and cant_reach where the field may be skipped. Text is UTF-8 without control characters, 1 to 4000 long.
// Does not: know other fields, or the roof. Faults and questions name the value; the caller adds kind and field.
// Threads: as the function that finds people.
#pragma once

#include "entry/time.h"
#include "entry/value.h"
#include "method/kinds.h"

#include <functional>

namespace undersheet::method {

using FindPerson = std::function<Result<std::string>(std::string_view name)>; // a name, to that person's id

// What the reading of one value may need to know.
struct Setting {
    entry::Time when = {};
    FindPerson person = {};
};

struct Kept {
    entry::Value value = {};
    std::string raw = {};
    std::vector<std::string> questions = {};
};

[[nodiscard]] Result<Kept> read_typed(const Field& field, const entry::Value& typed, const Setting& setting);

} // namespace undersheet::method
