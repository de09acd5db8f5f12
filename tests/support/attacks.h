// Text that means something to whoever is careless with it: to a browser, a spreadsheet, a style sheet, a terminal.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace undersheet::test {

// On one line, without control characters and with nothing unseen: what people can type anywhere.
inline const std::vector<std::string>& typed_attacks() {
    static const std::vector<std::string> kAttacks = {
        "=cmd|'/c calc'!A1<script>alert(\"1\")</script>",
        "+1\"><img src=x onerror=alert(1)>]]>&lt;b&gt;<!--",
        "-2+3' onload='x' </title></style></textarea></svg>",
        "@SUM(1,\"a\");{place} {n} \\22 } * { display:none",
    };
    return kAttacks;
}

// And what only a program can have written: control characters, what nobody sees, and line breaks before what looks like a
// formula.
inline const std::vector<std::string>& written_attacks() {
    static const std::vector<std::string> kAttacks = [] {
        auto all = typed_attacks();
        all.insert(all.end(), {"\t=1+1<b>", "\r\n=1+1,\"<i>", "a\n=1+1\n</pre>", "\x1B[2J\x07\x7F<u>&",
                               // U+202E, U+2066, U+2028
                               "\xE2\x80\xAE]]>&#60;b\xE2\x81\xA6\xE2\x80\xA8<a href=javascript:x>"});
        return all;
    }();
    return kAttacks;
}

} // namespace undersheet::test
