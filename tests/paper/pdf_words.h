// What stands on the pages of a PDF before they are bytes, for tests: the words in the order they were set, and where things lie.
#pragma once

#include "paper/pdf.h"

#include <string>
#include <vector>

namespace undersheet::test {

struct Placed {
    std::size_t page = 0;
    pdf::Letters letters;
};

// Every piece of writing in the order it was set. The running lines at the top and bottom of each page come last on their page.
std::vector<Placed> letters_of(const pdf::File& file);
double width_pt(const pdf::Letters& letters);

// All of it without blanks: where a line is broken makes no difference.
std::string words_on(const pdf::File& file);
std::string without_blanks(std::string_view text);

// Every text of a document that is to be read, block by block in its order.
std::vector<std::string> texts_of(const paper::Document& document);

// The first mark that reaches over the edge of the page or into its margins, in words; "" when there is none.
std::string off_the_page(const pdf::File& file);

} // namespace undersheet::test
