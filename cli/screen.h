// Where answers and messages go: results to stdout, messages to stderr, 80 columns, colour only on a terminal.
//
// Promises: colour is never the only sign of anything; NO_COLOR and TERM=dumb switch it off. Lines are broken between
//   words; a word longer than the line stands alone. Control characters in what people typed do not reach a terminal.
#pragma once

#include "base/fault.h"

#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

namespace undersheet::cli {

constexpr std::size_t kColumns = 80;

enum class Ink { plain, strong, faint, red, yellow, green };

class Screen {
public:
    Screen(std::ostream& results, std::ostream& messages, bool coloured);

    void line(std::string_view text = {}, Ink ink = Ink::plain);                      // as it is
    void set_in(std::string_view first, std::string_view text, Ink ink = Ink::plain); // wrapped under `first`
    void bytes(std::string_view text);    // untouched, for JSON and papers
    void message(std::string_view text);  // one line on stderr
    int refuse(const Fault& fault);       // says why, gives the exit code
    [[nodiscard]] bool is_broken() const; // nobody reads the results any more

private:
    std::ostream& results_;
    std::ostream& messages_;
    bool coloured_;
};

// 0 done, 1 the answer is no, 2 the command was wrong, 3 the book could not be read or written.
[[nodiscard]] int exit_code(Code code);

[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, std::size_t width);
[[nodiscard]] std::string padded(std::string_view text,
                                 std::size_t width); // to that many characters, never cut

} // namespace undersheet::cli
