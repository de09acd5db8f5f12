#include "desk/desk.h"
#include "desk/session.h"
#include "desk/words.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

using entry::Entry;

// What each entry said at the moment the next one was written: corrections are shown against that.
class Effect {
public:
    explicit Effect(const Case& on) : on_(on) {}

    Lines changes_of(const Entry& entry) {
        Lines changes;
        if (entry.kind != "correct") return changes;
        const Entry* old = find(entry.data.text_of("of"));
        const entry::Value* fields = entry.data.find("fields");
        if (old == nullptr || fields == nullptr || fields->map() == nullptr) return changes;
        entry::Value& now = said(*old);
        const method::Kind* kind = on_.kinds->find(old->kind);
        for (const auto& member : *fields->map()) {
            const entry::Value* before = now.find(member.key);
            changes.push_back((before == nullptr ? member.key + " not given"
                                                 : field_words(on_.job, kind, member.key, *before)) +
                              " -> " + value_words(member.value));
            now.set(member.key, member.value);
        }
        return changes;
    }

private:
    const Entry* find(const std::string& hash) const {
        const auto found = std::find_if(on_.entries.begin(), on_.entries.end(),
                                        [&](const Entry& e) { return entry::hash_text(e.hash) == hash; });
        return found == on_.entries.end() ? nullptr : &*found;
    }
    entry::Value& said(const Entry& entry) { return said_.try_emplace(entry.hash, entry.data).first->second; }

    const Case& on_;
    std::map<entry::Hash, entry::Value> said_;
};

// What later entries did to this one.
Lines later_marks(const Case& on, const Entry& entry) {
    Lines marks;
    const std::string name = entry::hash_text(entry.hash);
    for (const auto& later : on.entries) {
        if ((later.kind != "correct" && later.kind != "withdraw") || later.data.text_of("of") != name)
            continue;
        marks.push_back(std::string(later.kind == "correct" ? "corrected by " : "withdrawn by ") +
                        entry::short_name(later.hash) + ": " + later.data.text_of("why"));
    }
    return marks;
}

// A correction's own "of" and "fields" are told as changes.
std::string says_of(const Case& on, const Entry& entry) {
    if (entry.kind != "correct" && entry.kind != "withdraw")
        return entry_words(on.job, entry, on.kinds->find(entry.kind));
    return entry.data.text_of("of").substr(0, 8) + ", " + entry.data.text_of("why");
}

// What a newer version wrote is kept as it is, and said to be so.
Lines newer_marks(const Case& on, const Entry& entry) {
    const method::Kind* kind = on.kinds->find(entry.kind);
    if (kind == nullptr) return {"this kind of entry is not understood here; kept as it is"};
    Lines marks;
    for (const auto& member : *entry.data.map()) {
        if (kind->field(member.key) == nullptr)
            marks.push_back("'" + member.key + "' is not understood here; kept as it is");
    }
    return marks;
}

HistoryLine line_of(const Case& on, const Entry& entry, Effect& effect) {
    HistoryLine line;
    line.entry = entry::hash_text(entry.hash);
    line.name = entry::short_name(entry.hash);
    line.kind = entry.kind;
    line.heading = heading_of(*on.kinds, entry.kind);
    line.place = entry::place_text(entry.place);
    line.part = entry.part;
    line.when = entry.when.text;
    line.clock = entry.clock.text;
    line.by = on.job.person_name(entry.author);
    line.device = entry.device;
    line.says = says_of(on, entry);
    line.changes = effect.changes_of(entry);
    line.marks = marks_of(entry, *on.method);
    for (auto& mark : newer_marks(on, entry)) line.marks.push_back(std::move(mark));
    for (auto& mark : later_marks(on, entry)) line.marks.push_back(std::move(mark));
    return line;
}

// Does `entry` speak of the one with this name?
bool is_about(const Entry& entry, const std::string& name) {
    if (entry::hash_text(entry.hash) == name || entry.data.text_of("of") == name) return true;
    const auto& stands_on = entry.data.list_of("stands_on");
    return std::any_of(stands_on.begin(), stands_on.end(), [&](const entry::Value& value) {
        return value.text() != nullptr && *value.text() == name;
    });
}

} // namespace

Result<History> Desk::history(const Asked& asked, std::string_view wanted) {
    auto on = take_up(*session_, asked);
    if (!on) return on.fault();
    std::string only;
    if (!wanted.empty()) {
        auto found = find_entry(*on, wanted);
        if (!found) return found.fault();
        only = entry::hash_text((*found)->hash);
    }
    History history = {on->name(), {}, on->job.problems};
    Effect effect(*on);
    for (const auto& entry : on->entries) {
        HistoryLine line = line_of(*on, entry, effect);
        const bool then = asked.when.empty() || entry.when.unix_s <= on->moment.as_of.unix_s;
        if (then && (only.empty() || is_about(entry, only))) history.lines.push_back(std::move(line));
    }
    return history;
}

} // namespace undersheet::desk
