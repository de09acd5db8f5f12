#include "paper/papers.h"
#include "base/text.h"
#include "desk/desk.h"
#include "desk/prices.h"
#include "desk/session.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

// How often this paper was given out; the one given at the hand-over is the first.
std::string issue_of(const job::Job& job, std::string_view paper) {
    const auto given = std::count_if(job.issued.begin(), job.issued.end(), [&](const entry::Entry* entry) {
        return entry->data.text_of("paper") == paper;
    });
    if (given > 0) return std::to_string(given);
    return job.handed_over == nullptr ? "" : "1";
}

// A picture that cannot be read leaves its caption; the paper is still written.
paper::PictureSource pictures_of(book::Book& book) {
    return [&book](std::string_view sha256) -> std::string {
        const auto hash = entry::parse_hash(sha256);
        if (!hash) return "";
        auto bytes = book.photo(*hash);
        return bytes ? *bytes : std::string();
    };
}

} // namespace

std::vector<std::string> paper_names() { return paper::paper_names(); }

Result<PaperMade> Desk::paper(const Asked& asked, std::string_view paper, std::string_view format,
                              std::string_view prices_text, std::string_view language) {
    const auto words = paper::Words::of(language);
    if (!words) return words.fault();
    const auto prices = given_prices(prices_text);
    if (!prices) return prices.fault();
    auto on = take_up(*session_, asked);
    if (!on) return on.fault();
    auto book = session_->reader();
    if (!book) return book.fault();
    const paper::Setting setting = {**words,
                                    *on->method,
                                    *on->kinds,
                                    {},
                                    issue_of(on->job, paper),
                                    "undersheet " + std::string(program_version()),
                                    pictures_of(**book),
                                    *prices ? &**prices : nullptr};
    auto bytes = paper::write_paper(paper, format, on->job, on->judged(), setting);
    if (!bytes) return bytes.fault();
    return PaperMade{on->name(), std::string(paper), std::move(*bytes)};
}

} // namespace undersheet::desk
