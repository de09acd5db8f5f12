#include "paper/recall.h"

#include "base/text.h"
#include "desk/desk.h"
#include "desk/language.h"
#include "desk/own.h"
#include "desk/supplements.h"
#include "job/queries.h"
#include "paper/papers.h"
#include <algorithm>

namespace undersheet::desk {
namespace {

Result<std::optional<entry::Date>> day_of(const std::string& typed, const char* option) {
    if (typed.empty()) return std::optional<entry::Date>();
    auto read = entry::parse_date(typed);
    if (read) return std::optional(*read);
    Fault fault = read.fault();
    fault.where = option;
    return fault;
}

// A product of the catalogue, or the sheet itself.
Done check_product(const std::string& product) {
    if (product.empty() || product == "sheet") return {};
    std::vector<std::string> words{"sheet"};
    for (const auto& word : own_catalogue().find("tin")->field("product")->choices) words.push_back(word);
    if (std::find(words.begin(), words.end(), product) != words.end()) return {};
    return Fault{Code::argument_wrong, "'" + product + "' is no product", "--product",
                 "there are " + joined(words, ", ")};
}

Result<job::BatchWanted> wanted_of(const RecallBy& by) {
    if (trimmed(by.batch).empty())
        return Fault{Code::argument_wrong, "say which batch", "BATCH", "as the notice prints it"};
    if (auto product = check_product(by.product); !product) return product.fault();
    auto from = day_of(by.from, "--from");
    if (!from) return from.fault();
    auto to = day_of(by.to, "--to");
    if (!to) return to.fault();
    if (*from && *to && **to < **from)
        return Fault{Code::argument_wrong, "the first day comes after the last", "--from", "turn them round"};
    return job::BatchWanted{by.batch, by.product, *from, *to};
}

// As it stands with all its later visits.
Result<Case> whole_job(Session& session, const std::string& ref, const std::string& when) {
    auto on = take_up(session, {.job = ref, .when = when, .supplement = "0"});
    if (!on || on->job.supplements.empty()) return on;
    const std::string last = on->job.supplements.back().name;
    if (auto chosen = choose_supplement(*on, last); !chosen) return chosen.fault();
    return on;
}

} // namespace

Result<std::string> Desk::recall(const Asked& asked, const RecallBy& by, std::string_view format) {
    auto wanted = wanted_of(by);
    if (!wanted) return wanted.fault();
    auto when = time_of(*session_, asked.when);
    if (!when) return when.fault();
    auto book = session_->reader();
    if (!book) return book.fault();
    auto office = (*book)->entries((*book)->office());
    if (!office) return office.fault();
    const auto words = words_for(by.language, job::firm_said(*office, *when, "language"));
    if (!words) return words.fault();
    auto jobs = (*book)->jobs();
    if (!jobs) return jobs.fault();
    std::vector<Case> cases;
    cases.reserve(jobs->size()); // what was found points into them
    std::vector<job::BatchesOn> found;
    for (const auto& line : *jobs) {
        auto on = whole_job(*session_, line.job, asked.when);
        if (!on) return on.fault();
        cases.push_back(std::move(*on));
        found.push_back(job::batches_on(cases.back().job, *wanted));
    }
    job::rule_out(found, *wanted);
    paper::RecallAsked recall{*wanted, by.notice, {}};
    for (std::size_t i = 0; i < found.size(); ++i)
        recall.roofs.push_back({&cases[i].job, std::move(found[i])});
    return paper::write_as(format, **words, [&](const paper::Words& in) -> Result<paper::Document> {
        const paper::Setting setting = {in, own_method(), own_catalogue(),
                                        {}, {},           "undersheet " + std::string(program_version()),
                                        {}, nullptr};
        return paper::recall(recall, setting, *when);
    });
}

} // namespace undersheet::desk
