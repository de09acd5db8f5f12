// A disk in memory under SQLite: it keeps a log of all that is done to it, and can refuse any one step.
//
// While it lives it is SQLite's default file system. Files that SQLite is not asked for do not exist here. It behaves as
// the one for Unix where that matters: a journal's first sync also syncs its folder, whole sectors are written safely.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace undersheet {

struct DiskStep {
    enum class Kind { create, write, truncate, sync, remove, told };
    Kind kind = Kind::write;
    std::string file = {};
    std::size_t at = 0;      // write: offset; truncate: new size
    std::string bytes = {};  // write
    bool folder_too = false; // sync and remove: the folder's entries are safe as well
};

using Files = std::map<std::string, std::string>;

class MemoryDisk {
public:
    MemoryDisk();
    MemoryDisk(const MemoryDisk&) = delete;
    MemoryDisk& operator=(const MemoryDisk&) = delete;
    ~MemoryDisk();

    // "told": from here on somebody has been told that what came before is saved.
    void tell() { log.push_back({.kind = DiskStep::Kind::told}); }

    // Refuses step number `step` (1 is the next one), once or for good, with SQLite's error code.
    void refuse(int step, int code, bool for_good);
    void refuse_nothing();
    // The code to answer this step with; SQLITE_OK when it may be done.
    int next_step();

    Files files = {};
    std::vector<DiskStep> log = {};
    int steps = 0; // asked for since refuse() or refuse_nothing()

private:
    int refused_step_ = 0;
    int code_ = 0;
    bool for_good_ = false;
};

} // namespace undersheet
