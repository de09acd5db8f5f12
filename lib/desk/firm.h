// The firm whose book it is. Only the desk includes this.
#pragma once

#include "desk/requests.h"
#include "desk/shape.h"

namespace undersheet::desk {

[[nodiscard]] Typed firm_typed(const Firm& firm);

} // namespace undersheet::desk
