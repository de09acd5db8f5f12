#include "cli/manual.h"

#include "base/text.h"
#include "cli/help.h"
#include "desk/desk.h"

namespace undersheet::cli {
namespace {

// A backslash, a hyphen that must stay one, and a line that begins like a macro are what man(7) trips over.
std::string escaped(std::string_view text) {
    std::string out = replaced(replaced(std::string(text), "\\", "\\e"), "-", "\\-");
    return out.starts_with(".") || out.starts_with("'") ? "\\&" + out : out;
}

std::string paragraph(const std::string& term, const std::string& says) {
    return ".TP\n.B " + escaped(term) + "\n" + escaped(says) + "\n";
}

std::string section(const std::string& name, const std::string& text) { return ".SH " + name + "\n" + text; }

std::string verb_page(const Verb& verb) {
    std::string out =
        ".SS " + escaped(verb.name) + "\n" + escaped(verb.says) + ".\n.PP\n.B " + escaped(usage(verb)) + "\n";
    for (const Word& word : verb.words) out += paragraph(word.name, word.says);
    for (const Option& option : verb.options) {
        out += paragraph(option.value.empty() ? option.name : option.name + " " + option.value, option.says);
    }
    if (!verb.more.empty()) out += ".PP\n" + escaped(verb.more) + "\n";
    return out + ".PP\nExample:\n.PP\n.nf\n    " + escaped(verb.example) + "\n.fi\n";
}

std::string commands() {
    std::string out;
    for (const Verb& verb : verbs()) out += verb_page(verb);
    return out;
}

constexpr const char* kAbout =
    "The site survey and job record for whoever covers a flat timber roof with one bonded sheet of EPDM: "
    "what lies under the\n"
    "sheet, in what condition it was, who did what and when, and what may be done now. Everything recorded "
    "is an entry in\n"
    "one book: signed, chained to the entries before, and never changed. Works without a network.\n";

constexpr const char* kCautions = "Figures for structure, wind and condensation are a check, not a design. A "
                                  "record is evidence of what was done; it takes\n"
                                  "the place of nobody's competence. Falls and fragile surfaces, solvents "
                                  "and hot work kill people on small roofs.\n";

std::string environment() {
    return paragraph("UNDERSHEET_BOOK",
                     "the book, when --book does not name it; else roofs.book in the data folder") +
           paragraph("UNDERSHEET_BY", "who says so, when --by does not") +
           paragraph("UNDERSHEET_CLOCK", "a time (RFC 3339) at which the clock stands, for tests and demos; "
                                         "every entry says so, for ever") +
           paragraph("NO_COLOR", "no colour on the terminal") +
           paragraph("XDG_DATA_HOME", "the data folder is undersheet in it, else ~/.local/share/undersheet");
}

std::string exit_codes() {
    return paragraph("0", "done") + paragraph("1", "the answer is no: held, refused, a check failed") +
           paragraph("2", "the command was wrong") + paragraph("3", "the book could not be read or written");
}

} // namespace

std::string manual_page() {
    return ".\\\" Written by: undersheet completion man\n.TH UNDERSHEET 1 \"\" \"undersheet " +
           std::string(desk::program_version()) + "\" \"User Commands\"\n" +
           section("NAME", "undersheet \\- the record of what lies under the sheet\n") +
           section("SYNOPSIS", ".B undersheet\n.I COMMAND\n[\n.I WORDS\n] [\n.I OPTIONS\n]\n") +
           section("DESCRIPTION", kAbout) + section("COMMANDS", commands()) +
           section("ENVIRONMENT", environment()) + section("EXIT STATUS", exit_codes()) +
           section("CAUTIONS", kCautions);
}

} // namespace undersheet::cli
