// A key locked with a PIN. Each try of a PIN costs an Argon2id, so there are few of them here.
#include "book/pins.h"
#include "tests/support/books.h"

#include "base/text.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::book;

namespace {

const std::string kPerson = "p0123456789";

std::string with_line(const std::string& file, std::size_t number, const std::string& line) {
    auto lines = split(file, '\n');
    lines.at(number) = line;
    return joined(lines, "\n");
}

} // namespace

TEST_CASE("a PIN has at least six characters and at most sixty-four, all of them text") {
    CHECK(!check_pin(std::string(kFewestInPin - 1, '4')).ok());
    CHECK(check_pin(std::string(kFewestInPin, '4')).ok());
    CHECK(check_pin(std::string(kMostInPin, '4')).ok());
    CHECK(!check_pin(std::string(kMostInPin + 1, '4')).ok());
    CHECK(!check_pin("12345\x01").ok());
    CHECK(!check_pin("12345\xff").ok());
    CHECK(check_pin("schlüssel").ok());
}

TEST_CASE("a locked key opens with its PIN, for its person, and says nothing of the seed") {
    FixedWorld world(3);
    const auto file = good(locked(seed_of(9), kPerson, "402913", world));
    CHECK(good(unlocked(file, kPerson, "402913")) == seed_of(9));
    const auto wrong = unlocked(file, kPerson, "402914");
    REQUIRE(!wrong.ok());
    CHECK(wrong.fault().code == Code::pin_wrong);
    CHECK(!unlocked(file, "p9876543210", "402913").ok());
    CHECK(file.find(hex(seed_of(9))) == std::string::npos);
    CHECK(file.find("402913") == std::string::npos);
}

TEST_CASE("a file that asks for too much work, or is not ours, is refused before any work is done") {
    FixedWorld world(3);
    const auto file = good(locked(seed_of(9), kPerson, "402913", world));
    const std::string salt = split(split(file, '\n')[3], ' ')[3];
    for (const auto& bad : {with_line(file, 0, "undersheet.pin.2"),
                            with_line(file, 1, "person"),
                            with_line(file, 2, "key 00"),
                            with_line(file, 3, "argon2id 17 65536 " + salt),
                            with_line(file, 3, "argon2id 0 65536 " + salt),
                            with_line(file, 3, "argon2id 2 1048577 " + salt),
                            with_line(file, 3, "argon2id 2 x " + salt),
                            with_line(file, 3, "argon2id 2 99999999999999999999 " + salt),
                            with_line(file, 3, "argon2i 2 65536 " + salt),
                            with_line(file, 4, "secret "),
                            with_line(file, 4, "secret 00"),
                            file + "x",
                            std::string(),
                            with_line(file, 2, "name " + std::string(64, '0')),
                            with_line(file, 2, "key " + std::string(64, 'g')),
                            with_line(file, 3, "argon2id 2 65536"),
                            with_line(file, 3, "argon2id  65536 " + salt),
                            with_line(file, 3, "argon2id 2 6/536 " + salt),
                            with_line(file, 3, "argon2id 2 65536 00"),
                            with_line(file, 3, "argon2id 2 65536 " + std::string(32, 'g')),
                            with_line(file, 4, "seal 00"),
                            with_line(file, 4, "secret " + std::string(48, 'g')),
                            with_line(file, 4, "secret " + std::string(48, '0') + "00"),
                            with_line(file, 4, "secret " + std::string(48, '0') + std::string(96, 'g'))}) {
        INFO(bad);
        const auto refused = unlocked(bad, kPerson, "402913");
        REQUIRE(!refused.ok());
        CHECK(refused.fault().code == Code::key_unusable);
    }
}

TEST_CASE("a key that is sealed under another public key than it names is not taken") {
    FixedWorld world(3);
    const auto file = good(locked(seed_of(9), kPerson, "402913", world));
    const auto other = hex(entry::signer_from(seed_of(8))->public_key());
    const auto refused = unlocked(with_line(file, 2, "key " + other), kPerson, "402913");
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::key_unusable);
}
