#include "book/connection.h"

#include "book/files.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <cerrno>
#include <map>
#include <sqlite3.h>
#include <stdexcept>
#include <vector>

namespace undersheet::book {
namespace {

Fault read_only(const std::string& path) {
    return {Code::book_read_only, "the book or its folder may not be written", path,
            "let it be written, or copy it elsewhere"};
}

// `system_error` is what the system said to SQLite when it could not open, read or write.
Fault fault_of(const SQLite::Exception& error, const std::string& path, int system_error) {
    const bool asked_the_system =
        error.getErrorCode() == SQLITE_CANTOPEN || error.getErrorCode() == SQLITE_IOERR;
    if (asked_the_system && (system_error == ENOSPC || system_error == EFBIG))
        return file_fault(system_error, path);
    switch (error.getErrorCode()) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return {Code::book_in_use, "another program is writing in this book", path,
                "close it or wait a moment"};
    case SQLITE_FULL:
        return file_fault(ENOSPC, path);
    case SQLITE_READONLY:
    case SQLITE_PERM:
        return read_only(path);
    case SQLITE_CANTOPEN:
        return {Code::book_read_only, "the book or the journal beside it cannot be opened", path,
                "let the file and its folder be read and written"};
    case SQLITE_NOTADB:
        return {Code::book_not_a_book, "this file is no book", path};
    case SQLITE_CORRUPT:
        return {Code::book_damaged, "the book is damaged", path,
                "go back to a copy, or read what is left: undersheet salvage"};
    default:
        return {Code::book_failed, std::string("the book could not be read or written: ") + error.what(),
                path};
    }
}

// Rows of `entry` are added and read; nothing else is ever done to them. Triggers could do the same, but a book that was
// handed over must hold none. Nothing we do takes a table away, changes one, or brings another file in beside this one.
int allow(void*, int action, const char* table, const char*, const char*, const char*) {
    switch (action) {
    case SQLITE_UPDATE:
    case SQLITE_DELETE:
        return std::string_view(table) == "entry" ? SQLITE_DENY : SQLITE_OK;
    case SQLITE_DROP_TABLE:
    case SQLITE_ALTER_TABLE:
    case SQLITE_CREATE_TRIGGER:
    case SQLITE_CREATE_VIEW:
    case SQLITE_ATTACH:
        return SQLITE_DENY;
    default:
        return SQLITE_OK;
    }
}

// TRUNCATE with FULL: the book is one file, and no acknowledged entry is lost when the power fails. DELETE with FULL,
// SQLite's default, does not sync the folder after the journal is unlinked.
constexpr const char* kSettings = "PRAGMA page_size = 4096;"
                                  "PRAGMA journal_mode = TRUNCATE;"
                                  "PRAGMA synchronous = FULL;"
                                  "PRAGMA fullfsync = ON;" // Apple only
                                  "PRAGMA secure_delete = ON;"
                                  "PRAGMA foreign_keys = ON;"
                                  "PRAGMA recursive_triggers = ON;"
                                  "PRAGMA cell_size_check = ON;"
                                  "PRAGMA trusted_schema = OFF;"
                                  "PRAGMA mmap_size = 0;";

void bind(SQLite::Statement& statement, int index, const Parameter& parameter) {
    if (const auto* number = std::get_if<std::int64_t>(&parameter)) return statement.bind(index, *number);
    if (const auto* text = std::get_if<std::string_view>(&parameter))
        return statement.bind(index, std::string(*text));
    const std::string_view bytes = std::get<Bytes>(parameter).bytes;
    // A null pointer would bind as NULL, so an empty blob gets another one.
    statement.bind(index, bytes.empty() ? "" : static_cast<const void*>(bytes.data()),
                   static_cast<int>(bytes.size()));
}

// However its user leaves, the statement is reset and forgets what was bound: a half-read query would hold a lock.
class InUse {
public:
    explicit InUse(SQLite::Statement& statement) : statement_(statement) {}
    InUse(const InUse&) = delete;
    InUse& operator=(const InUse&) = delete;
    ~InUse() {
        statement_.tryReset();
        statement_.clearBindings(); // cannot fail
    }

private:
    SQLite::Statement& statement_;
};

int open_flags(Connection::Mode mode) {
    if (mode == Connection::Mode::foreign) return SQLite::OPEN_READONLY | SQLite::OPEN_URI;
    // Reading opens for writing too where it may: a book whose power failed has to be rolled back before it can be read.
    return mode == Connection::Mode::create ? SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE
                                            : SQLite::OPEN_READWRITE;
}

// A file name as a URI of RFC 3986; "immutable" keeps SQLite from a journal that somebody laid beside it.
std::string name_to_open(const std::string& path, Connection::Mode mode) {
    if (mode != Connection::Mode::foreign) return path;
    constexpr std::string_view kDigits = "0123456789abcdef";
    std::string uri = "file:";
    for (const char c : path) {
        const auto byte = static_cast<unsigned char>(c);
        const bool is_plain = (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') ||
                              (byte >= '0' && byte <= '9') || byte == '/' || byte == '.' || byte == '-';
        if (is_plain)
            uri += c;
        else
            uri.append({'%', kDigits[byte >> 4U], kDigits[byte & 15U]});
    }
    return uri + "?immutable=1";
}

// Far more than any question of ours needs, and far less than a file made to keep us busy would take.
int too_long(void*) { return 1; }

void distrust(sqlite3* handle) {
    constexpr int kMostBytes = 33 << 20; // a photograph and its row
    constexpr int kMostSteps = 500'000'000;
    sqlite3_limit(handle, SQLITE_LIMIT_LENGTH, kMostBytes);
    sqlite3_limit(handle, SQLITE_LIMIT_SQL_LENGTH, 10'000);
    sqlite3_limit(handle, SQLITE_LIMIT_COLUMN, 16);
    sqlite3_limit(handle, SQLITE_LIMIT_EXPR_DEPTH, 20);
    sqlite3_limit(handle, SQLITE_LIMIT_ATTACHED, 0);
    sqlite3_limit(handle, SQLITE_LIMIT_TRIGGER_DEPTH, 1);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_ENABLE_VIEW, 0, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
    sqlite3_progress_handler(handle, kMostSteps, too_long, nullptr);
}

constexpr const char* kForeignSettings = "PRAGMA query_only = ON;"
                                         "PRAGMA cell_size_check = ON;"
                                         "PRAGMA mmap_size = 0;";

} // namespace

// Statements are declared after the database, so that they go before it.
struct Connection::Handles {
    Handles(const std::string& path, int flags, int wait_ms) : database(path, flags, wait_ms) {}
    SQLite::Database database;
    std::map<std::string, SQLite::Statement, std::less<>> statements = {};

    [[nodiscard]] int system_error() const { return sqlite3_system_errno(database.getHandle()); }
    SQLite::Statement& prepared(const char* sql) {
        const auto at = statements.find(std::string_view(sql));
        if (at != statements.end()) return at->second;
        return statements.try_emplace(sql, database, sql).first->second;
    }
};

void done_or_trouble(const Done& done) {
    if (!done) throw Trouble{done.fault()};
}

namespace {

SQLite::Column checked(SQLite::Statement& statement, int column,
                       bool (SQLite::Column::*is_type)() const noexcept) {
    SQLite::Column value = statement.getColumn(column);
    if ((value.*is_type)()) return value;
    throw Trouble{{Code::book_damaged, "a value in the book is not of the type it must be", value.getName()}};
}

std::string blob_of(const SQLite::Column& column) {
    const void* data = column.getBlob(); // before the size: SQLite's order of calls
    return {static_cast<const char*>(data), static_cast<std::size_t>(column.getBytes())};
}

} // namespace

std::int64_t Row::integer(int column) const {
    return checked(statement_, column, &SQLite::Column::isInteger).getInt64();
}
std::string Row::text(int column) const {
    return blob_of(checked(statement_, column, &SQLite::Column::isText));
}
std::string Row::bytes(int column) const {
    return blob_of(checked(statement_, column, &SQLite::Column::isBlob));
}

Connection::Connection(const std::string& path, Mode mode, int wait_ms) : path_(path) {
    try {
        handles_ = std::make_unique<Handles>(name_to_open(path, mode), open_flags(mode), wait_ms);
        sqlite3* handle = handles_->database.getHandle();
        sqlite3_set_authorizer(handle, allow, nullptr);
        if (mode == Mode::foreign) distrust(handle);
        handles_->database.exec(mode == Mode::foreign ? kForeignSettings : kSettings);
        if (mode == Mode::read) handles_->database.exec("PRAGMA query_only = ON");
    } catch (const SQLite::Exception& error) {
        const auto system_error = handles_ ? handles_->system_error() : 0;
        throw Trouble{fault_of(error, path, system_error)};
    }
}

Connection::~Connection() = default;

void Connection::script(std::string_view statements) {
    try {
        handles_->database.exec(std::string(statements));
    } catch (const SQLite::Exception& error) {
        throw Trouble{fault_of(error, path_, handles_->system_error())};
    }
}

void Connection::run(const char* statement, Parameters parameters) {
    each(statement, parameters, [](const Row&) {});
}

void Connection::each(const char* query, Parameters parameters, const std::function<void(const Row&)>& row) {
    try {
        SQLite::Statement& statement = handles_->prepared(query);
        const InUse in_use(statement);
        int index = 0;
        for (const Parameter& parameter : parameters) bind(statement, ++index, parameter);
        while (statement.executeStep()) row(Row(statement));
    } catch (const SQLite::Exception& error) {
        throw Trouble{fault_of(error, path_, handles_->system_error())};
    }
}

std::int64_t Connection::number(const char* query) {
    std::int64_t number = 0;
    one(query, {}, [&](const Row& row) { number = row.integer(0); });
    return number;
}

bool Connection::one(const char* query, Parameters parameters, const std::function<void(const Row&)>& row) {
    bool found = false;
    each(query, parameters, [&](const Row& each_row) {
        if (!found) row(each_row);
        found = true;
    });
    return found;
}

bool Connection::is_read_only() const {
    return sqlite3_db_readonly(handles_->database.getHandle(), "main") != 0;
}

bool Connection::is_in_transaction() const {
    return sqlite3_get_autocommit(handles_->database.getHandle()) == 0;
}

// VACUUM brings another file in beside this one, and copies rows: what is forbidden to everybody else.
void Connection::compact() {
    handles_->statements.clear();
    const struct Unwatched { // however it ends
        sqlite3* handle;
        explicit Unwatched(sqlite3* of) : handle(of) { sqlite3_set_authorizer(handle, nullptr, nullptr); }
        Unwatched(const Unwatched&) = delete;
        Unwatched& operator=(const Unwatched&) = delete;
        ~Unwatched() { sqlite3_set_authorizer(handle, allow, nullptr); }
    } unwatched(handles_->database.getHandle());
    try {
        handles_->database.exec("VACUUM");
    } catch (const SQLite::Exception& error) {
        throw Trouble{fault_of(error, path_, handles_->system_error())};
    }
}

Transaction::Transaction(Connection& connection, Kind kind) : connection_(connection) {
    connection_.run(kind == Kind::writing ? "BEGIN IMMEDIATE" : "BEGIN");
}

void Transaction::commit() {
    connection_.run("COMMIT");
    open_ = false;
}

Transaction::~Transaction() {
    if (!open_) return;
    try {
        connection_.run("ROLLBACK");
    } catch (const Trouble&) {
        // SQLite has rolled back by itself, as it does when the disk is full.
    } catch (const std::bad_alloc&) {
        // It is still open; who holds the connection sees it by is_in_transaction().
    }
}

} // namespace undersheet::book
