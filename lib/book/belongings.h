// What entries name and what does not stand in them: photographs, personal values, and the texts a job is judged by.
//
// Promises: a book and a hand-over file are asked the same. What was erased is to be gone, unless another job needs it; every
//   other photograph and every text is to be there. A personal value may be missing, for a record can be handed on without
//   them: such are counted.
// Does not: look for anything itself; who has the bytes says what is there.
#pragma once

#include "book/book.h"
#include "book/erased.h"

#include <map>
#include <vector>

namespace undersheet::book {

// Whether a thing is there as it was recorded; a photograph's answer says what is wrong with it.
struct Holding {
    std::function<Done(const entry::Hash&)> photo = {};
    std::function<bool(const entry::Hash&)> value = {}, text = {};
};

class Belongings {
public:
    void note(const std::vector<entry::Entry>& job); // all entries of one job, in order
    // Adds faults and counts to what was found before. Ask once, when all jobs are noted.
    void check(const Holding& holding, Verified& into) const;

private:
    struct About { // the entry that names a thing
        entry::Hash entry = {};
        std::string device = {};
        std::int64_t seq = 0;
    };
    struct Photo {
        About about = {};
        entry::Hash hash = {};
        bool is_erased = false; // by the job that names it
    };
    void note_opening(const entry::Entry& entry, const About& about);
    void note_photo(const entry::Entry& entry, const About& about, const Erased& erased);
    void add(const About& about, std::string what);
    void check_photos(const Holding& holding, const Erased& gone, Verified& into) const;
    void check_values(const Holding& holding, const Erased& gone, Verified& into) const;

    Erasures erasures_ = {};
    std::vector<Photo> photos_ = {};
    std::map<entry::Hash, About> texts_ = {}; // and which opening is the first to name it
    std::vector<entry::ChainFault> faults_ = {};
};

} // namespace undersheet::book
