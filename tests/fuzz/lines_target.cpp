// JSON Lines against a book with a job in it: every line is kept or refused by its number, and one bad line keeps them all out.
#include "base/text.h"
#include "desk/desk.h"
#include "tests/fuzz/targets.h"
#include "tests/support/fixed_world.h"
#include "tests/support/temp_folder.h"

#include <algorithm>

namespace undersheet::fuzz {
namespace {

template <class T>
T made(Result<T> result) {
    if (!result) throw std::logic_error(one_line(result.fault()));
    return std::move(*result);
}

class Book {
public:
    Book() {
        const std::string file = folder_.file("roofs.book");
        made(desk::Desk::start(file, {"Pell & Daughter", "3 Quay Lane", "", "", ""}, world(1)));
        desk_.push_back(made(desk::Desk::open(file, world(2))));
        made(desk().add_person({}, {"Isolde Pell", "installer", "IP", "", "", ""}));
        made(desk().open_job({"", "IP", ""}, {"A-07", "small dormer", "", false, ""}));
        entries_ = entries();
    }
    desk::Desk& desk() { return desk_.front(); }
    [[nodiscard]] std::size_t entries() { return made(desk().history({})).lines.size(); }
    [[nodiscard]] bool is_as_it_was() { return entries() == entries_; }

private:
    static std::unique_ptr<entry::World> world(std::uint64_t seed) {
        return std::make_unique<FixedWorld>(seed);
    }
    TempFolder folder_;
    std::vector<desk::Desk> desk_; // one, made after the folder
    std::size_t entries_ = 0;
};

} // namespace

void read_lines(std::string_view bytes) {
    static Book book;
    constexpr std::size_t kMostLines =
        24; // each one folds the job again, and tapes may contradict one another
    if (std::count(bytes.begin(), bytes.end(), '\n') > static_cast<std::ptrdiff_t>(kMostLines)) return;
    // The last line is bad, so nothing is ever kept and every input meets the same book.
    const auto read = book.desk().record_lines({"A-07", "IP", "2026-06-11T08:10:00+01:00"},
                                               std::string(bytes) + "\n{\"kind\":}");
    promise(read.ok(), "a bad line was not named");
    promise(!read->bad.empty() && read->kept == 0, "good lines beside a bad one were kept");
    for (const auto& bad : read->bad) promise_readable(bad.fault);
    promise(book.is_as_it_was(), "a bad line changed the book");
}

} // namespace undersheet::fuzz
