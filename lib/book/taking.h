// Reads a hand-over file that somebody gives us, believing nothing of it.
//
// In this order: its size, its first bytes, its tables line by line, its pages, its seal; then of every row its type, size,
// hash, key, signature and strict form. What stands between entries (chains, lam) is checked by who knows our own too.
// Promises: the first thing that is wrong refuses the whole file, in one line; nothing of it is run, and nothing is written.
// Limits: 2 GiB, 200,000 entries, 64 KiB a personal value, 16 MiB a text, 32 MiB a photograph.
#pragma once

#include "book/admitting.h"
#include "book/connection.h"
#include "book/seal.h"

#include <map>
#include <memory>
#include <vector>

namespace undersheet::book {

struct Incoming {
    Seal seal = {};
    std::map<std::string, std::vector<entry::Entry>> jobs = {}; // each in order
    KeysByDevice keys = {};
    std::vector<entry::Secret> secrets = {};
    std::map<entry::Hash, std::string> texts = {};
    bool may_have_gaps = false;           // salvaged: what stands before an entry may be lost (salvaging.h)
    std::vector<entry::Hash> photos = {}; // read one at a time: photo()
};

class HandedFile {
public:
    [[nodiscard]] static std::unique_ptr<HandedFile>
    open(const std::string& path); // Trouble when it is none of ours
    [[nodiscard]] Incoming read();
    [[nodiscard]] std::string photo(const entry::Hash& hash);

private:
    explicit HandedFile(const std::string& path);
    void read_rows(Incoming& into);
    void read_keys(Incoming& into);
    void read_entries(Incoming& into);
    void read_secrets(Incoming& into);
    void read_texts(Incoming& into);
    void read_photos(Incoming& into);
    void read_seal_row(Incoming& into);
    void check_seal(const Incoming& read);

    std::string path_;
    Connection connection_;
};

} // namespace undersheet::book
