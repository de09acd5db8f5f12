#include "pdf/flow.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::pdf;

namespace {

constexpr Frame kFrame{20, 30, 100};

Strip strip(const std::string& name, double height_pt) {
    Strip one{height_pt};
    one.marks.emplace_back(Letters{{0, 0}, name});
    return one;
}

Group group(const std::string& name, double height_pt) { return {{strip(name, height_pt)}}; }

// "a@30 b@40" for each page: what lies on it and how far down.
std::vector<std::string> laid(const Story& story) {
    std::vector<std::string> pages;
    for (const Page& page : flowed(story, kFrame).pages) {
        pages.emplace_back();
        for (const Mark& mark : page.marks) {
            const auto& letters = std::get<Letters>(mark);
            CHECK(letters.at.x_pt == 20);
            pages.back() += (pages.back().empty() ? "" : " ") + letters.text + "@" +
                            std::to_string(static_cast<int>(letters.at.y_pt));
        }
    }
    return pages;
}

using Pages = std::vector<std::string>;

} // namespace

TEST_CASE("groups lie under one another until a page is full, to the last point") {
    CHECK(laid({{group("a", 60), group("b", 40), group("c", 1)}, {}}) == Pages{"a@30 b@90", "c@30"});
    CHECK(laid({{}, {}}) == Pages{""});
}

TEST_CASE("air and the line above a group are left out at the top of a page") {
    Group second = group("b", 10);
    second.before_pt = 5;
    second.lead = {strip("line", 3)};
    CHECK(laid({{second, second}, {}}) == Pages{"b@30 line@45 b@48"});
    CHECK(laid({{group("a", 90), second}, {}}) == Pages{"a@30", "b@30"});
}

TEST_CASE("what is kept whole goes over whole; what is not, or is too high for any page, is parted") {
    Group rows{{strip("1", 50), strip("2", 50)}};
    CHECK(laid({{group("a", 30), rows}, {}}) == Pages{"a@30", "1@30 2@80"});
    rows.is_whole = false;
    CHECK(laid({{group("a", 30), rows}, {}}) == Pages{"a@30 1@60", "2@30"});
    rows.is_whole = true;
    rows.strips.push_back(strip("3", 50));
    CHECK(laid({{group("a", 30), rows}, {}}) == Pages{"a@30 1@60", "2@30 3@80"});
}

TEST_CASE("whatever keeps what follows goes over with it") {
    Group heading = group("h", 10), below = group("i", 10);
    heading.keeps_next = below.keeps_next = true;
    CHECK(laid({{group("a", 50), heading, below, group("b", 30)}, {}}) == Pages{"a@30 h@80 i@90 b@100"});
    CHECK(laid({{group("a", 51), heading, below, group("b", 30)}, {}}) == Pages{"a@30", "h@30 i@40 b@50"});
}

TEST_CASE("a table has its header again overleaf, but not under its own") {
    Group header = group("h", 10), row = group("r", 40);
    header.keeps_next = true;
    row.header = 0;
    const Story story{{header, row, row, row}, {{strip("h", 10)}}};
    CHECK(laid(story) == Pages{"h@30 r@40 r@80", "h@30 r@40"});
}

TEST_CASE("a page break turns over, unless a page has just begun") {
    Group overleaf, after = group("b", 10);
    overleaf.starts_page = true;
    CHECK(laid({{overleaf, group("a", 10), overleaf, overleaf, after}, {}}) == Pages{"a@30", "b@30"});
}

TEST_CASE("what sinks lies at the foot of its page, or at the top when what comes before leaves it no room "
          "on any") {
    Group foot = group("f", 20);
    foot.sinks = true;
    CHECK(laid({{group("a", 10), foot}, {}}) == Pages{"a@30 f@110"});
    CHECK(laid({{group("a", 80), foot}, {}}) == Pages{"a@30 f@110"});
    CHECK(laid({{group("a", 81), foot}, {}}) == Pages{"a@30", "f@30"});
}

TEST_CASE("what sinks takes the end of what comes before it overleaf, with its heading or the header of its "
          "table") {
    Group foot = group("f", 20), heading = group("h", 10), header = group("t", 10), row = group("r", 30);
    foot.sinks = heading.keeps_next = header.keeps_next = true;
    row.header = 0;
    CHECK(laid({{group("a", 50), group("b", 30), foot}, {}}) == Pages{"a@30 b@80 f@110"});
    CHECK(laid({{group("a", 50), group("b", 31), foot}, {}}) == Pages{"a@30", "b@30 f@110"});
    CHECK(laid({{group("a", 50), heading, group("b", 30), foot}, {}}) == Pages{"a@30", "h@30 b@40 f@110"});
    CHECK(laid({{header, row, row, row, foot}, {{strip("t", 10)}}}) ==
          Pages{"t@30 r@40 r@70", "t@30 r@40 f@110"});
    Group parted{{strip("1", 40), strip("2", 40), strip("3", 10)}};
    parted.is_whole = false;
    CHECK(laid({{parted, foot}, {}}) == Pages{"1@30 2@70", "3@30 f@110"});
    parted.is_whole = true;
    CHECK(laid({{parted, foot}, {}}) == Pages{"1@30 2@70 3@110", "f@30"});
}

TEST_CASE("a bookmark stands where its group does, at most one level below the last") {
    Group first = group("a", 60), second = group("b", 60);
    first.level = 2;
    second.level = 2;
    const auto marks = flowed({{first, second}, {}}, kFrame).bookmarks;
    REQUIRE(marks.size() == 2);
    CHECK(marks[0].level == 1);
    CHECK(marks[1].level == 2);
    CHECK(marks[1].page == 1);
    CHECK(marks[1].down_pt == 30);
}
