#include "tests/power/disk.h"

#include <algorithm>
#include <cstring>
#include <fstream>
#include <iterator>
#include <optional>
#include <stdexcept>

namespace undersheet::power {
namespace {

constexpr std::size_t kSector = 512;

void apply(std::string& bytes, const Step& step) {
    const auto at = static_cast<std::size_t>(step.at);
    if (step.kind == Step::Kind::truncate) return bytes.resize(at, '\0');
    if (bytes.size() < at + step.bytes.size()) bytes.resize(at + step.bytes.size(), '\0');
    bytes.replace(at, step.bytes.size(), step.bytes);
}

std::string folder_of(const std::string& path) { return path.substr(0, path.rfind('/')); }

Content content_of(std::string bytes) {
    auto made = std::make_shared<Bytes>();
    made->bytes = std::move(bytes);
    return made;
}

// All of a step, none of it, or some of its sectors.
std::optional<Step> part_of(const Step& step, std::mt19937& chance) {
    const auto fate = chance() % 3;
    if (fate == 0) return std::nullopt;
    if (fate == 1 || step.bytes.size() <= kSector) return step;
    Step part = step;
    const std::size_t sectors = step.bytes.size() / kSector;
    const std::size_t from = chance() % sectors;
    const std::size_t to = from + 1 + chance() % (sectors - from);
    part.at = step.at + from * kSector;
    part.bytes = step.bytes.substr(from * kSector, (to - from) * kSector);
    return part;
}

// Papers are written by the standard library, whose steps are not recorded; of what is evidence none may be missed.
bool is_paper(const std::string& path) {
    return path.find(".book") == std::string::npos && path.find(".hand") == std::string::npos;
}

std::string take_bytes(const std::string& all, std::size_t& at, std::size_t size) {
    if (size > all.size() - at) throw std::runtime_error("the trace broke off");
    at += size;
    return all.substr(at - size, size);
}

} // namespace

std::vector<Step> read_trace(const std::string& file) {
    std::ifstream in(file, std::ios::binary);
    const std::string all{std::istreambuf_iterator<char>(in), {}};
    std::vector<Step> steps;
    for (std::size_t at = 0; at < all.size();) {
        StepHead head = {};
        std::memcpy(&head, take_bytes(all, at, sizeof head).data(), sizeof head);
        Step step;
        step.kind = static_cast<Step::Kind>(head.kind);
        step.at = head.at;
        step.file = take_bytes(all, at, head.file_bytes);
        step.to = take_bytes(all, at, head.to_bytes);
        step.bytes = take_bytes(all, at, static_cast<std::size_t>(head.size));
        steps.push_back(std::move(step));
    }
    return steps;
}

void Disk::carry_out(const Naming& change, Names& names) {
    names.erase(change.remove);
    if (!change.add.empty()) names[change.add] = change.file;
}

void Disk::name(Naming change) {
    carry_out(change, now_);
    pending_.push_back(std::move(change));
}

void Disk::sync(const std::string& path) {
    const auto at = now_.find(path);
    if (at == now_.end()) return sync_folder(path);
    File& file = files_[at->second];
    file.safe = file.now;
    file.pending.clear();
}

void Disk::sync_folder(const std::string& folder) {
    const auto is_in = [&](const Naming& change) {
        return folder_of(change.add.empty() ? change.remove : change.add) == folder;
    };
    for (const Naming& change : pending_) {
        if (is_in(change)) carry_out(change, safe_);
    }
    std::erase_if(pending_, is_in);
    std::erase_if(new_folders_, [&](const std::string& made) { return folder_of(made) == folder; });
}

void Disk::take(const Step& step) {
    const bool renames = step.kind == Step::Kind::move || step.kind == Step::Kind::link;
    if (renames && !now_.contains(step.file) && is_paper(step.file) && is_paper(step.to)) return;
    switch (step.kind) {
    case Step::Kind::create:
        files_.push_back({content_of({}), content_of({}), {}});
        return name({{}, step.file, files_.size() - 1});
    case Step::Kind::link:
        return name({{}, step.to, now_.at(step.file)});
    case Step::Kind::move:
        return name({step.file, step.to, now_.at(step.file)});
    case Step::Kind::remove:
        return name({step.file, {}, 0});
    case Step::Kind::folder:
        new_folders_.insert(step.file);
        return;
    case Step::Kind::sync:
        return sync(step.file);
    case Step::Kind::ended:
        return;
    case Step::Kind::write:
    case Step::Kind::truncate:
        File& file = files_[now_.at(step.file)];
        std::string bytes = file.now->bytes;
        apply(bytes, step);
        file.now = content_of(std::move(bytes));
        file.pending.push_back(step);
    }
}

template <class Bytes>
Image Disk::image_of(const Names& names, const std::set<std::string>& lost, Bytes bytes) const {
    Image image;
    for (const auto& [path, file] : names) {
        if (!lost.contains(folder_of(path))) image[path] = bytes(files_[file]);
    }
    return image;
}

Image Disk::killed() const {
    return image_of(now_, {}, [](const File& file) { return file.now; });
}

Image Disk::dropped() const {
    return image_of(safe_, new_folders_, [](const File& file) { return file.safe; });
}

Image Disk::torn(std::mt19937& chance) const {
    Names names = safe_;
    for (const Naming& change : pending_) {
        if (chance() % 2 == 0) carry_out(change, names);
    }
    std::set<std::string> lost;
    for (const std::string& folder : new_folders_) {
        if (chance() % 2 == 0) lost.insert(folder);
    }
    return image_of(names, lost, [&](const File& file) {
        if (file.pending.empty()) return file.safe;
        std::string bytes = file.safe->bytes;
        for (const Step& step : file.pending) {
            if (const auto part = part_of(step, chance)) apply(bytes, *part);
        }
        return content_of(std::move(bytes));
    });
}

} // namespace undersheet::power
