#include "pdf/deflate.h"

#include <new>
#include <zlib.h>

namespace undersheet::pdf {
namespace {

const Bytef* bytes_of(std::string_view bytes) { return reinterpret_cast<const Bytef*>(bytes.data()); }
Bytef* bytes_of(std::string& bytes) { return reinterpret_cast<Bytef*>(bytes.data()); }

} // namespace

std::string deflated(std::string_view bytes) {
    std::string out(compressBound(static_cast<uLong>(bytes.size())), '\0');
    auto size = static_cast<uLongf>(out.size());
    // With room for the worst case, only memory can run out.
    if (compress2(bytes_of(out), &size, bytes_of(bytes), static_cast<uLong>(bytes.size()), 6) != Z_OK)
        throw std::bad_alloc();
    out.resize(size);
    return out;
}

std::optional<std::string> inflated(std::string_view bytes, std::size_t expected) {
    std::string out(expected + 1, '\0'); // one more shows what is too long
    auto size = static_cast<uLongf>(out.size());
    const int said = uncompress(bytes_of(out), &size, bytes_of(bytes), static_cast<uLong>(bytes.size()));
    if (said == Z_MEM_ERROR) throw std::bad_alloc();
    if (said != Z_OK || size != expected) return std::nullopt;
    out.resize(expected);
    return out;
}

} // namespace undersheet::pdf
