#include "book/files.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

namespace undersheet::book {
namespace {

// A descriptor that is closed when it goes.
class Descriptor {
public:
    explicit Descriptor(int number) : number_(number) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() {
        if (number_ >= 0) ::close(number_);
    }
    [[nodiscard]] bool is_open() const { return number_ >= 0; }
    [[nodiscard]] int number() const { return number_; }

private:
    int number_;
};

bool write_all(int descriptor, std::string_view bytes) {
    while (!bytes.empty()) {
        const auto written = ::write(descriptor, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written <= 0) return false;
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

Done sync_folder(const std::string& folder) {
#if defined(__EMSCRIPTEN__)
    static_cast<void>(folder); // node's file system opens no folders
#else
    const Descriptor opened(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (!opened.is_open() || ::fsync(opened.number()) != 0) return file_fault(errno, folder);
#endif
    return {};
}

Done write_and_sync(const std::string& path, std::string_view bytes, Readers readers) {
    const ::mode_t mode = readers == Readers::owner ? 0600 : 0644;
    const Descriptor file(::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, mode));
    if (!file.is_open()) return file_fault(errno, path);
    if (!write_all(file.number(), bytes) || ::fsync(file.number()) != 0) return file_fault(errno, path);
    return {};
}

// Opening a pipe would wait for whoever writes into it, so nothing but a file is opened to the end.
Result<int> open_to_read(const std::string& path) {
    const int number = ::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC);
    if (number < 0) return file_fault(errno, path);
    struct ::stat status = {};
    if (::fstat(number, &status) == 0 && S_ISREG(status.st_mode)) return number;
    ::close(number);
    return Fault{Code::book_failed, "this is a folder, pipe or device, not a file", path, "name the file"};
}

} // namespace

Fault file_fault(int error_number, const std::string& path) {
    switch (error_number) {
    case ENOENT:
    case ENOTDIR:
        return {Code::book_missing, "there is no such file or folder", path};
    case EACCES:
    case EPERM:
    case EROFS:
        return {Code::book_read_only, "it may not be written", path,
                "choose another folder, or let it be written"};
    case ENOSPC:
#ifdef EDQUOT
    case EDQUOT:
#endif
        return {Code::book_full, "not saved, the storage is full", path, "make room and do it again"};
    case EFBIG:
        return {Code::book_full, "not saved, the file would be larger than is allowed here", path,
                "lift that limit (ulimit -f), or choose another place"};
    case EEXIST:
        return {Code::book_failed, "there is a file of that name already", path, "choose another name"};
    default:
        return {Code::book_failed, std::generic_category().message(error_number), path};
    }
}

std::string folder_of(const std::string& path) {
    const std::string folder = std::filesystem::path(path).parent_path().string();
    return folder.empty() ? "." : folder;
}

Done write_durably(const std::string& path, std::string_view bytes, Readers readers) {
    const std::string part =
        path + "." + std::to_string(::getpid()) + ".part"; // two programs must not share it
    ::unlink(part.c_str()); // left over from a power cut, perhaps with other rights
    if (auto done = write_and_sync(part, bytes, readers); !done) {
        ::unlink(part.c_str());
        return done;
    }
    if (::rename(part.c_str(), path.c_str()) != 0) {
        const Fault refused = file_fault(errno, path);
        ::unlink(part.c_str());
        return refused;
    }
    return sync_folder(folder_of(path));
}

Result<std::string> read_whole(const std::string& path, std::size_t most_bytes) {
    const auto opened = open_to_read(path);
    if (!opened) return opened.fault();
    const Descriptor file(*opened);
    std::string bytes;
    std::string piece(1U << 16U, '\0');
    for (;;) {
        const auto count = ::read(file.number(), piece.data(), piece.size());
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) return file_fault(errno, path);
        if (count == 0) return bytes;
        bytes.append(piece, 0, static_cast<std::size_t>(count));
        if (bytes.size() > most_bytes)
            return Fault{Code::book_failed, "it is larger than anything of ours", path};
    }
}

std::string read_start(const std::string& path, std::size_t bytes) {
    const auto opened = open_to_read(path);
    const Descriptor file(opened ? *opened : -1);
    std::string start(bytes, '\0');
    const auto count = file.is_open() ? ::read(file.number(), start.data(), bytes) : -1;
    start.resize(count < 0 ? 0 : static_cast<std::size_t>(count));
    return start;
}

std::string read_end(const std::string& path, std::size_t bytes) {
    const auto opened = open_to_read(path);
    const Descriptor file(opened ? *opened : -1);
    std::string end(bytes, '\0');
    const bool is_there = file.is_open() && ::lseek(file.number(), -static_cast<off_t>(bytes), SEEK_END) >= 0;
    const auto count = is_there ? ::read(file.number(), end.data(), bytes) : -1;
    return count == static_cast<ssize_t>(bytes) ? end : "";
}

Done move_into_place(const std::string& from, const std::string& to) {
    if (::link(from.c_str(), to.c_str()) == 0) { // unlike rename, never over a file
        ::unlink(from.c_str());
        return sync_folder(folder_of(to));
    }
    if (errno == EEXIST) return file_fault(EEXIST, to);
    std::error_code ignored; // a file system without links, as on memory cards
    if (std::filesystem::exists(to, ignored)) return file_fault(EEXIST, to);
    if (::rename(from.c_str(), to.c_str()) != 0) return file_fault(errno, to);
    return sync_folder(folder_of(to));
}

Done remove_durably(const std::string& path) {
    if (::unlink(path.c_str()) == 0) return sync_folder(folder_of(path));
    if (errno == ENOENT || errno == ENOTDIR) return {};
    return file_fault(errno, path);
}

Done make_folder(const std::string& path) {
    std::error_code error;
    std::filesystem::create_directory(path, error);
    if (error) return file_fault(error.value(), path);
    return sync_folder(folder_of(path));
}

} // namespace undersheet::book
