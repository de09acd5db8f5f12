// What the program composes with figures in it, on German papers: why there is no outline, what to look at before ordering,
// what the record lacks for a take-off. The words file is marked, so that what is said past it is found.
#include "paper/order.h"
#include "paper/papers.h"
#include "tests/job/takeoff_site.h"
#include "tests/paper/marked_words.h"
#include "tests/paper/troubled_roof.h"

#include "paper/said.h"
#include "trade/trims.h"

#include <regex>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

using Strings = std::vector<std::string>;

// What a firm typed into its list, left out: it is said as it stands, and is not what is looked for here.
method::PriceList list_without_words() {
    method::PriceList list = test::example_prices();
    list.name = list.currency = "1";
    list.terms.clear();
    for (method::Cost& cost : list.costs) cost.says = "1";
    list.vat->reason = "1";
    return list;
}

// Nothing of it on sale.
method::PriceList without(method::PriceList list, const std::string& item) {
    std::erase_if(list.packs, [&](const method::PackOnSale& pack) { return pack.item == item; });
    return list;
}

test::Site ell_taped(const test::Places& tapes) {
    test::Site site;
    site.opened();
    test::record_edges(site, test::kEllEdges);
    for (const auto& [pair, m] : tapes) site.record("tape", "09:05", R"({"m":)" + m + "}", pair);
    return site;
}

// A rectangle of 4 by 3 m by its four sides, and the tapes given.
test::Site rectangle_taped(const test::Places& more, const std::string& cd_m = "4") {
    test::Site site;
    site.opened();
    test::record_edges(site, {{"AB", "gutter"}, {"BC", "kerb"}, {"CD", "wall"}, {"DA", "kerb"}});
    test::Places tapes{{"AB", "4"}, {"BC", "3"}, {"CD", cd_m}, {"DA", "3"}};
    tapes.insert(tapes.end(), more.begin(), more.end());
    for (const auto& [pair, m] : tapes) site.record("tape", "09:05", R"({"m":)" + m + "}", pair);
    return site;
}

// D hangs on C and A and can point out or in.
test::Site pentagon_that_may_fold() {
    const std::vector<trade::Point> corners{{0, 0}, {4.4, 0.4}, {1.9, 1.7}, {2.6, 4.6}, {-1.2, 2.9}};
    test::Site site;
    site.opened();
    test::record_edges(site,
                       {{"AB", "gutter"}, {"BC", "kerb"}, {"CD", "kerb"}, {"DE", "kerb"}, {"EA", "kerb"}});
    for (const std::string pair : {"AB", "BC", "CD", "DE", "EA", "AC", "AD"}) {
        const auto at = [&](char corner) { return corners[static_cast<std::size_t>(corner - 'A')]; };
        const double m = trade::distance_m(at(pair[0]), at(pair[1]));
        site.record("tape", "09:05", R"({"m":)" + shortest(m, 6) + "}", pair);
    }
    return site;
}

Setting setting_in(const Words& words, const method::PriceList* prices) {
    Setting setting = test::test_setting(words);
    setting.prices = prices;
    return setting;
}

const Words& german_words() { return **Words::of("de"); }

Result<Document> made_in(const Words& words, std::string_view paper, const test::Site& site,
                         const method::PriceList* prices) {
    const auto job = site.fold("18:00");
    const auto judged = job::judge(job, test::default_method(), test::default_kinds());
    return make_paper(paper, job, judged, setting_in(words, prices));
}

Strings past_the_words(std::string_view paper, const test::Site& site,
                       const method::PriceList* prices = nullptr) {
    static const Words marked = test::marked_words("de");
    auto made = made_in(marked, paper, site, prices);
    REQUIRE(made.ok());
    return test::said_past_the_words(*made, site.fold("18:00"));
}

std::string on_one_line(const std::string& text) {
    return std::regex_replace(text, std::regex(R"(\s+)"), " ");
}

std::string german_paper(std::string_view paper, const test::Site& site,
                         const method::PriceList* prices = nullptr) {
    const auto made = made_in(german_words(), paper, site, prices);
    REQUIRE(made.ok());
    return on_one_line(test::words_of(*made));
}

void says(const std::string& text, const std::string& words) {
    CAPTURE(words);
    const bool found = text.find(words) != std::string::npos;
    CHECK(found);
}

// How the German papers say why the tapes fix no outline.
std::string why_in_german(const test::Site& site) {
    const auto job = site.fold("18:00");
    const Said said(job, german_words(), test::default_kinds());
    CHECK_FALSE(job.roof.outline_says.empty());
    CHECK(job.roof.outline_says == job.roof.outline_says_as.text);
    return said.again(job.roof.outline_says_as);
}

} // namespace

TEST_CASE("no English that the program composed is left on a German order with much to look at first") {
    auto site = test::ell();
    site.record("tape", "09:20", R"({"m":3.7})", "AB");
    site.record("edge", "09:30", R"({"kind":"wall"})", "FA"); // nobody says what wall it is
    const auto list = without(without(list_without_words(), "outlet"), "primer");
    CHECK(test::taken_off(site, &list).remarks.size() == 3);
    CHECK(past_the_words("order", site, &list) == Strings());
    const std::string text = german_paper("order", site, &list);
    says(text, "Die Bahn nicht bestellen: Die Maße widersprechen sich um");
    says(text, "Was die Wand an FA ist, wurde nicht gesagt");
    says(text, "kein Preis für Primer, Ablauf");
    says(text, "nicht auf der Preisliste");
}

TEST_CASE("no English that the program composed is left on a German offer") {
    const auto list = list_without_words();
    CHECK(past_the_words("offer", test::ell(), &list) == Strings());
}

TEST_CASE("a fault of a computation is said in German with its figures and limits") {
    const Fault fault = trade::trim_pieces({.run_mm = 2'000'000, .stock_mm = 2500, .joint_mm = 4}).fault();
    const job::Worded worded = job::fault_worded(fault);
    CHECK(worded.text == one_line(fault));
    const auto job = test::ell().fold("18:00");
    CHECK(Said(job, german_words(), test::default_kinds()).again(worded) ==
          "Länge am Stück, mm: 2000000 kann nicht sein; möglich ist 1 bis 1000000");
}

TEST_CASE("no English that the program composed is left in the German office file of a job with tins used") {
    auto site = test::ell();
    for (const char* label : {"F1", "F2"})
        site.record("tin", "09:20",
                    R"({"label":")" + std::string(label) +
                        R"(","product":"deck_adhesive","size_l":10,"count":1})");
    site.record("use", "10:00", R"({"tin":"F1","amount_l":4})", "", "field/1");
    site.record("use", "11:00", R"({"tin":"F2"})", "", "field/1");
    const auto list = list_without_words();
    CHECK(past_the_words("office", site, &list) == Strings());
    says(german_paper("office", site, &list), "1 Verwendung ohne Menge");
}

TEST_CASE("no English that the program composed is left on German papers of a roof its tapes do not fix") {
    const auto loose = ell_taped({{"AB", "3.6"}, {"BC", "1.5"}});
    for (const char* paper : {"inspection", "office"}) {
        CAPTURE(paper);
        CHECK(past_the_words(paper, loose) == Strings());
        says(german_paper(paper, loose),
             "Das Aufmaß legt den Umriss nicht fest: mit diesen Maßen ist eine Ecke noch beweglich; als "
             "Nächstes CD messen.");
    }
    says(german_paper("office", loose),
         "in der Aufzeichnung fehlt: ein Umriss: Das Aufmaß legt ihn nicht fest, mit diesen Maßen");
}

TEST_CASE("each reason for which tapes fix no outline is said in German, its figures with a comma") {
    CHECK(why_in_german(rectangle_taped({})) ==
          "mit diesen Maßen ist eine Ecke noch beweglich; als Nächstes AC messen");
    CHECK(why_in_german(rectangle_taped({{"AC", "7.25"}})) ==
          "Maß AC: 7,25 m ist nicht kürzer als der Weg über B, 7 m; die drei Seiten dieses Dreiecks noch "
          "einmal messen");
    CHECK(why_in_german(rectangle_taped({{"AE", "5"}})) ==
          "Maß AE: keine Ecke E; zwei Ecken des Umrisses nennen");
    CHECK(why_in_german(rectangle_taped(test::Places(197, {"AC", "5"}))) ==
          "201 Maße; ein Dach wird aus höchstens 200 gerechnet; die zurücknehmen, die noch einmal gemessen "
          "wurden");
    CHECK(why_in_german(pentagon_that_may_fold()) ==
          "diese Maße passen auf zwei verschiedene Dächer; als Nächstes BD messen: Es sind etwa 4,57 m oder "
          "1,74 m");
}

TEST_CASE("what a record lacks for a take-off is said in German, with the names as they were typed") {
    test::Site bare;
    bare.opened();
    CHECK(past_the_words("office", bare) == Strings());
    says(german_paper("office", bare), "in der Aufzeichnung fehlt: jede Kante.");
    auto site = test::ell();
    site.record("edge", "09:30", R"({"kind":"not_looked"})", "BC");
    site.record("opening", "09:30", R"({"label":"R2","type":"rooflight","size_x_mm":600})", "4.5,3.0");
    says(german_paper("office", site), "in der Aufzeichnung fehlt: was Kante BC ist: Rinne, freier Rand oder "
                                       "Wand, das Maß dachaufwärts von R2, "
                                       "die Aufkantung von R2.");
}

TEST_CASE("openings that fill the deck are said in German") {
    auto site = test::ell();
    site.record("opening", "09:30",
                R"({"label":"R2","type":"rooflight","size_x_mm":5000,"size_y_mm":4500,"upstand_mm":150})",
                "3.0,3.0");
    says(german_paper("office", site), "die Durchdringungen nehmen mehr Fläche ein");
}
