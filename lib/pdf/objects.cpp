#include "pdf/objects.h"

#include "base/decimal.h"
#include "base/text.h"
#include "pdf/deflate.h"

namespace undersheet::pdf {

int Objects::reserve() {
    bodies_.emplace_back();
    return static_cast<int>(bodies_.size());
}

void Objects::write(int number, std::string body) {
    bodies_[static_cast<std::size_t>(number - 1)] = std::move(body);
}

int Objects::add(std::string body) {
    const int number = reserve();
    write(number, std::move(body));
    return number;
}

int Objects::add_stream(const std::string& entries, std::string_view bytes) {
    std::string body = "<<" + entries + "/Length " + std::to_string(bytes.size()) + ">>\nstream\n";
    body.append(bytes).append("\nendstream");
    return add(std::move(body));
}

int Objects::add_deflated(const std::string& entries, std::string_view bytes) {
    return add_stream(entries + "/Filter/FlateDecode", deflated(bytes));
}

std::string Objects::file(int catalogue, int information) const {
    // Four bytes past ASCII in a comment tell whoever carries the file that it is not text.
    std::string out = "%PDF-1.4\n%\xE2\xE3\xCF\xD3\n";
    std::string places = "0000000000 65535 f \n";
    for (std::size_t i = 0; i < bodies_.size(); ++i) {
        const std::string digits = std::to_string(out.size());
        places += std::string(digits.size() < 10 ? 10 - digits.size() : 0, '0') + digits + " 00000 n \n";
        out += std::to_string(i + 1) + " 0 obj\n" + bodies_[i] + "\nendobj\n";
    }
    const std::string begins = std::to_string(out.size()), size = std::to_string(bodies_.size() + 1);
    out += "xref\n0 " + size + "\n" + places;
    out += "trailer\n<</Size " + size + "/Root " + named(catalogue) + "/Info " + named(information);
    return out + ">>\nstartxref\n" + begins + "\n%%EOF\n";
}

std::string named(int number) { return std::to_string(number) + " 0 R"; }

std::string number_text(double value) { return shortest(value, 2); }

std::string hex4(unsigned value) {
    constexpr std::string_view kDigits = "0123456789ABCDEF";
    std::string out;
    for (unsigned shift = 16; shift > 0; shift -= 4) out += kDigits[(value >> (shift - 4)) & 15U];
    return out;
}

std::string text_string(std::string_view utf8) {
    std::string out = "<FEFF";
    while (!utf8.empty()) {
        const auto code = static_cast<unsigned>(take_character(utf8).code);
        if (code < 0x10000)
            out += hex4(code);
        else // UTF-16 has two halves for these
            out += hex4(0xD800 + ((code - 0x10000) >> 10U)) + hex4(0xDC00 + ((code - 0x10000) & 0x3FFU));
    }
    return out + ">";
}

} // namespace undersheet::pdf
