// Is a data file of the shape it should be? A small part of JSON Schema (draft 2020-12), enough for our own files.
//
// Promises: understands type, enum, required, properties, additionalProperties, items, minItems, maxItems, minLength, minimum,
//   maximum, exclusiveMinimum, exclusiveMaximum and $ref to #/$defs/…; a schema that uses any other rule is refused rather
//   than half obeyed. A default is a remark. The first thing wrong is named with file, line and path:
//   "kinds.json line 12: kinds[3] has no 'heading'".
// Comes from: https://json-schema.org/draft/2020-12/json-schema-validation.
// Does not: fetch anything, or check what a shape cannot say (that a name is defined, that a range is inside another).
// Threads: a pure function.
#pragma once

#include "entry/value.h"

namespace undersheet::method {

[[nodiscard]] Done check_shape(const entry::Value& schema, const entry::Value& value, std::string_view file);

} // namespace undersheet::method
