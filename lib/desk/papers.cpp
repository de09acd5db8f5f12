#include "paper/papers.h"
#include "base/text.h"
#include "desk/desk.h"
#include "desk/language.h"
#include "desk/prices.h"
#include "desk/supplements.h"
#include "job/queries.h"
#include "paper/photographs.h"
#include "picture/camera.h"
#include "picture/smaller.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

// The papers of the first record never change with what came later; one is about a later visit.
constexpr std::string_view kOfVisit = "look";

// How often this paper was given out; the one given at the hand-over is the first.
std::string issue_of(const job::Job& job, std::string_view paper) {
    if (paper == kOfVisit) return "";
    const auto given = std::count_if(job.issued.begin(), job.issued.end(), [&](const entry::Entry* entry) {
        return entry->data.text_of("paper") == paper;
    });
    if (given > 0) return std::to_string(given);
    return job.handed_over == nullptr ? "" : "1";
}

constexpr std::string_view kWithOriginals = "office"; // the firm's own file

// A picture that cannot be read leaves its caption; the paper is still written.
paper::PictureSource pictures_of(book::Book& book, std::string_view paper) {
    return [&book, is_ours = paper == kWithOriginals](std::string_view sha256) -> std::string {
        const auto hash = entry::parse_hash(sha256);
        if (!hash) return "";
        auto bytes = book.photo(*hash);
        if (!bytes) return "";
        return is_ours ? *bytes : picture::smaller(picture::for_others(*bytes), paper::kPhotograph_px);
    };
}

Asked seen_by(Asked asked, std::string_view paper) {
    if (paper != kOfVisit) asked.supplement = "0";
    return asked;
}

// Where none is named and none is open, the last one is meant.
Done last_visit(Case& on, const Asked& asked, std::string_view paper) {
    const bool is_chosen = on.job.supplement() != nullptr || on.job.supplements.empty();
    if (paper != kOfVisit || is_chosen || !asked.supplement.empty()) return {};
    return choose_supplement(on, on.job.supplements.back().name);
}

} // namespace

std::vector<std::string> paper_names() { return paper::paper_names(); }

Result<PaperMade> Desk::paper(const Asked& asked, std::string_view paper, std::string_view format,
                              std::string_view prices_text, std::string_view language) {
    const auto prices = given_prices(prices_text);
    if (!prices) return prices.fault();
    auto on = take_up(*session_, seen_by(asked, paper));
    if (!on) return on.fault();
    if (auto chosen = last_visit(*on, asked, paper); !chosen) return chosen.fault();
    const auto words = words_for(language, job::firm_said(on->job, "language"));
    if (!words) return words.fault();
    auto book = session_->reader();
    if (!book) return book.fault();
    const paper::Setting setting = {**words,
                                    *on->method,
                                    *on->kinds,
                                    {},
                                    issue_of(on->job, paper),
                                    "undersheet " + std::string(program_version()),
                                    pictures_of(**book, paper),
                                    *prices ? &**prices : nullptr};
    auto bytes = paper::write_paper(paper, format, on->job, on->judged(), setting);
    if (!bytes) return bytes.fault();
    return PaperMade{on->name(), std::string(paper), std::move(*bytes)};
}

} // namespace undersheet::desk
