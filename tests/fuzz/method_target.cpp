// The method file, whole and as a firm would change ours.
#include "base/text.h"
#include "job/method_check.h"
#include "schema/embedded.h"
#include "tests/fuzz/small_job.h"
#include "tests/fuzz/targets.h"

#include <algorithm>

namespace undersheet::fuzz {
namespace {

using method::Method;

void promise_stage(const Method& read, const std::string& name) {
    promise(name.empty() || read.stage(name) != nullptr, "a stage is named that is not there: " + name);
}
void promise_limit(const Method& read, const std::string& key) {
    promise(key.empty() || read.find_limit(key) != nullptr, "a limit is named that is not there: " + key);
}

void promise_names(const Method& read) {
    for (const auto& need : read.needs()) {
        promise_stage(read, need.stage);
        promise_stage(read, need.needs);
    }
    for (const auto& doubt : read.doubts()) promise_stage(read, doubt.stage);
    for (const auto& rule : read.rules()) {
        promise(!rule.levels.empty(), rule.name + " has no level");
        for (const auto& level : rule.levels) {
            promise_limit(read, level.limit);
            for (const auto& hold : level.holds) promise_stage(read, hold.stage);
        }
    }
}

// A method that a job may be opened with has to carry every job through.
void read_and_use(std::string_view text) {
    const auto read = Method::read(text);
    if (!read) return promise_readable(read.fault());
    promise(read->hash() == entry::sha256(text), "the hash is of other bytes");
    promise_names(*read);
    const auto fits = job::method_fits(*read, own_method(), own_kinds());
    if (!fits) return promise_readable(fits.fault());
    judge_and_print(small_job(), *read);
}

} // namespace

void read_a_method(std::string_view bytes) { read_and_use(bytes); }

// Each line is a change, "old<TAB>new": the first place where our own method file says old then says new.
void read_an_edited_method(std::string_view bytes) {
    std::string text(schema::method_json());
    constexpr std::size_t kMostChanges = 16;
    const auto changes = split(bytes, '\n');
    for (std::size_t i = 0; i < std::min(changes.size(), kMostChanges); ++i) {
        const auto tab = changes[i].find('\t');
        if (tab == 0 || tab == std::string::npos) continue;
        const auto at = text.find(changes[i].substr(0, tab));
        if (at != std::string::npos) text.replace(at, tab, changes[i].substr(tab + 1));
    }
    read_and_use(text);
}

} // namespace undersheet::fuzz
