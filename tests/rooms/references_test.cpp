// Whoever is sent to a page, by a comment or by another page, finds it, and the section it names.
#include "base/text.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>

using namespace undersheet;
namespace fs = std::filesystem;

namespace {

std::string text_of(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

// Names of sections as they stand behind a '#': lower case, blanks as hyphens, without other signs.
std::set<std::string> sections_of(const std::string& page) {
    std::set<std::string> names;
    for (const std::string& line : split(page, '\n')) {
        const auto blank = line.find(' ');
        if (!line.starts_with("#") || blank == std::string::npos) continue;
        std::string name;
        for (const char letter : lower_ascii(line.substr(blank + 1)))
            if (letter == ' ')
                name += '-';
            else if (std::isalnum(static_cast<unsigned char>(letter)) != 0 || letter == '-')
                name += letter;
        names.insert(name);
    }
    return names;
}

// "file: where it sends" for each reference that leads nowhere.
std::vector<std::string> astray_in(const fs::path& tree, const std::string& name, const std::string& text) {
    static const std::regex kReference("docs/[A-Za-z0-9_/.-]+\\.(?:md|sh)(?:#([a-z0-9-]+))?");
    std::vector<std::string> astray;
    for (std::sregex_iterator at(text.begin(), text.end(), kReference), end; at != end; ++at) {
        const std::string page = at->str().substr(0, at->str().find('#'));
        const bool is_there = fs::exists(tree / page);
        if (!is_there || ((*at)[1].matched && !sections_of(text_of(tree / page)).contains((*at)[1].str())))
            astray.push_back(name + ": " + at->str());
    }
    return astray;
}

} // namespace

TEST_CASE("every page and section that a comment or a page sends to is there") {
    const fs::path tree = UNDERSHEET_SOURCE_DIR;
    std::vector<std::string> astray;
    std::size_t looked_at = 0;
    for (const char* folder : {"lib", "cli", "docs", "schema", "fixtures"})
        for (const auto& item : fs::recursive_directory_iterator(tree / folder)) {
            if (!item.is_regular_file() || item.file_size() > 1'000'000) continue;
            ++looked_at;
            for (std::string& one : astray_in(tree, item.path().filename().string(), text_of(item.path())))
                astray.push_back(std::move(one));
        }
    for (const char* page : {"README.md", "DEVELOPERS.md"})
        for (std::string& one : astray_in(tree, page, text_of(tree / page))) astray.push_back(std::move(one));
    CHECK(looked_at > 300);
    CHECK(astray == std::vector<std::string>{});
}

TEST_CASE("a page or a section that is not there is named") {
    const fs::path tree = UNDERSHEET_SOURCE_DIR;
    CHECK(astray_in(tree, "x.h", "see docs/formulas.md#outline").empty());
    CHECK(astray_in(tree, "x.h", "see docs/formulas.md#nowhere") ==
          std::vector<std::string>{"x.h: docs/formulas.md#nowhere"});
    CHECK(astray_in(tree, "x.h", "see docs/no_page.md") == std::vector<std::string>{"x.h: docs/no_page.md"});
}
