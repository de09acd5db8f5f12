// Every input that was ever worth keeping, through the same functions as libFuzzer calls, in every build.
#include "tests/fuzz/targets.h"
#include "tests/support/temp_folder.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <set>

using namespace undersheet;
namespace fs = std::filesystem;

namespace {

const fs::path kCorpus = fs::path(UNDERSHEET_SOURCE_DIR) / "tests/fuzz/corpus";

std::vector<fs::path> saved_for(const std::string& target) {
    std::vector<fs::path> files;
    for (const auto& item : fs::directory_iterator(kCorpus / target)) files.push_back(item.path());
    std::sort(files.begin(), files.end());
    return files;
}

} // namespace

TEST_CASE("every reader keeps its promise on every input that was saved for it") {
    for (const auto& target : fuzz::targets()) {
        const auto files = saved_for(target.name);
        CHECK_FALSE(files.empty());
        for (const auto& file : files) {
            INFO(target.name << " " << file.filename().string());
            CHECK_NOTHROW(target.run(bytes_of_file(file.string())));
        }
    }
}

TEST_CASE("a target takes no bytes at all, a zero, and what is no text") {
    for (const auto& target : fuzz::targets()) {
        INFO(target.name);
        for (const std::string& bytes :
             {std::string(), std::string(1, '\0'), std::string("\xFF\xFE\n"), std::string("\n\n\n"),
              std::string(5000, '['), std::string(5000, '{')})
            CHECK_NOTHROW(target.run(bytes));
    }
}

TEST_CASE("saved inputs are small and belong to a target") {
    constexpr std::size_t kMostBytes = 4096, kMostFiles = 64;
    std::set<std::string> known;
    for (const auto& target : fuzz::targets()) known.insert(target.name);
    for (const auto& folder : fs::directory_iterator(kCorpus)) {
        const auto name = folder.path().filename().string();
        INFO(name);
        CHECK(known.contains(name));
        const auto files = saved_for(name);
        CHECK(files.size() <= kMostFiles);
        for (const auto& file : files) CHECK(fs::file_size(file) <= kMostBytes);
    }
}

TEST_CASE("a broken promise is noticed") {
    CHECK_THROWS_AS(fuzz::promise(false, "said and not kept"), fuzz::BrokenPromise);
    CHECK_NOTHROW(fuzz::promise(true, "said and kept"));
    CHECK_THROWS_AS(fuzz::promise_readable(Fault{}), fuzz::BrokenPromise);
}
