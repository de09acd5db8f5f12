// Three phones with real books, and copies of them, that record, move parts, settle, erase, are lost and hand files over, by
// chance, with clocks that are twenty years wrong. UNDERSHEET_BOOK_SCHEDULES=1000 makes more of them than every run makes.
#include "tests/desk/desk_support.h"
#include "tests/support/how_many.h"

#include "desk/json.h"

#include <algorithm>
#include <map>
#include <set>

using namespace undersheet;

namespace {

class Apart {
public:
    explicit Apart(unsigned seed) : chance_(seed), worlds_(seed * 100'000ULL) {
        first_.survey();
        first_.open_the_day();
        phones_.push_back({first_.path()});
        good(open(0).hand({"", true, new_file()}));
        for (const char* name : {"second.book", "third.book"}) {
            phones_.push_back({folder_.file(name)});
            good(desk::Desk::start_from({phones_.back().book, "2026-06-11T08:00:00+01:00"}, last_file()));
        }
    }

    void run(int steps) {
        for (int i = 0; i < steps; ++i) step();
    }
    // Everybody meets everybody, in an order of chance; what the first had heard last, the others hear then.
    void meet_all() {
        std::vector<std::size_t> order(phones_.size());
        for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
        std::shuffle(order.begin(), order.end(), chance_);
        for (std::size_t i = 1; i < order.size(); ++i) give(order[i], order[0]);
        for (std::size_t i = 1; i < order.size(); ++i) give(order[0], order[i]);
    }

    void check_alike() {
        const std::string first = picture(0);
        for (std::size_t phone = 0; phone < phones_.size(); ++phone) {
            INFO("phone " << phone);
            CHECK(picture(phone) == first);
            const auto verified = good(later(phone).verify());
            for (const auto& fault : verified.faults)
                CHECK(fault.what.find("was copied") != std::string::npos);
            for (const std::string& name : erased_) CHECK(files_of(phone).find(name) == std::string::npos);
        }
    }

    [[nodiscard]] const std::map<std::string, std::size_t>& reached() const { return reached_; }

private:
    struct Phone {
        std::string book = {};
        int years_wrong = 0;
    };

    std::size_t any(std::size_t below) { return chance_() % below; }
    std::string new_file() { return folder_.file(std::to_string(++files_) + ".hand"); }
    [[nodiscard]] std::string last_file() const { return folder_.file(std::to_string(files_) + ".hand"); }

    // Every command is another start of the program, some minutes after the last by its own clock.
    desk::Desk open_at(std::size_t phone, int year) {
        minutes_ += 3;
        const std::string hour = std::to_string(10 + minutes_ / 60),
                          minute = std::to_string(100 + minutes_ % 60);
        return good(desk::Desk::open(
            phones_[phone].book,
            std::make_unique<FixedWorld>(++worlds_, std::to_string(year) + "-06-11T" + hour + ":" +
                                                        minute.substr(1) + ":00+01:00")));
    }
    desk::Desk open(std::size_t phone) { return open_at(phone, 2026 + phones_[phone].years_wrong); }
    desk::Desk later(std::size_t phone) { return open_at(phone, 2050); }

    void note(const Result<desk::Kept>& made) { reached_["kept"] += made.ok() && made->is_kept() ? 1 : 0; }
    desk::Asked somebody() { return {"A-07", any(2) == 0 ? "IP" : "WP", ""}; }

    void step() {
        const std::size_t phone = any(phones_.size());
        switch (any(9)) {
        case 0:
        case 1:
            return give(phone, any(phones_.size()));
        case 2:
            return settle(phone);
        case 3:
            return rarely(phone);
        case 4:
            return customer(phone);
        case 5:
        case 6:
            return move(phone);
        default:
            return read(phone);
        }
    }
    void give(std::size_t from, std::size_t to) {
        if (from == to) return;
        good(open(from).hand({"A-07", any(4) == 0, new_file()}));
        reached_["taken"] += good(open(to).take(last_file())).fresh;
    }
    void read(std::size_t phone) {
        if (any(2) == 0)
            note(open(phone).record(somebody(),
                                    {"chase", "CD+0.10", {}, {"height_mm=" + std::to_string(90 + any(90))}}));
        else
            note(open(phone).punch_add(somebody(), {"scuff on the trim", "BC", "", "put_right", {}}));
    }
    void move(std::size_t phone) {
        static const std::vector<std::string> events{"begin",     "pause",     "resume",
                                                     "send_back", "leave_out", "sign"};
        static const std::vector<std::string> parts{"deck", "plate/AB", "lay-out", "final"};
        note(open(phone).move(somebody(), {events[any(events.size())],
                                           parts[any(parts.size())],
                                           "",
                                           {"why=said so", "agreed_by=the customer"}}));
    }
    void settle(std::size_t phone) {
        const auto list = good(open(phone).to_settle({}));
        const auto item =
            std::find_if(list.items.begin(), list.items.end(), [](const auto& line) { return line.open; });
        if (item == list.items.end()) return read(phone);
        const auto made = open(phone).settle(
            somebody(), {item->id, item->sides[any(item->sides.size())].entry, "looked again"});
        note(made);
        reached_["settled"] += made.ok() ? 1 : 0;
    }
    void customer(std::size_t phone) {
        const std::string name = "Caspar Dunmoor the " + std::to_string(++customers_) + "th";
        note(open(phone).record(somebody(), {"site", "", {}, {"customer=" + name}}));
        if (any(2) == 0) give(phone, any(phones_.size()));
        if (any(2) == 0) return;
        const auto made = open(any(phones_.size()))
                              .erase(somebody(), {name, "asked by letter", "the job fell through", {}});
        if (made) reached_["erased"] += erased_.insert(name).second ? 1 : 0;
    }
    void rarely(std::size_t phone) {
        const std::size_t sort = any(4);
        if (sort == 0 && phones_.size() < 5) {
            const std::string copy = folder_.file("copy" + std::to_string(phones_.size()) + ".book");
            std::filesystem::copy_file(phones_[phone].book, copy);
            phones_.push_back({copy, phones_[phone].years_wrong});
            ++reached_["copied"];
        } else if (sort == 1) {
            const auto devices = good(open(phone).devices());
            reached_["revoked"] +=
                open(phone).revoke(somebody(), devices[any(devices.size())].device, "lost").ok() ? 1 : 0;
        } else {
            phones_[phone].years_wrong = 20 * (static_cast<int>(any(3)) - 1);
            reached_["clock wrong"] += phones_[phone].years_wrong != 0 ? 1 : 0;
        }
    }

    // What a phone shows of the job, and the digest of what it holds.
    std::string picture(std::size_t phone) {
        std::string shown = good(later(phone).hand({"A-07", false, new_file()})).digest;
        const desk::Asked at_one_time = {"A-07", "", "2051-01-01T12:00:00+00:00"};
        for (const char* paper : {"inspection", "stages", "punch"})
            shown += good(later(phone).paper(at_one_time, paper, "txt")).bytes;
        shown += desk::json_of(good(later(phone).findings(at_one_time)));
        return shown + desk::json_of(good(later(phone).to_settle(at_one_time)));
    }
    [[nodiscard]] std::string files_of(std::size_t phone) const {
        std::string bytes = bytes_of_file(phones_[phone].book);
        for (const char* more : {"-wal", "-journal"}) bytes += bytes_of_file(phones_[phone].book + more);
        return bytes;
    }

    std::mt19937 chance_;
    std::uint64_t worlds_;
    DeskTest first_ = DeskTest("2026-06-11T08:00:00+01:00");
    TempFolder folder_ = {};
    std::vector<Phone> phones_ = {};
    std::set<std::string> erased_ = {};
    std::map<std::string, std::size_t> reached_ = {{"kept", 0},    {"taken", 0},  {"settled", 0},
                                                   {"revoked", 0}, {"copied", 0}, {"clock wrong", 0},
                                                   {"erased", 0}};
    int files_ = 0, minutes_ = 0, customers_ = 0;
};

} // namespace

TEST_CASE("phones that write, copy, lose, erase and settle apart show the same job once all have met") {
    const int many = test::how_many("UNDERSHEET_BOOK_SCHEDULES", 6);
    std::map<std::string, std::size_t> reached; // the schedules reach what they are made for
    for (int seed = 1; seed <= many; ++seed) {
        INFO("seed " << seed);
        Apart apart(static_cast<unsigned>(seed));
        apart.run(30);
        apart.meet_all();
        apart.check_alike();
        for (const auto& [what, times] : apart.reached()) reached[what] += times;
    }
    for (const auto& [what, times] : reached) {
        INFO(what << " " << times << " times");
        CHECK(times > 0);
    }
}
