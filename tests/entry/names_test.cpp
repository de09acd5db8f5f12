#include "entry/names.h"

#include "tests/support/fixed_world.h"

#include <catch2/catch.hpp>
#include <set>

using namespace undersheet;
using namespace undersheet::entry;

TEST_CASE("an entry's id is a UUIDv7 that carries the milliseconds of the clock") {
    FixedWorld world(7, "2026-06-11T08:05:00Z");
    const std::string id = new_entry_id(world);
    INFO(id);
    CHECK(is_entry_id(id));
    std::string stamp = id.substr(0, 13);
    std::erase(stamp, '-');
    CHECK(std::stoull(stamp, nullptr, 16) ==
          1781165100001U); // the instant, and the first millisecond of the steady clock
}

// The example of RFC 9562, appendix A.6.
TEST_CASE("the UUIDv7 of the standard is one, other versions and variants are not") {
    CHECK(is_entry_id("017f22e2-79b0-7cc3-98c4-dc0c0c07398f"));
    CHECK_FALSE(is_entry_id("017f22e2-79b0-4cc3-98c4-dc0c0c07398f"));
    CHECK_FALSE(is_entry_id("017f22e2-79b0-7cc3-c8c4-dc0c0c07398f"));
    CHECK_FALSE(is_entry_id("017F22E2-79B0-7CC3-98C4-DC0C0C07398F"));
    CHECK_FALSE(is_entry_id("017f22e279b07cc398c4dc0c0c07398f"));
    CHECK_FALSE(is_entry_id("017f22e2-79b0-7cc3-98c4-dc0c0c07398"));
    CHECK_FALSE(is_entry_id("017f22e2-79b0-7cc3-98c4-dc0c0c07-98f"));
    CHECK_FALSE(is_entry_id("017f22e2079b0-7cc3-98c4-dc0c0c07398f"));
    CHECK_FALSE(is_entry_id("017f22e2-79b007cc3-98c4-dc0c0c07398f"));
    CHECK_FALSE(is_entry_id("017f22e2-79b0-7cc3098c4-dc0c0c07398f"));
    CHECK_FALSE(is_entry_id("017f22e2-79b0-7cc3-98c40dc0c0c07398f"));
    CHECK_FALSE(is_entry_id(""));
}

TEST_CASE("ten thousand names made in one moment are ten thousand different ones") {
    FixedWorld world(11);
    std::set<std::string> names;
    for (int i = 0; i < 10'000; ++i) names.insert(new_entry_id(world));
    CHECK(names.size() == 10'000);
}

TEST_CASE("jobs and people have the form that entries ask for") {
    FixedWorld world(3);
    CHECK(is_job(new_job(world)));
    CHECK(is_person(new_person(world)));
    CHECK_FALSE(is_person("p123"));
    CHECK_FALSE(is_person("q0123456789"));
    CHECK_FALSE(is_person("p01234567890"));
    CHECK_FALSE(is_job(""));
    CHECK_FALSE(is_job(std::string(31, 'a')));
    for (const char other : {'A', '/', ':', '`', 'g'}) CHECK_FALSE(is_job(std::string(32, other)));
}
