// Every paper there is, by name and format: what the desk asks for when somebody wants one written.
//
// Promises: paper_unknown and format_unknown say which there are. The same job, setting and time give the same bytes.
//   JSON and CSV are for programs: their figures have a decimal point in every language.
#pragma once

#include "base/result.h"
#include "job/judge.h"
#include "paper/document.h"
#include "paper/setting.h"

#include <functional>

namespace undersheet::paper {

[[nodiscard]] std::vector<std::string> paper_names(); // inspection, stages, punch, completion, care, office …
[[nodiscard]] std::vector<std::string> paper_formats(); // html, txt, json, csv, ics, pdf

[[nodiscard]] Result<Document> make_paper(std::string_view name, const job::Job& job,
                                          const job::Judgement& judgement, const Setting& setting);
[[nodiscard]] Result<std::string> write_paper(std::string_view name, std::string_view format,
                                              const job::Job& job, const job::Judgement& judgement,
                                              const Setting& setting);

// Any paper in one of the formats; it is made with the words that this format is written in.
using Maker = std::function<Result<Document>(const Words& words)>;
[[nodiscard]] Result<std::string> write_as(std::string_view format, const Words& words, const Maker& make);

} // namespace undersheet::paper
