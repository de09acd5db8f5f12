#include "base/text.h"
#include "desk/drafts.h"
#include "job/settle.h"

namespace undersheet::desk {
namespace {

std::vector<std::string> names_of(const job::SettleItem& item) {
    std::vector<std::string> names;
    for (const auto& side : item.sides) names.push_back(entry::short_name(side.entry->hash));
    return names;
}

// The side somebody means by the beginning of its entry's name.
Result<std::string> side_meant(const job::SettleItem& item, const std::string& typed) {
    constexpr std::size_t kShortest = 4;
    std::vector<std::string> meant;
    for (const auto& side : item.sides) {
        const std::string name = entry::hash_text(side.entry->hash);
        if (typed.size() >= kShortest && name.starts_with(lower_ascii(typed))) meant.push_back(name);
    }
    if (meant.size() == 1) return meant.front();
    return Fault{Code::entry_unknown, "'" + typed + "' is not one of the sides of " + item.id, "--keep",
                 "one of " + joined(names_of(item), ", ")};
}

} // namespace

Result<Drafted> draft_settle(const Writing& writing, Typed typed) {
    const auto item = job::settle_item_meant(writing.on.job, typed.text("item"));
    if (!item) return item.fault();
    auto keep = side_meant(**item, typed.text("keep"));
    if (!keep) return keep.fault();
    typed.set("item", (*item)->id);
    typed.set("keep", *keep);
    return checked_draft(writing, typed);
}

} // namespace undersheet::desk
