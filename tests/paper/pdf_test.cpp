#include "paper/pdf.h"

#include "base/text.h"
#include "paper/papers.h"
#include "tests/paper/pdf_words.h"
#include "tests/paper/sample.h"
#include "tests/paper/troubled_roof.h"

using namespace undersheet;
using namespace undersheet::paper;

namespace {

pdf::File pages_of(const Document& paper) { return pdf_pages(paper, Words::english()); }

Document paper_with(std::vector<Block> blocks) {
    Document paper;
    paper.head.name = "Deck inspection";
    paper.blocks = std::move(blocks);
    return paper;
}

std::vector<Document> papers_of_the_troubled_roof() {
    const auto job = test::troubled_roof().fold(test::kHandedOver);
    const auto judged = job::judge(job, test::default_method(), test::default_kinds());
    std::vector<Document> papers;
    for (const char* name : {"inspection", "stages", "punch", "completion"})
        papers.push_back(*make_paper(name, job, judged, test::test_setting()));
    return papers;
}

const test::Placed* found(const std::vector<test::Placed>& all, std::string_view text) {
    for (const test::Placed& placed : all)
        if (placed.letters.text == text) return &placed;
    return nullptr;
}

} // namespace

TEST_CASE("a PDF says every word of its paper, in the order of the paper") {
    auto papers = papers_of_the_troubled_roof();
    papers.push_back(test::usual_paper());
    for (const Document& paper : papers) {
        const std::string said = test::words_on(pages_of(paper));
        std::size_t at = 0;
        for (const std::string& text : test::texts_of(paper)) {
            INFO(paper.head.name << ": " << text);
            const std::size_t found = said.find(test::without_blanks(text), at);
            REQUIRE(found != std::string::npos);
            at = found;
        }
        const Head& head = paper.head;
        for (const std::string& text : {head.firm, head.firm_address, head.firm_phone, head.name, head.job,
                                        head.roof, head.customer, head.customer_address, head.date})
            CHECK(said.find(test::without_blanks(text)) != std::string::npos);
    }
}

TEST_CASE("nothing runs off a page, however long a name is") {
    CHECK(test::off_the_page(pages_of(test::usual_paper())) == "");
    for (const Document& paper : papers_of_the_troubled_roof())
        CHECK(test::off_the_page(pages_of(paper)) == "");
    const std::string wide(200, 'W');
    std::string parted;
    for (int i = 0; i < 600; ++i) parted += "word ";
    for (const std::string& name : {std::string(), wide, wide + wide + wide + wide, parted, parted + wide}) {
        const pdf::File file = pages_of(test::hostile_paper(name));
        CHECK(test::off_the_page(file) == "");
        const std::string said = test::words_on(file);
        CHECK(std::count(said.begin(), said.end(), 'W') >= 20 * std::count(name.begin(), name.end(), 'W'));
    }
}

TEST_CASE("the pages are numbered, and every page after the first says whose they are") {
    std::vector<Block> blocks(120, Paragraph{"One line of many."});
    Document paper = paper_with(blocks);
    paper.head.firm = "Harrow & Finch";
    const auto all = test::letters_of(pages_of(paper));
    REQUIRE(found(all, "Page 1 of 4") != nullptr);
    CHECK(found(all, "Page 4 of 4")->page == 3);
    for (std::size_t page = 1; page < 4; ++page)
        CHECK(std::any_of(all.begin(), all.end(), [&](const test::Placed& placed) {
            return placed.page == page && placed.letters.text == "Harrow & Finch";
        }));
}

TEST_CASE("a heading is never the last thing on a page, nor a table's header") {
    for (int lines = 0; lines < 60; ++lines) {
        std::vector<Block> blocks(static_cast<std::size_t>(lines), Paragraph{"A line."});
        blocks.emplace_back(Heading{2, "Moisture"});
        blocks.emplace_back(Heading{3, "By point"});
        blocks.emplace_back(Table{"Six points", {{"Point"}}, {{{"P1"}}}});
        const auto all = test::letters_of(pages_of(paper_with(blocks)));
        CAPTURE(lines);
        for (const char* kept : {"Moisture", "By point", "Six points", "Point"})
            CHECK(found(all, kept)->page == found(all, "P1")->page);
    }
}

TEST_CASE("neither the first nor the last of several facts stands alone on a page, nor a small drawing "
          "without its words") {
    Drawing code = Drawing{"code", 40, 40, {}, {}};
    code.label({1, 5}, "code");
    for (int lines = 0; lines < 60; ++lines) {
        std::vector<Block> blocks(static_cast<std::size_t>(lines), Paragraph{"A line."});
        blocks.emplace_back(Facts{{{"first", "1"}, {"second", "2"}, {"third", "3"}, {"last", "4"}}});
        blocks.emplace_back(Paragraph{"This is what the code is for."});
        blocks.emplace_back(code);
        const auto all = test::letters_of(pages_of(paper_with(blocks)));
        CAPTURE(lines);
        CHECK(found(all, "first")->page == found(all, "second")->page);
        CHECK(found(all, "third")->page == found(all, "last")->page);
        CHECK(found(all, "This is what the code is for.")->page == found(all, "code")->page);
    }
}

TEST_CASE("a paragraph that is kept with the next stands on its page, under its heading") {
    for (std::size_t lines = 0; lines < 60; ++lines) {
        std::vector<Block> blocks(lines, Paragraph{"line"});
        blocks.emplace_back(Heading{2, "Receipt"});
        blocks.emplace_back(Paragraph{"whatfor", true});
        blocks.emplace_back(Paragraph{"figures", true});
        blocks.emplace_back(Paragraph{"after"});
        const auto all = test::letters_of(pages_of(paper_with(blocks)));
        INFO(lines);
        for (const char* kept : {"Receipt", "whatfor", "figures"})
            CHECK(found(all, kept)->page == found(all, "after")->page);
    }
}

TEST_CASE("a table that goes on overleaf begins there with its header, and no row is parted") {
    Table table{"", {{"Point"}, {"What it says"}}, {}};
    for (int i = 0; i < 200; ++i)
        table.rows.push_back({{"P" + std::to_string(i), "first\nlast"}, {"beneath"}});
    const pdf::File file = pages_of(paper_with({table}));
    REQUIRE(file.pages.size() > 5);
    std::vector<int> headers(file.pages.size()), firsts(headers), lasts(headers), beneath(headers);
    for (const test::Placed& placed : test::letters_of(file)) {
        headers[placed.page] += placed.letters.text == "Point" ? 1 : 0;
        firsts[placed.page] += placed.letters.text == "first" ? 1 : 0;
        lasts[placed.page] += placed.letters.text == "last" ? 1 : 0;
        beneath[placed.page] += placed.letters.text == "beneath" ? 1 : 0;
    }
    CHECK(firsts == lasts);
    CHECK(firsts == beneath);
    for (std::size_t page = 0; page < headers.size(); ++page)
        CHECK(headers[page] == (firsts[page] > 0 ? 1 : 0));
}

TEST_CASE("figures stand to the right and are not broken beside long words") {
    const std::string story(400, 'x');
    const Table table{"",
                      {{"Where"}, {"Read, mm", Column::figures}, {"What it says"}},
                      {{{"A", "1 097.25", story + " " + story}}, {{"B", "-3", "short"}}}};
    const auto all = test::letters_of(pages_of(paper_with({table})));
    const auto* wide = found(all, "1 097.25");
    const auto* thin = found(all, "-3");
    REQUIRE(wide != nullptr);
    REQUIRE(thin != nullptr);
    CHECK(wide->letters.at.x_pt + test::width_pt(wide->letters) ==
          Approx(thin->letters.at.x_pt + test::width_pt(thin->letters)));
}

TEST_CASE("characters that cannot be drawn are boxes, and the last line names them") {
    const std::string name = "\xE4\xB8\xAD\xE6\x96\x87 \xF0\x9F\x8F\xA0 Jos\xC3\xA9 \xD7\xA9\xD7\x9C 12 "
                             "\xE2\x89\xA5 \xC2\xBD \xFF!";
    const pdf::File file = pages_of(paper_with({Paragraph{name}, Paragraph{"behind it"}}));
    const std::string said = test::words_on(file);
    CHECK(said.find("\xE2\x96\xA1\xE2\x96\xA1\xE2\x96\xA1"
                    "Jos\xC3\xA9\xE2\x96\xA1\xE2\x96\xA1"
                    "12\xE2\x89\xA5\xC2\xBD\xE2\x96\xA1!behindit") != std::string::npos);
    const std::string line =
        "Not drawn here and shown as \xE2\x96\xA1: U+05DC, U+05E9, U+4E2D, U+6587, U+FFFD, "
        "U+1F3E0. The HTML paper and the record hold them.";
    CHECK(said.ends_with(test::without_blanks(line)));
    CHECK(test::words_on(pages_of(paper_with({Paragraph{"plain"}}))).find("Notdrawn") == std::string::npos);
}

TEST_CASE("whatever anybody wrote, every letter that is set can be drawn") {
    for (const auto& attack : {std::string("\x01\x02\x7F"), std::string("\xE2\x80\xAEtxt"),
                               std::string("a\tb\r\nc"), std::string("\xED\xA0\x80"), std::string("\xF5")})
        for (const test::Placed& placed : test::letters_of(pages_of(test::hostile_paper(attack))))
            for (std::string_view rest = placed.letters.text; !rest.empty();)
                REQUIRE(pdf::font(placed.letters.face).draws(take_character(rest).code));
}

TEST_CASE("the same paper gives the same bytes, and another gives others") {
    const std::string once = render_pdf(test::usual_paper(), Words::english());
    CHECK(once == render_pdf(test::usual_paper(), Words::english()));
    Document changed = test::usual_paper();
    changed.blocks.emplace_back(Paragraph{"more"});
    CHECK(once != render_pdf(changed, Words::english()));
    CHECK(once.find("/CreationDate") == std::string::npos);
}

TEST_CASE("a day and its time stay on one line of a table of six columns") {
    const Table table{"",
                      {{"Part"}, {"Stands"}, {"Who"}, {"When"}, {"Tins"}, {"Reading"}},
                      {{{"field section 3", "signed", "Bryn Marram", "23 September 2026, 15:01",
                         "FP-33, flashing tape; unknown, primer; LP-7, lap sealant",
                         "23 September 2026, 13:35: air 18 \xC2\xB0"
                         "C, 55 %, deck 23 \xC2\xB0"
                         "C"}}}};
    CHECK(found(test::letters_of(pages_of(paper_with({table}))), "23 September 2026, 15:01") != nullptr);
}

TEST_CASE("headings are bookmarks, one level under the other") {
    const pdf::File file =
        pages_of(paper_with({Heading{3, "Loose"}, Heading{2, "Boards"}, Heading{3, "B1"}, Paragraph{"x"}}));
    REQUIRE(file.bookmarks.size() == 3);
    CHECK(file.bookmarks[0].level == 1);
    CHECK(file.bookmarks[1].title == "Boards");
    CHECK(file.bookmarks[2].level == 2);
    CHECK(file.title == "Deck inspection");
    CHECK(file.language == "en");
}

TEST_CASE("four hundred findings fill their pages and none is lost or parted") {
    std::vector<Block> blocks;
    for (int i = 1; i <= 400; ++i)
        blocks.emplace_back(
            Item{std::to_string(i), "stop", "board is wet", {{"Limit", "20 %"}, {"Clears", "dry"}}});
    const pdf::File file = pages_of(paper_with(blocks));
    CHECK(test::off_the_page(file) == "");
    CHECK(file.pages.size() > 20);
    const std::string said = test::words_on(file);
    for (int i = 1; i <= 400; ++i)
        CHECK(said.find(std::to_string(i) + ".stop:boardiswetLimit20%Clearsdry") != std::string::npos);
    CHECK(pages_of(paper_with({})).pages.size() == 1);
}
