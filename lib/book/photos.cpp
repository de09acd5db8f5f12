#include "book/photos.h"

#include "book/files.h"
#include "picture/media.h"

namespace undersheet::book {
namespace {

Fault unreadable(std::string what, std::string where = {}, std::string clears = {}) {
    return {Code::photo_unreadable, std::move(what), std::move(where), std::move(clears)};
}

std::string file_of(const std::string& folder, const entry::Hash& hash) {
    return folder + "/" + entry::hash_text(hash);
}

} // namespace

Result<entry::Hash> keep_photo_file(const std::string& folder, std::string_view bytes) {
    if (bytes.empty()) return unreadable("the photograph is empty");
    if (bytes.size() > kMostPhotoBytes)
        return unreadable("the photograph is larger than 32 MiB", {}, "take it smaller");
    if (!picture::is_jpeg(bytes) && !picture::is_png(bytes))
        return unreadable("this is no JPEG and no PNG", {}, "save it as one of these");
    const entry::Hash hash = entry::sha256(bytes);
    if (read_photo_file(folder, hash).ok()) return hash;
    if (auto done = make_folder(folder); !done) return done.fault();
    if (auto done = write_durably(file_of(folder, hash), bytes, Readers::everybody); !done)
        return done.fault();
    return hash;
}

Result<std::string> read_photo_file(const std::string& folder, const entry::Hash& hash) {
    const std::string file = file_of(folder, hash);
    auto bytes = read_whole(file, kMostPhotoBytes);
    if (!bytes) return unreadable("the photograph is not there or cannot be read", file);
    if (entry::sha256(*bytes) != hash)
        return unreadable("the photograph is not the one that was recorded", file);
    return bytes;
}

} // namespace undersheet::book
