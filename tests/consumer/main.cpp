// Uses the library as a stranger would: only installed headers, only what find_package brings.
#include "desk/desk.h"

#include <cstdio>
#include <filesystem>
#include <string>

namespace {

int complain(const std::string& what) {
    std::fprintf(stderr, "consumer: %s\n", what.c_str());
    return 1;
}

} // namespace

int main() {
    using undersheet::desk::Desk;
    const auto folder = std::filesystem::temp_directory_path() / "undersheet_consumer";
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    const auto book = (folder / "try.book").string();

    if (Desk::open({.file = book}).ok()) return complain("opened a book that is not there");
    const auto started = Desk::start({.file = book}, {.name = "Hollin and Daughter, Flat Roofs"});
    if (!started) return complain("no book could be started: " + undersheet::one_line(started.fault()));
    auto desk = Desk::open({.file = book});
    if (!desk) return complain("the new book does not open: " + undersheet::one_line(desk.fault()));
    const auto jobs = desk->jobs();
    if (!jobs || !jobs->empty()) return complain("a new book should list no jobs");

    std::filesystem::remove_all(folder);
    std::puts("consumer: a book was started and read through the installed library");
}
