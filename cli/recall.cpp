#include "cli/show.h"
#include "cli/verb.h"

namespace undersheet::cli {
namespace {

std::string format_of(const Arguments& arguments) {
    if (arguments.has("--json")) return "json";
    return arguments.has("-o") ? paper_format(arguments.one("-o")) : "txt";
}

int run_recall(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const desk::RecallBy by = {arguments.one("BATCH"),    arguments.one("--product"),
                               arguments.one("--notice"), arguments.one("--from"),
                               arguments.one("--to"),     arguments.one("--language")};
    const auto made = desk->recall(asked(arguments), by, format_of(arguments));
    if (!made) return screen.refuse(made.fault());
    const std::string path = arguments.has("-o") ? arguments.one("-o") : "-";
    if (const auto written = write_file(path, *made); !written) return screen.refuse(written.fault());
    if (path != "-") screen.line("recall of batch " + by.batch + " written to " + path);
    return 0;
}

} // namespace

std::vector<Verb> recall_verbs() {
    return {
        {"recall",
         "which roofs hold a batch for certain, and which cannot be ruled out",
         "undersheet recall DA-77 --product deck_adhesive --from 2026-05-01 --notice \"letter 12\" -o "
         "recall.pdf",
         {{"BATCH", "as the notice prints it; capitals, blanks and hyphens do not matter"}},
         {{"--product", "WORD", "what it is: deck_adhesive, primer, sheet; else anything"},
          {"--from", "DAY", "the first day on which it may have been used; else ever"},
          {"--to", "DAY", "the last day"},
          {"--language", "TAG", "what it is written in: en or de; else the firm's, else English"},
          {"--notice", "TEXT", "whose notice, which number"},
          {"-o", "FILE", "where to; .html, .pdf, .txt, .json or .csv; else the screen", false, Sort::file},
          book_option(),
          {"--when", "TIME", "as it stood then, with offset; else now"},
          {"--json", "", "write JSON for scripts"}},
         run_recall}};
}

} // namespace undersheet::cli
