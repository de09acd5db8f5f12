// A folder of its own for one test, gone afterwards.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <unistd.h>

namespace undersheet {

class TempFolder {
public:
    TempFolder() {
        // Not a name made of the process number: under WebAssembly every program has the same one.
        constexpr std::size_t kByChance = 6; // mkdtemp puts its own letters in the place of these
        std::string name = (std::filesystem::temp_directory_path() / "undersheet-test-").string() +
                           std::string(kByChance, 'X');
        if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder for a test: " + name);
        path_ = name;
    }
    TempFolder(const TempFolder&) = delete;
    TempFolder& operator=(const TempFolder&) = delete;
    ~TempFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    [[nodiscard]] std::string path() const { return path_.string(); }
    [[nodiscard]] std::string file(const std::string& name) const { return (path_ / name).string(); }

private:
    std::filesystem::path path_;
};

inline std::string bytes_of_file(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}
inline void write_file(const std::string& path, const std::string& bytes) {
    std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

} // namespace undersheet
