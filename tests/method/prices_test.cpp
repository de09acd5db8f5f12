#include "method/prices.h"

#include "base/text.h"
#include "schema/embedded.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using method::PriceList;

namespace {

std::string example() { return std::string(schema::prices_example_json()); }

std::string with(const std::string& what, const std::string& by) {
    const std::string text = example();
    REQUIRE(text.find(what) != std::string::npos);
    return replaced(text, what, by);
}

// The refusal without its line number, which moves with the file.
std::string refusal(const std::string& text) {
    const auto list = PriceList::read(text);
    if (list) return "";
    CHECK(list.fault().code == Code::prices_malformed);
    CHECK(list.fault().where.starts_with("price list line "));
    return list.fault().detail;
}

} // namespace

TEST_CASE("the example price list reads, and says of itself that it is invented") {
    const auto list = PriceList::read(example());
    REQUIRE(list.ok());
    CHECK(list->name.find("invented") != std::string::npos);
    CHECK(list->currency == "GBP");
    CHECK(list->rolls.size() == 5);
    CHECK(list->packs_of("deck_adhesive").size() == 4);
    CHECK(list->packs_of("deck_adhesive")[2].price == 8900);
    CHECK(list->lengths_of("wall").front().length_mm == 2500);
    CHECK(list->labour_h == 3800);
    REQUIRE(list->vat.has_value());
    CHECK(list->vat->reason == "a whole covering is standard-rated");
}

TEST_CASE("a price that is not given stays unknown, and is not nothing") {
    const auto list = PriceList::read(with(R"("unit": "m", "price": 990)", R"("unit": "m")"));
    REQUIRE(list.ok());
    CHECK_FALSE(list->packs_of("foam").front().price.has_value());
    CHECK(list->packs_of("anything else").empty());
}

TEST_CASE("an article in another unit than it is counted in is refused, with its own") {
    CHECK(refusal(with(R"("item": "foam", "size": 10, "unit": "m")",
                       R"("item": "foam", "size": 10, "unit": "piece")")) ==
          "foam is counted in 'm', not in 'piece'");
    CHECK(refusal(with(R"("item": "wedges", "size": 50)", R"("item": "wedges", "size": 50.5)")) ==
          "a pack of 50.5 wedges");
}

TEST_CASE("what stands twice in a price list is refused") {
    CHECK(refusal(with(R"("size": 5, "unit": "l", "price": 4900)",
                       R"("size": 10, "unit": "l", "price": 4900)")) == "deck_adhesive of 10 stands twice");
    CHECK(refusal(with(R"("width_m": 4.6)", R"("width_m": 3.05)")) == "a roll of that width stands twice");
    CHECK(refusal(with(R"("item": "cover", "length_mm")", R"("item": "plate", "length_mm")")) ==
          "plate of that length stands twice");
}

TEST_CASE("a VAT rate goes with its percentage and has its reason") {
    CHECK(refusal(with(R"("rate": "standard", "pct": 20)", R"("rate": "standard", "pct": 0)")) ==
          "VAT 'standard' at 0 %");
    CHECK(refusal(with(R"("rate": "standard", "pct": 20)", R"("rate": "zero", "pct": 20)")) ==
          "VAT 'zero' at 20 %");
    CHECK(refusal(with(R"("rate": "standard", "pct": 20)", R"("rate": "zero", "pct": 0)")).empty());
    CHECK(refusal(with("a whole covering is standard-rated", "because")).find("vat.reason") == 0);
    CHECK(refusal(with(R"("rate": "standard")", R"("rate": "usual")")).find("vat.rate") == 0);
}

TEST_CASE("a price list with an unknown member, a price in pounds or no currency is refused") {
    CHECK(refusal(with(R"("labour_h")", R"("labour")")).find("labour") != std::string::npos);
    CHECK(refusal(with(R"("labour_h": 3800)", R"("labour_h": 38.5)")).find("labour_h") == 0);
    CHECK(refusal(with(R"("labour_h": 3800)", R"("labour_h": -1)")).find("labour_h") == 0);
    CHECK(refusal(with("GBP", "gbp")) == "'gbp' is no currency");
    CHECK(refusal("{\n").size() > 5);
}

TEST_CASE("every article of the schema has its unit") {
    for (const std::string item : {"deck_adhesive", "flashing_tape", "lap_sealant", "wedges", "foam", "flue"})
        CHECK_FALSE(method::unit_of_item(item).empty());
    CHECK(method::unit_of_item("plate").empty());
}

TEST_CASE("money is written with the digits its currency has") {
    PriceList list;
    list.minor_digits = 2;
    CHECK(list.money(359278) == "3592.78");
    CHECK(list.money(5) == "0.05");
    CHECK(list.money(0) == "0.00");
    list.minor_digits = 0;
    CHECK(list.money(1200) == "1200");
    list.minor_digits = 3;
    CHECK(list.money(1200) == "1.200");
}
