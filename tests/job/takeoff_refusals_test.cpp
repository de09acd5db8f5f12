// What the take-off does without: a record that lacks something, a price list that does, a method that does.
#include "base/text.h"
#include "tests/job/takeoff_site.h"

using namespace undersheet;
using test::amount;
using test::line;
using test::Site;
using test::taken_off;

namespace {

Fault refusal(const Site& site) {
    const auto made = job::take_off(site.fold("18:00"), site.method(), &test::example_prices());
    REQUIRE_FALSE(made.ok());
    return made.fault();
}

test::Places without(const std::string& edge) {
    test::Places edges;
    for (const auto& row : test::kEllEdges)
        if (row.first != edge) edges.push_back(row);
    return edges;
}

method::PriceList list_with(const std::string& what, const std::string& by) {
    const std::string text(schema::prices_example_json());
    REQUIRE(text.find(what) != std::string::npos);
    auto list = method::PriceList::read(replaced(text, what, by));
    if (!list) throw std::runtime_error(one_line(list.fault()));
    return *std::move(list);
}

method::Method method_with(const std::string& what, const std::string& by) {
    const std::string text(schema::method_json());
    REQUIRE(text.find(what) != std::string::npos);
    auto read = method::Method::read(replaced(text, what, by));
    if (!read) throw std::runtime_error(one_line(read.fault()));
    return *std::move(read);
}

} // namespace

TEST_CASE("a job with nothing recorded is refused: no edge is there") {
    Site site;
    site.opened();
    const Fault fault = refusal(site);
    CHECK(fault.code == Code::record_too_thin);
    CHECK(fault.detail == "the record lacks every edge");
    CHECK(fault.clears == "undersheet record edge kind=gutter --at AB");
}

TEST_CASE("the edge that is not recorded is named") {
    CHECK(refusal(test::ell(without("DE"))).detail == "the record lacks the edge DE");
    CHECK(refusal(test::ell(without("AB"))).detail == "the record lacks the edge AB");
    CHECK(refusal(test::ell(without("FA"))).clears == "undersheet record edge kind=wall --at FA");
}

TEST_CASE("an edge whose kind nobody looked at is refused by name") {
    auto site = test::ell();
    site.record("edge", "09:30", R"({"kind":"not_looked"})", "CD");
    CHECK(refusal(site).detail == "the record lacks what edge CD is: gutter, kerb or wall");
}

TEST_CASE("edges without a tape, or with too few, are refused with the tape to take") {
    Site site;
    site.opened();
    test::record_edges(site, test::kEllEdges);
    CHECK(refusal(site).detail == "the record lacks an outline: there is no tape");
    site.record("tape", "09:05", R"({"m":3.6})", "AB");
    CHECK(refusal(site).detail.starts_with("the record lacks an outline: the tapes do not fix it, "));
}

TEST_CASE("all that is missing stands in one line") {
    auto site = test::ell();
    site.record("edge", "09:30", R"({"kind":"not_looked"})", "BC");
    site.record("opening", "09:30", R"({"label":"R2","type":"rooflight","size_x_mm":600})", "4.5,3.0");
    const Fault fault = refusal(site);
    CHECK(fault.detail == "the record lacks what edge BC is: gutter, kerb or wall, size_y_mm of R2, "
                          "upstand_mm of R2");
    CHECK(fault.clears.find("opening label=R2 size_y_mm=…") != std::string::npos);
}

TEST_CASE("openings that fill the deck are refused") {
    auto site = test::ell();
    site.record("opening", "09:30",
                R"({"label":"R2","type":"rooflight","size_x_mm":5000,"size_y_mm":4500,"upstand_mm":150})",
                "3.0,3.0");
    CHECK(refusal(site).detail.find("more than the deck") != std::string::npos);
}

TEST_CASE("without a price list there are amounts, and no packs, lengths or money") {
    const auto made = taken_off(test::ell(), nullptr);
    CHECK(amount(made, "deck_adhesive") == "12.0505 l");
    CHECK(amount(made, "sheet") == "35.475 m2"); // 6.450 x 5.500, whatever is on sale
    CHECK(amount(made, "plate") == "6 m");
    CHECK(amount(made, "hours") == "26.037 h");
    CHECK(made.trims.empty());
    CHECK(made.line("pins") == nullptr); // counted by the piece
    CHECK(made.of("price").empty());
    for (const auto& one : made.lines) {
        INFO(one.name);
        CHECK_FALSE(one.price.has_value());
        CHECK(one.packs.empty());
    }
}

TEST_CASE("a pack without a price is still chosen, and there is no total") {
    const auto list = list_with(R"("unit": "m", "price": 990)", R"("unit": "m")");
    const auto made = taken_off(test::ell(), &list);
    CHECK(test::bought(made, "foam") == "1 x 10 without price");
    CHECK(line(made, "foam").remark.text == "a pack of it has no price");
    CHECK(made.line("net") == nullptr);
    CHECK(test::remarks(made) == std::vector<std::string>{"no total: no price for foam strip"});
}

TEST_CASE("an article that is not on the price list is said to be missing") {
    const auto list = list_with(R"(  {"item": "primer", "size": 0.25, "unit": "l", "price": 980},)", "");
    const auto made = taken_off(test::ell(), &list);
    CHECK(line(made, "primer").remark.text == "not on the price list");
    CHECK(line(made, "primer").packs.empty());
    CHECK(made.line("total") == nullptr);
}

TEST_CASE("no roll wide enough leaves the sheet without a price, and says what the roof takes") {
    auto list = test::example_prices();
    list.rolls.resize(2); // 3.05 and 4.60
    const auto made = taken_off(test::ell(), &list);
    CHECK_FALSE(made.sheet.has_value());
    CHECK(amount(made, "sheet") == "35.475 m2");
    CHECK(line(made, "sheet").remark.text == "no roll on the price list is wide enough for one piece");
    CHECK(made.line("total") == nullptr);
}

TEST_CASE("a price list without a VAT rate ends at the net price") {
    const auto list = list_with(
        R"(,
 "vat": {"rate": "standard", "pct": 20, "reason": "a whole covering is standard-rated"})",
        "");
    const auto made = taken_off(test::ell(), &list);
    CHECK(line(made, "net").price == 299398);
    CHECK(made.line("total") == nullptr);
    CHECK(test::remarks(made) == std::vector<std::string>{"no VAT: the price list chooses no rate"});
}

TEST_CASE("a method written before there was a take-off is refused by the first rate it lacks") {
    const auto old = method_with(R"("key": "field_cover_m2_l")", R"("key": "field_cover")");
    const auto made = job::take_off(test::ell().fold("18:00"), old, nullptr);
    REQUIRE_FALSE(made.ok());
    CHECK(made.fault().detail == "the take-off asks for 'field_cover_m2_l', which is not there");
}

TEST_CASE("a rate that is divided by may not be 0") {
    const auto wrong =
        method_with(R"("key": "kerb_hole_mm", "value": 200)", R"("key": "kerb_hole_mm", "value": 0)");
    const auto made = job::take_off(test::ell().fold("18:00"), wrong, nullptr);
    REQUIRE_FALSE(made.ok());
    CHECK(made.fault().detail == "'kerb_hole_mm' is 0");
}

TEST_CASE("another allowance changes the line it stands in, and the line names it") {
    const auto own =
        method_with(R"("key": "field_spare_pct", "value": 10)", R"("key": "field_spare_pct", "value": 20)");
    const auto made = job::take_off(test::ell().fold("18:00"), own, nullptr);
    REQUIRE(made.ok());
    CHECK(amount(*made, "deck_adhesive") == "13.146 l");
    const auto& allowances = line(*made, "deck_adhesive").allowances;
    REQUIRE(allowances.size() == 3);
    CHECK(allowances[2]->key == "field_spare_pct");
    CHECK(allowances[2]->mark == "P");
}

TEST_CASE("tapes that disagree too much to order by are said so, at the limit they are not") {
    auto site = test::ell();
    CHECK(taken_off(site).remarks.empty());
    site.record("tape", "09:20", R"({"m":3.7})", "AB");
    const auto made = taken_off(site);
    REQUIRE(made.remarks.size() == 1);
    CHECK(made.remarks.front().text.starts_with("do not order the sheet: the tapes disagree by "));
}

TEST_CASE("an amount beyond anything on a roof is refused, not thrown") {
    const auto method = method_with("\"key\": \"crew_day_h\", \"value\": 7.5",
                                    "\"key\": \"crew_day_h\", \"value\": 0.00000000000001");
    const auto made = job::take_off(test::ell().fold("18:00"), method);
    REQUIRE_FALSE(made.ok());
    CHECK(made.fault().code == Code::value_impossible);
    CHECK(made.fault().detail == "an amount comes out beyond anything on a roof");
}
