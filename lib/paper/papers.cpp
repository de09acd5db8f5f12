#include "paper/papers.h"

#include "base/text.h"
#include "paper/care.h"
#include "paper/completion.h"
#include "paper/csv.h"
#include "paper/html.h"
#include "paper/inspection.h"
#include "paper/json.h"
#include "paper/look.h"
#include "paper/offer.h"
#include "paper/office.h"
#include "paper/order.h"
#ifdef UNDERSHEET_PDF
#include "paper/pdf.h"
#endif
#include "paper/punch.h"
#include "paper/reminders.h"
#include "paper/stages.h"
#include "paper/text.h"

namespace undersheet::paper {

namespace {

struct Paper {
    const char* name;
    Result<Document> (*make)(const job::Job&, const job::Judgement&, const Setting&);
};

// Most papers can always be made.
template <Document (*make)(const job::Job&, const job::Judgement&, const Setting&)>
Result<Document> always(const job::Job& job, const job::Judgement& judgement, const Setting& setting) {
    return make(job, judgement, setting);
}

struct Format {
    const char* name;
    Result<std::string> (*write)(const Document&, const Words&);
    bool is_for_programs = false; // figures with a point, whatever the language
};

// Most forms can always be written.
template <std::string (*write)(const Document&, const Words&)>
Result<std::string> always(const Document& document, const Words& words) {
    return write(document, words);
}

constexpr Paper kPapers[] = {{"inspection", always<inspection>},
                             {"stages", always<stages>},
                             {"punch", always<punch>},
                             {"completion", always<completion>},
                             {"care", always<care>},
                             {"office", always<office>},
                             {"look", look},
                             {"order", order},
                             {"offer", offer}};

constexpr Format kFormats[] = {
    {"html", always<render_html>},
    {"txt", always<render_text>},
    {"json",
     [](const Document& document, const Words&) -> Result<std::string> { return render_json(document); },
     true},
    {"csv", always<render_csv>, true},
    {"ics", render_ics},
#ifdef UNDERSHEET_PDF
    {"pdf", always<render_pdf>},
#endif
};

template <class Rows>
std::vector<std::string> names_of(const Rows& rows) {
    std::vector<std::string> names;
    for (const auto& row : rows) names.emplace_back(row.name);
    return names;
}

template <class Rows>
auto* named(const Rows& rows, std::string_view name) {
    for (const auto& row : rows)
        if (row.name == name) return &row;
    return static_cast<decltype(&rows[0])>(nullptr);
}

} // namespace

std::vector<std::string> paper_names() { return names_of(kPapers); }

std::vector<std::string> paper_formats() { return names_of(kFormats); }

Result<Document> make_paper(std::string_view name, const job::Job& job, const job::Judgement& judgement,
                            const Setting& setting) {
    const Paper* paper = named(kPapers, name);
    if (paper == nullptr)
        return Fault{Code::paper_unknown,
                     "there is no paper '" + std::string(name) + "'",
                     {},
                     joined(paper_names(), ", ")};
    return paper->make(job, judgement, setting);
}

Result<std::string> write_as(std::string_view format, const Words& words, const Maker& make) {
    const Format* wanted = named(kFormats, format);
    if (wanted == nullptr)
        return Fault{Code::format_unknown,
                     "a paper is not written as '" + std::string(format) + "'",
                     {},
                     joined(paper_formats(), ", ")};
    const Words plain = wanted->is_for_programs ? words.for_programs() : Words();
    const Words& with = wanted->is_for_programs ? plain : words;
    const auto made = make(with);
    if (!made) return made.fault();
    return wanted->write(*made, with);
}

Result<std::string> write_paper(std::string_view name, std::string_view format, const job::Job& job,
                                const job::Judgement& judgement, const Setting& setting) {
    return write_as(format, setting.words, [&](const Words& words) {
        const Setting with{words,         setting.method,  setting.kinds,   setting.number,
                           setting.issue, setting.program, setting.picture, setting.prices};
        return make_paper(name, job, judgement, with);
    });
}

} // namespace undersheet::paper
