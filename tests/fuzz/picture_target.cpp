// Photographs out of somebody's book: whatever the bytes are, they are a picture or they are none.
#include "tests/fuzz/targets.h"

#include "picture/camera.h"
#include "picture/smaller.h"

#ifdef UNDERSHEET_PDF
#include "pdf/write.h"
#endif

namespace undersheet::fuzz {

void hand_on_a_picture(std::string_view bytes) {
    const std::string given = picture::for_others(bytes);
    promise(given.size() <= bytes.size() + 64, "a picture grows when it is handed on");
    const std::string made = picture::smaller(given, 16);
    promise(made.size() <= given.size(), "a picture grows when it is made smaller");
    promise(picture::for_others(made) == made, "a smaller picture says more than one that is handed on");
}

void read_a_picture(std::string_view bytes) {
    hand_on_a_picture(bytes);
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
