// Holds what somebody says of the roof's shape against the shape already on record. Only the desk includes this.
//
// Promises: an edge, a wall or a chase is only where the outline has an edge; a corner joins two edges; a section's outline
//   does not cross itself. Tapes may run along a diagonal. As long as the edges do not close, only the last two hold.
// Does not: know lengths; whether tapes fit together is worked out when the job is judged.
#pragma once

#include "entry/value.h"
#include "job/roof.h"
#include "method/kinds.h"

namespace undersheet::desk {

[[nodiscard]] Done fits_the_shape(const job::Roof& roof, const method::Kind& kind, const entry::Place& place,
                                  const entry::Value& data);

// "BA" is the edge AB; any other place is itself.
[[nodiscard]] entry::Place named_as_on(const job::Roof& roof, entry::Place place);

} // namespace undersheet::desk
