// The one door to SQLite: opens a file with the settings the book relies on, runs statements, and names what went wrong.
//
// Promises: every row is read into values before a function is left; values are copied in, and come out only as the type
//   the schema says (anything else is Trouble); rows of `entry` can be added, never updated or deleted.
// Does not: give SQLite's types or exceptions to anybody. What it throws is Trouble, which stays inside this room.
// Threads: one connection, one thread.
#pragma once

#include "base/result.h"

#include <cstdint>
#include <functional>
#include <initializer_list>
#include <memory>
#include <new>
#include <string>
#include <string_view>
#include <variant>

namespace SQLite {
class Statement;
}

namespace undersheet::book {

// A fault on its way to the edge of this room.
struct Trouble {
    Fault fault;
};

// Runs `work` and turns what it throws into the fault of the result; so it does where memory runs out.
template <class Work>
auto guarded(Work&& work) -> Result<decltype(work())> {
    try {
        return work();
    } catch (const Trouble& trouble) {
        return trouble.fault;
    } catch (const std::bad_alloc&) {
        return Fault{Code::book_failed, "no memory left"}; // short enough to need none
    }
}

// The value of a result from another room, or Trouble.
template <class T>
T value_or_trouble(Result<T> result) {
    if (!result) throw Trouble{result.fault()};
    return std::move(*result);
}
void done_or_trouble(const Done& done);

struct Bytes {
    std::string_view bytes;
};
using Parameter = std::variant<std::int64_t, std::string_view, Bytes>;
using Parameters = std::initializer_list<Parameter>;

class Row {
public:
    [[nodiscard]] std::int64_t integer(int column) const;
    [[nodiscard]] std::string text(int column) const;
    [[nodiscard]] std::string bytes(int column) const;

private:
    friend class Connection;
    explicit Row(SQLite::Statement& statement) : statement_(statement) {}
    SQLite::Statement& statement_;
};

class Connection {
public:
    // foreign: somebody else's file. It is read as it stands, nothing beside it is looked at, and SQLite trusts none of it.
    enum class Mode { read, write, create, foreign };
    Connection(const std::string& path, Mode mode, int wait_ms);
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;
    ~Connection();

    void script(std::string_view statements); // several, without parameters
    void run(const char* statement, Parameters parameters = {});
    void each(const char* query, Parameters parameters, const std::function<void(const Row&)>& row);
    [[nodiscard]] std::int64_t number(const char* query); // of the first row; 0 when there is none
    // The first row, if there is one.
    bool one(const char* query, Parameters parameters, const std::function<void(const Row&)>& row);

    // Writes the file anew without what was deleted in it. Not within a transaction.
    void compact();
    [[nodiscard]] bool is_read_only() const;
    [[nodiscard]] bool is_in_transaction() const;
    [[nodiscard]] const std::string& path() const { return path_; }

private:
    struct Handles;
    std::string path_;
    std::unique_ptr<Handles> handles_;
};

// One action: everything between making it and commit() is kept, or nothing is. While reading, one state of the book is
// seen, whoever else writes.
class Transaction {
public:
    enum class Kind { reading, writing };
    Transaction(Connection& connection, Kind kind);
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    ~Transaction();
    void commit();

private:
    Connection& connection_;
    bool open_ = true;
};

} // namespace undersheet::book
