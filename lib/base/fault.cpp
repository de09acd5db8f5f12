#include "base/fault.h"

namespace undersheet {

std::string one_line(const Fault& fault) {
    std::string line;
    if (!fault.where.empty()) line += fault.where + ": ";
    line += fault.detail;
    if (!fault.clears.empty()) line += "; " + fault.clears;
    return line;
}

} // namespace undersheet
