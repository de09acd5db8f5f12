#include "job/supplements.h"

#include "tests/support/phones.h"

#include <algorithm>

using namespace undersheet;
using test::Phones;
using test::Site;

namespace {

// An old roof, taken over from paper and so closed, that somebody comes back to.
Site old_roof() {
    Site site;
    site.record("open", "08:00",
                R"({"ref":"T-1","roof":"test roof","from_paper":"yes","finished":"2019-08-30"})");
    site.person("ip", "Isolde Pell", "IP", "08:00").person("wp", "Wren Pell", "WP", "08:00");
    for (const auto& [place, kind] :
         {std::pair{"AB", "gutter"}, {"BC", "kerb"}, {"CD", "wall"}, {"DA", "kerb"}})
        site.record("edge", "08:10", std::string(R"({"kind":")") + kind + R"("})", place);
    return site;
}

entry::Hash opened(Site& site, const std::string& at, const std::string& number = "1") {
    site.go_on_in({});
    return site.record("supplement", at, R"({"number":)" + number + R"(,"why":"call"})").hash;
}

job::State state_of(const job::Job& job, const char* part) { return job.part(part)->state; }

std::vector<std::string> names_of(const job::Job& job) {
    std::vector<std::string> names;
    for (const auto& supplement : job.supplements) names.push_back(supplement.name);
    return names;
}

std::vector<std::string> open_words(const job::Job& job) {
    std::vector<std::string> words;
    for (const auto& open : job::open_in(job, *job.supplement())) words.push_back(open.why);
    return words;
}

} // namespace

TEST_CASE("what belongs to a supplement changes nothing in the first record") {
    Site site = old_roof();
    const auto before = site.fold("09:00");
    const auto first = opened(site, "09:00");
    site.go_on_in(first);
    site.record("look", "09:10", R"({"seen":"tape lifted"})", "D");
    site.record("reopen", "09:20", R"({"why":"corner lifted"})", "", "patches/D");
    site.go_on_in({});
    const auto after = site.fold("10:00");
    CHECK(after.readings.size() == before.readings.size());
    CHECK(after.handed_over == after.opened);
    CHECK(state_of(after, "patches/D") == job::State::closed);
    CHECK(after.problems.empty());
    CHECK(after.supplements.size() == 1);
    CHECK(after.supplements[0].entries.size() == 2);
    CHECK(after.supplement() == nullptr);
}

TEST_CASE("within a supplement the parts that were handed over can be opened again by the same rules") {
    Site site = old_roof();
    const auto first = opened(site, "09:00");
    site.go_on_in(first);
    CHECK(state_of(site.fold("09:05"), "patches/D") == job::State::signed_off);
    site.act("reopen", "patches/D", "09:20", R"({"why":"corner lifted"})");
    const auto now = site.fold("09:30");
    CHECK(state_of(now, "patches/D") == job::State::opened_again);
    CHECK(state_of(now, "trim-off") == job::State::in_doubt);
    CHECK(state_of(now, "final") == job::State::opened_again);
    CHECK(now.handed_over != nullptr);
    REQUIRE(now.supplement() != nullptr);
    CHECK(now.supplement()->name == "1");
}

TEST_CASE("a later supplement goes on from the earlier one, and the earlier one knows nothing of the later") {
    Site site = old_roof();
    const auto first = opened(site, "09:00");
    site.go_on_in(first);
    site.record("reopen", "09:20", R"({"why":"corner lifted"})", "", "patches/D");
    const auto second = opened(site, "10:00", "2");
    site.go_on_in(second);
    site.record("reopen", "10:20", R"({"why":"dry"})", "", "band/AB");
    CHECK(state_of(site.fold("11:00"), "patches/D") == job::State::opened_again);
    CHECK(state_of(site.fold("11:00"), "band/AB") == job::State::opened_again);
    site.go_on_in(first);
    CHECK(state_of(site.fold("11:00"), "band/AB") == job::State::signed_off);
    CHECK(names_of(site.fold("11:00")) == std::vector<std::string>{"1", "2"});
}

TEST_CASE("an entry that names a supplement which is not here counts nowhere and is told of") {
    Site site = old_roof();
    site.go_on_in(entry::sha256("no such entry"));
    site.record("look", "09:10", R"({"seen":"tape lifted"})", "D");
    site.go_on_in({});
    const auto job = site.fold("10:00");
    CHECK(job.all("look").empty());
    REQUIRE(job.problems.size() == 1);
    CHECK(job.problems[0].starts_with("it belongs to a supplement that is not here (entry "));
}

TEST_CASE("an entry whose writer did not know of the supplement it names does not count in it") {
    Site site = old_roof();
    Phones phones(2, site);
    const auto opening = phones.record(0, "supplement", "09:00", R"({"number":1,"why":"call"})");
    auto entries = phones.known_to(0);
    phones.record(1, "look", "09:10", R"({"seen":"tape lifted"})", "D");
    auto apart = phones.known_to(1).back();
    apart.supplement = opening.hash;
    entries.push_back(apart);
    const auto job = *job::fold(entries, test::default_method(), test::default_kinds(),
                                *entry::parse_time("2026-06-11T12:00:00+01:00"));
    REQUIRE(job.problems.size() == 1);
    CHECK(job.problems[0].starts_with("it names a supplement that its writer did not know of"));
    CHECK(job.supplements[0].entries.empty());
}

TEST_CASE("of two supplements that phones opened apart under one number the later gets a letter on both") {
    Site site = old_roof();
    Phones phones(2, site);
    phones.record(0, "supplement", "09:00", R"({"number":1,"why":"call"})");
    phones.record(1, "supplement", "09:05", R"({"number":1,"why":"yearly"})");
    phones.meet(0, 1);
    CHECK(names_of(phones.fold(0)) == std::vector<std::string>{"1", "1b"});
    CHECK(names_of(phones.fold(0)) == names_of(phones.fold(1)));
}

TEST_CASE(
    "a supplement is open until what was seen is written and every part it touched is signed or confirmed") {
    Site site = old_roof();
    const auto first = opened(site, "09:00");
    site.go_on_in(first);
    CHECK(open_words(site.fold("09:05")) == std::vector<std::string>{"nothing is written of what was seen"});
    site.record("look", "09:10", R"({"seen":"tape lifted"})", "D");
    CHECK(open_words(site.fold("09:15")).empty());
    site.act("reopen", "patches/D", "09:20", R"({"why":"corner lifted"})");
    const auto open = open_words(site.fold("09:30"));
    REQUIRE(!open.empty());
    CHECK(open.front() == "patch D is opened again");
    CHECK(std::count(open.begin(), open.end(), "trim off is in doubt") == 1);
}

TEST_CASE("numbers beyond the catalogue's do not open a supplement of a wrong name") {
    for (const auto& [number, name] :
         {std::pair{"9999", "9999"}, {"10000", "0"}, {"0", "0"}, {"1", "1"}, {"-1", "0"}}) {
        Site site = old_roof();
        site.record("supplement", "09:00", std::string(R"({"number":)") + number + R"(,"why":"call"})");
        const auto job = site.fold("10:00");
        INFO(number);
        if (std::string(name) == "0") {
            CHECK(job.supplements.empty());
            CHECK(job.problems.size() == 1); // the catalogue would never have kept it
        } else {
            CHECK(names_of(job) == std::vector<std::string>{name});
        }
    }
}
