#include "tests/power/cutting.h"

#include "book/book.h"
#include "tests/power/disk.h"
#include "tests/support/fixed_world.h"
#include "tests/support/temp_folder.h"

#include <algorithm>
#include <filesystem>

namespace undersheet::power {
namespace {

const std::string kLost = "lost";

// What somebody finds: each book and hand-over file by its name, with its check value, or what is wrong with it.
using Found = std::map<std::string, std::string>;

bool is_kept_file(const std::string& name) { return name.ends_with(".book") || name.ends_with(".hand"); }

// The rest that belongs to one of them: its journal, its photographs, its keys.
bool belongs_to(const std::string& path, const std::string& kept) {
    return path == kept || path.starts_with(kept + "-") || path.starts_with(kept + ".photos/");
}

// Between saying that something is erased and doing it, it is still there; that is no loss.
bool is_to_be_erased(const entry::ChainFault& fault) {
    return fault.what.find("was erased and is still here") != std::string::npos;
}

// The check value, or what is wrong.
std::string value_of_book(const std::string& file, bool in_between) {
    FixedWorld world;
    book::KeyFiles keys(file);
    auto opened = book::Book::open(file, book::Access::read, {world, keys});
    if (!opened) return one_line(opened.fault());
    const auto verified = opened->verify();
    if (!verified) return one_line(verified.fault());
    for (const auto& fault : verified->faults) {
        if (!in_between || !is_to_be_erased(fault)) return fault.what;
    }
    return entry::hash_text(verified->digest);
}

std::string value_of_handed(const std::string& file) {
    const auto handed = book::Book::look_at_handed(file);
    if (!handed) return one_line(handed.fault());
    if (!handed->verified.ok()) return handed->verified.faults.front().what;
    return entry::hash_text(handed->verified.digest);
}

// Puts images onto a real disk and looks at them, each that differs once.
class Looking {
public:
    explicit Looking(std::string folder) : traced_(std::move(folder)) {}

    // `in_between`: a program was cut off here.
    Found look(const Image& image, bool in_between) {
        Found found;
        for (const auto& [path, content] : image) {
            if (is_kept_file(path)) found[path] = look_at(path, image, in_between);
        }
        return found;
    }
    [[nodiscard]] std::size_t looked() const { return known_.size(); }

private:
    // What was looked at before is told by the bytes of all that belongs to it.
    std::string look_at(const std::string& kept, const Image& image, bool in_between) {
        Image part;
        std::string names = in_between ? "cut\n" : "ended\n";
        for (const auto& [path, content] : image) {
            if (!belongs_to(path, kept)) continue;
            part[path] = content;
            names += path + " " + hash_of(content) + "\n";
        }
        const auto at = known_.find(names);
        if (at != known_.end()) return at->second;
        return known_[names] = verified(kept, part, in_between);
    }

    static const std::string& hash_of(const Content& content) {
        if (content->name.empty()) content->name = entry::hash_text(entry::sha256(content->bytes));
        return content->name;
    }

    std::string verified(const std::string& kept, const Image& part, bool in_between) {
        const TempFolder folder;
        for (const auto& [path, content] : part) {
            const std::string here = moved(path, folder);
            std::filesystem::create_directories(std::filesystem::path(here).parent_path());
            write_file(here, content->bytes);
        }
        const std::string file = moved(kept, folder);
        return kept.ends_with(".hand") ? value_of_handed(file) : value_of_book(file, in_between);
    }
    [[nodiscard]] std::string moved(const std::string& path, const TempFolder& to) const {
        return to.path() + path.substr(traced_.size());
    }

    std::string traced_;
    std::map<std::string, std::string> known_ = {};
};

bool is_verified(const std::string& found) { return found.size() == 64; }

// Every file is as before or as after, and there when it was there before.
bool is_as_one_of(const Found& found, const Found& before, const Found& after, std::string& bad) {
    const auto in = [](const Found& all, const std::string& name) {
        const auto at = all.find(name);
        return at == all.end() ? kLost : at->second;
    };
    Found all = before;
    all.insert(after.begin(), after.end());
    all.insert(found.begin(), found.end());
    for (const auto& [name, no_matter] : all) {
        const std::string now = in(found, name);
        const bool is_good =
            (now == kLost || is_verified(now)) && (now == in(before, name) || now == in(after, name));
        if (!is_good) bad = name + ": " + now;
        if (!is_good) return false;
    }
    return true;
}

// The steps of each program that changed something.
using Run = std::vector<Step>;

std::vector<Run> runs_of(std::vector<Step> steps) {
    std::vector<Run> runs(1);
    for (Step& step : steps) {
        const bool has_ended = step.kind == Step::Kind::ended;
        if (!has_ended) runs.back().push_back(std::move(step));
        if (has_ended && !runs.back().empty()) runs.emplace_back();
    }
    runs.pop_back();
    return runs;
}

class Cutter {
public:
    explicit Cutter(const Cutting& cutting)
        : cutting_(cutting), looking_(cutting.folder), chance_(cutting.seed) {}

    Counted run() {
        Found before;
        for (const Run& run : runs_of(read_trace(cutting_.trace))) {
            if (is_enough()) break;
            ++counted_.programs;
            for (const Step& step : run) ahead_.take(step);
            const Found after = looking_.look(ahead_.killed(), false);
            for (const Step& step : run) cut_behind(step, before, after);
            // It has ended, and somebody has read its answer.
            check(disk_.dropped(), after, after);
            check(disk_.torn(chance_), after, after);
            before = after;
        }
        counted_.looked = looking_.looked();
        return std::move(counted_);
    }

private:
    void cut_behind(const Step& step, const Found& before, const Found& after) {
        if (cutting_.is_left_out && cutting_.is_left_out(step)) return;
        if (is_enough()) return;
        disk_.take(step);
        ++counted_.steps;
        const std::size_t turn = cutting_.all_images ? 0 : 1 + (counted_.steps + cutting_.seed) % 3;
        if (turn == 0 || turn == 1) check(disk_.killed(), before, after);
        if (turn == 0 || turn == 2) check(disk_.dropped(), before, after);
        for (int i = 0; i < (turn == 0 ? 3 : turn == 3 ? 1 : 0); ++i)
            check(disk_.torn(chance_), before, after);
    }

    void check(const Image& image, const Found& before, const Found& after) {
        if (is_enough()) return;
        ++counted_.images;
        std::string bad;
        if (is_as_one_of(looking_.look(image, before != after), before, after, bad))
            ++counted_.good;
        else if (counted_.first_bad.empty())
            counted_.first_bad = "program " + std::to_string(counted_.programs) + ", step " +
                                 std::to_string(counted_.steps) + ": " + bad;
    }
    [[nodiscard]] bool is_enough() const { return cutting_.stop_at_bad && !counted_.first_bad.empty(); }

    const Cutting& cutting_;
    Looking looking_;
    std::mt19937 chance_;
    Disk disk_ = {}, ahead_ = {}; // ahead: where the running program will have got to
    Counted counted_ = {};
};

} // namespace

Counted cut_everywhere(const Cutting& cutting) { return Cutter(cutting).run(); }

} // namespace undersheet::power
