#include "paper/html.h"
#include "paper/svg.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

Drawing drawn() {
    Drawing drawing{"bars", 100, 20};
    drawing.rectangle({0, 1}, 50, 6.5, Stroke::dashed, Fill::tint)
        .line({0, 0}, {10.123, 5}, Stroke::heavy)
        .label({25, 5}, "1097 \"AB\" <b>", Anchor::middle);
    drawing.words = {"1 x 2500: 1097 AB", "1 x 2500"};
    return drawing;
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("a drawing is SVG that scales, says its words, and escapes its labels") {
    const std::string out = svg(drawn()).written();
    CHECK(has(out, "viewBox=\"0 0 100 20\""));
    CHECK(has(out, "aria-label=\"bars. 1 x 2500: 1097 AB; 1 x 2500\""));
    CHECK(has(out, "<polygon class=\"dashed tint\" points=\"0,1 50,1 50,7.5 0,7.5\"/>"));
    CHECK(has(out, "<polyline class=\"heavy\" points=\"0,0 10.12,5\"/>"));
    CHECK(has(out, "text-anchor=\"middle\">1097"));
    CHECK_FALSE(has(out, "<b>"));
}

TEST_CASE("a page holds its drawings where they were put") {
    Document document;
    document.head.name = "Order";
    document.add(drawn());
    const std::string page = render_html(document, Words::english());
    CHECK(
        has(page, "<div class=\"scroll drawing\" tabindex=\"0\" role=\"group\" aria-label=\"bars\">\n<svg"));
}
