#include "tests/paper/approved.h"

#include "base/text.h"

#include <cstdlib>
#include <fstream>
#include <iterator>

namespace undersheet::test {

namespace {

std::string first_difference(const std::string& approved, const std::string& written) {
    const auto before = split(approved, '\n');
    const auto after = split(written, '\n');
    for (std::size_t i = 0; i < before.size() || i < after.size(); ++i) {
        const std::string a = i < before.size() ? before[i] : "(no such line)";
        const std::string b = i < after.size() ? after[i] : "(no such line)";
        if (a != b) return "line " + std::to_string(i + 1) + "\n  approved: " + a + "\n  written:  " + b;
    }
    return {};
}

} // namespace

std::string differs_from_approved(const std::string& file_name, const std::string& text) {
    const std::string path = UNDERSHEET_SOURCE_DIR "/tests/golden/" + file_name;
    if (std::getenv("UNDERSHEET_APPROVE") != nullptr) {
        std::ofstream(path, std::ios::binary) << text;
        return file_name + " was written anew; look at the difference, then run without UNDERSHEET_APPROVE";
    }
    std::ifstream in(path, std::ios::binary);
    if (!in) return file_name + " has not been approved yet";
    const std::string approved{std::istreambuf_iterator<char>(in), {}};
    const std::string difference = first_difference(approved, text);
    return difference.empty() ? "" : file_name + " differs at " + difference;
}

} // namespace undersheet::test
