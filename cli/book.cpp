#include "cli/book.h"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <system_error>

namespace undersheet::cli {
namespace {

std::string environment(const char* name) {
    const char* value = std::getenv(name);
    return value == nullptr ? std::string() : std::string(value);
}

// XDG Base Directory Specification: XDG_DATA_HOME, else ~/.local/share. Windows keeps such things under LOCALAPPDATA.
std::filesystem::path data_folder() {
    if (const auto xdg = environment("XDG_DATA_HOME"); !xdg.empty())
        return std::filesystem::path(xdg) / "undersheet";
    if (const auto local = environment("LOCALAPPDATA"); !local.empty())
        return std::filesystem::path(local) / "undersheet";
    return std::filesystem::path(environment("HOME")) / ".local" / "share" / "undersheet";
}

} // namespace

desk::BookAt book_at(const Arguments& arguments) {
    const std::string clock = environment("UNDERSHEET_CLOCK");
    if (arguments.has("--book")) return {arguments.one("--book"), clock};
    if (const auto named = environment("UNDERSHEET_BOOK"); !named.empty()) return {named, clock};
    return {(data_folder() / "roofs.book").string(), clock};
}

Result<desk::Desk> open_desk(const Arguments& arguments) { return desk::Desk::open(book_at(arguments)); }

desk::Asked asked(const Arguments& arguments) {
    desk::Asked asked;
    asked.job = arguments.one("--job");
    asked.by = arguments.has("--by") ? arguments.one("--by") : environment("UNDERSHEET_BY");
    asked.when = arguments.one("--when");
    asked.supplement = arguments.one("--supplement");
    return asked;
}

Done write_file(const std::string& path, std::string_view bytes) {
    if (path == "-") {
        std::cout << bytes;
        return {};
    }
    const std::string beside = path + ".part";
    std::ofstream file(beside, std::ios::binary | std::ios::trunc);
    file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    file.close();
    std::error_code failed;
    if (file) std::filesystem::rename(beside, path, failed);
    if (file && !failed) return {};
    std::filesystem::remove(beside, failed);
    return Fault{Code::book_failed, "this cannot be written", path,
                 "check that the folder is there and has room"};
}

} // namespace undersheet::cli
