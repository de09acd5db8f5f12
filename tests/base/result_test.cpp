#include "base/result.h"

#include <catch2/catch.hpp>

#include <memory>
#include <string>

using namespace undersheet;

namespace {

Result<std::string> name_of(int number) {
    if (number == 1) return std::string("one");
    return Fault{Code::value_impossible, "no name for " + std::to_string(number), {}, {}};
}

Done only_one(int number) {
    if (number == 1) return {};
    return Fault{Code::value_impossible, "not one", {}, {}};
}

} // namespace

TEST_CASE("a good result holds the value and no fault") {
    const auto found = name_of(1);
    CHECK(found.ok());
    CHECK(static_cast<bool>(found));
    CHECK(*found == "one");
    CHECK(found->size() == 3);
    CHECK(found.value() == "one");
}

TEST_CASE("a failed result holds the fault and no value") {
    const auto found = name_of(2);
    CHECK_FALSE(found.ok());
    CHECK_FALSE(static_cast<bool>(found));
    CHECK(found.fault().detail == "no name for 2");
}

TEST_CASE("asking a result for what it is not is our own mistake and is thrown") {
    const auto good = name_of(1);
    const auto bad = name_of(2);
    CHECK_THROWS_AS(good.fault(), std::logic_error);
    CHECK_THROWS_AS(bad.value(), std::logic_error);
    CHECK_THROWS_AS(*bad, std::logic_error);
    CHECK_THROWS_AS(bad->size(), std::logic_error);
}

TEST_CASE("a value can be changed in its result and moved out of it") {
    auto found = name_of(1);
    *found += " head";
    found->push_back('!');
    CHECK(*found == "one head!");
    const std::string taken = std::move(found).value();
    CHECK(taken == "one head!");
    CHECK(*name_of(1) == "one"); // straight from the call
}

TEST_CASE("a result can hold what can only be moved") {
    Result<std::unique_ptr<int>> held(std::make_unique<int>(7));
    const std::unique_ptr<int> taken = *std::move(held);
    CHECK(*taken == 7);
}

TEST_CASE("a value that looks like nothing is still a value") {
    const Result<int> zero(0);
    CHECK(zero.ok());
    CHECK(*zero == 0);
}

TEST_CASE("something done has no value, only success or a fault") {
    CHECK(only_one(1).ok());
    CHECK_THROWS_AS(only_one(1).fault(), std::logic_error);
    CHECK_FALSE(only_one(2).ok());
    CHECK(only_one(2).fault().detail == "not one");
}
