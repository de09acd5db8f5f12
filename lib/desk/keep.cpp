#include "desk/keep.h"

#include "base/text.h"
#include "desk/desk.h"
#include "desk/joining.h"
#include "desk/pins.h"
#include "desk/words.h"
#include "entry/witness.h"

namespace undersheet::desk {
namespace {

// What may be begun now: "begin plate/AB or lay-out".
std::string next_words(const job::Judgement& judged) {
    std::vector<std::string> ready;
    for (const auto& view : judged.parts) {
        if (view.state == job::State::ready) ready.push_back(view.part);
    }
    return ready.empty() ? "undersheet stages says what holds the rest"
                         : "ready to begin: " + joined(ready, ", ");
}

// "band/AB is under way; still to do: finger, mate, smooth".
std::string part_now(Case& on, const std::string& name) {
    const job::PartView* view = name.empty() ? nullptr : on.judged().part(name);
    if (view == nullptr) return "";
    std::vector<std::string> left;
    for (const auto& step : view->steps) {
        if (step.must && !step.done) left.push_back(step.name);
    }
    std::string now = name + " is " + std::string(job::state_text(view->state));
    if (!left.empty() && view->state == job::State::under_way) now += "; still to do: " + joined(left, ", ");
    if (view->state == job::State::done && view->held_by.empty()) now += "; what is left is to sign it";
    if (view->state == job::State::done && !view->held_by.empty())
        now += "; not to be signed yet: " + view->held_by.front().why + ", " + view->held_by.front().clears;
    if (view->state == job::State::signed_off) now += "; " + next_words(on.judged());
    return now;
}

// What a device that was reported lost goes on writing is kept, and somebody has to settle that it counts.
const job::SettleItem* reported_lost(const Case& on, const entry::Entry& entry) {
    for (const auto& item : on.job.to_settle) {
        if (item.about != job::Apart::after_revocation) continue;
        for (const auto& side : item.sides)
            if (side.entry->hash == entry.hash) return &item;
    }
    return nullptr;
}

Kept refused(const Writing& writing, Drafted drafted) {
    Kept kept;
    kept.job = writing.on.name();
    kept.kind = drafted.draft.kind;
    kept.part = drafted.draft.part;
    kept.place = drafted.draft.place;
    kept.when = writing.on.moment.when.text;
    kept.by = writing.by.name;
    kept.held_by = std::move(drafted.held_by);
    return kept;
}

// What the customer keeps: it names the signature and everything that stood before it.
std::string receipt_for_customer(const Case& on, const entry::Entry& entry) {
    const bool is_sign_off = entry.kind == "sign" || entry.kind == "supplement_sign";
    if (!is_sign_off || entry.data.find("customer") == nullptr) return "";
    const entry::Causality causality(*on.job.entries);
    const auto at = causality.find(entry.hash);
    return at ? entry::receipt_text(entry::receipt_of(*on.job.entries, causality, *at)) : "";
}

Kept told_of(Case& on, const job::Person& by, const entry::Entry& entry, Lines asked) {
    Kept kept;
    kept.job = on.name();
    kept.entry = entry::hash_text(entry.hash);
    kept.name = entry::short_name(entry.hash);
    kept.kind = entry.kind;
    kept.heading = heading_of(*on.kinds, entry.kind);
    kept.place = entry::place_text(entry.place);
    kept.part = entry.part;
    kept.when = entry.when.text;
    kept.by = by.name;
    kept.says = entry_words(on.job, entry, on.kinds->find(entry.kind));
    kept.asked = std::move(asked);
    kept.marks = marks_of(entry, *on.method);
    if (const auto* item = reported_lost(on, entry))
        kept.marks.push_back("does not count: this device was reported lost; undersheet settle " + item->id);
    if (entry.kind == "air" && on.judged().bond_now) kept.bond_now = on.judged().bond_now->line;
    kept.now = part_now(on, entry.part);
    kept.receipt = receipt_for_customer(on, entry);
    return kept;
}

Result<Kept> append_drafted(const Writing& writing, book::Book& book, Result<Drafted> drafted) {
    Case& on = writing.on;
    if (!drafted) return drafted.fault();
    if (!drafted->held_by.empty()) return refused(writing, std::move(*drafted));
    const auto own = own_hand(writing, book, drafted->draft.kind);
    if (!own) return own.fault();
    drafted->draft.own_hand = own->get();
    auto appended = book.append({std::move(drafted->draft)});
    if (!appended) return appended.fault();
    on.entries.push_back(appended->front());
    if (auto folded = on.fold_again(); !folded) return folded.fault();
    return told_of(on, writing.by, appended->front(), std::move(drafted->asked));
}

Result<Kept> keep_all(Session& session, const Asked& asked, const std::vector<Drafting>& wanted) {
    auto book = session.writer();
    if (!book) return book.fault();
    Kept kept;
    const auto done = (*book)->in_one_go([&](book::Book& open) -> Done {
        auto on = take_up(session, asked);
        if (!on) return on.fault();
        auto by = author_on(session, open, *on, asked.by);
        if (!by) return by.fault();
        const Writing writing = {*on, *by, asked.pin};
        for (const auto& drafting : wanted) {
            auto one = append_drafted(writing, open, drafting(writing, open));
            if (!one) return one.fault();
            kept = std::move(*one);
            if (!kept.is_kept())
                return Fault{Code::held, kept.held_by[0].why, kept.part,
                             kept.held_by[0].clears}; // and so undone
        }
        return {};
    });
    if (!done && kept.is_kept()) return done.fault();
    return kept;
}

} // namespace

Result<Kept> keep_one(const Writing& writing, book::Book& book, Typed typed) {
    return append_drafted(writing, book, draft_of(writing, std::move(typed)));
}

Result<Kept> keep(Session& session, const Asked& asked, const std::vector<Typed>& wanted) {
    std::vector<Drafting> draftings;
    for (const Typed& typed : wanted)
        draftings.emplace_back([&](const Writing& writing, book::Book& open) -> Result<Drafted> {
            if (auto named = join_named(session, open, writing.on, typed); !named) return named.fault();
            return draft_of(writing, typed);
        });
    return keep_all(session, asked, draftings);
}

Result<Kept> keep_drafted(Session& session, const Asked& asked, const Drafting& drafting) {
    return keep_all(session, asked, {drafting});
}

Result<Kept> keep(Session& session, const Asked& asked, const Result<Typed>& wanted) {
    if (!wanted) return wanted.fault();
    return keep(session, asked, std::vector<Typed>{*wanted});
}

Result<Kept> Desk::record(const Asked& asked, const Record& record) {
    return keep(*session_, asked, typed_of(record.kind, record.place, record.part, record.fields));
}

Result<Kept> Desk::move(const Asked& asked, const Move& move) {
    if (!job::event_of(move.event)) {
        return Fault{Code::argument_wrong,
                     "'" + move.event + "' moves no part",
                     {},
                     "begin, tick, pause, resume, sign … do"};
    }
    return keep(*session_, asked, typed_of(move.event, move.place, move.part, move.fields));
}

Result<Kept> Desk::correct(const Asked& asked, const Correction& correction) {
    auto typed = typed_of("correct", {}, {}, correction.fields);
    if (!typed) return typed.fault();
    typed->put("of", correction.entry);
    typed->put("why", correction.why);
    return keep(*session_, asked, typed);
}

Result<Kept> Desk::withdraw(const Asked& asked, const Withdrawal& withdrawal) {
    Typed typed = {"withdraw", {}, {}, {}};
    typed.put("of", withdrawal.entry);
    typed.put("why", withdrawal.why);
    return keep(*session_, asked, std::vector<Typed>{typed});
}

Result<Kept> Desk::decide(const Asked& asked, const Decide& decision) {
    Typed typed = {"decide", {}, {}, {}};
    typed.put("finding", decision.finding);
    typed.put("decider", decision.decider);
    typed.put("role", decision.role);
    typed.put("why", decision.why);
    return keep(*session_, asked, std::vector<Typed>{typed});
}

Result<Kept> Desk::give_reason(const Asked& asked, const Reason& reason) {
    Typed typed = {"reason", {}, {}, {}};
    typed.put("finding", reason.finding);
    typed.put("text", reason.text);
    return keep(*session_, asked, std::vector<Typed>{typed});
}

Result<Kept> Desk::note_told(const Asked& asked, const Told& told) {
    Typed typed = {"told", {}, {}, {}};
    typed.put("finding", told.finding);
    typed.put("whom", told.whom);
    return keep(*session_, asked, std::vector<Typed>{typed});
}

Result<Kept> Desk::punch_look(const Asked& asked, std::string_view number, std::string_view note) {
    Typed typed = {"punch_look", {}, {}, {}};
    typed.put("number", number);
    typed.put("note", note);
    return keep(*session_, asked, std::vector<Typed>{typed});
}

Result<Kept> Desk::punch_join(const Asked& asked, std::string_view number, std::string_view with) {
    Typed typed = {"punch_join", {}, {}, {}};
    typed.put("number", number);
    typed.put("with", with);
    return keep(*session_, asked, std::vector<Typed>{typed});
}

} // namespace undersheet::desk
