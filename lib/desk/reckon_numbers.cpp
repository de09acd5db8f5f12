#include "desk/reckon_numbers.h"

#include "desk/plain_number.h"

#include <algorithm>
#include <vector>

namespace undersheet::desk {
namespace {

bool is_of_word(char c) {
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '+' ||
           c == '-' || c == '.' || c == '_';
}

// A list or object that is still open, and where in it the text stands.
struct Open {
    bool is_list = false;
    std::size_t index = 0;
    bool awaits_key = false;
    std::string key = {};
};

class Walk {
public:
    explicit Walk(std::string_view text) : text_(text) {}

    Result<std::string> finished() {
        while (at_ < text_.size()) {
            if (text_[at_] == '"') {
                take_string();
            } else if (is_of_word(text_[at_])) {
                if (auto done = take_word(); !done) return done.fault();
            } else {
                take_mark();
            }
        }
        return std::move(out_);
    }

private:
    void copy_to(std::size_t end) {
        out_ += text_.substr(at_, end - at_);
        at_ = std::min(end, text_.size());
    }
    void take_string();
    void take_mark();
    Done take_word();
    [[nodiscard]] std::string path() const;

    std::string_view text_;
    std::size_t at_ = 0;
    std::string out_;
    std::vector<Open> open_;
};

void Walk::take_string() {
    std::size_t end = at_ + 1;
    while (end < text_.size() && text_[end] != '"') end += text_[end] == '\\' ? 2 : 1;
    if (!open_.empty() && open_.back().awaits_key) {
        open_.back().key = text_.substr(at_ + 1, end - at_ - 1);
        open_.back().awaits_key = false;
    }
    copy_to(end + 1);
}

// A bracket, a comma, or what stands between.
void Walk::take_mark() {
    const char c = text_[at_];
    if (c == '{' || c == '[') open_.push_back({.is_list = c == '[', .awaits_key = c == '{'});
    if ((c == '}' || c == ']') && !open_.empty()) open_.pop_back();
    if (c == ',' && !open_.empty()) {
        ++open_.back().index;
        open_.back().awaits_key = !open_.back().is_list;
    }
    copy_to(at_ + 1);
}

Done Walk::take_word() {
    std::size_t end = at_;
    while (end < text_.size() && is_of_word(text_[end])) ++end;
    const auto word = text_.substr(at_, end - at_);
    if (word == "true" || word == "false") {
        copy_to(end);
        return {};
    }
    if (word == "null")
        return Fault{Code::json_malformed, "null stands for nothing here", path(), "leave the member out"};
    auto plain = plain_number(word);
    if (!plain) return Fault{plain.fault().code, plain.fault().detail, path(), plain.fault().clears};
    out_ += *plain;
    at_ = end;
    return {};
}

std::string Walk::path() const {
    std::string path;
    for (const Open& open : open_) {
        if (open.is_list) {
            path += "[" + std::to_string(open.index) + "]";
        } else {
            path += (path.empty() ? "" : ".") + open.key;
        }
    }
    return path;
}

} // namespace

Result<std::string> with_plain_numbers(std::string_view json) { return Walk(json).finished(); }

} // namespace undersheet::desk
