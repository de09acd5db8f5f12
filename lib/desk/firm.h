// The firm whose book it is. Only the desk includes this.
#pragma once

#include "desk/drafts.h"
#include "desk/requests.h"

namespace undersheet::desk {

[[nodiscard]] Typed firm_typed(const Firm& firm);

} // namespace undersheet::desk
