// The words file and the sources agree: no key without a phrase, no phrase without a use.
#include "paper/words.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

std::string all_sources() {
    std::string all;
    for (const auto& item : std::filesystem::directory_iterator(UNDERSHEET_SOURCE_DIR "/lib/paper")) {
        if (item.path().extension() != ".cpp") continue;
        std::ifstream in(item.path(), std::ios::binary);
        all.append(std::istreambuf_iterator<char>(in), {});
    }
    return all;
}

std::set<std::string> every_literal(const std::string& sources, const std::regex& pattern) {
    std::set<std::string> found;
    for (std::sregex_iterator at(sources.begin(), sources.end(), pattern), end; at != end; ++at)
        found.insert((*at)[1]);
    return found;
}

} // namespace

TEST_CASE("every key the papers say is in the words file") {
    const std::string sources = all_sources();
    std::size_t looked_at = 0;
    for (const std::string& key : every_literal(sources, std::regex(R"(\bsay\(\s*"([a-z0-9_.]+)\")"))) {
        CAPTURE(key);
        CHECK(Words::english().has(key));
        ++looked_at;
    }
    for (const std::string& key : every_literal(sources, std::regex(R"(\bcount\(\s*"([a-z0-9_.]+)\")"))) {
        CAPTURE(key);
        CHECK(Words::english().has(key + ".one"));
        CHECK(Words::english().has(key + ".many"));
    }
    CHECK(looked_at > 10);
}

TEST_CASE("every phrase of the words file is said somewhere") {
    const std::set<std::string> used = every_literal(all_sources(), std::regex(R"re("([a-z0-9_.]+)")re"));
    for (const std::string& key : Words::english().keys()) {
        CAPTURE(key);
        const std::string stem = key.substr(0, key.rfind('.'));
        CHECK((used.count(key) == 1 || used.count(stem) == 1 || used.count(stem + ".") == 1));
    }
}
