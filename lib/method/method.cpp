#include "method/method.h"

#include <algorithm>
#include <stdexcept>

namespace undersheet::method {
namespace {

// The row whose name (or key) is asked for, nullptr when there is none.
template <class Rows, class Name>
auto* find_row(const Rows& rows, std::string_view wanted, Name name) {
    const auto found =
        std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.*name == wanted; });
    return found == rows.end() ? nullptr : &*found;
}

} // namespace

std::string_view severity_word(Severity severity) {
    switch (severity) {
    case Severity::stop:
        return "stop";
    case Severity::put_right:
        return "put_right";
    case Severity::note:
        break;
    }
    return "note";
}

std::string_view severity_text(Severity severity) {
    switch (severity) {
    case Severity::stop:
        return "stop";
    case Severity::put_right:
        return "put right before covering";
    case Severity::note:
        break;
    }
    return "note";
}

bool compares(Test test) {
    return test == Test::under || test == Test::at_or_under || test == Test::over || test == Test::at_or_over;
}

const Level* Rule::level(Severity severity) const {
    const auto found = std::find_if(levels.begin(), levels.end(),
                                    [&](const Level& level) { return level.severity == severity; });
    return found == levels.end() ? nullptr : &*found;
}

const Level* Rule::level_with(std::string_view limit) const {
    const auto found =
        std::find_if(levels.begin(), levels.end(), [&](const Level& level) { return level.limit == limit; });
    return found == levels.end() ? nullptr : &*found;
}

const Step* Stage::step(std::string_view wanted) const { return find_row(steps, wanted, &Step::name); }
const Limit* Method::find_limit(std::string_view key) const { return find_row(limits_, key, &Limit::key); }
const Stage* Method::stage(std::string_view name) const { return find_row(stages_, name, &Stage::name); }
const Rule* Method::rule(std::string_view name) const { return find_row(rules_, name, &Rule::name); }

double Method::limit(std::string_view key) const {
    const Limit* found = find_limit(key);
    if (found == nullptr) throw std::logic_error("the method has no limit '" + std::string(key) + "'");
    return found->value;
}

int Method::patches_per(std::string_view opening_type) const {
    for (const auto& [type, count] : patches_per_) {
        if (type == opening_type) return count;
    }
    return 0;
}

} // namespace undersheet::method
