// Books for tests: a key store in memory, and a book with two jobs in it.
#pragma once

#include "book/book.h"
#include "entry/names.h"
#include "tests/support/device.h"
#include "tests/support/temp_folder.h"

#include <map>
#include <memory>

namespace undersheet {

class KeysInMemory : public book::KeyStore {
public:
    Result<std::optional<book::Key>> load(const std::string& device) override {
        const auto at = keys.find(device);
        return at == keys.end() ? std::optional<book::Key>() : std::optional<book::Key>(at->second);
    }
    Done save(const book::Key& key) override {
        keys[key.device] = key;
        return {};
    }
    Result<std::optional<std::string>> load_locked(const std::string& device,
                                                   const std::string& person) override {
        const auto at = locked.find(device + person);
        return at == locked.end() ? std::optional<std::string>() : std::optional<std::string>(at->second);
    }
    Done save_locked(const std::string& device, const std::string& person, std::string_view text) override {
        locked[device + person] = text;
        return {};
    }
    std::map<std::string, book::Key> keys = {};
    std::map<std::string, std::string> locked = {};
};

// The value, or the end of the test with the fault's own line.
template <class T>
T good(Result<T> result) {
    if (!result.ok()) throw std::logic_error(one_line(result.fault()));
    return std::move(*result);
}
template <class T>
std::string line_of(const Result<T>& result) {
    return result.ok() ? "done" : one_line(result.fault());
}

inline entry::Draft open_draft(const std::string& job, const std::string& ref) {
    entry::Draft draft;
    draft.kind = "open";
    draft.job = job;
    draft.when = *entry::parse_time("2026-06-11T08:00:00+01:00");
    draft.data.set("ref", ref);
    return draft;
}

inline entry::Draft firm_draft() {
    entry::Draft draft;
    draft.kind = "firm";
    draft.when = *entry::parse_time("2026-06-11T08:00:00+01:00");
    draft.data.set("name", "Tolland Flat Roofs");
    return draft;
}

inline entry::Draft site_draft(const std::string& customer) {
    entry::Draft draft = air_draft();
    draft.kind = "site";
    draft.data = entry::Value().set("height_m", 3);
    draft.personal["customer"] = customer;
    return draft;
}

// A place where a book can be made, with its world and keys.
struct Shelf {
    TempFolder folder = {};
    FixedWorld world = FixedWorld(5);
    KeysInMemory keys = {};
    int wait_ms = 20;

    [[nodiscard]] std::string path() const { return folder.file("demo.book"); }
    book::Surroundings around() { return {world, keys, wait_ms}; }
    book::Book start() { return good(book::Book::start(path(), around(), {firm_draft()})); }
    book::Book open(book::Access access = book::Access::write) {
        return good(book::Book::open(path(), access, around()));
    }
};

// A phone: a book of its own, with its own key and chance.
struct Phone {
    explicit Phone(std::uint64_t seed) : world(seed) {}
    [[nodiscard]] std::string path() const { return folder.file("phone.book"); }
    book::Surroundings around() { return {world, keys, 20}; }
    book::Book open(book::Access access = book::Access::write) {
        return good(book::Book::open(path(), access, around()));
    }
    book::Book start() { return good(book::Book::start(path(), around(), {firm_draft()})); }
    std::string hand(const std::string& name, std::string_view job = kJob) {
        const std::string file = folder.file(name);
        good(open().hand(job, file));
        return file;
    }

    TempFolder folder = {};
    FixedWorld world;
    KeysInMemory keys = {};
};

} // namespace undersheet
