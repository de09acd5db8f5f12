#include "cli/show.h"
#include "cli/verb.h"

#include "base/text.h"

namespace undersheet::cli {
namespace {

constexpr std::size_t kTitleRoom = 28;
constexpr std::size_t kAmountRoom = 13;
constexpr std::size_t kPacksRoom = 22;
constexpr std::size_t kPriceRoom = 10;

std::string to_the_right(const std::string& text, std::size_t room) {
    const std::size_t length = character_count(text);
    return length < room ? std::string(room - length, ' ') + text : text;
}

// What, how much of it, as which packs, for how much; a remark goes under it.
void show_line(const desk::TakeOffLine& line, Screen& screen) {
    std::string text = "  " + padded(line.title, kTitleRoom) + " " +
                       to_the_right(line.amount_words, kAmountRoom) + "  " +
                       padded(line.packs_words, kPacksRoom);
    if (line.has_price) text += to_the_right(line.price_words, kPriceRoom);
    while (text.back() == ' ') text.pop_back();
    screen.line(text);
    if (!line.remark.empty()) screen.set_in("      ", line.remark, Ink::yellow);
}

void show_section(const desk::TakeOff& made, const std::string& section, const std::string& heading,
                  Screen& screen) {
    bool begun = false;
    for (const auto& line : made.lines) {
        if (line.section != section) continue;
        if (!begun) screen.line(heading, Ink::strong);
        begun = true;
        show_line(line, screen);
    }
}

std::string pieces_words(const std::vector<std::int64_t>& pieces_mm) {
    std::vector<std::string> words;
    for (const auto piece : pieces_mm) words.push_back(std::to_string(piece));
    return joined(words, " + ");
}

void show_trim(const desk::TrimLine& trim, Screen& screen) {
    screen.line("  " + trim.item + ", " + trim.joint + "s of " + std::to_string(trim.joint_mm) + " mm");
    for (const auto& run : trim.runs)
        screen.set_in("      ",
                      run.edge + " " + std::to_string(run.length_mm) + ": " + pieces_words(run.pieces_mm));
    for (const auto& bar : trim.bars)
        screen.set_in("      ", "out of " + std::to_string(bar.stock_mm) + ": " +
                                    pieces_words(bar.pieces_mm) +
                                    (bar.left_mm > 0 ? ", " + std::to_string(bar.left_mm) + " left" : ""));
}

void show_used(const desk::TakeOff& made, Screen& screen) {
    if (made.used.empty()) return;
    screen.line("Used so far, by the record", Ink::strong);
    for (const auto& line : made.used) {
        screen.line("  " + padded(line.title, kTitleRoom) + " " + to_the_right(line.used_words, kAmountRoom) +
                    "  planned " + line.planned_words + ", " + line.share_words);
        if (!line.remark.empty()) screen.set_in("      ", line.remark, Ink::yellow);
    }
}

void show_takeoff(const desk::TakeOff& made, Screen& screen) {
    job_heading(made.job, made.as_of, screen);
    for (const auto& remark : made.remarks) screen.set_in("Look: ", remark, Ink::yellow);
    show_section(made, "areas", "Areas", screen);
    show_section(made, "materials", "To order", screen);
    if (!made.trims.empty()) screen.line("To cut, in mm", Ink::strong);
    for (const auto& trim : made.trims) show_trim(trim, screen);
    show_section(made, "labour", "Work", screen);
    show_section(made, "price", "Price in " + made.currency, screen);
    show_used(made, screen);
    if (made.price_list.empty())
        screen.line("No price list: give --prices FILE for packs, cut lengths and money.");
    else
        screen.set_in("Prices: ", made.price_list, Ink::faint);
}

Result<desk::TakeOffBy> by(const Arguments& arguments) {
    desk::TakeOffBy by;
    by.line = arguments.one("--why");
    auto prices = prices_of(arguments);
    if (!prices) return prices.fault();
    by.prices = *std::move(prices);
    return by;
}

int run_takeoff(const Arguments& arguments, Screen& screen) {
    if (arguments.has("--example-prices")) {
        screen.bytes(desk::example_prices());
        return 0;
    }
    const auto asked_by = by(arguments);
    if (!asked_by) return screen.refuse(asked_by.fault());
    if (arguments.has("--why")) {
        return answer(
            arguments, screen,
            [&](desk::Desk& desk) { return desk.why_take_off(asked(arguments), *asked_by); },
            [&](const desk::Why& why) { show_why(why, screen); });
    }
    return answer(
        arguments, screen, [&](desk::Desk& desk) { return desk.take_off(asked(arguments), *asked_by); },
        [&](const desk::TakeOff& made) { show_takeoff(made, screen); });
}

} // namespace

std::vector<Verb> takeoff_verbs() {
    return {{"takeoff",
             "what to order, what to cut, how long it takes, and the price",
             "undersheet takeoff --prices our_prices.json",
             {},
             reading({{"--example-prices", "", "write a price list to copy; its prices are invented"},
                      {"--prices", "FILE", "the firm's price list; else amounts only", false, Sort::file},
                      {"--why", "LINE", "how one line was worked out: deck_adhesive, pins, vat"}}),
             run_takeoff}};
}

} // namespace undersheet::cli
