// What a disk may hold when the power is cut, given everything that was asked of it.
//
// Model and its limits: a sync tells the truth; sectors of 512 bytes are written whole or not at all.
#pragma once

#include "tests/book/memory_disk.h"

#include <algorithm>
#include <optional>
#include <random>

namespace undersheet {

inline constexpr std::size_t kSector = 512;
inline void apply(std::string& bytes, const DiskStep& step) {
    if (step.kind == DiskStep::Kind::truncate) return bytes.resize(step.at, '\0');
    if (step.kind != DiskStep::Kind::write) return;
    if (bytes.size() < step.at + step.bytes.size()) bytes.resize(step.at + step.bytes.size(), '\0');
    bytes.replace(step.at, step.bytes.size(), step.bytes);
}

// What the disk is sure to hold, and what has been asked of it since.
class Disk {
public:
    explicit Disk(Files safe) : safe_(std::move(safe)) {}

    void take(const DiskStep& step) {
        if (step.kind == DiskStep::Kind::sync) return sync(step);
        if (step.kind == DiskStep::Kind::remove && step.folder_too) {
            safe_.erase(step.file);
            return forget(step.file);
        }
        pending_.push_back(step);
    }
    [[nodiscard]] Files killed() const {
        return image([](const DiskStep&) { return std::optional<DiskStep>(); }, true);
    }
    [[nodiscard]] Files dropped() const { return safe_; }
    [[nodiscard]] Files torn(std::mt19937& chance) const {
        return image([&](const DiskStep& step) { return part_of(step, chance); }, false);
    }

private:
    void forget(const std::string& file) {
        std::erase_if(pending_, [&](const DiskStep& step) { return step.file == file; });
    }
    void sync(const DiskStep& step) {
        for (const DiskStep& waiting : pending_) {
            const bool of_the_folder =
                waiting.kind == DiskStep::Kind::create || waiting.kind == DiskStep::Kind::remove;
            if (of_the_folder && !step.folder_too) continue;
            if (waiting.kind == DiskStep::Kind::create) safe_[waiting.file];
            if (waiting.kind == DiskStep::Kind::remove) safe_.erase(waiting.file);
            if (!of_the_folder && waiting.file == step.file) apply(safe_[waiting.file], waiting);
        }
        std::erase_if(pending_, [&](const DiskStep& waiting) {
            const bool of_the_folder =
                waiting.kind == DiskStep::Kind::create || waiting.kind == DiskStep::Kind::remove;
            return of_the_folder ? step.folder_too : waiting.file == step.file;
        });
    }

    static std::optional<DiskStep> part_of(const DiskStep& step, std::mt19937& chance) {
        const auto fate = chance() % 3;
        if (fate == 0) return std::nullopt;
        if (fate == 1 || step.bytes.size() <= kSector) return step;
        DiskStep part = step;
        const std::size_t sectors = step.bytes.size() / kSector;
        const std::size_t from = chance() % sectors;
        const std::size_t to = from + 1 + chance() % (sectors - from);
        part.at = step.at + from * kSector;
        part.bytes = step.bytes.substr(from * kSector, (to - from) * kSector);
        return part;
    }

    template <class Part>
    Files image(Part part, bool everything) const {
        Files files = safe_;
        for (const DiskStep& waiting : pending_) {
            const auto step = everything ? std::optional<DiskStep>(waiting) : part(waiting);
            if (!step) continue;
            if (step->kind == DiskStep::Kind::remove)
                files.erase(step->file);
            else
                apply(files[step->file], *step);
        }
        return files;
    }

    Files safe_;
    std::vector<DiskStep> pending_ = {};
};

} // namespace undersheet
