// A device that signs what cannot be: its entries hold by themselves and contradict those they stand on. salvage leaves them out,
// and keeps what is only behind a gap.
#include "book/journal.h"
#include "book/salvaging.h"
#include "tests/support/books.h"

#include <catch2/catch.hpp>

using namespace undersheet;

namespace {

// A book into which rows are written past every check, as a strange program could.
struct Strange {
    Strange() { good(shelf.start().append({open_draft(kJob, "A-1")})); }
    void put(const std::vector<entry::Entry>& entries) {
        book::Connection to(shelf.path(), book::Connection::Mode::write, 0);
        book::add_device(to, device.signer->public_key());
        for (const auto& entry : entries) book::add_row(to, entry);
    }
    book::Salvaged salvage() {
        FixedWorld world(90);
        KeysInMemory keys;
        return good(
            book::salvage({shelf.path(), nullptr, {}}, shelf.folder.file("new.book"), {world, keys, 20}));
    }
    std::size_t entries_of_device() {
        FixedWorld world(91);
        KeysInMemory keys;
        auto book =
            good(book::Book::open(shelf.folder.file("new.book"), book::Access::read, {world, keys, 20}));
        const auto entries = good(book.entries(kJob));
        return static_cast<std::size_t>(std::count_if(entries.begin(), entries.end(), [&](const auto& entry) {
            return entry.device == device.signer->device();
        }));
    }

    Shelf shelf = {};
    Device device = Device(7);
};

} // namespace

TEST_CASE("an entry whose lam is not one more than what it knew is left out") {
    Strange strange;
    auto written = std::vector{strange.device.write(air_draft(1)), strange.device.write(air_draft(2))};
    strange.device.chain.lam = 40;
    written.push_back(strange.device.write(air_draft(3)));
    strange.put(written);
    CHECK(strange.salvage().refused == 1);
    CHECK(strange.entries_of_device() == 2);
}

TEST_CASE("an entry whose lam is not greater than all it knew is left out, even behind a gap") {
    Strange strange;
    auto written = std::vector{strange.device.write(air_draft(1)), strange.device.write(air_draft(2))};
    const auto high = written.back();
    static_cast<void>(strange.device.write(air_draft(3))); // lost
    strange.device.chain.seen = {high.hash};
    strange.device.chain.lam = 1;
    written.push_back(strange.device.write(air_draft(4)));
    strange.put(written);
    CHECK(strange.salvage().refused == 1);
    CHECK(strange.entries_of_device() == 2);
}

TEST_CASE("an entry that counts itself other than one behind the one before is left out") {
    for (const bool across_jobs : {false, true}) {
        Strange strange;
        auto written = std::vector{strange.device.write(air_draft(1)), strange.device.write(air_draft(2))};
        strange.device.chain.dctr += 3;
        if (!across_jobs) strange.device.chain.seq += 3;
        written.push_back(strange.device.write(air_draft(3)));
        strange.put(written);
        CHECK(strange.salvage().refused == 1);
        CHECK(strange.entries_of_device() == 2);
    }
}

TEST_CASE("what other devices knew of and is not there is counted, and what stands on it is kept") {
    Strange strange;
    Device other(8);
    strange.device.sees({other.write(air_draft(1))}); // nobody has handed it over
    strange.put({strange.device.write(air_draft(2))});
    const auto salvaged = strange.salvage();
    CHECK(salvaged.refused == 0);
    CHECK(salvaged.named == 1);
    CHECK_FALSE(salvaged.is_whole());
    CHECK(strange.entries_of_device() == 1);
}

TEST_CASE("a device that was copied is salvaged with both its branches") {
    Strange strange;
    auto written = std::vector{strange.device.write(air_draft(1))};
    const auto fork = strange.device.chain;
    written.push_back(strange.device.write(air_draft(2)));
    strange.device.chain = fork;
    written.push_back(strange.device.write(air_draft(3)));
    strange.put(written);
    CHECK(strange.salvage().entries == 5);
    CHECK(strange.entries_of_device() == 3);
}
