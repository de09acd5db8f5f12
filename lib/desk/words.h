// An entry in words: what it says, who said it, and what has to be known about its times. Only the desk includes this.
//
// Promises: a figure stands as it was typed, with its unit; a personal value only while the book still holds it;
//   people by their names, never by the number they have in the book.
#pragma once

#include "desk/answers.h"
#include "job/job.h"

namespace undersheet::desk {

// "air 13 °C, rh 66 %, wind 6mph": the fields in the order of the catalogue.
[[nodiscard]] std::string entry_words(const job::Job& job, const entry::Entry& entry,
                                      const method::Kind* kind);
[[nodiscard]] std::string field_words(const job::Job& job, const method::Kind* kind, const std::string& field,
                                      const entry::Value& value);
[[nodiscard]] std::string value_words(const entry::Value& value);

// Written later, ahead of the clock, clock set by hand.
[[nodiscard]] Lines marks_of(const entry::Entry& entry, const method::Method& method);

[[nodiscard]] std::string heading_of(const method::Catalogue& kinds, const std::string& kind); // "air"
[[nodiscard]] std::string by_words(const job::Job& job, const entry::Entry* entry); // "Isolde Pell, 09:45"

} // namespace undersheet::desk
