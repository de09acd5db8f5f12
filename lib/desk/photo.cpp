#include "desk/desk.h"
#include "desk/keep.h"

#include "base/text.h"
#include "picture/camera.h"
#include "picture/media.h"

namespace undersheet::desk {
namespace {

constexpr std::size_t kShortName = 8; // digits of an entry's name that people type

std::string media_of(std::string_view bytes) {
    if (picture::is_jpeg(bytes)) return "jpeg";
    return picture::is_png(bytes) ? "png" : "";
}

bool is_entry_name(std::string_view text) {
    return text.size() >= kShortName && text.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

// A part, an entry, or else a place on the roof.
void point_at(Typed& typed, const Case& on, const std::string& of) {
    if (on.job.part(of) != nullptr) {
        typed.part = of;
    } else if (const auto entry = is_entry_name(of) ? find_entry(on, of) : Fault{}; entry) {
        typed.put("of", entry::hash_text((*entry)->hash));
        typed.place = entry::place_text((*entry)->place);
        typed.part = (*entry)->part;
    } else {
        typed.place = of;
    }
}

Result<Typed> photo_entry(Session& session, const Asked& asked, const Photograph& photo) {
    const std::string media = media_of(photo.bytes);
    if (media.empty())
        return Fault{Code::photo_unreadable, "this is no JPEG or PNG", photo.file_name,
                     "take another photograph"};
    auto on = take_up(session, asked);
    if (!on) return on.fault();
    Typed typed = {"photo", {}, {}, {}};
    typed.put("sha256", entry::hash_text(entry::sha256(photo.bytes)));
    typed.put("file", without_unseen(photo.file_name)); // named by a phone or a messenger, not by hand
    typed.put("bytes", std::to_string(photo.bytes.size()));
    typed.put("media", media);
    typed.put("shows", photo.shows);
    typed.put("label_of", photo.label_of);
    if (on->kinds->find("photo")->field("camera_time") !=
        nullptr) // a job may have begun before there was one
        typed.put("camera_time", picture::camera_time(photo.bytes));
    point_at(typed, *on, photo.of);
    return typed;
}

// The file first, then the entry that names it: what is named is always there.
Done keep_file(Session& session, const Photograph& photo) {
    auto book = session.writer();
    if (!book) return book.fault();
    auto kept = (*book)->keep_photo(photo.bytes);
    if (!kept) return kept.fault();
    return {};
}

// "band/AB" for what was raised about a part, its place else.
std::string what_of(const Case& on, const std::string& number) {
    for (const auto& item : on.job.punch) {
        if (item.name == lower_ascii(number)) return entry::hash_text(item.raised->hash);
    }
    return "";
}

// The photograph and what names it, both or neither; a photograph without bytes is none.
Result<Kept> keep_with_photo(Session& session, const Asked& asked, Typed typed, const Photograph& photo) {
    if (photo.bytes.empty()) return keep(session, asked, std::vector<Typed>{std::move(typed)});
    auto shown = photo_entry(session, asked, photo);
    if (!shown) return shown.fault();
    if (auto kept = keep_file(session, photo); !kept) return kept.fault();
    typed.put("photo", shown->text("sha256"));
    return keep(session, asked, std::vector<Typed>{*shown, std::move(typed)});
}

} // namespace

Result<Kept> Desk::keep_photo(const Asked& asked, const Photograph& photo) {
    auto typed = photo_entry(*session_, asked, photo);
    if (!typed) return typed.fault();
    if (auto kept = keep_file(*session_, photo); !kept) return kept.fault();
    return keep(*session_, asked, typed);
}

Result<Kept> Desk::punch_add(const Asked& asked, const PunchAdd& item) {
    Typed added = {"punch_add", item.place, item.part, {}};
    added.put("text", item.text);
    added.put("severity", item.severity);
    Photograph photo = item.photo;
    photo.of = item.part.empty() ? item.place : item.part;
    photo.shows = item.text;
    return keep_with_photo(*session_, asked, std::move(added), photo);
}

Result<Kept> Desk::punch_clear(const Asked& asked, const PunchClear& clear) {
    Typed cleared = {"punch_clear", {}, {}, {}};
    cleared.put("number", clear.number);
    cleared.put("why", clear.why);
    auto on = take_up(*session_, asked);
    if (!on) return on.fault();
    Photograph photo = clear.photo;
    if (!photo.bytes.empty()) photo.of = what_of(*on, clear.number);
    return keep_with_photo(*session_, asked, std::move(cleared), photo);
}

} // namespace undersheet::desk
