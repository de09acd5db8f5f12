#include "desk/erased_apart.h"

#include "base/text.h"

#include <algorithm>
#include <set>

namespace undersheet::desk {
namespace {

using entry::Entry;

// What a value is of: the kind of entry, whom it is about where it is about somebody of the firm, and the field.
std::string field_of(const Entry& entry, const std::string& key) {
    return entry.kind + " " + entry.data.text_of("person") + " " + key;
}

std::set<std::string> names_erased_by(const Entry& erase) {
    std::set<std::string> names;
    for (const auto& name : erase.data.list_of("values"))
        if (name.text() != nullptr) names.insert(*name.text());
    return names;
}

std::set<std::string> fields_erased(const std::vector<Entry>& journal, const std::set<std::string>& names) {
    std::set<std::string> fields;
    for (const Entry& entry : journal)
        for (const auto& member : *entry.data.map()) {
            const auto cid = entry::commitment_of(member.value);
            if (cid && names.contains(entry::hash_text(*cid))) fields.insert(field_of(entry, member.key));
        }
    return fields;
}

} // namespace

std::vector<RecordedApart> recorded_apart_from_erasing(const std::vector<Entry>& journal,
                                                       const entry::Causality& causality) {
    std::vector<RecordedApart> found;
    std::set<std::size_t> said;
    for (std::size_t erase = 0; erase < journal.size(); ++erase) {
        if (journal[erase].kind != "erase") continue;
        const auto fields = fields_erased(journal, names_erased_by(journal[erase]));
        for (std::size_t i = 0; i < journal.size(); ++i)
            for (const auto& [key, value] : journal[i].personal) {
                if (!causality.apart(erase, i) || !fields.contains(field_of(journal[i], key))) continue;
                if (!said.insert(i).second) continue;
                found.push_back(
                    {i, "its " + replaced(key, "_", " ") +
                            " was recorded by who did not know that such a value had been erased (" +
                            entry::short_name(journal[erase].hash) +
                            "): if it is the same person's, erase it again"});
            }
    }
    return found;
}

} // namespace undersheet::desk
