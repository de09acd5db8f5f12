// Memory runs out at the first request, the second, and so on, over a short job: once, and for good. Whatever was answered
// must be true, nothing may be there by halves, and the book must go on when there is memory again.
#include "tests/oom/failing_memory.h"
#include "tests/support/books.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <iostream>

using namespace undersheet;

namespace {

const std::string kText = "{\"format\":\"a method, kept by its hash\"}";

// Three actions; every draft has its id, so that it can be written again and found afterwards.
struct Work {
    Work() {
        FixedWorld chance(77);
        actions = {{open_draft(kJob, "A-07"), air_draft(13)},
                   {site_draft("Mrs Ada Pell")},
                   {air_draft(14), site_draft("Mr Caspar Dunmoor"), air_draft(15)}};
        for (auto& action : actions) {
            for (auto& draft : action) draft.id = entry::new_entry_id(chance);
        }
        given = actions;
        kept.resize(actions.size());
    }
    enum class Answer { none, kept, refused };
    std::vector<std::vector<entry::Draft>> actions = {};
    std::vector<std::vector<entry::Draft>> given = {}; // the same, to be given away
    std::vector<entry::Draft> first = {firm_draft()};

    bool is_started = false, has_text = false;
    std::vector<Answer> kept = {};
    bool was_wrong = false; // read back other than it was kept
    int refused = 0, thrown = 0;
};

// One call of the book: what it answers, or that even for the answer there was no memory.
template <class Call>
void ask(Work& work, Call call) {
    try {
        if (!call()) ++work.refused;
    } catch (const std::bad_alloc&) {
        ++work.thrown;
    }
}

void append(Work& work, book::Book& book, std::size_t action) {
    ask(work, [&] {
        work.kept[action] = Work::Answer::none; // when even the answer fails, nothing is known
        const bool done = book.append(std::move(work.given[action])).ok();
        work.kept[action] = done ? Work::Answer::kept : Work::Answer::refused;
        return done;
    });
}

void do_everything(Work& work, Shelf& shelf, const std::string& path) {
    std::optional<book::Book> book;
    ask(work, [&] {
        auto started = book::Book::start(path, shelf.around(), std::move(work.first));
        if (started) book.emplace(std::move(*started));
        return started.ok();
    });
    work.is_started = book.has_value();
    if (!book) return;
    ask(work, [&] { return work.has_text = book->keep_text(kText).ok(); });
    for (std::size_t i = 0; i < work.actions.size(); ++i) append(work, *book, i);
    ask(work, [&] {
        const auto entries = book->entries(kJob);
        for (std::size_t i = 0; entries && i < entries->size(); ++i)
            work.was_wrong |= (*entries)[i].job != kJob;
        return entries.ok();
    });
    ask(work, [&] {
        const auto verified = book->verify();
        work.was_wrong |= verified.ok() && !verified->ok();
        return verified.ok();
    });
}

bool is_there(const std::vector<entry::Entry>& entries, const entry::Draft& draft) {
    return std::any_of(entries.begin(), entries.end(), [&](const entry::Entry& entry) {
        return entry.id == draft.id && entry.personal == draft.personal;
    });
}

// With memory again: what was answered is so, each action is there as a whole or not at all.
void check_book(const Work& work, book::Book& book) {
    const auto entries = good(book.entries(kJob));
    std::size_t wanted = 0;
    for (std::size_t i = 0; i < work.actions.size(); ++i) {
        const auto& action = work.actions[i];
        const auto there = std::count_if(action.begin(), action.end(),
                                         [&](const auto& draft) { return is_there(entries, draft); });
        REQUIRE((there == 0 || there == static_cast<std::ptrdiff_t>(action.size())));
        if (work.kept[i] == Work::Answer::kept) REQUIRE(there > 0);
        if (work.kept[i] == Work::Answer::refused) REQUIRE(there == 0);
        wanted += static_cast<std::size_t>(there);
    }
    REQUIRE(entries.size() == wanted);
    if (work.has_text) REQUIRE(good(book.text(entry::sha256(kText))) == kText);
    REQUIRE(good(book.verify()).ok());
}

// And all of it can be written now, whatever was there before.
void check_goes_on(const Work& work, book::Book& book) {
    std::size_t wanted = 0;
    for (const auto& action : work.actions) {
        REQUIRE(line_of(book.append(action)) == "done");
        wanted += action.size();
    }
    REQUIRE(good(book.entries(kJob)).size() == wanted);
    REQUIRE(good(book.verify()).ok());
}

void check_nothing_left(const TempFolder& folder) {
    for (const auto& file : std::filesystem::directory_iterator(folder.path())) {
        INFO(file.path().filename().string());
        REQUIRE(file.path().filename().string().find(".part") == std::string::npos);
    }
}

struct Tried {
    std::int64_t asked = 0;
    int refused = 0, thrown = 0;
};

Tried try_one(const oom::Plan& plan) {
    Shelf shelf;
    Work work;
    const std::string path = shelf.path();
    oom::begin(plan);
    do_everything(work, shelf, path);
    const auto asked = oom::end();
    REQUIRE_FALSE(work.was_wrong);
    check_nothing_left(shelf.folder);
    if (work.is_started || std::filesystem::exists(path)) {
        auto book = shelf.open();
        REQUIRE(good(book.entries(book.office())).size() == 1);
        check_book(work, book);
        check_goes_on(work, book);
    }
    return {asked, work.refused, work.thrown};
}

// Fails every request there is; the run that asks for less than that is the last.
void try_all(oom::Whose whose, bool for_good) {
    oom::set_up();
    try_one({whose, 0, false}); // what is made once only
    const auto clean = try_one({whose, 0, false});
    REQUIRE(clean.refused + clean.thrown == 0);
    std::int64_t at = 1;
    int refused = 0, thrown = 0;
    for (;; ++at) {
        INFO("request " << at << " of " << clean.asked << (for_good ? ", for good" : ", once"));
        const auto tried = try_one({whose, at, for_good});
        refused += tried.refused;
        thrown += tried.thrown;
        if (tried.asked < at) break;
    }
    std::cout << (whose == oom::Whose::ours ? "operator new" : "SQLite's memory")
              << (for_good ? ", for good: " : ", once: ") << at - 1 << " requests refused one by one, "
              << clean.asked << " in a run without refusal; " << refused << " calls answered with a fault, "
              << thrown << " threw std::bad_alloc\n";
    CHECK(at - 1 >= clean.asked);
    CHECK(refused + thrown > 0);
}

} // namespace

TEST_CASE("whichever request for memory fails, the book keeps its word") { try_all(oom::Whose::ours, false); }
TEST_CASE("whenever memory runs out for good, the book keeps its word") { try_all(oom::Whose::ours, true); }
TEST_CASE("whichever request of SQLite's for memory fails, the book keeps its word") {
    try_all(oom::Whose::sqlite, false);
}
TEST_CASE("whenever SQLite's memory runs out for good, the book keeps its word") {
    try_all(oom::Whose::sqlite, true);
}
