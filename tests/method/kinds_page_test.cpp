#include "method/kinds_page.h"

#include "base/text.h"
#include "tests/support/catalogue.h"

#include <fstream>
#include <sstream>

using namespace undersheet;
using namespace undersheet::method;

namespace {

const std::string kPage = std::string(UNDERSHEET_SOURCE_DIR) + "/docs/kinds.md";

std::string file_text(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

} // namespace

TEST_CASE("the page in docs is the one that the catalogue makes") {
    // Differs? Run test_method "[write-pages]" and look at what changed.
    CHECK((file_text(kPage) == kinds_page(the_catalogue())));
}

// Hidden: writes the page again, when the catalogue was changed on purpose.
TEST_CASE("writing the page of kinds again", "[.][write-pages]") {
    std::ofstream(kPage, std::ios::binary) << kinds_page(the_catalogue());
    CHECK(file_text(kPage) == kinds_page(the_catalogue()));
}

TEST_CASE("the page and the help name every field of every kind with its prompt") {
    const std::string page = kinds_page(the_catalogue());
    for (const Kind& kind : the_catalogue().kinds()) {
        const std::string help = replaced(kind_help(kind), "\n", " ");
        CHECK(page.find("### " + kind.name + ": " + kind.heading) != std::string::npos);
        for (const Field& field : kind.fields) {
            INFO(kind.name << " " << field.name);
            CHECK(page.find("| `" + field.name + "`") != std::string::npos);
            CHECK(help.find("  " + field.name + " ") != std::string::npos);
        }
    }
}

TEST_CASE("help keeps to 80 columns, but for the example") {
    for (const Kind& kind : the_catalogue().kinds()) {
        for (const std::string& line : split(kind_help(kind), '\n')) {
            INFO(line);
            CHECK((line == "  " + kind.example || character_count(line) <= 80));
        }
    }
}

TEST_CASE("what a field takes is said with unit, range and usual values") {
    CHECK(field_takes(*the_kind("moisture").field("reading_pct")) ==
          "a number in %, 0 to 60, usually 7 to 28");
    CHECK(field_takes(*the_kind("heads").field("checked")) == "a whole number, 1 to 100000");
    CHECK(field_takes(*the_kind("board").field("soft")) ==
          "none (firm), springy (gives and comes back), soft (gives and stays)");
    CHECK(field_takes(*the_kind("leave_out").field("why")) == "text, 10 characters or more");
}

TEST_CASE("help shows where, how a later entry counts, the fields and an example") {
    CHECK(kind_help(the_kind("chase")) ==
          R"(chase: Chase heights
From the deck to the underside of the slot, at one point of a wall. At a point
along an edge, like AB+1.20; or two corners, like AB. A later entry with the
same place takes the place of the earlier one.

  height_mm *  from the deck to the underside of the slot: a number in mm, 0 to
               600, usually 75 to 450. Look twice: only one reading, or the same
               to the millimetre over 4 m
  on           what it was measured on: bare (the bare deck), insulation (with
               the insulation on), finished (the finished roof)
  note         anything to add: text

  undersheet record chase height_mm=165 on=finished --at CD+0.10
)");
}
