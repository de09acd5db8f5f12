#include "job/doubts.h"

#include <algorithm>

namespace undersheet::job {
namespace {

bool has_begun(const std::vector<Part>& parts, const std::string& stage) {
    return std::any_of(parts.begin(), parts.end(),
                       [&](const Part& part) { return part.stage == stage && part.has_begun(); });
}

bool is_met(const method::Condition& condition, const entry::Value& data, const method::Method& method) {
    if (condition.test == method::Test::over) {
        const entry::Value* value = data.find(condition.field);
        return value != nullptr && value->number() != nullptr &&
               value->number()->value() > method.limit(condition.limit);
    }
    const std::string word = data.text_of(condition.field);
    return std::find(condition.words.begin(), condition.words.end(), word) != condition.words.end();
}

} // namespace

bool casts_doubt(const method::Doubt& row, std::string_view kind, const entry::Value& data,
                 const method::Method& method, const std::vector<Part>& parts) {
    if (row.kind != kind || (row.only_if && !is_met(*row.only_if, data, method))) return false;
    return row.unless_begun.empty() || !has_begun(parts, row.unless_begun);
}

} // namespace undersheet::job
