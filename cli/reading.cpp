#include "cli/reading.h"

#include <iostream>

#ifdef _WIN32
#include <filesystem>
#include <fstream>
#include <system_error>
#else
#include <cerrno>
#include <fcntl.h>
#include <poll.h>
#include <sys/stat.h>
#include <unistd.h>
#endif

namespace undersheet::cli {
namespace {

Fault unreadable(const std::string& path, std::string_view what) {
    return {Code::argument_wrong, "there is no " + std::string(what) + " to read here", path,
            "check the name"};
}

// Stops at the first byte too many, so that an endless stream is refused and not gathered. `next` fills a piece and says
// how many bytes it now has, 0 at the end.
template <class Next>
Result<std::string> read_to_end(Next next, const std::string& name, std::string_view what) {
    std::string bytes;
    std::string piece(1U << 16U, '\0');
    for (std::size_t count = next(piece); count > 0 && bytes.size() <= kMostFileBytes; count = next(piece))
        bytes.append(piece, 0, count);
    if (bytes.size() <= kMostFileBytes) return bytes;
    return Fault{Code::argument_wrong,
                 "this " + std::string(what) + " is larger than " + std::to_string(kMostFileBytes >> 20U) +
                     " MiB",
                 name, "name the right file, or feed it in pieces"};
}

Result<std::string> read_stream(std::istream& in, const std::string& name, std::string_view what) {
    const auto next = [&](std::string& piece) {
        in.read(piece.data(), static_cast<std::streamsize>(piece.size()));
        return static_cast<std::size_t>(in.gcount());
    };
    return read_to_end(next, name, what);
}

#ifdef _WIN32
Result<std::string> read_path(const std::string& path, std::string_view what) {
    std::ifstream file(path, std::ios::binary);
    std::error_code no_matter;
    if (!file || std::filesystem::is_directory(path, no_matter)) return unreadable(path, what);
    return read_stream(file, path, what);
}
#else
// Opened without waiting: a pipe would keep us until somebody writes into it.
class Opened {
public:
    explicit Opened(const std::string& path)
        : number_(::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC)),
          is_known_(number_ >= 0 && ::fstat(number_, &status_) == 0) {}
    Opened(const Opened&) = delete;
    Opened& operator=(const Opened&) = delete;
    ~Opened() {
        if (number_ >= 0) ::close(number_);
    }
    [[nodiscard]] bool can_be_read() const { return is_known_ && !S_ISDIR(status_.st_mode); }
    [[nodiscard]] bool is_pipe() const { return S_ISFIFO(status_.st_mode); }

    // 0 at the end, and where nobody came to write. A writer that is there is waited for, however slow.
    [[nodiscard]] std::size_t next(std::string& piece) {
        if (is_waiting_) return taken(piece);
        if (is_pipe()) wait_for_a_writer();
        const std::size_t count = taken(piece);
        const bool is_slow = count == 0 && errno == EAGAIN;
        is_waiting_ = ::fcntl(number_, F_SETFL, ::fcntl(number_, F_GETFL) & ~O_NONBLOCK) == 0;
        return is_slow && is_waiting_ ? taken(piece) : count;
    }

private:
    // It may open the pipe a little after us.
    void wait_for_a_writer() const {
        constexpr int kMostMs = 2000;
        pollfd pipe = {number_, POLLIN, 0};
        ::poll(&pipe, 1, kMostMs);
    }
    [[nodiscard]] std::size_t taken(std::string& piece) const {
        for (;;) {
            errno = 0;
            const auto count = ::read(number_, piece.data(), piece.size());
            if (count >= 0) return static_cast<std::size_t>(count);
            if (errno != EINTR) return 0;
        }
    }

    int number_;
    struct ::stat status_ = {};
    bool is_known_, is_waiting_ = false;
};

Result<std::string> read_path(const std::string& path, std::string_view what) {
    Opened file(path);
    if (!file.can_be_read()) return unreadable(path, what);
    auto bytes = read_to_end([&](std::string& piece) { return file.next(piece); }, path, what);
    if (!bytes || !bytes->empty() || !file.is_pipe()) return bytes;
    return Fault{Code::argument_wrong, "nothing came out of this pipe", path,
                 "have the " + std::string(what) + " written into it, or name a file"};
}
#endif

} // namespace

Result<std::string> read_file(const std::string& path, std::string_view what) {
    if (path == "-") return read_stream(std::cin, "standard input", what);
    return read_path(path, what);
}

} // namespace undersheet::cli
