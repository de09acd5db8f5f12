// The docs lead to files; each of them has to be there.
#include "base/text.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

using namespace undersheet;
namespace fs = std::filesystem;

namespace {

const fs::path kTop = UNDERSHEET_SOURCE_DIR;

std::string text_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

std::set<fs::path> pages() {
    std::set<fs::path> found = {kTop / "README.md", kTop / "DEVELOPERS.md"};
    for (const auto& item : fs::recursive_directory_iterator(kTop / "docs")) {
        if (item.path().extension() == ".md") found.insert(item.path());
    }
    return found;
}

// `lib/trade/air.h` is a file of ours; `lib/<room>/*.h` and `tests/NAME` stand for many.
bool is_path(const std::string& word) {
    if (word.find_first_of("<>* ()") != std::string::npos) return false;
    for (const std::string top : {"lib/", "cli/", "tests/", "schema/", "docs/", "fixtures/"}) {
        if (word.starts_with(top)) return true;
    }
    return false;
}

// What stands between single backticks.
std::set<std::string> paths_named_in(const std::string& text) {
    std::set<std::string> paths;
    const auto pieces = split(text, '`');
    for (std::size_t i = 1; i < pieces.size(); i += 2) {
        if (is_path(pieces[i])) paths.insert(pieces[i]);
    }
    return paths;
}

} // namespace

TEST_CASE("every file that the docs lead to is there") {
    std::size_t named = 0;
    for (const auto& page : pages()) {
        for (const auto& path : paths_named_in(text_of(page))) {
            INFO(page.filename().string() << " names " << path);
            CHECK(fs::exists(kTop / path));
            ++named;
        }
    }
    CHECK(named > 60);
}

TEST_CASE("every page of docs is led to from its index") {
    const auto named = paths_named_in(text_of(kTop / "docs/README.md"));
    for (const auto& page : pages()) {
        const auto path = page.lexically_relative(kTop).generic_string();
        if (!path.starts_with("docs/") || path == "docs/README.md") continue;
        INFO(path);
        CHECK(named.contains(path));
    }
}
