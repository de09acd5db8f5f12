#include "tests/paper/marked_words.h"

#include "entry/json.h"
#include "paper/json.h"
#include "schema/embedded.h"

#include <algorithm>
#include <array>
#include <regex>
#include <set>

namespace undersheet::test {
namespace {

using entry::Value;

const std::string kOpen = "⟦", kClose = "⟧";

std::string marked(std::string_view phrase) {
    std::string out;
    while (!phrase.empty()) {
        const auto open = std::min(phrase.find('{'), phrase.size());
        if (open > 0) out += kOpen + std::string(phrase.substr(0, open)) + kClose;
        phrase.remove_prefix(open);
        const auto close = phrase.find('}');
        if (close == std::string_view::npos) break;
        out += phrase.substr(0, close + 1);
        phrase.remove_prefix(close + 1);
    }
    return out;
}

Value marked_rows(const Value& rows) {
    Value all;
    for (const entry::Member& row : *rows.map()) all.set(row.key, marked(*row.value.text()));
    return all;
}

// What stands outside of the brackets.
std::string unmarked(const std::string& text) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const auto open = text.find(kOpen, at);
        out += text.substr(at, open - at) + " ";
        if (open == std::string::npos) break;
        const auto close = text.find(kClose, open);
        at = close == std::string::npos ? text.size() : close + kClose.size();
    }
    return out;
}

void gather(const Value& value, std::string& into) {
    if (const auto* text = value.text()) into += *text + "\n";
    if (const auto* list = value.list())
        for (const Value& one : *list) gather(one, into);
    if (const auto* map = value.map())
        for (const entry::Member& member : *map) gather(member.value, into);
}

std::string typed_into(const job::Job& job) {
    std::string all = "undersheet test\n" + job.ref + "\n" + job.roof_name + "\n";
    for (const entry::Entry& entry : *job.entries) {
        gather(entry.data, all);
        gather(entry.raw, all);
        all += entry.device + "\n"; // a name too
        for (const auto& [field, value] : entry.personal) all += value + "\n";
    }
    for (const job::Person& person : job.people) all += person.name + "\n";
    return all;
}

std::set<std::string> words_in(const std::string& text) {
    const std::regex word("[A-Za-z]{2,}");
    std::set<std::string> words;
    for (std::sregex_iterator at(text.begin(), text.end(), word), end; at != end; ++at)
        words.insert(at->str());
    return words;
}

// The parts of a paper's JSON that are said; the others name its sorts of blocks and files. A receipt is for programs.
void said_in(const Value& value, std::string& into) {
    constexpr std::array kNotSaid{"type", "column", "language", "weight", "hash", "check_value"};
    const auto* text = value.text();
    if (text != nullptr && !text->starts_with("undersheet.receipt.")) into += *text + "\n";
    if (const auto* list = value.list())
        for (const Value& one : *list) said_in(one, into);
    if (const auto* map = value.map())
        for (const entry::Member& member : *map)
            if (std::find(kNotSaid.begin(), kNotSaid.end(), member.key) == kNotSaid.end())
                said_in(member.value, into);
}

// What one types to speak of something: a finding by its name, an edge by its corners, an entry by its hash.
std::string without_names(const std::string& text) {
    const std::regex names(
        R"([a-z_]+@[^\n]*|\b[a-z]+_[a-z_]+\b|\b[A-Z]{2}\b|\b(?=[a-f0-9]*[0-9])[a-f0-9]{8}\b)");
    return std::regex_replace(text, names, " ");
}

} // namespace

paper::Words marked_words(std::string_view language) {
    Value file = entry::read_json(*schema::find("words_" + std::string(language) + ".json")).value();
    Value months;
    for (const Value& month : file.list_of("months")) months.push(marked(*month.text()));
    file.set("months", months);
    file.set("phrases", marked_rows(*file.find("phrases")));
    file.set("texts", marked_rows(*file.find("texts")));
    return paper::Words::read(entry::write_pretty(file)).value();
}

std::vector<std::string> said_past_the_words(const paper::Document& document, const job::Job& job) {
    std::string said;
    said_in(paper::document_value(document), said);
    const auto typed = words_in(typed_into(job));
    std::vector<std::string> past;
    const std::string rest = without_names(unmarked(said));
    const std::regex word("[A-Za-z]{2,}");
    for (std::sregex_iterator at(rest.begin(), rest.end(), word), end; at != end; ++at)
        if (typed.count(at->str()) == 0) past.push_back(at->str());
    return past;
}

} // namespace undersheet::test
