#include "cli/photo.h"

#include "cli/show.h"
#include "cli/verb.h"

namespace undersheet::cli {
namespace {

std::string name_of(const std::string& path) {
    const auto slash = path.find_last_of("/\\");
    return slash == std::string::npos ? path : path.substr(slash + 1);
}

int run_photo(const Arguments& arguments, Screen& screen) {
    auto photo = read_photo(arguments.one("FILE"));
    if (!photo) return screen.refuse(photo.fault());
    photo->of = arguments.one("--of");
    photo->shows = arguments.one("--shows");
    photo->label_of = arguments.one("--label-of");
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    return show_kept(desk->keep_photo(asked(arguments), *photo), arguments, screen);
}

} // namespace

Result<desk::Photograph> read_photo(const std::string& path) {
    auto bytes = read_file(path, "photograph");
    if (!bytes) return bytes.fault();
    desk::Photograph photo;
    photo.bytes = std::move(*bytes);
    photo.file_name = name_of(path);
    return photo;
}

std::vector<Verb> photo_verbs() {
    return {{"photo",
             "keeps a photograph as it is, named by its content",
             "undersheet photo chase.jpg --of CD --shows \"tape at the chase\" --by IP",
             {{"FILE", "a JPEG or PNG; - is stdin", Count::one, Sort::file}},
             writing({{"--of", "WHAT", "a place (AB, R1), an entry or a part (patches/D)", true},
                      {"--shows", "TEXT", "what is to be seen"},
                      {"--label-of", "TIN", "it shows the label of this tin or sheet"}}),
             run_photo}};
}

} // namespace undersheet::cli
