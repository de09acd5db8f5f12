#include "book/machine.h"

#include "entry/names.h"

#include <catch2/catch.hpp>
#include <ctime>

using namespace undersheet;

TEST_CASE("this machine tells the time of its clock with an offset") {
    const auto world = book::this_machine();
    const auto before = std::time(nullptr);
    const auto clock = world->clock();
    CHECK(clock.unix_s >= before);
    CHECK(clock.unix_s <= std::time(nullptr));
    CHECK(entry::parse_time(clock.text)->unix_s == clock.unix_s);
    CHECK_FALSE(world->is_simulated());
}

TEST_CASE("a clock set by hand stands still and is said to be simulated") {
    const auto world = book::this_machine(*entry::parse_time("2026-06-11T08:05:00+01:00"));
    CHECK(world->clock().text == "2026-06-11T08:05:00+01:00");
    CHECK(world->is_simulated());
}

TEST_CASE("the steady clock never goes back and each start has its own name") {
    const auto world = book::this_machine();
    const auto first = world->mono_millis();
    CHECK(first >= 0);
    CHECK(world->mono_millis() >= first);
    CHECK(entry::is_hex(world->boot(), 16));
    CHECK(world->boot() == world->boot());
    CHECK(world->boot() != book::this_machine()->boot());
}

TEST_CASE("chance does not repeat itself") {
    const auto world = book::this_machine();
    CHECK(entry::new_job(*world) != entry::new_job(*world));
}
