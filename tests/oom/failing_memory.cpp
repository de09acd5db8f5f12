#include "tests/oom/failing_memory.h"

#include <cstdlib>
#include <filesystem>
#include <new>
#include <sqlite3.h>
#include <stdexcept>

namespace {

using undersheet::oom::Plan;
using undersheet::oom::Whose;

Plan plan;
bool is_counting = false;
std::int64_t asked = 0;

bool is_refused(Whose whose) {
    if (!is_counting || whose != plan.whose) return false;
    ++asked;
    return plan.for_good ? plan.at > 0 && asked >= plan.at : asked == plan.at;
}

sqlite3_mem_methods real;

void* sqlite_gets(int bytes) { return is_refused(Whose::sqlite) ? nullptr : real.xMalloc(bytes); }
void* sqlite_changes(void* old, int bytes) {
    return is_refused(Whose::sqlite) ? nullptr : real.xRealloc(old, bytes);
}

} // namespace

// Every form is ours: a sanitizer brings those that are missing, and memory of the one is then given back to the other.
void* operator new(std::size_t bytes, const std::nothrow_t&) noexcept {
    return is_refused(Whose::ours) ? nullptr : std::malloc(bytes == 0 ? 1 : bytes);
}
void* operator new(std::size_t bytes) {
    if (void* got = operator new(bytes, std::nothrow)) return got;
    throw std::bad_alloc();
}
void* operator new[](std::size_t bytes) { return operator new(bytes); }
void* operator new[](std::size_t bytes, const std::nothrow_t& quiet) noexcept {
    return operator new(bytes, quiet);
}
void operator delete(void* got) noexcept { std::free(got); }
void operator delete(void* got, std::size_t) noexcept { std::free(got); }
void operator delete[](void* got) noexcept { std::free(got); }
void operator delete[](void* got, std::size_t) noexcept { std::free(got); }

namespace undersheet::oom {

// Without lookaside every small request comes here as well. Books are made in a folder in memory where there is one: the
// disk is not what is tried here.
void set_up() {
    if (std::filesystem::is_directory("/dev/shm")) ::setenv("TMPDIR", "/dev/shm", 0);
    static const bool done = [] {
        sqlite3_shutdown();
        if (sqlite3_config(SQLITE_CONFIG_GETMALLOC, &real) != SQLITE_OK) return false;
        static sqlite3_mem_methods ours;
        ours = real;
        ours.xMalloc = sqlite_gets;
        ours.xRealloc = sqlite_changes;
        return sqlite3_config(SQLITE_CONFIG_MALLOC, &ours) == SQLITE_OK &&
               sqlite3_config(SQLITE_CONFIG_LOOKASIDE, 0, 0) == SQLITE_OK;
    }();
    if (!done) throw std::logic_error("SQLite does not take other memory");
}

void begin(const Plan& wanted) {
    plan = wanted;
    asked = 0;
    is_counting = true;
}

std::int64_t end() {
    is_counting = false;
    return asked;
}

} // namespace undersheet::oom
