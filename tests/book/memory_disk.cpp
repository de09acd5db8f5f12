#include "tests/book/memory_disk.h"

#include <cstring>
#include <new>
#include <sqlite3.h>

namespace undersheet {
namespace {

constexpr const char* kName = "memory-disk";
MemoryDisk* the_disk = nullptr;

struct OpenFile {
    sqlite3_file base;
    std::string* name;
    bool sync_folder; // a journal that was just made
};
OpenFile* opened(sqlite3_file* file) { return reinterpret_cast<OpenFile*>(file); }
std::string& content(sqlite3_file* file) { return the_disk->files[*opened(file)->name]; }

int close_file(sqlite3_file* file) {
    delete opened(file)->name;
    return SQLITE_OK;
}

int read(sqlite3_file* file, void* into, int amount, sqlite3_int64 offset) {
    const std::string& bytes = content(file);
    const auto at = static_cast<std::size_t>(offset);
    const auto wanted = static_cast<std::size_t>(amount);
    const std::size_t there = at >= bytes.size() ? 0 : std::min(wanted, bytes.size() - at);
    std::memset(into, 0, wanted);
    if (there > 0) std::memcpy(into, bytes.data() + at, there);
    return there == wanted ? SQLITE_OK : SQLITE_IOERR_SHORT_READ;
}

int write(sqlite3_file* file, const void* from, int amount, sqlite3_int64 offset) {
    if (const int code = the_disk->next_step(); code != SQLITE_OK) return code;
    std::string& bytes = content(file);
    const auto at = static_cast<std::size_t>(offset);
    const std::string piece(static_cast<const char*>(from), static_cast<std::size_t>(amount));
    if (bytes.size() < at + piece.size()) bytes.resize(at + piece.size(), '\0');
    bytes.replace(at, piece.size(), piece);
    the_disk->log.push_back(
        {.kind = DiskStep::Kind::write, .file = *opened(file)->name, .at = at, .bytes = piece});
    return SQLITE_OK;
}

int truncate(sqlite3_file* file, sqlite3_int64 size) {
    if (const int code = the_disk->next_step(); code != SQLITE_OK) return code;
    content(file).resize(static_cast<std::size_t>(size), '\0');
    the_disk->log.push_back({.kind = DiskStep::Kind::truncate,
                             .file = *opened(file)->name,
                             .at = static_cast<std::size_t>(size)});
    return SQLITE_OK;
}

int sync(sqlite3_file* file, int) {
    if (const int code = the_disk->next_step(); code != SQLITE_OK) return code;
    the_disk->log.push_back(
        {.kind = DiskStep::Kind::sync, .file = *opened(file)->name, .folder_too = opened(file)->sync_folder});
    opened(file)->sync_folder = false;
    return SQLITE_OK;
}

int file_size(sqlite3_file* file, sqlite3_int64* size) {
    *size = static_cast<sqlite3_int64>(content(file).size());
    return SQLITE_OK;
}

int lock(sqlite3_file*, int) { return SQLITE_OK; }
int is_reserved(sqlite3_file*, int* answer) {
    *answer = 0;
    return SQLITE_OK;
}
int control(sqlite3_file*, int, void*) { return SQLITE_NOTFOUND; }
int sector_size(sqlite3_file*) { return 4096; }
int characteristics(sqlite3_file*) { return SQLITE_IOCAP_POWERSAFE_OVERWRITE; }

const sqlite3_io_methods kMethods = {
    1,       close_file,  read,    write,       truncate,        sync,    file_size, lock,
    lock,    is_reserved, control, sector_size, characteristics, nullptr, nullptr,   nullptr,
    nullptr, nullptr,     nullptr};

int open_file(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* out_flags) {
    file->pMethods = nullptr;
    if (name == nullptr) return SQLITE_CANTOPEN; // no temporary files here
    const bool is_new = the_disk->files.find(name) == the_disk->files.end();
    if (is_new && (flags & SQLITE_OPEN_CREATE) == 0) return SQLITE_CANTOPEN;
    if (is_new) {
        if (const int code = the_disk->next_step(); code != SQLITE_OK) return SQLITE_CANTOPEN;
        the_disk->files[name] = {};
        the_disk->log.push_back({.kind = DiskStep::Kind::create, .file = name});
    }
    opened(file)->name = new std::string(name);
    opened(file)->sync_folder = is_new && (flags & (SQLITE_OPEN_MAIN_JOURNAL | SQLITE_OPEN_WAL)) != 0;
    file->pMethods = &kMethods;
    if (out_flags != nullptr) *out_flags = flags;
    return SQLITE_OK;
}

int remove_file(sqlite3_vfs*, const char* name, int sync_folder) {
    if (the_disk->files.find(name) == the_disk->files.end()) return SQLITE_IOERR_DELETE_NOENT;
    if (const int code = the_disk->next_step(); code != SQLITE_OK) return code;
    the_disk->files.erase(name);
    the_disk->log.push_back({.kind = DiskStep::Kind::remove, .file = name, .folder_too = sync_folder != 0});
    return SQLITE_OK;
}

int access(sqlite3_vfs*, const char* name, int, int* answer) {
    *answer = the_disk->files.find(name) == the_disk->files.end() ? 0 : 1;
    return SQLITE_OK;
}

int full_name(sqlite3_vfs*, const char* name, int size, char* out) {
    sqlite3_snprintf(size, out, "%s", name);
    return SQLITE_OK;
}

sqlite3_vfs make_vfs() {
    sqlite3_vfs vfs = *sqlite3_vfs_find(nullptr); // clock, sleep and randomness stay the system's
    vfs.zName = kName;
    vfs.pNext = nullptr;
    vfs.szOsFile = sizeof(OpenFile);
    vfs.xOpen = open_file;
    vfs.xDelete = remove_file;
    vfs.xAccess = access;
    vfs.xFullPathname = full_name;
    return vfs;
}

sqlite3_vfs the_vfs;

} // namespace

MemoryDisk::MemoryDisk() {
    the_disk = this;
    the_vfs = make_vfs();
    sqlite3_vfs_register(&the_vfs, 1);
}

MemoryDisk::~MemoryDisk() {
    sqlite3_vfs_unregister(&the_vfs);
    the_disk = nullptr;
}

void MemoryDisk::refuse(int step, int code, bool for_good) {
    refused_step_ = step;
    code_ = code;
    for_good_ = for_good;
    steps = 0;
}

void MemoryDisk::refuse_nothing() { refuse(0, SQLITE_OK, false); }

int MemoryDisk::next_step() {
    ++steps;
    if (refused_step_ == 0) return SQLITE_OK;
    return steps == refused_step_ || (for_good_ && steps > refused_step_) ? code_ : SQLITE_OK;
}

} // namespace undersheet
