// What can still be read of a damaged book, as a new one.
//
// Read page by page (pages.h), and admitted as from a hand-over file: form, name, key and signature of every entry, its place
// behind those before it as far as they are there, the commitment of every personal value, the hash of every photograph.
// Promises: nothing is admitted that was not signed; what is missing is said by device and number, as far as anything that is
//   left tells of it. Entries behind a gap are kept: `verify` goes on naming the gap until a hand-over file closes it.
//   The damaged file is only read; the new one is there whole or not at all.
// Does not: look at a journal beside the damaged book, nor bring over this device's key: the new book goes on as a new device.
#pragma once

#include "book/book.h"

namespace undersheet::book {

// Numbers of one device in one job, first and last included, that are not there.
struct Gap {
    std::string job = {}, ref = {},
                device = {}; // ref: "" for the firm's journal, and where a job's opening is lost
    std::int64_t from = 0, to = 0;
};

struct SalvagedDevice {
    std::string device = {};
    std::int64_t entries = 0;
    std::int64_t written =
        0; // in any job, as the damaged book noted of its own devices; 0 where it says nothing
};

struct Salvaged {
    std::int64_t entries = 0, personal = 0, texts = 0, photos = 0; // what is in the new book
    std::vector<SalvagedDevice> devices = {};
    std::vector<Gap> gaps = {};
    std::int64_t refused = 0;          // rows that look like entries and do not hold
    std::int64_t named = 0;            // entries that others knew of and that are not there
    std::int64_t missing_personal = 0; // values that are not there and were not erased
    std::vector<entry::Hash> missing_texts = {}, missing_photos = {};
    bool has_journal = false; // beside it: somebody was writing when it broke
    [[nodiscard]] bool is_whole() const;
};

// A device's public key stands in the book once, and without it none of its entries can be believed. Where it is lost, the key
// files beside the book have that of its own devices, and hand-over files those of others.
struct Damaged {
    std::string file = {};
    KeyStore* keys = nullptr;             // of the damaged book; may be none
    std::vector<std::string> handed = {}; // hand-over files of the same firm: only their keys are taken
};

[[nodiscard]] Result<Salvaged> salvage(const Damaged& damaged, const std::string& to, Surroundings around);

} // namespace undersheet::book
