// JSON Lines: {"kind","place"?,"part"?,"by","when","data":{…}}, one entry a line, all of them kept or none.
#include "base/text.h"
#include "desk/desk.h"
#include "desk/joining.h"
#include "desk/keep.h"
#include "entry/json.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

using entry::Value;

const std::vector<std::string> kMembers = {"by", "data", "kind", "part", "place", "when"};

// Each line is to fit into the body of an entry; all of them are one action, and every line folds the job again.
constexpr entry::JsonLimits kLineLimits{.bytes = 64U << 10U, .depth = 8, .members = 256};
constexpr std::size_t kMostLines = 5000;
constexpr std::size_t kMostBytes = 16U << 20U;

struct Line {
    Typed typed = {};
    Asked asked = {};
};

Done check_members(const Value& line) {
    if (line.map() == nullptr)
        return Fault{Code::json_shape, "this is no object", {}, "write {\"kind\":…,\"data\":{…}}"};
    for (const auto& member : *line.map()) {
        if (std::find(kMembers.begin(), kMembers.end(), member.key) == kMembers.end()) {
            return Fault{Code::json_shape, "no such member", member.key,
                         "there are " + joined(kMembers, ", ")};
        }
        if (member.key == "data" ? member.value.map() == nullptr : member.value.text() == nullptr) {
            return Fault{Code::json_shape, member.key == "data" ? "this is no object" : "this is no text",
                         member.key, "write it between quotes or braces"};
        }
    }
    if (line.text_of("kind").empty())
        return Fault{Code::json_shape, "is missing", "kind", "say what is recorded"};
    return {};
}

// Each line is read by itself, so where it says "line 1" it means this one, which is named already.
Fault without_its_line(Fault fault) {
    if (fault.where == "line 1") fault.where.clear();
    return fault;
}

// What a line leaves out is taken from the command.
Result<Line> read_line(const std::string& text, const Asked& asked) {
    auto value = entry::read_json(text, kLineLimits);
    if (!value) return without_its_line(value.fault());
    if (auto members = check_members(*value); !members) return members.fault();
    Line line;
    line.typed = {value->text_of("kind"), value->text_of("place"), value->text_of("part"), {}};
    if (const Value* data = value->find("data")) {
        for (const auto& member : *data->map()) line.typed.fields.emplace_back(member.key, member.value);
    }
    line.asked = {asked.job, value->text_of("by", asked.by), value->text_of("when", asked.when)};
    if (line.asked.when.empty())
        return Fault{Code::json_shape, "is missing", "when",
                     "write a time with offset, like 2026-06-11T08:05:00+01:00"};
    return line;
}

Done check_size(std::string_view json_lines) {
    if (json_lines.size() > kMostBytes)
        return Fault{Code::json_too_large, "these lines are larger than 16 MiB", {}, "feed them in pieces"};
    const auto ends = std::count(json_lines.begin(), json_lines.end(), '\n');
    const auto lines = static_cast<std::size_t>(ends) + (json_lines.ends_with('\n') ? 0 : 1);
    if (lines <= kMostLines) return {};
    return Fault{Code::json_too_large,
                 std::to_string(lines) + " lines, at most " + std::to_string(kMostLines) +
                     " are kept at once",
                 {},
                 "feed them in pieces"};
}

class Batch {
public:
    Batch(Session& session, Case& on, book::Book& book, const Asked& asked)
        : session_(session), on_(on), book_(book), asked_(asked) {}

    void feed(std::size_t number, const std::string& text) {
        if (trimmed(text).empty()) return;
        auto kept = keep_line(text);
        if (!kept) {
            result.bad.push_back({number, kept.fault()});
        } else if (!kept->is_kept()) {
            for (const auto& held : kept->held_by)
                result.bad.push_back({number, {Code::held, held.why, kept->part, held.clears}});
        } else {
            ++result.kept;
            for (const auto& odd : kept->asked)
                result.asked.push_back("line " + std::to_string(number) + ": " + odd);
            if (!kept->bond_now.empty()) result.bond_now = kept->bond_now;
        }
    }

    KeptMany result = {};

private:
    Result<Kept> keep_line(const std::string& text) {
        auto line = read_line(text, asked_);
        if (!line) return line.fault();
        auto when = entry::parse_time(line->asked.when);
        if (!when) return at_when(when.fault());
        on_.moment = moment_of(*when, true, on_.entries);
        if (auto folded = on_.fold_again(); !folded) return folded.fault();
        auto by = author_on(session_, book_, on_, line->asked.by);
        if (!by) return at_by(by.fault());
        if (auto named = join_named(session_, book_, on_, line->typed); !named) return named.fault();
        return keep_one({on_, *by, asked_.pin}, book_, line->typed);
    }

    static Fault at_when(Fault fault) {
        fault.where = "when";
        return fault;
    }
    static Fault at_by(Fault fault) {
        fault.where = "by";
        return fault;
    }

    Session& session_;
    Case& on_;
    book::Book& book_;
    const Asked& asked_;
};

} // namespace

Result<KeptMany> Desk::record_lines(const Asked& asked, std::string_view json_lines) {
    if (auto fits = check_size(json_lines); !fits) return fits.fault();
    auto book = session_->writer();
    if (!book) return book.fault();
    KeptMany result;
    const auto done = (*book)->in_one_go([&](book::Book& open) -> Done {
        auto on = take_up(*session_, {.job = asked.job, .supplement = asked.supplement});
        if (!on) return on.fault();
        Batch batch(*session_, *on, open, asked);
        std::size_t number = 0;
        for (const auto& text : split(json_lines, '\n')) batch.feed(++number, text);
        result = std::move(batch.result);
        result.job = on->name();
        if (result.bad.empty()) return {};
        result.kept = 0;
        return Fault{
            result.bad[0].fault.code, "nothing was kept", {}, {}}; // and so the good lines are undone too
    });
    if (!done && result.bad.empty()) return done.fault();
    return result;
}

} // namespace undersheet::desk
