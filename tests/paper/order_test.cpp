// The order and the offer of the L-shaped extension whose take-off was worked with a pencil; prices are the example's, invented.
#include "paper/bars.h"
#include "paper/offer.h"
#include "paper/order.h"
#include "paper/text.h"

#include "tests/job/takeoff_site.h"
#include "tests/paper/approved.h"
#include "tests/paper/troubled_roof.h"

using namespace undersheet;
using namespace undersheet::paper;

namespace {

Setting with_prices(const method::PriceList& prices = test::example_prices()) {
    Setting setting = test::test_setting();
    setting.prices = &prices;
    return setting;
}

test::Site named_ell() {
    test::Site site = test::ell();
    site.record("site", "09:00", R"({"access_text":"by the side gate","customer":"kept apart"})");
    return site;
}

template <class Make>
Result<Document> made(Make make, const test::Site& site, const Setting& setting) {
    const auto job = site.fold("18:00");
    return make(job, job::judge(job, test::default_method(), test::default_kinds()), setting);
}

std::string order_words(const test::Site& site, const Setting& setting = with_prices()) {
    return test::words_of(*made(order, site, setting));
}

std::string offer_words(const test::Site& site, const Setting& setting = with_prices()) {
    return test::words_of(*made(offer, site, setting));
}

bool says(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

} // namespace

TEST_CASE("the order of the L is the approved one") {
    CHECK(test::differs_from_approved(
              "order.txt",
              render_text(test::settled(*made(order, named_ell(), with_prices())), Words::english())) == "");
}

TEST_CASE("the offer for the L is the approved one") {
    CHECK(test::differs_from_approved(
              "offer.txt",
              render_text(test::settled(*made(offer, named_ell(), with_prices())), Words::english())) == "");
}

TEST_CASE("the order says how much, as which packs, for how much, and the sum") {
    const std::string text = order_words(named_ell());
    CHECK(says(text, "19 lines to order: £960.77."));
    CHECK(says(text, "6.50 m off the roll of 6.10 m"));
    CHECK(says(text, "1 × 10 L, 1 × 2.5 L"));
    CHECK(says(text, "by the side gate"));
    CHECK(says(text, "about 59.5 kg"));
}

TEST_CASE("the order says how thick the sheet is and its colour, or that no colour is recorded") {
    auto site = named_ell();
    const std::string usual = order_words(site);
    CHECK(says(usual, "The sheet is 1.2 mm thick.")); // what its weight was worked with
    CHECK(says(usual, "No colour is recorded: say which when ordering."));
    site.record("sheet", "09:10", R"({"batch":"SH-1","thickness_mm":1.52,"colour":"slate grey"})");
    const std::string recorded = order_words(site);
    CHECK(says(recorded, "The sheet is 1.52 mm thick."));
    CHECK(says(recorded, "Its colour: slate grey."));
}

TEST_CASE("the order keeps the customer's name to itself") {
    auto site = named_ell();
    const auto paper = made(order, site, with_prices());
    CHECK(paper->head.customer.empty());
    CHECK_FALSE(made(offer, site, with_prices())->head.name.empty());
}

TEST_CASE("a line without a price leaves the order without a sum, and says so") {
    auto prices = test::example_prices();
    prices.packs.pop_back();
    prices.packs.pop_back(); // no outlet
    const std::string text = order_words(named_ell(), with_prices(prices));
    CHECK(says(text, "no sum yet"));
    CHECK(says(text, "no price for outlet"));
    CHECK(says(text, "not on the price list"));
}

TEST_CASE("each bar is drawn to scale with what is cut from it and what is left") {
    const auto takeoff = test::taken_off(test::ell());
    const Drawing kerb = bars_drawing(test::trims(takeoff, "kerb"), "kerb trim", Words::english());
    CHECK(kerb.words == std::vector<std::string>{"1 × 2500: 2500 FA", "1 × 2500: 2294 FA | 203 left",
                                                 "1 × 2500: 1500 BC | 300 FA | 694 left"});
    double drawn = 0;
    for (const Shape& shape : kerb.shapes) {
        const auto* path = std::get_if<Path>(&shape);
        if (path == nullptr) continue;
        drawn += path->spots[1].x_mm - path->spots[0].x_mm;
        CHECK(path->spots[1].x_mm <= kerb.width_mm);
        CHECK(path->spots[2].y_mm <= kerb.height_mm);
    }
    CHECK(drawn == Approx(3 * 151.0 - 9 * 151.0 / 2500)); // three bars, less three cuts of 3 mm
    const Drawing wall = bars_drawing(test::trims(takeoff, "wall"), "wall trim", Words::english());
    CHECK(wall.words[1] == "2 × 2500: 2500 EF");
}

TEST_CASE("the offer gives one price with its VAT and why, and no build-up") {
    const std::string text = offer_words(named_ell());
    CHECK(says(text, "27.0 m², covered with one bonded sheet"));
    CHECK(says(text, "£2993.98"));
    CHECK(says(text, "VAT at 20 % (a whole covering is standard-rated)"));
    CHECK(says(text, "£3592.78"));
    CHECK_FALSE(says(text, "960.77"));
    CHECK_FALSE(says(text, "profit"));
    CHECK(says(text, "9.6 m of wall"));
    CHECK(says(text, "holds until 11 July 2026")); // 30 days from 11 June
    CHECK(says(text, "A third is paid"));
}

TEST_CASE("what was found on the visit is to be settled before the sheet is laid") {
    auto site = named_ell();
    CHECK_FALSE(says(offer_words(site), "We found this on the visit"));
    site.record("moisture", "09:30", R"({"label":"M1","reading_pct":26,"board_c":20})", "1.0,3.0");
    const std::string text = offer_words(site);
    CHECK(says(text, "We found this on the visit"));
    CHECK(says(text, "26"));
    CHECK_FALSE(says(text, "building control"));
}

TEST_CASE("heads that stand proud are told to the customer, though the check of them has no place") {
    auto site = named_ell();
    site.record("heads", "09:30", R"({"total":400,"checked":50,"below":45,"flush":2,"proud":3})");
    const std::string text = offer_words(site);
    CHECK(says(text, "We found this on the visit"));
    CHECK(says(text, "5 of 50"));
    CHECK_FALSE(says(text, "points")); // too few moisture points is our own business
}

TEST_CASE("without a price list or without a total the papers are refused, saying what is missing") {
    for (auto* make : {order, offer}) {
        const auto paper = made(make, named_ell(), test::test_setting());
        CHECK(paper.fault().code == Code::prices_malformed);
        CHECK(says(paper.fault().clears, "--prices"));
    }
    auto prices = test::example_prices();
    prices.labour_h.reset();
    const auto paper = made(offer, named_ell(), with_prices(prices));
    CHECK(paper.fault().code == Code::prices_malformed);
    CHECK(says(paper.fault().detail, "an hour's work"));
    CHECK(made(order, named_ell(), with_prices(prices)));
}

TEST_CASE("a roof that was not taped has no order") {
    test::Site site;
    site.opened();
    CHECK(made(order, site, with_prices()).fault().code == Code::record_too_thin);
}
