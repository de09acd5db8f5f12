// The numbered objects of a PDF file, and the file put together from them (ISO 32000-1, 7.3 and 7.5).
//
// Promises: objects may name one another before they are written; the same calls give the same bytes.
// Threads: one writer.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace undersheet::pdf {

class Objects {
public:
    [[nodiscard]] int reserve(); // a number to be written later
    void write(int number, std::string body);
    int add(std::string body);
    // A stream with these entries besides its length; add_deflated() makes it small first.
    int add_stream(const std::string& entries, std::string_view bytes);
    int add_deflated(const std::string& entries, std::string_view bytes);

    [[nodiscard]] std::string file(int catalogue, int information) const;

private:
    std::vector<std::string> bodies_; // number 1 is the first
};

[[nodiscard]] std::string named(int number);                  // "7 0 R"
[[nodiscard]] std::string number_text(double value);          // "12.5", never with an exponent
[[nodiscard]] std::string text_string(std::string_view utf8); // "<FEFF...>", any character
[[nodiscard]] std::string hex4(unsigned value);               // "00E9"

} // namespace undersheet::pdf
