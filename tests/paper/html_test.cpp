#include "paper/html.h"

#include "base/text.h"
#include "tests/paper/approved.h"
#include "tests/paper/sample.h"

#include <catch2/catch.hpp>

#include <map>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

std::string html_of(const Document& document) { return render_html(document, Words::english()); }

std::size_t times(const std::string& text, const std::string& what) {
    std::size_t found = 0;
    for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + what.size())) ++found;
    return found;
}

// Names of the tags in order of opening and closing, void elements left out; style and its content are dropped.
std::vector<std::string> tags(std::string html) {
    const auto style = html.find("<style>");
    html.erase(style, html.find("</style>") + 8 - style);
    std::vector<std::string> found;
    for (auto at = html.find('<'); at != std::string::npos; at = html.find('<', at + 1)) {
        const std::string name = html.substr(at + 1, html.find_first_of(" >\n", at) - at - 1);
        if (name != "meta" && name != "img" && name != "br" && name != "!DOCTYPE") found.push_back(name);
    }
    return found;
}

// "" when every tag is closed by its own end tag in the right order.
std::string unbalanced(const std::string& html) {
    std::vector<std::string> open;
    for (const std::string& tag : tags(html)) {
        if (tag.front() != '/') {
            open.push_back(tag);
            continue;
        }
        if (open.empty() || "/" + open.back() != tag) return tag;
        open.pop_back();
    }
    return open.empty() ? "" : open.back();
}

} // namespace

TEST_CASE("a usual paper in HTML is the approved one") {
    CHECK(test::differs_from_approved("usual.html", html_of(test::usual_paper())) == "");
}

TEST_CASE("every tag of a page is closed in its order") {
    CHECK(unbalanced(html_of(test::usual_paper())) == "");
    CHECK(unbalanced(html_of(test::hostile_paper("</p></div><b>"))) == "");
    CHECK(unbalanced(html_of(Document{})) == "");
}

TEST_CASE("a name that is markup makes the same tags as a plain name") {
    const auto plain = tags(html_of(test::hostile_paper("x")));
    for (const std::string name :
         {"<script>alert(1)</script>", "</style><script>", "\"><img src=x onerror=alert(1)>", "' onload='x",
          "]]>&#0;<!--", "</title></head>", "&lt;script&gt;", "\\\" } * { display:none"}) {
        CAPTURE(name);
        CHECK(tags(html_of(test::hostile_paper(name))) == plain);
    }
}

TEST_CASE("a name never stands raw in a page: its brackets, quotes and ampersands are always escaped") {
    const std::string page = html_of(test::hostile_paper("<i>\"&'</i>"));
    CHECK(times(page, "<i>") == 0);
    CHECK(times(page, "&lt;i&gt;&quot;&amp;&#39;&lt;/i&gt;") > 30);
}

TEST_CASE("a page carries no script and forbids fetching anything") {
    const std::string page = html_of(test::usual_paper());
    CHECK(times(page, "<script") == 0);
    CHECK(times(page, "http://") + times(page, "https://") == 0);
    CHECK(times(page, "default-src 'none'") == 1);
}

TEST_CASE("every header cell of a page has a scope and every picture a text") {
    const std::string page = html_of(test::usual_paper());
    CHECK(times(page, "<th ") == times(page, "<th scope="));
    CHECK(times(page, "<th ") > 4);
    CHECK(times(page, "<img ") == times(page, " alt=\""));
    CHECK(times(page, "<img ") == 2);
}

TEST_CASE("a table with more than two columns of words is marked to be set row under row") {
    const auto page_with = [](std::vector<Header> headers) {
        Document paper;
        paper.add(Table{"t", std::move(headers), {}});
        return html_of(paper);
    };
    CHECK(times(page_with({{"a"}, {"b"}}), "table class=\"stacks\"") == 0);
    CHECK(times(page_with({{"a"}, {"b"}, {"n", Column::figures}}), "table class=\"stacks\"") == 0);
    CHECK(times(page_with({{"a"}, {"b"}, {"c"}}), "table class=\"stacks\"") == 1);
}

TEST_CASE("what scrolls sideways can be reached by the keyboard and is named by its caption, else by the "
          "heading above it") {
    Document document;
    document.heading("Levels").add(Table{"", {{"point"}}, {{{Text("1")}}}});
    document.add(Table{"after packing", {{"point"}}, {{{Text("1")}}}});
    const std::string page = html_of(document);
    CHECK(times(page, "<div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"Levels\">") == 1);
    CHECK(times(page, "<div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"after packing\">") ==
          1);
    const std::string nameless = html_of(Document().add(Table{"", {{"point"}}}));
    CHECK(times(nameless, "<div class=\"scroll\" tabindex=\"0\">") == 1);
}

TEST_CASE("a text runs the way of its first letter, but a sentence that begins with a name set apart runs "
          "the way of the page") {
    const std::string apart =
        "\xE2\x81\xA8\xD9\x85\xE2\x81\xA9 was told"; // U+2068, a letter of Arabic, U+2069
    Document document;
    document.add(Listing{{Text("\xD9\x85"), Text(apart)}}).paragraph(Text(apart));
    const std::string page = html_of(document);
    CHECK(times(page, "<li dir=\"auto\">\xD9\x85</li>") == 1);
    CHECK(times(page, "<li>" + apart + "</li>") == 1);
    CHECK(times(page, "<p>" + apart + "</p>") == 1);
}

TEST_CASE("a line break in a name stays a line break in the page") {
    CHECK(times(html_of(test::usual_paper()), "9 Tanners Row<br>Marlow Wick") == 1);
}

TEST_CASE("a photograph that is not at hand is named and said to be elsewhere") {
    const std::string page = html_of(test::usual_paper());
    CHECK(times(page, "the same place, after " + Words::english().say("photograph.elsewhere")) == 1);
}

TEST_CASE("names in Arabic and Chinese and of 200 characters stand whole in the page") {
    for (const std::string& name :
         {std::string("محمد الأمين"), std::string("王小明"), std::string(200, 'W')}) {
        const std::string page = html_of(test::hostile_paper(name));
        CHECK(times(page, name) > 30);
        CHECK(times(page, "<html lang=\"en\">") == 1);
    }
}
