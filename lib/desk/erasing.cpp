// Taking a person's values away. The record keeps its shape: who looks later sees that something was erased, when and why.
#include "base/text.h"
#include "desk/desk.h"
#include "desk/journals.h"
#include "desk/own.h"

#include <algorithm>
#include <set>

namespace undersheet::desk {
namespace {

using entry::Entry;

constexpr std::size_t kMostNames = 200; // in one entry; the written form takes 256 in a list

bool is_same(std::string_view a, std::string_view b) {
    return lower_ascii(trimmed(a)) == lower_ascii(trimmed(b));
}

// Of whom: a person of the book by what they are called there, or whoever a personal field names.
struct Whom {
    std::string name = {}, id = {};
    [[nodiscard]] bool is_named_by(const Entry& entry) const {
        if (!id.empty() && entry.kind == "person" && entry.data.text_of("person") == id) return true;
        return std::any_of(entry.personal.begin(), entry.personal.end(),
                           [&](const auto& held) { return is_same(held.second, name); });
    }
};

// Where the customer is named, everything personal about the customer goes: the address stands in an entry of its own.
bool is_about_customer(const std::string& name) {
    const method::Kind* kind = own_catalogue().find(name);
    return kind != nullptr && kind->field("customer") != nullptr;
}

struct ErasedFinds {
    const Journal* journal = nullptr;
    std::set<std::string> values = {}, photos = {}; // commitments and photographs, by name
};

void add_values(const Entry& entry, ErasedFinds& found) {
    for (const auto& member : *entry.data.map()) {
        const auto cid = entry::commitment_of(member.value);
        if (cid && entry.personal.contains(member.key)) found.values.insert(entry::hash_text(*cid));
    }
}

ErasedFinds look_through(const Journal& journal, const Whom& whom) {
    ErasedFinds found{.journal = &journal};
    bool is_customer = false;
    for (const Entry& entry : journal.entries) {
        if (!whom.is_named_by(entry)) continue;
        add_values(entry, found);
        is_customer = is_customer || is_about_customer(entry.kind);
    }
    for (const Entry& entry : journal.entries) {
        if (is_customer && is_about_customer(entry.kind)) add_values(entry, found);
    }
    return found;
}

// One picture may be shown in several jobs: it is gone when none of them keeps it.
void add_same_photos(std::vector<ErasedFinds>& all, const std::vector<Journal>& journals) {
    std::set<std::string> erased;
    for (const ErasedFinds& found : all) erased.insert(found.photos.begin(), found.photos.end());
    for (std::size_t i = 0; i < journals.size(); ++i)
        for (const Entry& entry : journals[i].entries)
            if (entry.kind == "photo" && erased.contains(entry.data.text_of("sha256")))
                all[i].photos.insert(entry.data.text_of("sha256"));
}

Done add_photos(std::vector<ErasedFinds>& all, const std::vector<Journal>& journals,
                const std::vector<std::string>& names) {
    constexpr std::size_t kShortest = 4;
    for (const auto& name : names) {
        bool is_there = false;
        for (std::size_t i = 0; i < journals.size(); ++i) {
            for (const Entry& entry : journals[i].entries) {
                const bool is_meant = entry.kind == "photo" && name.size() >= kShortest &&
                                      entry::hash_text(entry.hash).starts_with(lower_ascii(name));
                if (is_meant) all[i].photos.insert(entry.data.text_of("sha256"));
                is_there = is_there || is_meant;
            }
        }
        if (!is_there)
            return Fault{Code::entry_unknown, "there is no photograph '" + name + "'", "--photo",
                         "undersheet history prints the names of entries"};
    }
    add_same_photos(all, journals);
    return {};
}

// What was typed as free text is part of the body and stands; somebody should know.
Lines still_named(const std::vector<Journal>& journals, const std::string& name) {
    Lines lines;
    for (const Journal& journal : journals) {
        for (const Entry& entry : journal.entries) {
            for (const auto& member : *entry.data.map()) {
                const std::string* text = member.value.text();
                if (text == nullptr || lower_ascii(*text).find(lower_ascii(name)) == std::string::npos)
                    continue;
                lines.push_back((journal.ref.empty() ? "the firm" : journal.ref) + ", entry " +
                                entry::short_name(entry.hash) + ", " + entry.kind + " " + member.key);
            }
        }
    }
    return lines;
}

struct Retention {
    int years = 0;
    std::string why = {};
};

Retention retention_of(const Journal& office) {
    Retention kept;
    for (const Entry& entry : office.entries) {
        if (entry.kind == "retention")
            kept = {static_cast<int>(entry.data.number_of("years", 0)), entry.data.text_of("why")};
    }
    return kept;
}

// Before the firm's own time is over the reason has to be said once more.
Done may_be_erased(Session& session, const ErasedFinds& found, const Retention& kept, const Asked& asked,
                   const std::string& although) {
    if (kept.years == 0 || found.journal->ref.empty() || !although.empty()) return {};
    auto on = take_up(session, {found.journal->job, {}, asked.when});
    if (!on) return on.fault();
    std::string until = "its hand-over and " + std::to_string(kept.years) + " years more";
    if (on->job.handed_over != nullptr) {
        entry::Date end = entry::date_of(on->job.handed_over->when);
        end.year += kept.years;
        if (!(entry::date_of(on->moment.when) < end)) return {};
        until = entry::date_words(end);
    }
    return Fault{Code::held,
                 "job " + found.journal->ref + " is kept until " + until + ": " + kept.why,
                 {},
                 "give --although with the reason to erase it all the same"};
}

entry::Value names_taken(std::set<std::string>& names) {
    entry::Value list = entry::List{};
    for (std::size_t i = 0; i < kMostNames && !names.empty(); ++i)
        list.push(names.extract(names.begin()).value());
    return list;
}

Result<std::vector<entry::Draft>> drafts_of(const OfficeWriting& writing, ErasedFinds found,
                                            const Erase& erase) {
    std::vector<entry::Draft> drafts;
    while (!found.values.empty() || !found.photos.empty()) {
        Typed typed = {"erase", {}, {}, {}};
        if (!found.values.empty()) typed.put("values", names_taken(found.values));
        if (!found.photos.empty()) typed.put("photos", names_taken(found.photos));
        typed.put("why", erase.why);
        typed.put("although", erase.although);
        auto draft = writing.draft(typed, found.journal->job);
        if (!draft) return draft.fault();
        drafts.push_back(std::move(*draft));
    }
    return drafts;
}

Whom whom_of(Session& session, const std::string& typed) {
    auto people = people_of_book(session);
    if (people) {
        const auto meant = person_meant(*people, typed);
        if (meant && !typed.empty()) return {meant->name, meant->id};
    }
    return {typed, ""};
}

// All journals with something to take away, after everything that could refuse it was asked.
Result<std::vector<ErasedFinds>> look_everywhere(Session& session, const std::vector<Journal>& journals,
                                                 const Whom& whom, const Asked& asked, const Erase& erase) {
    std::vector<ErasedFinds> all;
    for (const Journal& journal : journals) all.push_back(look_through(journal, whom));
    if (auto photos = add_photos(all, journals, erase.photos); !photos) return photos.fault();
    std::erase_if(all, [](const ErasedFinds& found) { return found.values.empty() && found.photos.empty(); });
    if (all.empty())
        return Fault{Code::person_unknown,
                     "the book holds nothing personal of '" + whom.name + "'",
                     {},
                     "write the name as it was recorded"};
    for (const ErasedFinds& found : all) {
        if (auto may = may_be_erased(session, found, retention_of(journals.front()), asked, erase.although);
            !may)
            return may.fault();
    }
    return all;
}

} // namespace

Result<ErasedAll> Desk::erase(const Asked& asked, const Erase& erase) {
    auto writing = office_writing(*session_, asked);
    if (!writing) return writing.fault();
    auto journals = all_journals(*writing->book);
    if (!journals) return journals.fault();
    const Whom whom = whom_of(*session_, erase.person);
    auto all = look_everywhere(*session_, *journals, whom, asked, erase);
    if (!all) return all.fault();
    std::vector<entry::Draft> drafts;
    ErasedAll erased{whom.name, {}, still_named(*journals, whom.name)};
    for (const ErasedFinds& found : *all) {
        erased.jobs.push_back({found.journal->ref, found.values.size(), found.photos.size()});
        auto of_journal = drafts_of(*writing, found, erase);
        if (!of_journal) return of_journal.fault();
        drafts.insert(drafts.end(), of_journal->begin(), of_journal->end());
    }
    if (auto kept = writing->book->append(std::move(drafts)); !kept) return kept.fault();
    if (auto gone = writing->book->forget_erased(); !gone) return gone.fault();
    return erased;
}

Done Desk::keep_for(const Asked& asked, std::string_view years, std::string_view why) {
    auto writing = office_writing(*session_, asked);
    if (!writing) return writing.fault();
    Typed typed = {"retention", {}, {}, {}};
    typed.put("years", years);
    typed.put("why", why);
    auto draft = writing->draft(typed, "");
    if (!draft) return draft.fault();
    if (auto kept = writing->book->append({std::move(*draft)}); !kept) return kept.fault();
    return {};
}

} // namespace undersheet::desk
