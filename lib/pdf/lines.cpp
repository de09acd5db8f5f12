#include "pdf/lines.h"

#include "base/text.h"

#include <algorithm>

namespace undersheet::pdf {
namespace {

constexpr double kWidthDust_pt = 0.001; // what a sum of many widths may be off by

bool look_alike(const Run& a, const Run& b) {
    return a.face == b.face && a.grey == b.grey && a.is_struck == b.is_struck;
}

Run like(const Run& run, std::string_view text) {
    return {std::string(text), run.face, run.grey, run.is_struck};
}

void append(Line& line, const Run& run, double width_pt) {
    if (!line.runs.empty() && look_alike(line.runs.back(), run))
        line.runs.back().text += run.text;
    else
        line.runs.push_back(run);
    line.width_pt += width_pt;
}

class Breaker {
public:
    Breaker(double size_pt, double width_pt) : size_pt_(size_pt), width_pt_(width_pt) {}

    void take(const Run& run) {
        for (std::string_view rest = run.text; !rest.empty();) {
            const Character c = take_character(rest);
            const Run one = like(run, c.bytes);
            if (c.code == '\n') {
                end_word();
                end_line();
            } else if (c.code == ' ') {
                end_word();
                blank_ = one;
            } else {
                append(word_, one, width(one));
            }
        }
    }
    std::vector<Line> lines() && {
        end_word();
        if (!line_.runs.empty()) end_line();
        return std::move(lines_);
    }

private:
    [[nodiscard]] double width(const Run& run) const { return font(run.face).width_pt(run.text, size_pt_); }

    void end_line() {
        lines_.push_back(std::move(line_));
        line_ = {};
        blank_ = {};
    }

    void end_word() {
        if (word_.runs.empty()) return;
        const double blank_pt = blank_.text.empty() || line_.runs.empty() ? 0 : width(blank_);
        if (!line_.runs.empty() && line_.width_pt + blank_pt + word_.width_pt > width_pt_ + kWidthDust_pt)
            end_line();
        else if (blank_pt > 0)
            append(line_, blank_, blank_pt);
        blank_ = {};
        for (const Run& run : word_.runs) add_letters(run);
        word_ = {};
    }

    // Letter by letter, so that a word longer than a line goes on in the next.
    void add_letters(const Run& run) {
        for (std::string_view rest = run.text; !rest.empty();) {
            const Run letter = like(run, take_character(rest).bytes);
            const double wide_pt = width(letter);
            if (!line_.runs.empty() && line_.width_pt + wide_pt > width_pt_ + kWidthDust_pt) end_line();
            append(line_, letter, wide_pt);
        }
    }

    double size_pt_, width_pt_;
    std::vector<Line> lines_;
    Line line_, word_;
    Run blank_;
};

} // namespace

std::vector<Line> broken(const std::vector<Run>& runs, double size_pt, double width_pt) {
    Breaker breaker(size_pt, width_pt);
    for (const Run& run : runs) breaker.take(run);
    return std::move(breaker).lines();
}

Widths widths_of(const std::vector<Run>& runs, double size_pt) {
    constexpr double kEndless_pt = 1e9;
    Widths widths;
    for (const Line& line : broken(runs, size_pt, kEndless_pt)) {
        widths.whole_pt = std::max(widths.whole_pt, line.width_pt);
        double word_pt = 0;
        for (const Run& run : line.runs)
            for (std::string_view rest = run.text; !rest.empty();) {
                const Character c = take_character(rest);
                word_pt = c.code == ' ' ? 0 : word_pt + font(run.face).width_pt(c.bytes, size_pt);
                widths.word_pt = std::max(widths.word_pt, word_pt);
            }
    }
    return widths;
}

} // namespace undersheet::pdf
