// A words file whose every letter is marked, to find what a paper says without asking it.
#pragma once

#include "job/job.h"
#include "paper/document.h"
#include "paper/words.h"

namespace undersheet::test {

// The words of that language, each stretch of a phrase between its places in brackets ⟦ ⟧.
paper::Words marked_words(std::string_view language);

// The words of two letters or more on a paper made with marked words that stand in no brackets and that nobody typed
// into the job.
std::vector<std::string> said_past_the_words(const paper::Document& document, const job::Job& job);

} // namespace undersheet::test
