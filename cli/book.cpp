#include "cli/book.h"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
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

// Stops at the first byte too many, so that an endless stream is refused and not gathered.
Result<std::string> read_to_end(std::istream& in, const std::string& name, std::string_view what) {
    std::string bytes;
    std::string piece(1U << 16U, '\0');
    while (in && bytes.size() <= kMostFileBytes) {
        in.read(piece.data(), static_cast<std::streamsize>(piece.size()));
        bytes.append(piece, 0, static_cast<std::size_t>(in.gcount()));
    }
    if (bytes.size() <= kMostFileBytes) return bytes;
    return Fault{Code::argument_wrong,
                 "this " + std::string(what) + " is larger than " + std::to_string(kMostFileBytes >> 20U) +
                     " MiB",
                 name, "name the right file, or feed it in pieces"};
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

Result<std::string> read_file(const std::string& path, std::string_view what) {
    if (path == "-") return read_to_end(std::cin, "standard input", what);
    std::ifstream file(path, std::ios::binary);
    std::error_code no_matter;
    if (!file || std::filesystem::is_directory(path, no_matter)) {
        return Fault{Code::argument_wrong, "there is no " + std::string(what) + " to read here", path,
                     "check the name"};
    }
    return read_to_end(file, path, what);
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
