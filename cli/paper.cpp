#include "cli/show.h"
#include "cli/verb.h"

namespace undersheet::cli {
namespace {

int run_paper(const Arguments& arguments, Screen& screen) {
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const std::string path = arguments.one("-o");
    const auto prices = prices_of(arguments);
    if (!prices) return screen.refuse(prices.fault());
    const auto made = desk->paper(asked(arguments), arguments.one("KIND"), paper_format(path), *prices,
                                  arguments.one("--language"));
    if (!made) return screen.refuse(made.fault());
    if (const auto written = write_file(path, made->bytes); !written) return screen.refuse(written.fault());
    if (path != "-") screen.line(job_words(made->job) + ": " + made->name + " written to " + path);
    return 0;
}

} // namespace

std::vector<Verb> paper_verbs() {
    return {{"paper",
             "writes a paper",
             "undersheet paper completion -o completion.html",
             {{"KIND", "inspection, stages, punch, completion, care, office, order, offer or look",
               Count::one, Sort::paper}},
             {{"-o", "FILE", "where to; .html, .pdf, .txt, .json, .csv or .ics; - is the screen", true,
               Sort::file},
              book_option(),
              {"--prices", "FILE", "the firm's price list; order and offer need it", false, Sort::file},
              {"--language", "TAG", "what it is written in: en or de; else the firm's, else English"},
              {"--job", "REF", "the job; else the one last worked on"},
              {"--supplement", "N", "which visit, for look; else the one that is open, or the last"},
              {"--when", "TIME", "as it stood then, with offset; else now"}},
             run_paper}};
}

} // namespace undersheet::cli
