#include "base/fault.h"

#include "base/text.h"

namespace undersheet {
namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD"; // U+FFFD

// How many bytes of one character stand at the front; 0 when they are none.
std::size_t character_at(std::string_view bytes) {
    for (std::size_t size = 1; size <= 4 && size <= bytes.size(); ++size) {
        if (is_utf8(bytes.substr(0, size))) return size;
    }
    return 0;
}

// A fault quotes what was found, and that may have been anything.
std::string on_one_line(std::string_view found) {
    std::string line;
    while (!found.empty()) {
        const std::size_t size = character_at(found);
        const bool breaks = found.front() == '\n' || found.front() == '\r' || found.front() == '\t';
        if (breaks)
            line += ' ';
        else if (size == 0 || has_control_characters(found.substr(0, size)))
            line += kReplacement;
        else
            line += found.substr(0, size);
        found.remove_prefix(size == 0 ? 1 : size);
    }
    return line;
}

} // namespace

std::string one_line(const Fault& fault) {
    std::string line;
    if (!fault.where.empty()) line += fault.where + ": ";
    line += fault.detail;
    if (!fault.clears.empty()) line += "; " + fault.clears;
    return on_one_line(line);
}

} // namespace undersheet
