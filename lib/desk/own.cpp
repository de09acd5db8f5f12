#include "desk/own.h"

#include "schema/embedded.h"

#include <stdexcept>

namespace undersheet::desk {
namespace {

template <class Read>
const auto& checked(const Read& read) {
    if (!read) throw std::logic_error(one_line(read.fault()));
    return *read;
}

} // namespace

std::string_view own_text(std::string_view file_name) {
    const auto text = schema::find(file_name);
    if (!text) throw std::logic_error("the program was built without " + std::string(file_name));
    return *text;
}

const method::Catalogue& own_catalogue() {
    static const auto read = method::Catalogue::read(own_text("kinds.json"));
    return checked(read);
}

const method::Method& own_method() {
    static const auto read = method::Method::read(own_text("method.json"));
    return checked(read);
}

} // namespace undersheet::desk
