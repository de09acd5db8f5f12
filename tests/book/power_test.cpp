// The power is cut after every single thing SQLite did to the disk, and what the disk may then hold is opened.
//
// For every cut: the killed program (all steps reached the disk), the cut power (only what was synced did), and three torn
// ones (of what was not synced, each step is kept, dropped, or kept in part, sector by sector, by chance).
// Model and its limits: a sync tells the truth; sectors of 512 bytes are written whole or not at all.
#include "book/session.h"
#include "book/verify.h"
#include "tests/book/power_cuts.h"
#include "tests/support/books.h"

#include <catch2/catch.hpp>

using namespace undersheet;

namespace {

const std::string kBook = "demo.book";

struct Counted {
    int cuts = 0, images = 0, bad = 0;
};

// A book on a disk in memory, some actions in it, and everything that was done to the disk meanwhile.
class Cutting {
public:
    explicit Cutting(const std::string& settings) {
        disk_.files = before_;
        book::Session session(kBook, book::Access::write, {world_, keys_, 0});
        session.connected().script(settings);
        for (int i = 0; i < kActions; ++i) {
            session.append({air_draft(i), site_draft("Mrs Ada Pell")});
            disk_.tell();
        }
        log_ = disk_.log;
    }

    Counted everywhere(unsigned seed) {
        Counted counted;
        each_image(seed, [&](const Files& image, std::int64_t told) {
            ++counted.images;
            if (!is_good(image, told, counted.images % 16 == 0)) ++counted.bad;
            return true;
        });
        counted.cuts = static_cast<int>(log_.size());
        return counted;
    }
    bool loses_something(unsigned seed) {
        bool lost = false;
        each_image(seed, [&](const Files& image, std::int64_t told) {
            return !(lost = !is_good(image, told, false));
        });
        return lost;
    }

private:
    static constexpr int kActions = 8;

    // Every disk that every cut may leave, until `look` has seen enough.
    template <class Look>
    void each_image(unsigned seed, Look look) {
        std::mt19937 chance(seed);
        Disk model(before_);
        std::int64_t told = 0;
        for (const DiskStep& step : log_) {
            if (step.kind == DiskStep::Kind::told)
                ++told;
            else
                model.take(step);
            if (!look(model.killed(), told) || !look(model.dropped(), told)) return;
            for (int i = 0; i < 3; ++i) {
                if (!look(model.torn(chance), told)) return;
            }
        }
    }

    // All that was told is there, nothing is there by halves, and (now and then, it takes time) all of it verifies.
    bool is_good(const Files& image, std::int64_t told, bool thoroughly) {
        disk_.files = image;
        FixedWorld world;
        KeysInMemory keys;
        const auto checked = book::guarded([&] {
            book::Session session(kBook, book::Access::write, {world, keys, 0});
            std::int64_t entries = 0;
            session.connected().one("SELECT count(*) FROM entry WHERE job = ?", {kJob},
                                    [&](const book::Row& row) { entries = row.integer(0); });
            bool whole = true;
            session.connected().one("PRAGMA quick_check(1)", {},
                                    [&](const book::Row& row) { whole = row.text(0) == "ok"; });
            const bool all_told = entries >= 2 * told && entries <= 2 * told + 2 && entries % 2 == 0;
            return whole && all_told && (!thoroughly || book::verify_book(session.connected(), {}).ok());
        });
        return checked.ok() && *checked;
    }

    // Made on the machine's own disk, before the one in memory takes its place.
    static Files new_book() {
        Shelf shelf;
        shelf.start();
        return {{kBook, bytes_of_file(shelf.path())}};
    }

    FixedWorld world_ = FixedWorld(6);
    KeysInMemory keys_ = {};
    Files before_ = new_book();
    MemoryDisk disk_ = {};
    std::vector<DiskStep> log_ = {};
};

} // namespace

TEST_CASE("wherever the power is cut, nothing that was told to be saved is lost") {
    const unsigned seed = std::random_device{}();
    const Counted counted = Cutting("").everywhere(seed);
    INFO("seed " << seed << ", " << counted.cuts << " cuts, " << counted.images << " images");
    CHECK(counted.cuts > 100);
    CHECK(counted.bad == 0);
}

// The harness must find what is known to be weak, or it proves nothing.
TEST_CASE("the same cutting finds the losses of settings that are known to be weak") {
    for (const char* settings : {"PRAGMA journal_mode = DELETE", "PRAGMA synchronous = OFF",
                                 "PRAGMA journal_mode = DELETE; PRAGMA synchronous = NORMAL"}) {
        INFO(settings);
        CHECK(Cutting(settings).loses_something(7));
    }
}

// DELETE with EXTRA also syncs the folder behind the unlinked journal: known to be safe, so the model must say so.
TEST_CASE("the same cutting finds no loss in another setting that is known to be safe") {
    CHECK_FALSE(Cutting("PRAGMA journal_mode = DELETE; PRAGMA synchronous = EXTRA").loses_something(7));
}
