// The writing half of json.h, kept apart from the parser: forty lines that need no library.
#include "entry/json.h"

namespace undersheet::entry {
namespace {

void write_text(std::string& out, std::string_view text) {
    constexpr std::string_view kDigits = "0123456789abcdef";
    constexpr std::string_view kShort = "\"\\\b\f\n\r\t";
    constexpr std::string_view kShortNames = "\"\\bfnrt";
    out += '"';
    for (const char c : text) {
        if (const auto at = kShort.find(c); at != std::string_view::npos) {
            out += '\\';
            out += kShortNames[at];
        } else if (static_cast<unsigned char>(c) < 0x20) {
            out += "\\u00";
            out += kDigits[static_cast<std::size_t>(c) >> 4U];
            out += kDigits[static_cast<std::size_t>(c) & 15U];
        } else {
            out += c;
        }
    }
    out += '"';
}

// Everything but lists and objects.
void write_plain(std::string& out, const Value& value) {
    if (const bool* yes = value.boolean()) out += *yes ? "true" : "false";
    if (const Decimal* number = value.number()) out += number->text();
    if (const std::string* text = value.text()) write_text(out, *text);
}

// Where the pieces of one list or object go: nothing between them, or each on its own line.
struct Layout {
    bool pretty = false;
    int indent = 0;
    void line(std::string& out) const {
        if (pretty) out.append(1, '\n').append(static_cast<std::size_t>(indent) * 2, ' ');
    }
    [[nodiscard]] Layout inner() const { return {pretty, indent + 1}; }
};

void write(std::string& out, const Value& value, Layout layout);

void write_list(std::string& out, const List& items, Layout layout) {
    out += '[';
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (i > 0) out += ',';
        layout.inner().line(out);
        write(out, items[i], layout.inner());
    }
    if (!items.empty()) layout.line(out);
    out += ']';
}

void write_object(std::string& out, const Map& members, Layout layout) {
    out += '{';
    for (std::size_t i = 0; i < members.size(); ++i) {
        if (i > 0) out += ',';
        layout.inner().line(out);
        write_text(out, members[i].key);
        out += layout.pretty ? ": " : ":";
        write(out, members[i].value, layout.inner());
    }
    if (!members.empty()) layout.line(out);
    out += '}';
}

void write(std::string& out, const Value& value, Layout layout) {
    if (const List* items = value.list()) return write_list(out, *items, layout);
    if (const Map* members = value.map()) return write_object(out, *members, layout);
    write_plain(out, value);
}

} // namespace

std::string write_strict(const Value& value) {
    std::string out;
    write(out, value, {});
    return out;
}

std::string write_pretty(const Value& value) {
    std::string out;
    write(out, value, {.pretty = true});
    return out;
}

} // namespace undersheet::entry
