#include "paper/markup.h"

#include <catch2/catch.hpp>

#include <type_traits>

using namespace undersheet::paper;

// Raw markup cannot be made from anything that is only known while the program runs.
static_assert(!std::is_convertible_v<std::string, Literal>);
static_assert(!std::is_convertible_v<std::string_view, Literal>);
static_assert(!std::is_convertible_v<const char*, Literal>);
static_assert(!std::is_constructible_v<Literal, std::string>);
static_assert(!std::is_constructible_v<Markup, std::string>);
static_assert(!std::is_constructible_v<Markup, const char*>);

TEST_CASE("the five characters that mean something to HTML are escaped, nothing else") {
    CHECK(Markup().text("<a> & \"b\" 'c' =/`é").written() ==
          "&lt;a&gt; &amp; &quot;b&quot; &#39;c&#39; =/`é");
}

TEST_CASE("text that looks escaped already is shown as it was typed") {
    CHECK(Markup().text("&lt;").written() == "&amp;lt;");
}

TEST_CASE("an attribute stays inside its quotes, on one line") {
    CHECK(Markup().attribute("alt", "a\" onload=\"x\ny").written() == " alt=\"a&quot; onload=&quot;x y\"");
}

TEST_CASE("a string in a style sheet cannot be left: all but letters and digits is written by number") {
    CHECK(Markup().css_string("a\"}</style>").written() == "\"a\\22 \\7d \\3c \\2f style\\3e \"");
    CHECK(Markup().css_string("x\ny").written() == "\"x\\0a y\"");
    CHECK(Markup().css_string("é9").written() == "\"é9\"");
}

TEST_CASE("bytes are written in base64 as RFC 4648 section 10 has them") {
    const std::pair<const char*, const char*> vectors[] = {{"", ""},
                                                           {"f", "Zg=="},
                                                           {"fo", "Zm8="},
                                                           {"foo", "Zm9v"},
                                                           {"foob", "Zm9vYg=="},
                                                           {"fooba", "Zm9vYmE="},
                                                           {"foobar", "Zm9vYmFy"}};
    for (const auto& [bytes, written] : vectors) CHECK(Markup().base64(bytes).written() == written);
    CHECK(Markup().base64(std::string("\xff\0\xfe", 3)).written() == "/wD+");
}
