#include "book/session.h"

#include "book/journal.h"
#include "book/opening.h"
#include "entry/names.h"

#include <stdexcept>

namespace undersheet::book {
namespace {

using entry::Draft;
using entry::Entry;

// Thrown by the one step whose failure does not say whether anything was kept.
struct DoubtfulCommit {
    Fault fault;
};

} // namespace

Session::Session(std::string path, Access access, Surroundings around, const std::string& book_name)
    : path_(std::move(path)), photo_folder_((book_name.empty() ? path_ : book_name) + ".photos"),
      access_(access), around_(around) {
    office_ = local(connected(), "office");
    device_ = local(connected(), "device");
    install_ = local(connected(), "install");
}

Connection& Session::connected() {
    if (!action_) drop_what_is_left_open();
    if (connection_) return *connection_;
    const auto mode = access_ == Access::write ? Connection::Mode::write : Connection::Mode::read;
    auto opened = std::make_unique<Connection>(path_, mode, around_.wait_ms);
    check_is_book(*opened);
    if (access_ == Access::write) check_is_writable(*opened);
    connection_ = std::move(opened);
    return *connection_;
}

// For rolling back, too, memory may have been missing.
void Session::drop_what_is_left_open() {
    if (connection_ && connection_->is_in_transaction()) connection_.reset();
}

void Session::must_be_writing() const {
    if (access_ != Access::write)
        throw Trouble{{Code::book_read_only, "the book was opened for reading only", path_}};
}

// An id that is given before anything is written lets a doubtful commit be looked up.
void Session::complete(Draft& draft) {
    if (draft.id.empty()) draft.id = entry::new_entry_id(around_.world);
    if (draft.job.empty()) draft.job = office_;
}

// Goes on with the device that wrote here last only where its key was made for this very book.
void Session::find_key() {
    if (signer_) return;
    if (!device_.empty()) {
        const auto key = value_or_trouble(around_.keys.load(device_));
        if (key && key->install == install_) signer_ = entry::signer_from(key->seed);
    }
    if (!signer_) make_key();
}

void Session::make_key() {
    Key key;
    around_.world.random(key.seed);
    auto signer = entry::signer_from(key.seed);
    key.device = signer->device();
    key.install = entry::new_job(around_.world); // 32 digits of chance
    done_or_trouble(around_.keys.save(key));
    device_ = std::move(key.device); // from here on nothing can fail: all of it is so, or none
    install_ = std::move(key.install);
    device_is_new_ = true;
    signer_ = std::move(signer);
}

void Session::write_device(Connection& to) {
    if (!device_is_new_) return;
    action_->has_device = true;
    add_device(to, signer_->public_key());
    set_local(to, "device", device_);
    set_local(to, "install", install_);
}

Entry Session::write_one(Connection& to, const Draft& draft) {
    if (auto there = entry_by_id(to, draft.id)) {
        if (entry::says_the_same(draft, *there)) return std::move(*there);
        throw Trouble{{Code::book_failed,
                       "entry " + entry::short_name(there->hash) + " has this id and says something else"}};
    }
    const auto chain = chain_of(to, draft.job, signer_->device());
    auto composed = value_or_trouble(entry::compose(draft, chain, around_.world, *signer_));
    add(to, composed);
    return std::move(composed.entry);
}

std::vector<Entry> Session::write_all(const std::vector<Draft>& drafts) {
    Connection& to = connected();
    write_device(to);
    std::vector<Entry> written;
    for (const Draft& draft : drafts) {
        written.push_back(write_one(to, draft));
        if (draft.job != office_) set_local(to, "last_job", draft.job);
    }
    return written;
}

// Runs `work` as a part of the action. Its failure is the action's, even if what is around it goes on as if nothing had
// been: rows of half an append must not be kept.
template <class Work>
auto Session::within_action(Work work) {
    try {
        return work();
    } catch (const Trouble& trouble) {
        action_->fault = trouble.fault;
        throw;
    } catch (const std::bad_alloc&) {
        action_->fault = Fault{Code::book_failed, "no memory left"};
        throw;
    }
}

void Session::transact(const std::function<Done()>& work) {
    Transaction transaction(connected(), Transaction::Kind::writing);
    done_or_trouble(work());
    if (action_->fault) throw Trouble{*action_->fault};
    try {
        transaction.commit();
    } catch (Trouble& trouble) {
        throw DoubtfulCommit{std::move(trouble.fault)};
    }
}

// After a failing commit only the file itself knows what was kept: it is opened afresh and asked for every id, since some
// may have been there before.
void Session::look_again(const Fault& fault) {
    bool is_kept = !action_->ids.empty();
    try {
        for (const std::string& id : action_->ids)
            is_kept = is_kept && entry_by_id(connected(), id).has_value();
    } catch (const Trouble& trouble) {
        throw Trouble{{Code::book_failed, "not sure whether it was saved: " + trouble.fault.detail, path_,
                       "look again"}};
    }
    if (!is_kept) throw Trouble{fault};
}

void Session::in_one_go(const std::function<Done()>& work) {
    must_be_writing();
    if (action_) throw std::logic_error("an action was begun within another");
    drop_what_is_left_open();
    action_.emplace();
    const struct Ends { // however it goes, the next append is an action of its own again
        std::optional<Action>& action;
        ~Ends() { action.reset(); }
    } ends{action_};
    try {
        transact(work);
    } catch (const DoubtfulCommit& doubtful) {
        connection_.reset();
        look_again(doubtful.fault);
    } catch (const Trouble&) {
        connection_.reset(); // never go on with a handle that has failed
        throw;
    } catch (const std::bad_alloc&) {
        connection_.reset();
        throw;
    }
    if (action_->has_device) device_is_new_ = false;
}

std::vector<Entry> Session::append(std::vector<Draft> drafts) {
    std::vector<Entry> written;
    if (!action_) {
        in_one_go([&] {
            written = append(std::move(drafts));
            return Done();
        });
        return written;
    }
    return within_action([&] {
        find_key();
        for (Draft& draft : drafts) {
            complete(draft);
            action_->ids.push_back(draft.id);
        }
        return write_all(drafts);
    });
}

void Session::keep_text(const entry::Hash& hash, std::string_view text) {
    if (!action_) {
        return in_one_go([&] {
            keep_text(hash, text);
            return Done();
        });
    }
    within_action([&] {
        connected().run("INSERT OR IGNORE INTO text (hash, body) VALUES (?, ?)",
                        {Bytes{bytes_of(hash)}, Bytes{text}});
    });
}

} // namespace undersheet::book
