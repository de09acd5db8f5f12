#include "job/method_check.h"

#include "base/text.h"
#include "job/rules.h"

#include <algorithm>
#include <cmath>

namespace undersheet::job {
namespace {

using method::Level;
using method::Method;
using method::Rule;
using method::Stage;

Fault wrong_method(const std::string& what, const std::string& right) {
    return {Code::method_malformed, what, "method file", right};
}

// Guards are asked for by name: one that nobody knows would never hold anything.
std::vector<std::string> guards_of(const Method& method) {
    std::vector<std::string> names;
    for (const Stage& stage : method.stages()) {
        names.insert(names.end(), stage.start_guards.begin(), stage.start_guards.end());
        names.insert(names.end(), stage.sign_guards.begin(), stage.sign_guards.end());
    }
    return names;
}

Done guards_known(const Method& own, const Method& usual) {
    const auto known = guards_of(usual);
    for (const auto& guard : guards_of(own)) {
        if (std::find(known.begin(), known.end(), guard) != known.end()) continue;
        return wrong_method("there is no guard '" + guard + "'",
                            "did you mean '" + nearest_word(guard, known) + "'?");
    }
    return {};
}

Done limits_there(const Method& own, const Method& usual) {
    for (const auto& limit : usual.limits()) {
        if (own.find_limit(limit.key) == nullptr) {
            return wrong_method("the limit '" + limit.key + "' is missing", "give it, with its source");
        }
    }
    return {};
}

// A slip of the keyboard, or malice: a thousand times the usual figure is no practice of any firm.
Done limits_believable(const Method& own, const Method& usual) {
    constexpr double kMostTimes = 1000;
    for (const auto& limit : usual.limits()) {
        const double most = kMostTimes * std::max(1.0, std::abs(limit.value));
        const double value = own.limit(limit.key);
        if (std::abs(value) <= most) continue;
        return wrong_method("the limit '" + limit.key + "' is " + shortest(value, 3) + ", usual is " +
                                shortest(limit.value, 3),
                            "at most " + shortest(most, 3) + " is believed");
    }
    return {};
}

bool has_level_like(const Rule& rule, const Level& wanted) {
    return std::any_of(rule.levels.begin(), rule.levels.end(), [&](const Level& level) {
        return level.severity == wanted.severity && level.limit == wanted.limit;
    });
}

const Rule* worked_by(const Method& method, const std::string& worked) {
    const auto found = std::find_if(method.rules().begin(), method.rules().end(),
                                    [&](const Rule& rule) { return rule.worked == worked; });
    return found == method.rules().end() ? nullptr : &*found;
}

// A computation picks its level by severity or limit, so both have to stay as they are.
Done worked_rules_whole(const Method& own, const Method& usual) {
    for (const Rule& rule : own.rules()) {
        if (rule.worked.empty()) continue;
        const Rule* pattern = worked_by(usual, rule.worked);
        if (pattern == nullptr) {
            return wrong_method("rule '" + rule.name + "': nothing works out '" + rule.worked + "'",
                                "use a computation of the usual method");
        }
        for (const Level& level : pattern->levels) {
            if (has_level_like(rule, level)) continue;
            return wrong_method("rule '" + rule.name + "' lacks its level '" +
                                    std::string(method::severity_word(level.severity)) + "' " + level.limit,
                                "keep the levels of a worked-out rule");
        }
    }
    return {};
}

Done fields_known(const Method& own, const method::Catalogue& kinds) {
    for (const Rule& rule : own.rules()) {
        if (!rule.worked.empty()) continue;
        const method::Kind* kind = kinds.find(rule.kind);
        if (kind == nullptr)
            return wrong_method("rule '" + rule.name + "': no kind '" + rule.kind + "'", "see kinds");
        for (const auto& field : rule.fields) {
            if (kind->field(field) != nullptr) continue;
            return wrong_method("rule '" + rule.name + "': " + rule.kind + " has no field '" + field + "'",
                                "see kinds");
        }
        for (const Level& level : rule.levels) {
            if (!method::compares(rule.test) || !level.limit.empty()) continue;
            return wrong_method("rule '" + rule.name + "' compares with no limit",
                                "name the limit of each level");
        }
    }
    return {};
}

Done doubts_can_speak(const Method& own) {
    for (const auto& doubt : own.doubts()) {
        if (!doubt.only_if) continue;
        const bool words = doubt.only_if->test == method::Test::one_of && !doubt.only_if->words.empty();
        const bool over =
            doubt.only_if->test == method::Test::over && own.find_limit(doubt.only_if->limit) != nullptr;
        if (!words && !over)
            return wrong_method("the doubt '" + doubt.says + "' would never be raised",
                                "narrow it by one_of with words, or by over with a limit");
    }
    return {};
}

} // namespace

Done method_fits(const Method& own, const Method& usual, const method::Catalogue& kinds) {
    if (auto done = guards_known(own, usual); !done) return done;
    if (auto done = limits_there(own, usual); !done) return done;
    if (auto done = limits_believable(own, usual); !done) return done;
    if (auto done = worked_rules_whole(own, usual); !done) return done;
    if (auto done = doubts_can_speak(own); !done) return done;
    return fields_known(own, kinds);
}

} // namespace undersheet::job
