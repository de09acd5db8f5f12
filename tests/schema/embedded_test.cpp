#include "schema/embedded.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

using namespace undersheet;

namespace {
std::string bytes_of(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}
} // namespace

TEST_CASE("every data file of the schema folder is in the library, byte for byte") {
    std::size_t compared = 0;
    for (const auto& item : std::filesystem::directory_iterator(UNDERSHEET_SOURCE_DIR "/schema")) {
        const auto extension = item.path().extension();
        if (extension != ".json" && extension != ".sql") continue;
        INFO(item.path());
        const auto embedded = schema::find(item.path().filename().string());
        REQUIRE(embedded.has_value());
        CHECK(*embedded == bytes_of(item.path()));
        ++compared;
    }
    CHECK(compared > 0);
}

TEST_CASE("a file that is not in the schema folder is not found") {
    CHECK_FALSE(schema::find("nothing.json").has_value());
    CHECK_FALSE(schema::find("").has_value());
}
