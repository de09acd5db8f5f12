#include "entry/json.h"

#include "base/text.h"

#include <algorithm>
#include <iterator>
#include <nlohmann/json.hpp>
#include <optional>

namespace undersheet::entry {
namespace {

constexpr JsonLimits kStrictLimits{.bytes = 64U << 10U, .depth = 8, .members = 256};
constexpr std::size_t kLongestKey = 32;
constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

Fault fault_at(int line, Code code, std::string detail, std::string clears = {}) {
    return {code, std::move(detail), "line " + std::to_string(line), std::move(clears)};
}

// --- reading: the library's parser calls a Builder, which keeps what is good and refuses the rest ---

// How far the parser has read. The line is that of the last character taken: behind a number the parser has
// already taken the newline that ends it.
struct Reached {
    int newlines = 0;
    bool just_after_newline = false;
    const char* line_begin = nullptr;
    const char* end = nullptr;
    void take(const char* at) {
        if (just_after_newline) line_begin = at;
        just_after_newline = *at == '\n';
        if (just_after_newline) ++newlines;
        end = at + (just_after_newline ? 0 : 1);
    }
    // What was taken of the last line.
    [[nodiscard]] std::string_view text() const {
        return {line_begin, static_cast<std::size_t>(end - line_begin)};
    }
    [[nodiscard]] int line() const { return newlines + (just_after_newline ? 0 : 1); }
};

// An input iterator over the text that counts lines as it goes; copies count into the same place.
class Counting {
public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    Counting(const char* at, Reached* reached) : at_(at), reached_(reached) {}
    const char& operator*() const { return *at_; }
    Counting& operator++() {
        reached_->take(at_++);
        return *this;
    }
    Counting operator++(int) {
        Counting before = *this;
        ++*this;
        return before;
    }
    friend bool operator==(const Counting& a, const Counting& b) { return a.at_ == b.at_; }

private:
    const char* at_;
    Reached* reached_;
};

// A list or object that is still open.
struct Open {
    bool is_list = false;
    int line = 0;
    List items = {};
    Map members = {};
    std::string key = {}; // the member whose value comes next
};

class Builder {
public:
    using number_integer_t = nlohmann::json::number_integer_t;
    using number_unsigned_t = nlohmann::json::number_unsigned_t;
    using number_float_t = nlohmann::json::number_float_t;
    using string_t = std::string;
    using binary_t = nlohmann::json::binary_t;

    Builder(const JsonLimits& limits, const Reached& reached) : limits_(limits), reached_(reached) {}

    // Called by the parser; false stops it.
    bool null() {
        return refuse(Code::json_malformed, "null stands for nothing here", "leave the member out");
    }
    bool boolean(bool yes) { return keep(Value(yes)); }
    bool number_integer(number_integer_t number) { return keep_number(std::to_string(number)); }
    bool number_unsigned(number_unsigned_t number) { return keep_number(std::to_string(number)); }
    bool number_float(number_float_t, const string_t& written);
    bool string(string_t& text);
    bool binary(binary_t&) { return refuse(Code::json_malformed, "bytes are no JSON"); }
    bool start_object(std::size_t) { return open(false); }
    bool start_array(std::size_t) { return open(true); }
    bool key(string_t& name);
    bool end_array() { return close(Value(std::move(open_.back().items))); }
    bool end_object();
    bool parse_error(std::size_t, const std::string& token, const nlohmann::json::exception& error);

    [[nodiscard]] Result<Value> finished() {
        if (fault_) return *fault_;
        return std::move(whole_);
    }

private:
    bool refuse(Code code, std::string detail, std::string clears = {}) {
        fault_ = fault_at(reached_.line(), code, std::move(detail), std::move(clears));
        return false;
    }
    bool open(bool is_list);
    bool close(Value value);
    bool keep(Value value);
    bool keep_number(const std::string& written);

    JsonLimits limits_;
    const Reached& reached_;
    std::vector<Open> open_ = {};
    Value whole_ = {};
    std::optional<Fault> fault_ = {};
};

bool Builder::number_float(number_float_t, const string_t& written) {
    if (written.find_first_of("eE") != std::string::npos) {
        return refuse(Code::number_malformed, "'" + written + "' is written with an exponent",
                      "write all its digits");
    }
    std::string plain = written; // the parser puts the locale's decimal point into what it passes on
    for (char& c : plain) {
        if (c != '-' && (c < '0' || c > '9')) c = '.';
    }
    return keep_number(plain);
}

bool Builder::string(string_t& text) {
    if (text.find('\0') != std::string::npos)
        return refuse(Code::json_malformed, "a text holds a zero character", "take it out");
    return keep(Value(std::move(text)));
}

bool Builder::key(string_t& name) {
    if (open_.back().members.size() >= limits_.members)
        return refuse(Code::json_too_large, "an object has too many members");
    open_.back().key = std::move(name);
    return true;
}

bool Builder::open(bool is_list) {
    if (open_.size() >= static_cast<std::size_t>(limits_.depth)) {
        return refuse(Code::json_too_large, "lists and objects stand more than " +
                                                std::to_string(limits_.depth) + " deep in each other");
    }
    open_.push_back({.is_list = is_list, .line = reached_.line()});
    return true;
}

bool Builder::end_object() {
    Map& members = open_.back().members;
    std::stable_sort(members.begin(), members.end(),
                     [](const Member& a, const Member& b) { return a.key < b.key; });
    const auto twice = std::adjacent_find(members.begin(), members.end(),
                                          [](const Member& a, const Member& b) { return a.key == b.key; });
    if (twice != members.end()) {
        fault_ = fault_at(std::next(twice)->value.line, Code::json_malformed,
                          "'" + twice->key + "' stands twice", "keep one of them");
        return false;
    }
    return close(Value::object(std::move(members)));
}

bool Builder::close(Value value) {
    value.line = open_.back().line;
    open_.pop_back();
    return keep(std::move(value));
}

bool Builder::keep(Value value) {
    if (value.line == 0) value.line = reached_.line();
    if (open_.empty()) {
        whole_ = std::move(value);
        return true;
    }
    Open& into = open_.back();
    if (!into.is_list) {
        into.members.push_back({std::move(into.key), std::move(value)});
        return true;
    }
    if (into.items.size() >= limits_.members) return refuse(Code::json_too_large, "a list is too long");
    into.items.push_back(std::move(value));
    return true;
}

bool Builder::keep_number(const std::string& written) {
    const auto number = Decimal::parse(written);
    if (!number) return refuse(number.fault().code, number.fault().detail, number.fault().clears);
    return keep(Value(*number));
}

// The end of what was read, for a message; not cut inside a character.
std::string tail(std::string_view text) {
    constexpr std::size_t kLongest = 24;
    std::string_view cut = text.size() > kLongest ? text.substr(text.size() - kLongest) : text;
    while (!cut.empty() && !is_utf8(cut)) cut.remove_prefix(1);
    return std::string(cut);
}

bool Builder::parse_error(std::size_t, const std::string& token, const nlohmann::json::exception& error) {
    constexpr int kNumberOutOfRange = 406;
    if (error.id == kNumberOutOfRange) {
        return refuse(Code::number_too_long, "'" + tail(token) + "' is too great a number");
    }
    if (std::string_view(error.what()).find("unexpected end of input") != std::string_view::npos) {
        return refuse(Code::json_malformed, "the JSON ends too early", "close what was opened");
    }
    return refuse(Code::json_malformed, "not JSON at the end of '" + tail(reached_.text()) + "'");
}

std::optional<Fault> unreadable(std::string_view text, const JsonLimits& limits) {
    if (text.size() > limits.bytes) {
        return Fault{Code::json_too_large, std::to_string(text.size()) + " bytes of JSON, at most " +
                                               std::to_string(limits.bytes) + " are read"};
    }
    if (text.starts_with(kByteOrderMark)) {
        return fault_at(1, Code::json_malformed, "the text begins with a byte order mark",
                        "save it as UTF-8 without one");
    }
    if (is_utf8(text)) return std::nullopt;
    std::size_t good = 0; // the first line that is no text, found line by line
    int line = 1;
    for (auto end = text.find('\n'); end != std::string_view::npos && is_utf8(text.substr(good, end - good));
         ++line) {
        good = end + 1;
        end = text.find('\n', good);
    }
    return fault_at(line, Code::text_not_utf8, "the bytes are not UTF-8 text", "save it as UTF-8");
}

// --- the strict form ---

bool is_strict_key(std::string_view key) {
    const auto follows = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_'; };
    return !key.empty() && key.size() <= kLongestKey && key[0] >= 'a' && key[0] <= 'z' &&
           std::all_of(key.begin(), key.end(), follows);
}

// The first key or text that the strict form does not allow.
std::optional<Fault> not_strict(const Value& value) {
    if (const std::string* text = value.text(); text != nullptr && has_control_characters(*text)) {
        return Fault{Code::json_malformed, "a text holds a control character"};
    }
    if (const List* items = value.list()) {
        for (const Value& item : *items) {
            if (auto fault = not_strict(item)) return fault;
        }
    }
    if (const Map* members = value.map()) {
        for (const Member& member : *members) {
            if (!is_strict_key(member.key))
                return Fault{Code::json_malformed, "'" + tail(member.key) + "' is no member name"};
            if (auto fault = not_strict(member.value)) return fault;
        }
    }
    return std::nullopt;
}

} // namespace

Result<Value> read_json(std::string_view text, const JsonLimits& limits) {
    if (auto fault = unreadable(text, limits)) return *fault;
    Reached reached{.line_begin = text.data(), .end = text.data()};
    Builder builder(limits, reached);
    nlohmann::json::sax_parse(Counting(text.data(), &reached), Counting(text.data() + text.size(), &reached),
                              &builder);
    return builder.finished();
}

Result<Value> read_strict(std::string_view bytes) {
    auto read = read_json(bytes, kStrictLimits);
    if (!read) return read;
    if (auto fault = not_strict(*read)) return *fault;
    const std::string again = write_strict(*read);
    if (again == bytes) return read;
    const auto differs =
        std::mismatch(again.begin(), again.end(), bytes.begin(), bytes.end()).first - again.begin();
    return Fault{Code::json_malformed,
                 "not in the strict written form from byte " + std::to_string(differs + 1) + " on"};
}

} // namespace undersheet::entry
