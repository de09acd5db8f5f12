// Papers read back the way a browser, a spreadsheet and a script would, to see whether somebody's text became anything else.
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace undersheet::test {

// --- HTML ---

// What our pages are made of: every tag with the attributes it may carry. Anything else came in with somebody's text.
inline const std::map<std::string, std::set<std::string>, std::less<>>& our_tags() {
    static const std::map<std::string, std::set<std::string>, std::less<>> kTags = {
        {"html", {"lang"}},
        {"head", {}},
        {"meta", {"charset", "name", "content", "http-equiv"}},
        {"title", {}},
        {"style", {}},
        {"body", {}},
        {"header", {}},
        {"main", {}},
        {"footer", {}},
        {"div", {"class", "role", "tabindex", "aria-label"}},
        {"section", {"class"}},
        {"span", {"class"}},
        {"h1", {}},
        {"h2", {}},
        {"h3", {"dir"}},
        {"p", {"class", "dir"}},
        {"br", {}},
        {"strong", {}},
        {"s", {}},
        {"code", {}},
        {"ul", {}},
        {"li", {"dir"}},
        {"dl", {"class"}},
        {"dt", {}},
        {"dd", {"dir"}},
        {"table", {"class"}},
        {"caption", {}},
        {"thead", {}},
        {"tbody", {}},
        {"tr", {"class"}},
        {"th", {"scope", "class", "dir"}},
        {"td", {"class", "dir", "colspan", "data-header"}},
        {"figure", {}},
        {"figcaption", {"dir"}},
        {"img", {"src", "alt"}},
        {"svg", {"xmlns", "role", "viewBox", "aria-label"}},
        {"polygon", {"class", "points"}},
        {"polyline", {"class", "points"}},
        {"text", {"x", "y", "font-size", "text-anchor"}}};
    return kTags;
}

struct Page {
    std::string text =
        {}; // what stands between the tags and in attributes, references resolved, <br> a new line
    std::string strange = {}; // the first thing that is none of ours; "" when there is none
};

class PageReader {
public:
    explicit PageReader(std::string_view html) : rest_(html) {}

    Page read() {
        take("<!DOCTYPE html>");
        while (!rest_.empty() && page_.strange.empty()) {
            if (rest_.front() == '<')
                tag();
            else
                text(rest_.substr(0, rest_.find('<')));
        }
        return page_;
    }

private:
    bool take(std::string_view what) {
        if (!rest_.starts_with(what)) return false;
        rest_.remove_prefix(what.size());
        return true;
    }
    void refuse(const std::string& what) {
        page_.strange = what + " at '" + std::string(rest_.substr(0, 80)) + "'";
    }
    std::string name() {
        const auto end =
            rest_.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-");
        std::string found(rest_.substr(0, end));
        rest_.remove_prefix(found.size());
        return found;
    }

    void text(std::string_view piece) {
        if (piece.find('>') != std::string_view::npos) return refuse("a bracket between tags");
        if (!resolve(piece)) return;
        rest_.remove_prefix(piece.size());
    }
    // The five references that we write, and no other ampersand.
    bool resolve(std::string_view piece) {
        static const std::map<std::string_view, char> kKnown = {
            {"&amp;", '&'}, {"&lt;", '<'}, {"&gt;", '>'}, {"&quot;", '"'}, {"&#39;", '\''}};
        for (std::size_t at = 0; at < piece.size();) {
            if (piece[at] != '&') {
                page_.text += piece[at++];
                continue;
            }
            const auto end = piece.find(';', at);
            const auto known = kKnown.find(piece.substr(at, end == piece.npos ? end : end + 1 - at));
            if (known == kKnown.end()) {
                refuse("an ampersand that stands by itself");
                return false;
            }
            page_.text += known->second;
            at = end + 1;
        }
        return true;
    }

    void tag() {
        take("<");
        const bool closes = take("/");
        const std::string tag = name();
        const auto known = our_tags().find(tag);
        if (known == our_tags().end()) return refuse("no tag of ours: " + tag);
        while (!closes && take(" ")) {
            if (!attribute(known->second)) return refuse("no attribute of ours on " + tag);
        }
        take("/");
        if (!take(">")) return refuse("no end of " + tag);
        if (tag == "br") page_.text += '\n';
        page_.text += '\x1F'; // so that two pieces never read as one
        if (tag == "style" && !closes) style();
    }
    bool attribute(const std::set<std::string>& allowed) {
        const std::string attribute = name();
        if (!allowed.contains(attribute) || !take("=\"")) return false;
        const auto value = rest_.substr(0, rest_.find('"'));
        if (value.find_first_of("<>\n") != value.npos || !resolve(value)) return false;
        if (attribute == "src" && !value.starts_with("data:image/")) return false;
        rest_.remove_prefix(value.size());
        page_.text += '\x1F';
        return take("\"");
    }
    // A browser ends a style sheet at the first "</style"; nothing that looks like a tag may stand before.
    void style() {
        const auto end = rest_.find("</style>");
        if (end == rest_.npos || rest_.substr(0, end).find('<') != rest_.npos)
            return refuse("a broken style sheet");
        rest_.remove_prefix(end);
    }

    std::string_view rest_;
    Page page_ = {};
};

inline Page read_page(std::string_view html) { return PageReader(html).read(); }

// --- CSV (RFC 4180), behind its byte order mark ---

inline std::vector<std::string> cells_of(std::string_view csv) {
    std::vector<std::string> cells(1);
    bool quoted = false;
    for (std::size_t at = csv.starts_with("\xEF\xBB\xBF") ? 3 : 0; at < csv.size(); ++at) {
        const char c = csv[at];
        if (quoted && c == '"' && at + 1 < csv.size() && csv[at + 1] == '"') {
            cells.back() += csv[++at];
        } else if (c == '"' && (quoted || cells.back().empty())) {
            quoted = !quoted;
        } else if (!quoted && (c == ',' || c == '\n')) {
            cells.emplace_back();
        } else if (quoted || c != '\r') {
            cells.back() += c;
        }
    }
    return cells;
}

// A spreadsheet would work this cell out. A plain number may begin with its sign.
inline bool would_be_worked_out(std::string_view cell) {
    if (cell.empty() || std::string_view("=+-@\t\r").find(cell.front()) == std::string_view::npos)
        return false;
    return cell.size() < 2 || cell.find_first_not_of("0123456789.,", 1) != std::string_view::npos ||
           std::string_view("+-").find(cell.front()) == std::string_view::npos;
}

} // namespace undersheet::test
