#include "cli/help.h"
#include "cli/pin.h"
#include "cli/show.h"
#include "cli/verb.h"

#include "base/text.h"

#include <algorithm>
#include <set>

namespace undersheet::cli {
namespace {

// One line may be held by several things, and is still one line to put right.
std::size_t lines_in(const std::vector<desk::BadLine>& bad) {
    std::set<std::size_t> numbers;
    for (const auto& one : bad) numbers.insert(one.line);
    return numbers.size();
}

std::string put_right_words(std::size_t lines) {
    return lines == 1 ? "that line and feed the whole file again"
                      : "those " + std::to_string(lines) + " lines and feed all of them again";
}

int show_many(const Result<desk::KeptMany>& kept, const Arguments& arguments, Screen& screen) {
    if (!kept) return screen.refuse(kept.fault());
    if (arguments.has("--json")) screen.bytes(desk::json_of(*kept));
    int code = 0;
    for (const auto& bad : kept->bad) {
        screen.message("line " + std::to_string(bad.line) + ": " + one_line(bad.fault));
        code = std::max(code, exit_code(bad.fault.code));
    }
    if (!kept->bad.empty()) {
        screen.message(kept->job.ref + ": nothing was kept; put right " +
                       put_right_words(lines_in(kept->bad)));
        return code;
    }
    if (arguments.has("--json")) return 0;
    screen.line(kept->job.ref + ": " + std::to_string(kept->kept) +
                (kept->kept == 1 ? " entry kept" : " entries kept"));
    for (const auto& odd : kept->asked) screen.set_in("  asked: ", odd, Ink::yellow);
    if (!kept->bond_now.empty()) screen.set_in("  ", kept->bond_now, Ink::strong);
    return 0;
}

int run_lines(const Arguments& arguments, Screen& screen) {
    if (arguments.has("KIND")) {
        return screen.refuse({Code::argument_wrong,
                              "--from brings its own kinds",
                              {},
                              "leave '" + arguments.one("KIND") + "' out"});
    }
    const auto lines = read_file(arguments.one("--from"), "file of entries");
    if (!lines) return screen.refuse(lines.fault());
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    return show_many(
        with_pin(arguments, [&](const desk::Asked& by) { return desk->record_lines(by, *lines); }), arguments,
        screen);
}

int run_record(const Arguments& arguments, Screen& screen) {
    if (arguments.has("--from")) return run_lines(arguments, screen);
    if (!arguments.has("KIND")) {
        return screen.refuse(
            {Code::argument_wrong, "record needs a kind", {}, "for example: undersheet record air air_c=13"});
    }
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const desk::Record record = {arguments.one("KIND"), arguments.one("--at"), arguments.one("--part"),
                                 arguments.all("FIELD=VALUE")};
    return show_kept(desk->record(asked(arguments), record), arguments, screen);
}

} // namespace

std::vector<Verb> record_verbs() {
    return {
        {"record",
         "records one thing you saw, measured or did",
         "undersheet record air air_c=13 rh_pct=66 surface_c=14 wind_ms=6mph gust_ms=10mph --by IP",
         {{"KIND", "what sort of thing: air, moisture, board, chase … (undersheet kinds)", Count::maybe,
           Sort::kind},
          {"FIELD=VALUE", "its fields; another unit of the same sort may be typed, like wind_ms=6mph",
           Count::any, Sort::field}},
         signing({{"--at", "PLACE", "where: A, AB, AB+1.20, 2.10,0.80, B2, B2|B3"},
                  {"--part", "PART", "the part it belongs to: band/AB", false, Sort::part},
                  {"--from", "FILE", "JSON Lines instead, all or nothing; - is stdin", false, Sort::file}}),
         run_record,
         "The fields of a kind: undersheet kinds air. A line for --from: {\"kind\": \"moisture\", \"place\": "
         "\"0.3,0.3\", "
         "\"by\": \"IP\", \"when\": \"2026-06-11T08:35:00+01:00\", \"data\": {\"reading_pct\": 12.1, "
         "\"board_c\": 15.5, "
         "\"setting\": \"2\"}}"}};
}

} // namespace undersheet::cli
