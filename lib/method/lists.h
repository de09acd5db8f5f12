// Several things in one field: people, places, corner points, names, entries.
//
// Promises: typed as text they have commas between (points have blanks, since x,y has the comma), or come as a JSON list;
//   each is read as its type wants it. What was typed is given back as `raw` where it reads differently.
// Does not: look for the same thing twice; two sections may touch one edge, a polygon may come back to a corner.
// Threads: as the function that finds people.
#pragma once

#include "entry/value.h"
#include "method/typed.h"

namespace undersheet::method {

struct TypedList {
    entry::List items;
    std::string raw = {};
};

[[nodiscard]] bool is_list(FieldType type);
[[nodiscard]] Result<TypedList> typed_list(const Field& field, const entry::Value& typed,
                                           const FindPerson& person);

// That person's id; person_unknown when nobody is known here.
[[nodiscard]] Result<std::string> find_person(std::string_view name, const FindPerson& person);

} // namespace undersheet::method
