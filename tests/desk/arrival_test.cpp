// Hand-over files of several phones, taken in every order there is.
#include "tests/desk/desk_support.h"

#include "desk/json.h"

#include <algorithm>
#include <set>

using namespace undersheet;

namespace {

constexpr const char* kClock = "2026-06-11T08:00:00+01:00";

// Three phones of one firm that read one wall apart; the third writes after it had heard from the second.
struct FourFiles {
    FourFiles() {
        first.survey();
        good(first.open().hand({"", true, all}));
        const auto second = new_book("second"), third = new_book("third");
        good(first.record("chase", {"height_mm=165"}, "CD+0.10", "08:30"));
        hand(first.open());
        good(at(second).record(DeskTest::by("WP", "08:31"), {"chase", "CD+0.10", {}, {"height_mm=140"}}));
        hand(at(second));
        good(at(third).take(files.back()));
        good(at(third).punch_add(DeskTest::by("WP", "08:40"),
                                 {"scuff on the trim", "BC", "", "put_right", {}}));
        hand(at(third));
        good(first.record("site", {"customer=Caspar Dunmoor"}, "", "08:50"));
        good(first.open().erase(DeskTest::by("IP", "09:00"),
                                {"Caspar Dunmoor", "asked by letter", "no job", {}}));
        hand(first.open());
        std::sort(files.begin(), files.end());
    }
    // A phone that knows the job as it was before they parted.
    std::string new_book(const std::string& name) {
        const std::string book = folder.file(name + ".book");
        good(desk::Desk::start_from({book, kClock}, all));
        return book;
    }
    static desk::Desk at(const std::string& book) { return good(desk::Desk::open({book, kClock})); }
    void hand(desk::Desk from) {
        files.push_back(folder.file("file" + std::to_string(files.size()) + ".hand"));
        good(from.hand({"A-07", false, files.back()}));
    }

    DeskTest first;
    TempFolder folder = {};
    std::string all = folder.file("all.hand");
    std::vector<std::string> files = {};
};

} // namespace

TEST_CASE("four hand-over files that three phones wrote give the same job in every order they are taken") {
    FourFiles four;
    std::set<std::string> digests, papers;
    int orders = 0;
    do {
        const std::string book = four.new_book("order" + std::to_string(++orders));
        for (const std::string& file : four.files) good(FourFiles::at(book).take(file));
        const auto verified = good(FourFiles::at(book).verify());
        CHECK(verified.ok);
        digests.insert(good(FourFiles::at(book).hand({"A-07", false, book + ".hand"})).digest);
        papers.insert(good(FourFiles::at(book).paper({"A-07", "", ""}, "stages", "txt")).bytes +
                      desk::json_of(good(FourFiles::at(book).to_settle({}))));
        CHECK(bytes_of_file(book).find("Caspar Dunmoor") == std::string::npos);
    } while (std::next_permutation(four.files.begin(), four.files.end()));
    CHECK(orders == 24);
    CHECK(digests.size() == 1);
    CHECK(papers.size() == 1);
}
