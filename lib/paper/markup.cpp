#include "paper/markup.h"

#include "paper/clean.h"

#include <array>
#include <cstdint>

namespace undersheet::paper {

namespace {

std::string escaped(std::string_view anything, std::string_view new_line) {
    std::string out;
    for (const char c : clean(anything)) {
        switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        case '\'':
            out += "&#39;";
            break;
        case '\n':
            out += new_line;
            break;
        default:
            out += c;
        }
    }
    return out;
}

bool is_plain_ascii(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

} // namespace

Markup& Markup::raw(Literal literal) {
    written_ += literal.text();
    return *this;
}

Markup& Markup::text(std::string_view anything) {
    written_ += escaped(anything, "<br>");
    return *this;
}

Markup& Markup::attribute(Literal name, std::string_view anything) {
    written_ += ' ';
    written_ += name.text();
    written_ += "=\"" + escaped(anything, " ") + '"';
    return *this;
}

// CSS Syntax Level 3, 4.3.7: a backslash and up to six hexadecimal digits, ended by one blank, is that character.
Markup& Markup::css_string(std::string_view anything) {
    constexpr std::string_view kDigits = "0123456789abcdef";
    written_ += '"';
    for (const char c : clean(anything)) {
        const auto byte = static_cast<unsigned char>(c);
        if (is_plain_ascii(c) || byte >= 0x80) {
            written_ += c;
            continue;
        }
        written_ += '\\';
        written_ += kDigits[byte >> 4U];
        written_ += kDigits[byte & 15U];
        written_ += ' ';
    }
    written_ += '"';
    return *this;
}

// RFC 4648, section 4.
Markup& Markup::base64(std::string_view bytes) {
    constexpr std::string_view kLetters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    for (std::size_t at = 0; at < bytes.size(); at += 3) {
        const std::size_t have = std::min<std::size_t>(3, bytes.size() - at);
        std::uint32_t three = 0;
        for (std::size_t i = 0; i < 3; ++i)
            three = (three << 8U) | (i < have ? static_cast<unsigned char>(bytes[at + i]) : 0U);
        for (std::size_t i = 0; i < 4; ++i)
            written_ += i <= have ? kLetters[(three >> (18U - 6U * i)) & 63U] : '=';
    }
    return *this;
}

Markup& Markup::add(const Markup& other) {
    written_ += other.written_;
    return *this;
}

} // namespace undersheet::paper
