// From what somebody typed to the data of an entry: every field read, missing ones filled or refused, the place looked at.
//
// Promises: the first thing wrong is one fault that names kind and field ("moisture reading_pct: 75 % is outside 0 to 60").
//   What is unusual but possible is kept and comes back as a question, one line each. Personal values never stand in data
//   or raw. Everything it knows comes from the catalogue.
// Does not: know whether the place is on this roof, the part is on this job, or the tin was delivered; that is job's.
// Threads: pure, as far as the function that finds people is.
#pragma once

#include "entry/value.h"
#include "method/kinds.h"
#include "method/typed.h"

#include <map>
#include <utility>

namespace undersheet::method {

struct Input {
    std::vector<std::pair<std::string, entry::Value>> typed =
        {}; // text of field=value, or values of JSON Lines
    std::string place = {};
    entry::Time when = {};
    FindPerson person = {};
    // Data that stands already (the entry a correction is about, or what was filled before). A field in it need not be
    // typed again, and rules between fields see it; it is not copied.
    entry::Value before = {};
};

struct Checked {
    entry::Value data = {};
    entry::Value raw = {}; // {field: what was typed}, only where it reads differently
    std::map<std::string, std::string> personal = {}; // field -> value
    std::string place = {};                           // as places are written
    std::vector<std::string> questions = {};
};

[[nodiscard]] Result<Checked> check(const Catalogue& catalogue, const Kind& kind, const Input& input);

} // namespace undersheet::method
