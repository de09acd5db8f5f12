#include "cli/screen.h"

#include "base/text.h"

#include <ostream>

namespace undersheet::cli {
namespace {

std::string_view ink_on(Ink ink) {
    switch (ink) {
    case Ink::strong:
        return "\033[1m";
    case Ink::faint:
        return "\033[2m";
    case Ink::red:
        return "\033[31m";
    case Ink::yellow:
        return "\033[33m";
    case Ink::green:
        return "\033[32m";
    case Ink::plain:
        break;
    }
    return "";
}

// A name with an escape sequence in it must not move anybody's cursor.
std::string harmless(std::string_view text) {
    std::string out;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte >= 0x20 && byte != 0x7F) {
            out += c;
        } else if (c == '\n' || c == '\t') {
            out += ' ';
        }
    }
    return out;
}

} // namespace

Screen::Screen(std::ostream& results, std::ostream& messages, bool coloured)
    : results_(results), messages_(messages), coloured_(coloured) {}

void Screen::line(std::string_view text, Ink ink) {
    if (coloured_ && ink != Ink::plain) {
        results_ << ink_on(ink) << harmless(text) << "\033[0m\n";
    } else {
        results_ << harmless(text) << '\n';
    }
}

void Screen::set_in(std::string_view first, std::string_view text, Ink ink) {
    const std::size_t room = character_count(first);
    std::string lead(first);
    for (const std::string& piece : wrapped(text, kColumns - room)) {
        line(lead + piece, ink);
        lead.assign(room, ' ');
    }
}

void Screen::bytes(std::string_view text) { results_ << text; }

void Screen::message(std::string_view text) { messages_ << harmless(text) << '\n'; }

int Screen::refuse(const Fault& fault) {
    message(one_line(fault));
    return exit_code(fault.code);
}

bool Screen::is_broken() const { return !results_.good(); }

int exit_code(Code code) {
    const int number = static_cast<int>(code);
    if (number >= 400 && number < 500) return 1;
    return number >= 500 && number < 600 ? 3 : 2;
}

std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
    std::vector<std::string> lines = {""};
    for (const std::string& word : split(text, ' ')) {
        if (word.empty()) continue;
        std::string& last = lines.back();
        if (last.empty()) {
            last = word;
        } else if (character_count(last) + 1 + character_count(word) <= width) {
            last += " " + word;
        } else {
            lines.push_back(word);
        }
    }
    return lines;
}

std::string padded(std::string_view text, std::size_t width) {
    std::string out(text);
    for (std::size_t length = character_count(text); length < width; ++length) out += ' ';
    return out;
}

} // namespace undersheet::cli
