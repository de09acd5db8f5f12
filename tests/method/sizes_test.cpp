// The files a firm may bring, padded to the greatest size they may have and one byte beyond.
#include "method/kinds.h"
#include "method/method.h"
#include "method/prices.h"
#include "schema/embedded.h"

#include <catch2/catch.hpp>

using namespace undersheet;

namespace {

constexpr std::size_t kMost = 16U << 20U;

std::string padded(std::string_view text, std::size_t bytes) {
    return std::string(text) + std::string(bytes - text.size(), ' ');
}

// Calls `read` with the text at, just under and just over the limit.
template <class Read>
void check_size(std::string_view text, Read read) {
    CHECK(read(padded(text, kMost - 1)).ok());
    CHECK(read(padded(text, kMost)).ok());
    const auto refused = read(padded(text, kMost + 1));
    REQUIRE_FALSE(refused.ok());
    CHECK(one_line(refused.fault()).find("16777217 bytes of JSON, at most 16777216 are read") !=
          std::string::npos);
}

} // namespace

TEST_CASE("a catalogue of sixteen mebibytes is read and one more byte is refused") {
    check_size(schema::kinds_json(), method::Catalogue::read);
}

TEST_CASE("a method file of sixteen mebibytes is read and one more byte is refused") {
    check_size(schema::method_json(), method::Method::read);
}

TEST_CASE("a price list of sixteen mebibytes is read and one more byte is refused") {
    check_size(schema::prices_example_json(), method::PriceList::read);
}
