// What is done with bytes that anybody may have written: one function for each reader of the library.
//
// Promises: a target returns for any bytes whatever. Refusing them is fine; accepting them and then not keeping the
//   promise of the reader's header throws BrokenPromise. libFuzzer (libfuzzer/main.cpp) saves such an input, and the replay
//   of the saved ones (replay_test.cpp) fails on it in every build.
// A new target: its function here, a file NAME_target.cpp, a row in targets.cpp, a name in CMakeLists.txt and a folder in
//   corpus/.
#pragma once

#include "base/result.h"

#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace undersheet::fuzz {

struct BrokenPromise : std::logic_error {
    using std::logic_error::logic_error;
};

inline void promise(bool kept, const std::string& what) {
    if (!kept) throw BrokenPromise(what);
}

// What was refused must say so in one line of text; this is what a person reads.
void promise_readable(const Fault& fault);

void read_strict_form(std::string_view bytes);
void read_any_json(std::string_view bytes);
void read_an_entry(std::string_view bytes);
void read_a_catalogue(std::string_view bytes);
void read_a_method(std::string_view bytes);
void read_an_edited_method(std::string_view bytes);
void read_prices(std::string_view bytes);
void read_lines(std::string_view bytes);
void read_a_forecast(std::string_view bytes);
void read_a_place(std::string_view bytes);
void read_a_time(std::string_view bytes);
void read_a_decimal(std::string_view bytes);
void reckon_anything(std::string_view bytes);
void fold_anything(std::string_view bytes);
void take_a_file(std::string_view bytes);
void read_a_picture(std::string_view bytes);
void read_damaged_pages(std::string_view bytes);

struct Target {
    std::string name; // of its folder in corpus, and of its program: fuzz_NAME
    void (*run)(std::string_view bytes);
};
[[nodiscard]] const std::vector<Target>& targets();

} // namespace undersheet::fuzz
