// Places: one printed form, which reads as the same place.
#include "entry/place.h"
#include "tests/fuzz/targets.h"

namespace undersheet::fuzz {

void read_a_place(std::string_view bytes) {
    const auto read = entry::parse_place(bytes);
    if (!read) return promise_readable(read.fault());
    const std::string printed = entry::place_text(*read);
    promise(printed.empty() == (read->form == entry::PlaceForm::nowhere), "a place is printed as nothing");
    const auto again = entry::parse_place(printed);
    promise(again.ok(), "'" + printed + "' was printed and cannot be read");
    promise(*again == *read, "'" + printed + "' reads as another place");
    promise(entry::place_text(*again) == printed, "'" + printed + "' prints in a second form");
}

} // namespace undersheet::fuzz
