// Names made by chance: of an entry before it has its hash, of a job, of a person.
//
// Promises: two devices never make the same name by accident (74, 128 and 40 random bits; persons are few).
// Does not: say anything about order or time; the milliseconds in a UUIDv7 only keep an index compact.
// Source: RFC 9562 section 5.7 for UUIDv7.
#pragma once

#include "entry/world.h"

namespace undersheet::entry {

[[nodiscard]] std::string new_entry_id(World& world); // a UUIDv7
[[nodiscard]] std::string new_job(World& world);      // 32 hexadecimal digits
[[nodiscard]] std::string new_person(World& world);   // "p" and 10 hexadecimal digits

// Do the names have that form? An author may also be "" before there are people.
[[nodiscard]] bool is_entry_id(std::string_view text);
[[nodiscard]] bool is_job(std::string_view text);
[[nodiscard]] bool is_person(std::string_view text);
[[nodiscard]] bool is_hex(std::string_view text, std::size_t digits); // exactly so many, lower case

} // namespace undersheet::entry
