#include "desk/pins.h"

#include "base/text.h"
#include "desk/desk.h"
#include "desk/own.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

using entry::Entry;

// A key that a person has set a PIN for, on the device that wrote so.
struct SetKey {
    std::string person = {}, device = {}, key = {};
    std::int64_t since = 0; // the device's count of entries when it was set
};

std::vector<SetKey> keys_set(const std::vector<Entry>& office) {
    std::vector<SetKey> keys;
    for (const Entry& entry : office) {
        if (entry.kind == "own_key")
            keys.push_back({entry.author, entry.device, entry.data.text_of("key"), entry.dctr});
    }
    return keys;
}

bool is_known(const std::vector<SetKey>& keys, const std::string& person, const std::string& key) {
    return std::any_of(keys.begin(), keys.end(),
                       [&](const SetKey& set) { return set.person == person && set.key == key; });
}

bool should_have_signed(const std::vector<SetKey>& keys, const Entry& entry) {
    const auto* kind = own_catalogue().find(entry.kind);
    if (kind == nullptr || !kind->own_hand) return false;
    return std::any_of(keys.begin(), keys.end(), [&](const SetKey& set) {
        return set.person == entry.author && set.device == entry.device && set.since < entry.dctr;
    });
}

// "" when there is nothing to say.
std::string doubt_of(const std::vector<SetKey>& keys, const Entry& entry) {
    if (!entry.own_key) {
        return should_have_signed(keys, entry) ? "signed without the PIN that this person has on this device"
                                               : "";
    }
    if (is_known(keys, entry.author, hex(*entry.own_key))) return "";
    return "signed with a key of which nobody wrote down that it is this person's";
}

Typed key_entry(const std::string& key, std::string_view why) {
    Typed typed = {"own_key", {}, {}, {}};
    typed.put("key", key);
    typed.put("why", std::string(why));
    return typed;
}

Fault pin_needed(const job::Person& person) {
    return {Code::pin_needed, person.name + " signs with a PIN on this device", "PIN",
            "type it when asked, or name a file that holds it: --pin-from FILE"};
}

// Within the action that changes the PIN: the key, and the entry that says whose it is unless the journal has it.
Done set_pin(const OfficeWriting& office, book::Book& book, const PinChange& change) {
    const auto has_pin = book.has_pin(office.by.id);
    if (!has_pin) return has_pin.fault();
    if (*has_pin && change.old_pin.empty() && change.forgotten.empty()) return pin_needed(office.by);
    const auto key = book.lock(office.by.id, {change.pin, change.old_pin, !change.forgotten.empty()});
    if (!key) return key.fault();
    const auto journal = book.entries(book.office());
    if (!journal) return journal.fault();
    if (is_known(keys_set(*journal), office.by.id, hex(*key))) return {};
    auto draft = office.draft(key_entry(hex(*key), change.forgotten), {});
    if (!draft) return draft.fault();
    auto kept = book.append({std::move(*draft)});
    if (!kept) return kept.fault();
    return {};
}

} // namespace

Result<std::unique_ptr<entry::Signer>> own_hand(const Writing& writing, book::Book& book,
                                                const std::string& kind) {
    const auto* row = own_catalogue().find(kind); // a matter of this device, not of the job's own catalogue
    if (row == nullptr || !row->own_hand) return std::unique_ptr<entry::Signer>();
    const auto has_pin = book.has_pin(writing.by.id);
    if (!has_pin) return has_pin.fault();
    if (!*has_pin) return std::unique_ptr<entry::Signer>();
    if (!writing.pin.empty()) return book.unlock(writing.by.id, writing.pin);
    return pin_needed(writing.by);
}

std::vector<VerifyFault> own_hand_doubts(const std::vector<Journal>& journals) {
    std::vector<SetKey> keys;
    for (const Journal& journal : journals) {
        if (journal.ref.empty()) keys = keys_set(journal.entries);
    }
    std::vector<VerifyFault> doubts;
    for (const Journal& journal : journals) {
        for (const Entry& entry : journal.entries) {
            std::string what = doubt_of(keys, entry);
            if (!what.empty())
                doubts.push_back({entry::hash_text(entry.hash), entry.device, std::move(what), entry.seq});
        }
    }
    return doubts;
}

Result<PersonLine> Desk::set_pin(const Asked& asked, const PinChange& change) {
    auto office = office_writing(*session_, asked);
    if (!office) return office.fault();
    const auto done =
        office->book->in_one_go([&](book::Book& book) { return desk::set_pin(*office, book, change); });
    if (!done) return done.fault();
    const auto& by = office->by;
    return PersonLine{by.id, by.name, by.initials, by.role, by.firm, by.ends, true};
}

} // namespace undersheet::desk
