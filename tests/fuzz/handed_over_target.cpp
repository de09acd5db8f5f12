// A hand-over file with some of its bytes changed. Each line of the input is a change of a good file that the book has taken
// already: "OFFSET DIGITS" writes those bytes there (decimal, hexadecimal), "size BYTES" cuts it off or makes it longer. An
// input that begins as SQLite's files do is taken as it is.
#include "base/text.h"
#include "tests/fuzz/targets.h"
#include "tests/support/books.h"

#include <algorithm>

namespace undersheet::fuzz {
namespace {

constexpr std::size_t kMostFileBytes = 1U << 20U;

// One phone hands a job with a customer over, another has taken it: nothing in a changed file can be new to it.
class Phones {
public:
    Phones() {
        book::Book from = one_.start();
        good(from.append({open_draft(kJob, "A-1"), site_draft("Mrs Ada Pell"), air_draft()}));
        good(from.keep_text("{}"));
        const std::string handed = one_.folder.file("all.hand");
        good(from.hand("", handed));
        good(book::Book::start_from(two_.path(), handed, two_.around()));
        whole_ = bytes_of_file(handed);
        digest_ = digest();
    }
    [[nodiscard]] const std::string& whole() const { return whole_; }

    void take(const std::string& bytes) {
        const std::string file = two_.folder.file("changed.hand");
        write_file(file, bytes);
        const auto taken = two_.open().take(file);
        if (!taken) promise_readable(taken.fault());
        promise(!taken || taken->fresh == 0, "a changed file brought something new");
        promise(digest() == digest_, "a changed file changed the book");
    }

private:
    entry::Hash digest() {
        const auto verified = good(two_.open(book::Access::read).verify());
        promise(verified.ok(), "the book does not verify");
        return verified.digest;
    }
    Shelf one_, two_;
    std::string whole_ = {};
    entry::Hash digest_ = {};
};

std::size_t number_of(std::string_view digits) {
    const auto read = Decimal::parse(digits);
    if (!read || !read->is_integer() || read->whole() < 0) return kMostFileBytes;
    return static_cast<std::size_t>(read->whole());
}

void change(std::string& file, std::string_view line) {
    const auto blank = std::min(line.find(' '), line.size());
    const auto first = line.substr(0, blank);
    const auto second = line.substr(std::min(blank + 1, line.size()));
    if (first == "size") return file.resize(std::min(number_of(second), kMostFileBytes));
    const auto bytes = unhex(second);
    const std::size_t at = number_of(first);
    if (!bytes || at >= file.size()) return;
    std::copy_n(bytes->begin(), std::min(bytes->size(), file.size() - at),
                file.begin() + static_cast<std::ptrdiff_t>(at));
}

} // namespace

void take_a_file(std::string_view bytes) {
    static Phones phones;
    if (bytes.starts_with("SQLite format 3")) return phones.take(std::string(bytes));
    std::string file = phones.whole();
    for (const auto& line : split(bytes, '\n')) change(file, line);
    phones.take(file);
}

} // namespace undersheet::fuzz
