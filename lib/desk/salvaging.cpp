// A new book out of what a damaged one still holds.
#include "book/salvaging.h"
#include "book/machine.h"
#include "desk/desk.h"

namespace undersheet::desk {
namespace {

Lines names_of(const std::vector<entry::Hash>& hashes) {
    Lines names;
    for (const auto& hash : hashes) names.push_back(entry::hash_text(hash));
    return names;
}

} // namespace

Result<SalvagedBook> Desk::salvage(const Salvage& what) {
    const auto world = book::this_machine();
    book::KeyFiles old_keys(what.damaged), new_keys(what.to);
    const auto salvaged = book::salvage({what.damaged, &old_keys, what.with}, what.to, {*world, new_keys});
    if (!salvaged) return salvaged.fault();
    SalvagedBook answer;
    answer.file = what.damaged;
    answer.book = what.to;
    answer.entries = as_size(salvaged->entries);
    answer.personal = as_size(salvaged->personal);
    answer.texts = as_size(salvaged->texts);
    answer.photos = as_size(salvaged->photos);
    answer.whole = salvaged->is_whole();
    for (const auto& device : salvaged->devices)
        answer.devices.push_back({device.device, as_size(device.entries), as_size(device.written)});
    for (const auto& gap : salvaged->gaps)
        answer.gaps.push_back({gap.ref, gap.device, as_size(gap.from), as_size(gap.to)});
    answer.refused = as_size(salvaged->refused);
    answer.named = as_size(salvaged->named);
    answer.missing_personal = as_size(salvaged->missing_personal);
    answer.missing_texts = names_of(salvaged->missing_texts);
    answer.missing_photos = names_of(salvaged->missing_photos);
    if (salvaged->has_journal)
        answer.remarks.emplace_back("a journal lies beside the damaged book: what was being written when it "
                                    "broke may be here in part");
    return answer;
}

} // namespace undersheet::desk
