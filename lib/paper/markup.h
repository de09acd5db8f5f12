// Markup under construction: the only way from somebody's text to a page of HTML, and it always escapes.
//
// Promises: markup is made of literals that stand in our own source (checked by the compiler: a string that is only
//   known while running does not convert) and of text that went through escaping. There is no third way in, so a
//   customer called <script> is a name and nothing else. Characters that HTML forbids, and the invisible ones that turn
//   the direction of everything after them, come out as U+FFFD.
// Only the HTML renderer includes this file.
#pragma once

#include <string>
#include <string_view>

namespace undersheet::paper {

class Literal {
public:
    template <std::size_t N>
    consteval Literal(const char (&text)[N])
        : text_(text, N - 1) {} // NOLINT: literals only, that is the point
    [[nodiscard]] constexpr std::string_view text() const { return text_; }

private:
    std::string_view text_;
};

class Markup {
public:
    Markup& raw(Literal literal);
    Markup& text(std::string_view anything);                    // between tags; a new line becomes <br>
    Markup& attribute(Literal name, std::string_view anything); // ` name="anything"`
    Markup& css_string(std::string_view anything); // "anything", as a quoted string inside a style sheet
    Markup& base64(std::string_view bytes);
    Markup& add(const Markup& other);

    [[nodiscard]] const std::string& written() const { return written_; }

private:
    std::string written_;
};

} // namespace undersheet::paper
