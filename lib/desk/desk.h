// The desk: everything a person can ask for, one function each. The command line and a phone both stand on this side of it.
//
// Each function reads the book, folds the job, judges it, and either answers or appends. What is refused changes nothing:
// a Fault is one line; a held move comes back as Kept with the things that hold it. Reading never writes.
// Promises: one call that writes is one transaction of the book, all or nothing.
// Does not: print, ask, or know how anything is shown.
// Threads: one desk belongs to one thread. Nothing throws for what people bring; std::logic_error is our own mistake.
#pragma once

#include "base/result.h"
#include "desk/answers.h"
#include "desk/requests.h"

#include <memory>
#include <string_view>

namespace undersheet::entry {
class World;
}

namespace undersheet::desk {

struct Session;

// A book file and the clock it is used by: "" is the machine's own, else a time (RFC 3339) at which the clock stands, and
// every entry written by it says so.
struct BookAt {
    std::string file = {}, clock = {};
};

class Desk {
public:
    // Makes the book and this device's key; the firm is the first thing in it.
    static Result<Started> start(const BookAt& book, const Firm& firm, const std::string& when = {});
    static Result<Desk> open(const BookAt& book);
    // A phone and a test bring their own clock and chance.
    static Result<Started> start(const std::string& book_file, const Firm& firm,
                                 std::unique_ptr<entry::World> world, const std::string& when = {});
    static Result<Desk> open(const std::string& book_file, std::unique_ptr<entry::World> world);
    // A hand-over file, or a book, as it lies there.
    static Result<Verified> verify_file(const std::string& file, const Lines& receipts = {});
    Desk(Desk&&) noexcept;
    Desk& operator=(Desk&&) noexcept;
    ~Desk();

    // A new book out of a hand-over file that holds a whole one; this device gets a key of its own.
    static Result<Started> start_from(const BookAt& book, const std::string& handed_file);
    // A new book out of what a damaged one still holds.
    static Result<SalvagedBook> salvage(const Salvage& what);

    // --- people and jobs ---
    [[nodiscard]] Result<std::vector<PersonLine>> people();
    [[nodiscard]] Result<Firm> firm(); // as was said last
    // What is empty stays as it was. Our jobs that are open get a copy; those handed over keep the firm they were handed over by.
    [[nodiscard]] Result<Firm> change_firm(const Asked& asked, const Firm& changes);
    [[nodiscard]] Result<PersonLine> add_person(const Asked& asked, const NewPerson& person);
    // Sets or changes the PIN of `asked.by` on this device: from then on that person's sign-offs here need it.
    [[nodiscard]] Result<PersonLine> set_pin(const Asked& asked, const PinChange& change);
    [[nodiscard]] Result<std::vector<JobLine>> jobs();
    [[nodiscard]] Result<JobLine> open_job(const Asked& asked, const NewJob& job);

    // --- recording ---
    [[nodiscard]] Result<Kept> record(const Asked& asked, const Record& record);
    [[nodiscard]] Result<KeptMany> record_lines(const Asked& asked, std::string_view json_lines);
    [[nodiscard]] Result<Kept> correct(const Asked& asked, const Correction& correction);
    [[nodiscard]] Result<Kept> withdraw(const Asked& asked, const Withdrawal& withdrawal);
    [[nodiscard]] Result<Kept> keep_photo(const Asked& asked, const Photograph& photo);

    // --- parts ---
    [[nodiscard]] Result<Kept> move(const Asked& asked, const Move& move);
    [[nodiscard]] Result<Stages> stages(const Asked& asked);

    // --- judgement ---
    [[nodiscard]] Result<Findings> findings(const Asked& asked);
    [[nodiscard]] Result<Why> why(const Asked& asked, std::string_view finding_stage_or_part);
    [[nodiscard]] Result<Kept> decide(const Asked& asked, const Decide& decision);
    [[nodiscard]] Result<Kept> give_reason(const Asked& asked, const Reason& reason);
    [[nodiscard]] Result<Kept> note_told(const Asked& asked, const Told& told);

    // --- what to order ---
    [[nodiscard]] Result<TakeOff> take_off(const Asked& asked, const TakeOffBy& by);
    [[nodiscard]] Result<Why> why_take_off(const Asked& asked, const TakeOffBy& by);
    // Which hours of a forecast suit what is left; docs/forecast.md has its form.
    [[nodiscard]] Result<DayAnswer> day(const Asked& asked, std::string_view forecast);

    // --- the punch list ---
    [[nodiscard]] Result<Punch> punch(const Asked& asked); // open rows, and those cleared by hand
    [[nodiscard]] Result<Punch>
    punch_ever(const Asked& asked); // and every finding that came and went; replays the job
    [[nodiscard]] Result<Kept> punch_add(const Asked& asked, const PunchAdd& item);
    [[nodiscard]] Result<Kept> punch_clear(const Asked& asked, const PunchClear& clear);
    [[nodiscard]] Result<Kept> punch_look(const Asked& asked, std::string_view number,
                                          std::string_view note = {});
    [[nodiscard]] Result<Kept> punch_join(const Asked& asked, std::string_view number, std::string_view with);

    // --- personal values ---
    [[nodiscard]] Result<ErasedAll> erase(const Asked& asked, const Erase& erase);
    // For how long after the hand-over they are kept; nobody's are erased earlier without a reason.
    [[nodiscard]] Done keep_for(const Asked& asked, std::string_view years, std::string_view why);

    // --- several devices ---
    [[nodiscard]] Result<HandedOut> hand(const HandOver& what);
    [[nodiscard]] Result<TakenIn> take(const std::string& handed_file);
    [[nodiscard]] Result<std::vector<DeviceLine>> devices();
    [[nodiscard]] Result<DeviceLine> revoke(const Asked& asked, std::string_view device,
                                            std::string_view why);
    [[nodiscard]] Result<SettleList> to_settle(const Asked& asked);
    [[nodiscard]] Result<Kept> settle(const Asked& asked, const Settle& settled);

    // --- after the hand-over ---
    [[nodiscard]] Result<std::vector<SupplementLine>> supplements(const Asked& asked);
    [[nodiscard]] Result<SupplementLine> open_supplement(const Asked& asked, const NewSupplement& wanted);
    [[nodiscard]] Result<Kept> sign_supplement(const Asked& asked, const SupplementSign& sign);

    // The paper that answers it, over all jobs, in a format of paper_formats().
    [[nodiscard]] Result<std::string> recall(const Asked& asked, const RecallBy& by, std::string_view format);

    // --- papers and the journal ---
    [[nodiscard]] Result<PaperMade> paper(const Asked& asked, std::string_view paper, std::string_view format,
                                          std::string_view prices = {},
                                          std::string_view language = {}); // BCP 47; "" is the firm's
    [[nodiscard]] Result<History> history(const Asked& asked, std::string_view entry = {}); // "" is all of it
    // `receipts` are the texts of receipts that somebody outside holds.
    [[nodiscard]] Result<Verified> verify(const Lines& receipts = {});

private:
    explicit Desk(std::unique_ptr<Session> session);
    std::unique_ptr<Session> session_;
};

[[nodiscard]] std::string_view program_version();
[[nodiscard]] std::vector<std::string> paper_names();
[[nodiscard]] std::string_view example_prices(); // a price list to copy, with invented prices

// The catalogue that comes with the program; no book is needed to read it.
[[nodiscard]] std::vector<KindLine> kinds();
[[nodiscard]] Result<KindLine> kind(std::string_view name); // kind_unknown with the nearest word
[[nodiscard]] std::vector<std::string> stage_names();       // of the method that comes with the program
[[nodiscard]] std::vector<std::string> step_names(std::string_view stage);

} // namespace undersheet::desk
