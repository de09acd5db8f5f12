// A file of ours, changed by somebody who is not us.
#pragma once

#include <catch2/catch.hpp>
#include <sqlite3.h>

#include <string>

namespace undersheet {

// As somebody with a database tool would.
inline void tamper(const std::string& path, const std::string& sql) {
    sqlite3* handle = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &handle) == SQLITE_OK);
    char* error = nullptr;
    const int code = sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, &error);
    INFO(sql << ": " << (error == nullptr ? "" : error));
    sqlite3_free(error);
    REQUIRE(sqlite3_close(handle) == SQLITE_OK);
    REQUIRE(code == SQLITE_OK);
}

} // namespace undersheet
