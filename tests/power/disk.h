// What a disk may hold when the power is cut, given everything a program asked of it: files, names and folders.
//
// Model and its limits: a sync tells the truth; sectors of 512 bytes are written whole or not at all; a name is there or not. A
// sync of a file makes its bytes safe and not its name: that takes a sync of its folder.
#pragma once

#include "tests/power/trace.h"

#include <map>
#include <memory>
#include <random>
#include <set>

namespace undersheet::power {

struct Bytes {
    std::string bytes = {};
    mutable std::string name = {}; // SHA-256, once somebody has asked
};
using Content = std::shared_ptr<const Bytes>; // shared between the many images that have it alike
using Image = std::map<std::string, Content>; // by path

class Disk {
public:
    void take(const Step& step);
    [[nodiscard]] Image killed() const;                   // all that was asked for reached the disk
    [[nodiscard]] Image dropped() const;                  // only what was synced did
    [[nodiscard]] Image torn(std::mt19937& chance) const; // of the rest, each by chance: all, none or a part

private:
    struct File {
        Content now = {}, safe = {};
        std::vector<Step> pending = {}; // between safe and now
    };
    struct Naming { // a pending change of a folder: atomic
        std::string remove = {}, add = {};
        std::size_t file = 0;
    };
    using Names = std::map<std::string, std::size_t>;

    void sync(const std::string& path);
    void sync_folder(const std::string& folder);
    void name(Naming change);
    static void carry_out(const Naming& change, Names& names);
    template <class Bytes>
    [[nodiscard]] Image image_of(const Names& names, const std::set<std::string>& lost, Bytes bytes) const;

    std::vector<File> files_ = {};
    Names now_ = {}, safe_ = {};
    std::vector<Naming> pending_ = {};
    std::set<std::string> new_folders_ = {}; // made, and their own names not safe yet
};

} // namespace undersheet::power
