// Preloaded (LD_PRELOAD) into a program on Linux: writes down every step that changes a file, then lets it happen.
//
// UNDERSHEET_TRACE names the trace; only files below UNDERSHEET_TRACE_FOLDER are looked at. One thread, as our program has.
#include "tests/power/trace.h"

#include <array>
#include <cstdarg>
#include <cstdlib>
#include <cstring>
#include <dlfcn.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace {

using undersheet::power::StepHead;
constexpr std::size_t kMostFiles = 1024;
constexpr std::size_t kMostName = 1024;
using Name = std::array<char, kMostName>;

std::array<Name, kMostFiles> names; // by descriptor; "" where it is none of ours
int trace = -1;

template <class Function>
Function real(const char* name) {
    return reinterpret_cast<Function>(dlsym(RTLD_NEXT, name));
}

bool is_ours(const char* path) {
    const char* folder = std::getenv("UNDERSHEET_TRACE_FOLDER");
    return folder != nullptr && path != nullptr && std::strncmp(path, folder, std::strlen(folder)) == 0 &&
           std::strlen(path) < kMostName;
}

void put(const void* bytes, std::size_t size) {
    static const auto write_out = real<ssize_t (*)(int, const void*, std::size_t)>("write");
    const char* at = static_cast<const char*>(bytes);
    while (size > 0) {
        const ssize_t done = write_out(trace, at, size);
        if (done <= 0) std::abort(); // half a trace would prove nothing
        at += done;
        size -= static_cast<std::size_t>(done);
    }
}

void note(char kind, const char* file, const char* to = "", std::uint64_t at = 0, const void* bytes = nullptr,
          std::size_t size = 0) {
    if (trace < 0) {
        static const auto open_it = real<int (*)(const char*, int, ...)>("open");
        const char* name = std::getenv("UNDERSHEET_TRACE");
        trace = name == nullptr ? -1 : open_it(name, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
        if (trace < 0) std::abort();
    }
    StepHead head = {};
    head.kind = kind;
    head.file_bytes = static_cast<std::uint32_t>(std::strlen(file));
    head.to_bytes = static_cast<std::uint32_t>(std::strlen(to));
    head.at = at;
    head.size = size;
    put(&head, sizeof head);
    put(file, head.file_bytes);
    put(to, head.to_bytes);
    put(bytes, size);
}

const char* name_of(int descriptor) {
    const bool is_known = descriptor >= 0 && descriptor < static_cast<int>(kMostFiles);
    return is_known ? names[static_cast<std::size_t>(descriptor)].data() : "";
}

int opened(int descriptor, const char* path, int flags, bool was_there) {
    if (descriptor < 0 || descriptor >= static_cast<int>(kMostFiles)) return descriptor;
    Name& name = names[static_cast<std::size_t>(descriptor)];
    name[0] = '\0';
    if (!is_ours(path)) return descriptor;
    std::strcpy(name.data(), path);
    if (!was_there && (flags & O_CREAT) != 0) note('c', path);
    if (was_there && (flags & O_TRUNC) != 0) note('t', path);
    return descriptor;
}

bool is_there(const char* path) {
    struct stat about = {};
    return is_ours(path) && stat(path, &about) == 0;
}

struct AtEnd {
    AtEnd() = default;
    AtEnd(const AtEnd&) = delete;
    AtEnd& operator=(const AtEnd&) = delete;
    ~AtEnd() { note('e', ""); }
} at_end;

} // namespace

#define OPENING(function)                                                                                    \
    int function(const char* path, int flags, ...) {                                                         \
        static const auto next = real<int (*)(const char*, int, ...)>(#function);                            \
        va_list more;                                                                                        \
        va_start(more, flags);                                                                               \
        const unsigned mode = (flags & O_CREAT) != 0 ? va_arg(more, unsigned) : 0;                           \
        va_end(more);                                                                                        \
        const bool was_there = is_there(path);                                                               \
        return opened(next(path, flags, mode), path, flags, was_there);                                      \
    }
#define WRITING_AT(function, Offset)                                                                         \
    ssize_t function(int file, const void* bytes, std::size_t size, Offset at) {                             \
        static const auto next = real<ssize_t (*)(int, const void*, std::size_t, Offset)>(#function);        \
        const ssize_t done = next(file, bytes, size, at);                                                    \
        if (done > 0 && *name_of(file) != '\0')                                                              \
            note('w', name_of(file), "", static_cast<std::uint64_t>(at), bytes,                              \
                 static_cast<std::size_t>(done));                                                            \
        return done;                                                                                         \
    }
#define CUTTING(function, Offset)                                                                            \
    int function(int file, Offset size) noexcept {                                                           \
        static const auto next = real<int (*)(int, Offset)>(#function);                                      \
        const int done = next(file, size);                                                                   \
        if (done == 0 && *name_of(file) != '\0')                                                             \
            note('t', name_of(file), "", static_cast<std::uint64_t>(size));                                  \
        return done;                                                                                         \
    }
#define SYNCING(function)                                                                                    \
    int function(int file) {                                                                                 \
        static const auto next = real<int (*)(int)>(#function);                                              \
        const int done = next(file);                                                                         \
        if (done == 0 && *name_of(file) != '\0') note('s', name_of(file));                                   \
        return done;                                                                                         \
    }
#define NAMING(function, kind)                                                                               \
    int function(const char* from, const char* to) noexcept {                                                \
        static const auto next = real<int (*)(const char*, const char*)>(#function);                         \
        const int done = next(from, to);                                                                     \
        if (done == 0 && is_ours(to)) note(kind, from, to);                                                  \
        return done;                                                                                         \
    }
#define REMOVING(function)                                                                                   \
    int function(const char* path) noexcept {                                                                \
        static const auto next = real<int (*)(const char*)>(#function);                                      \
        const int done = next(path);                                                                         \
        if (done == 0 && is_ours(path)) note('r', path);                                                     \
        return done;                                                                                         \
    }

extern "C" {
OPENING(open)
OPENING(open64)
WRITING_AT(pwrite, off_t)
WRITING_AT(pwrite64, off64_t)
CUTTING(ftruncate, off_t)
CUTTING(ftruncate64, off64_t)
SYNCING(fsync)
SYNCING(fdatasync)
NAMING(link, 'l')
NAMING(rename, 'm')
REMOVING(unlink)
REMOVING(remove)

// A file that is only appended to or written from its start: where that is, the system knows.
ssize_t write(int file, const void* bytes, std::size_t size) {
    static const auto next = real<ssize_t (*)(int, const void*, std::size_t)>("write");
    const bool is_watched = *name_of(file) != '\0';
    const off_t at = is_watched ? lseek(file, 0, SEEK_CUR) : 0;
    const ssize_t done = next(file, bytes, size);
    if (done > 0 && is_watched)
        note('w', name_of(file), "", static_cast<std::uint64_t>(at), bytes, static_cast<std::size_t>(done));
    return done;
}

int close(int file) {
    static const auto next = real<int (*)(int)>("close");
    if (file >= 0 && file < static_cast<int>(kMostFiles)) names[static_cast<std::size_t>(file)][0] = '\0';
    return next(file);
}

int mkdir(const char* path, mode_t mode) noexcept {
    static const auto next = real<int (*)(const char*, mode_t)>("mkdir");
    const int done = next(path, mode);
    if (done == 0 && is_ours(path)) note('f', path);
    return done;
}
}
