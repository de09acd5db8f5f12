// Photographs out of somebody's book: whatever the bytes are, they are a picture or they are none.
#include "tests/fuzz/targets.h"

#ifdef UNDERSHEET_PDF
#include "pdf/write.h"
#endif

namespace undersheet::fuzz {

void read_a_picture([[maybe_unused]] std::string_view bytes) {
#ifdef UNDERSHEET_PDF
    auto read = pdf::read_picture(bytes);
    if (!read) return;
    promise(read->width > 0 && read->height > 0, "a picture has no size");
    promise(read->turned >= 1 && read->turned <= 8, "a picture is turned as none can be");
    if (read->filter == pdf::Filter::jpeg) promise(read->bytes == bytes, "a JPEG is not as it came");
    const std::string kept = read->bytes;
    const pdf::Page page{{pdf::Shown{{0, 0}, 10, 10, 0}}};
    pdf::File file{20, 20, {page}};
    file.pictures.push_back(*std::move(read));
    promise(pdf::write(file).find(kept) != std::string::npos, "a picture is not in its file");
#endif
}

} // namespace undersheet::fuzz
