// The catalogue as it was built in, and one field of it typed the way a person would.
#pragma once

#include "method/check.h"
#include "schema/embedded.h"

#include <catch2/catch.hpp>

namespace undersheet::method {

inline const Catalogue& the_catalogue() {
    static const Catalogue kCatalogue = *Catalogue::read(schema::kinds_json());
    return kCatalogue;
}

inline const Kind& the_kind(std::string_view name) {
    const Kind* kind = the_catalogue().find(name);
    if (kind == nullptr) throw std::logic_error("no such kind in the catalogue: " + std::string(name));
    return *kind;
}

// Everyone whose name is a name has the id "p-" and that name; "Nobody" is unknown.
inline Result<std::string> some_person(std::string_view name) {
    if (name == "Nobody") return Fault{Code::person_unknown, "'Nobody' is nobody known here", {}, {}};
    return "p-" + std::string(name);
}

inline Input typed(std::vector<std::pair<std::string, entry::Value>> fields, std::string place = {}) {
    return {std::move(fields),
            std::move(place),
            *entry::parse_time("2026-06-11T12:00:00+01:00"),
            some_person,
            {}};
}

inline Result<Checked> check_typed(std::string_view kind,
                                   std::vector<std::pair<std::string, entry::Value>> fields,
                                   std::string place = {}) {
    return check(the_catalogue(), the_kind(kind), typed(std::move(fields), std::move(place)));
}

} // namespace undersheet::method
