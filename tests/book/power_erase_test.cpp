// The power is cut at every step of erasing somebody: the book is whole, and once it was said to be done no byte is left.
#include "book/session.h"
#include "book/verify.h"
#include "tests/book/power_cuts.h"
#include "tests/support/books.h"

#include <catch2/catch.hpp>

using namespace undersheet;

namespace {

const std::string kBook = "demo.book";
const std::string kName = "Mrs Ada Pell of Quay Lane";

Files new_book() {
    Shelf shelf;
    shelf.start();
    return {{kBook, bytes_of_file(shelf.path())}};
}

entry::Draft erase_draft(const entry::Entry& of) {
    entry::Draft draft = air_draft();
    draft.kind = "erase";
    draft.data = entry::Value().set("why", "asked");
    entry::Value values = entry::List{};
    values.push(entry::hash_text(*entry::commitment_of(*of.data.find("customer"))));
    draft.data.set("values", std::move(values));
    return draft;
}

bool holds_name(const Files& image) {
    return std::any_of(image.begin(), image.end(),
                       [](const auto& file) { return file.second.find(kName) != std::string::npos; });
}

} // namespace

TEST_CASE(
    "wherever the power is cut while somebody is erased, the book verifies, and what was done stays done") {
    FixedWorld world(6);
    KeysInMemory keys;
    const Files made = new_book(); // on the machine's own disk, before the one in memory takes its place
    MemoryDisk disk;
    disk.files = made;
    book::Session session(kBook, book::Access::write, {world, keys, 0});
    std::vector<entry::Entry> sites;
    for (int i = 0; i < 3; ++i) {
        session.append({air_draft(i)});
        sites.push_back(session.append({site_draft(kName)}).front());
    }
    const Files before = disk.files;
    REQUIRE(holds_name(before));
    disk.log.clear();
    std::vector<entry::Draft> erasures;
    for (const auto& site : sites) erasures.push_back(erase_draft(site));
    session.append(erasures);
    session.forget_erased();
    disk.tell();
    const auto log = disk.log;
    REQUIRE(log.size() > 20);

    std::mt19937 chance(3);
    Disk model(before);
    bool told = false;
    int images = 0;
    for (const DiskStep& step : log) {
        if (step.kind == DiskStep::Kind::told)
            told = true;
        else
            model.take(step);
        for (const Files& image : {model.killed(), model.dropped(), model.torn(chance), model.torn(chance)}) {
            ++images;
            if (told) CHECK_FALSE(holds_name(image));
            disk.files = image;
            const auto verified = book::guarded([&] {
                FixedWorld other_world;
                book::Session opened(kBook, book::Access::write, {other_world, keys, 0});
                const auto entries = [&] {
                    std::int64_t count = 0;
                    opened.connected().one("SELECT count(*) FROM entry WHERE job = ?", {kJob},
                                           [&](const book::Row& row) { count = row.integer(0); });
                    return count;
                }();
                CHECK((entries == 6 || entries == 9)); // the three erasures are one action
                const auto checked = book::verify_book(opened.connected(), {});
                for (const auto& fault :
                     checked.faults) // between saying so and doing it, the values are still there
                    CHECK(fault.what.find("was erased and is still here") != std::string::npos);
                if (told) CHECK(checked.ok());
                return true;
            });
            REQUIRE(verified.ok());
        }
    }
    CHECK(told);
    CHECK(images > 80);
}
