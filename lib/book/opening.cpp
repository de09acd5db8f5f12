#include "book/opening.h"

#include "book/files.h"
#include "book/journal.h"
#include "schema/embedded.h"

#include <cstdio>
#include <filesystem>
#include <unistd.h>

namespace undersheet::book {
namespace {

constexpr std::int64_t kApplication = 1431521364; // as in schema/book.sql
constexpr std::int64_t kVersion = 1;

// Takes away what is left of a book that could not be made, also where no memory is left.
class Sweeper {
public:
    explicit Sweeper(const std::string& path) : path_(path), journal_(path + "-journal") {}
    Sweeper(const Sweeper&) = delete;
    Sweeper& operator=(const Sweeper&) = delete;
    ~Sweeper() {
        std::remove(path_.c_str());
        std::remove(journal_.c_str());
    }

private:
    std::string path_, journal_;
};

} // namespace

Done check_file(const std::string& path) {
    std::error_code error;
    const auto status = std::filesystem::status(path, error);
    if (status.type() == std::filesystem::file_type::not_found) {
        return Fault{Code::book_missing, "there is no book of that name", path,
                     "start one, or name the right file"};
    }
    if (status.type() != std::filesystem::file_type::regular) {
        return Fault{Code::book_not_a_book, "this is a folder, pipe or device, not a book", path};
    }
    if (::access(path.c_str(), R_OK) != 0)
        return Fault{Code::book_failed, "the book may not be read", path, "let it be read"};
    if (std::filesystem::file_size(path, error) == 0)
        return Fault{Code::book_not_a_book, "this file is empty", path};
    return {};
}

// SQLite takes away the file that a journal names at its end, once it has rolled it back. Ours never name one.
// Source: SQLite's file format, "the rollback journal"; the eight bytes are those that it writes behind the name.
bool names_another_file(const std::string& journal) {
    constexpr std::string_view kBehindTheName("\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", 8);
    return read_end(journal, kBehindTheName.size()) == kBehindTheName;
}

Done check_beside(const std::string& path) {
    if (names_another_file(path + "-journal"))
        return Fault{Code::book_failed,
                     "the journal beside the book names another file, to be taken away with it",
                     path + "-journal", "no program of ours wrote it: move it away and look at it"};
    for (const char* ending : {"-journal", "-wal", "-shm"}) {
        std::error_code error;
        const auto type = std::filesystem::status(path + ending, error).type();
        if (type == std::filesystem::file_type::fifo || type == std::filesystem::file_type::character)
            return Fault{Code::book_failed, "a pipe or device lies here, not the book's journal",
                         path + ending, "take it away"};
    }
    return {};
}

Done check_free(const std::string& path) {
    std::error_code error;
    if (std::filesystem::exists(path, error)) {
        return Fault{Code::book_failed, "there is a file of that name already", path, "choose another name"};
    }
    if (!std::filesystem::is_directory(folder_of(path), error)) {
        return Fault{Code::book_missing, "there is no such folder", folder_of(path), "make it first"};
    }
    return {};
}

void check_is_book(Connection& connection) {
    const std::string& path = connection.path();
    if (connection.number("PRAGMA application_id") != kApplication) {
        throw Trouble{{Code::book_not_a_book, "this file is no book", path}};
    }
    if (connection.number("PRAGMA user_version") > kVersion) {
        throw Trouble{{Code::book_not_a_book, "this book was written by a newer version", path,
                       "bring this program up to date"}};
    }
    if (connection.number("SELECT count(*) FROM sqlite_schema WHERE type NOT IN ('table', 'index')") != 0) {
        throw Trouble{{Code::book_not_a_book, "this file holds things that no book of ours has", path}};
    }
}

void check_is_writable(Connection& connection) {
    if (!connection.is_read_only()) return;
    throw Trouble{{Code::book_read_only, "the book may not be written", connection.path(),
                   "let it be written, or copy it elsewhere"}};
}

void make_file(const std::string& path, const std::function<void(const std::string& part)>& fill) {
    done_or_trouble(check_free(path));
    const std::string part = path + "." + std::to_string(::getpid()) + ".part";
    const Sweeper sweeper(part);
    fill(part);
    done_or_trouble(move_into_place(part, path));
}

void make_book(const std::string& path, const std::string& office, int wait_ms,
               const std::function<void(const std::string& part)>& fill) {
    make_file(path, [&](const std::string& part) {
        {
            Connection connection(part, Connection::Mode::create, wait_ms);
            Transaction transaction(connection, Transaction::Kind::writing);
            connection.script(schema::book_sql());
            set_local(connection, "office", office);
            transaction.commit();
        }
        fill(part);
    });
}

} // namespace undersheet::book
