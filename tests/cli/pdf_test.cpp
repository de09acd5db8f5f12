// A paper as PDF, looked at from outside by programs that know PDF: poppler's and qpdf.
#include "tests/cli/program.h"

#ifdef UNDERSHEET_PDF

#include <set>
#include <sstream>

using namespace undersheet;

namespace {

// A job with readings, a finding, a punch row and a photograph, on paper as `form` in paper.pdf and as text in paper.txt.
void write_paper(const Program& program, const std::string& form) {
    program.start();
    program.survey();
    REQUIRE(program.run("record moisture reading_pct=22 setting=2 --at 1.20,0.80 --by IP").code == 0);
    REQUIRE(
        program
            .run("record heads total=170 checked=50 below=47 flush=2 proud=1 squares=5 length_mm=65 --by IP")
            .code == 0);
    REQUIRE(
        program
            .run(
                "punch add 'a scuff, Zoë’s ladder, 3 × 2½ mm ≥ 2 at −4 °C – 12 € für Straße' --at AB --by IP")
            .code == 0);
    REQUIRE(program.run("paper " + form + " -o paper.pdf").code == 0);
    REQUIRE(program.run("paper " + form + " -o paper.txt").code == 0);
}

// Words without what a plain text draws with, and without the stops behind them.
std::multiset<std::string> words_in(const std::string& text) {
    std::multiset<std::string> words;
    std::istringstream stream(text);
    for (std::string word; stream >> word;) {
        word.erase(word.find_last_not_of("-.=_~:|,;") + 1);
        if (!word.empty()) words.insert(word);
    }
    return words;
}

} // namespace

TEST_CASE("a PDF on the disk is sound, embeds its fonts in part, and says whose it is") {
    for (const char* form : {"inspection", "stages", "punch", "completion"}) {
        INFO(form);
        const Program program;
        write_paper(program, form);
        const Ran sound = program.pipe("qpdf --check paper.pdf");
        CHECK(sound.code == 0);
        CHECK(sound.shows("No syntax or stream encoding errors found"));
        // name, type, encoding, embedded, subset, unicode: three times yes on each row under the two of the heading
        const Ran fonts = program.pipe("pdffonts paper.pdf | tail -n +3 | grep -c ' yes yes yes '");
        CHECK(fonts.out == "2\n");
        CHECK(program.pipe("pdffonts paper.pdf | tail -n +3 | wc -l").out == "2\n");
        const Ran about = program.pipe("pdfinfo paper.pdf");
        CHECK(about.shows(", A-07\n"));
        CHECK(about.shows("Author:          Pell & Daughter\n"));
        CHECK(about.shows("Page size:       595.28 x 841.89 pts (A4)\n"));
        CHECK_FALSE(about.shows("CreationDate"));
    }
}

TEST_CASE("what can be copied out of a PDF is what the paper says as text, word for word") {
    for (const char* form : {"inspection", "stages", "punch", "completion"}) {
        const Program program;
        write_paper(program, form);
        const auto words = words_in(bytes_of_file(program.file("paper.txt")));
        const auto copied = words_in(program.pipe("pdftotext -layout paper.pdf -").out);
        CHECK(words.size() > 40);
        for (const std::string& word : words) {
            INFO(form << ": " << word);
            CHECK(copied.count(word) >= 1);
        }
    }
}

TEST_CASE("letters with accents and the signs of the trade can be searched for") {
    const Program program;
    write_paper(program, "punch");
    CHECK(program.pipe("pdftotext paper.pdf -")
              .shows("a scuff, Zoë’s ladder, 3 × 2½ mm ≥ 2 at −4 °C – 12 € für Straße"));
}

TEST_CASE("the same record gives the same PDF, byte for byte") {
    const Program program;
    write_paper(program, "inspection");
    const std::string once = bytes_of_file(program.file("paper.pdf"));
    REQUIRE(program.run("paper inspection -o again.pdf").code == 0);
    CHECK(once == bytes_of_file(program.file("again.pdf")));
    CHECK(once.starts_with("%PDF-1.4\n"));
}

#endif
