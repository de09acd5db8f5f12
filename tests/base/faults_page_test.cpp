// docs/faults.md against the numbers in base/fault.h: every code is explained, and none that is not there.
#include "base/text.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cctype>
#include <fstream>
#include <map>
#include <string>
#include <vector>

using namespace undersheet;

namespace {

std::vector<std::string> lines_of(const std::string& path) {
    std::ifstream in(std::string(UNDERSHEET_SOURCE_DIR) + "/" + path);
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

bool is_number(const std::string& text) {
    return text.size() == 3 &&
           std::all_of(text.begin(), text.end(), [](unsigned char c) { return std::isdigit(c) != 0; });
}

using Names = std::map<std::string, std::string>; // number -> name

// Lines of the enum: "    held = 401,   // …".
Names codes_of_header() {
    Names codes;
    for (const std::string& line : lines_of("lib/base/fault.h")) {
        const auto pieces = split(trimmed(line), ' ');
        if (pieces.size() < 3 || pieces[1] != "=") continue;
        const std::string number = pieces[2].substr(0, 3);
        if (is_number(number) && pieces[2].substr(3) == ",") codes[number] = pieces[0];
    }
    return codes;
}

// What stands under one heading "### 401 held".
struct Section {
    std::string name;
    std::string happened, to_do, exit_code;
};

void take_line(const std::string& line, Section& section) {
    const std::string text(trimmed(line));
    const std::vector<std::pair<std::string, std::string*>> takers = {{"What happened: ", &section.happened},
                                                                      {"What to do: ", &section.to_do},
                                                                      {"Exit code: ", &section.exit_code}};
    for (const auto& [lead, into] : takers) {
        if (text.starts_with(lead)) *into = text.substr(lead.size());
    }
}

std::map<std::string, Section> sections_of_page() {
    std::map<std::string, Section> sections;
    Section* current = nullptr;
    for (const std::string& line : lines_of("docs/faults.md")) {
        if (line.starts_with("#")) current = nullptr;
        const auto pieces = split(line, ' ');
        if (pieces.size() == 3 && pieces[0] == "###" && !sections.contains(pieces[1])) {
            current = &sections[pieces[1]];
            current->name = pieces[2];
        } else if (current != nullptr) {
            take_line(line, *current);
        }
    }
    return sections;
}

std::size_t headings_of_page() {
    const auto lines = lines_of("docs/faults.md");
    return static_cast<std::size_t>(std::count_if(
        lines.begin(), lines.end(), [](const std::string& line) { return line.starts_with("### "); }));
}

// As the command line ends: 1 the answer is no, 3 the book, 2 everything else.
std::string exit_code_of(const std::string& number) {
    return number[0] == '4' ? "1" : number[0] == '5' ? "3" : "2";
}

} // namespace

TEST_CASE("every fault has its heading in docs/faults.md, under its number and name") {
    const Names codes = codes_of_header();
    const auto sections = sections_of_page();
    REQUIRE(codes.size() > 40);
    for (const auto& [number, name] : codes) {
        INFO(number << " " << name);
        const auto section = sections.find(number);
        REQUIRE(section != sections.end());
        CHECK(section->second.name == name);
    }
}

TEST_CASE("docs/faults.md explains no fault that is not there, and none twice") {
    const Names codes = codes_of_header();
    for (const auto& [number, section] : sections_of_page()) {
        INFO(number << " " << section.name);
        CHECK(codes.contains(number));
    }
    CHECK(headings_of_page() == codes.size());
}

TEST_CASE("every heading says what happened, what to do, and how the program ends") {
    for (const auto& [number, section] : sections_of_page()) {
        INFO(number << " " << section.name);
        CHECK(section.happened.size() > 20);
        CHECK(section.to_do.size() > 5);
        CHECK(section.exit_code == exit_code_of(number));
    }
}
