// A new book out of what a damaged one still holds.
#include "book/salvaging.h"
#include "book/machine.h"
#include "desk/desk.h"

namespace undersheet::desk {
namespace {

std::size_t size_in_file(std::int64_t count) { return static_cast<std::size_t>(count); }

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
    answer.entries = size_in_file(salvaged->entries);
    answer.personal = size_in_file(salvaged->personal);
    answer.texts = size_in_file(salvaged->texts);
    answer.photos = size_in_file(salvaged->photos);
    answer.whole = salvaged->is_whole();
    for (const auto& device : salvaged->devices)
        answer.devices.push_back({device.device, size_in_file(device.entries), size_in_file(device.written)});
    for (const auto& gap : salvaged->gaps)
        answer.gaps.push_back({gap.ref, gap.device, size_in_file(gap.from), size_in_file(gap.to)});
    answer.refused = size_in_file(salvaged->refused);
    answer.named = size_in_file(salvaged->named);
    answer.missing_personal = size_in_file(salvaged->missing_personal);
    answer.missing_texts = names_of(salvaged->missing_texts);
    answer.missing_photos = names_of(salvaged->missing_photos);
    if (salvaged->has_journal)
        answer.remarks.emplace_back("a journal lies beside the damaged book: what was being written when it "
                                    "broke may be here in part");
    return answer;
}

} // namespace undersheet::desk
