// What the desk hands back about several devices, and what every answer is made of. Comes with answers.h.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace undersheet::desk {

// The book counts with a sign, as SQLite does.
[[nodiscard]] inline std::size_t as_size(std::int64_t count) { return static_cast<std::size_t>(count); }

using Lines = std::vector<std::string>;

struct JobName {
    std::string ref = {}, roof = {};
    std::string supplement = {}; // the one it is seen with; "" for the first record
};

struct HandedOut {
    std::string file = {}, job = {}, digest = {}; // job: its reference; "" for the whole book
    std::size_t entries = 0, photos = 0;
    Lines missing_photos = {};
};

struct TakenLine {
    std::string job = {};               // its reference; "" for a firm's own journal
    std::size_t in_file = 0, fresh = 0; // entries; fresh: that were not here yet
};

// What one file brought.
struct TakenIn {
    std::string file = {};
    std::vector<TakenLine> jobs = {};
    std::size_t entries = 0, fresh = 0, photos = 0, to_settle = 0;
    Lines new_devices = {};
    Lines remarks = {}; // what somebody should know: a copied device, an older copy, something erased
};

struct SalvagedDeviceLine {
    std::string device = {};
    std::size_t entries = 0;
    std::size_t written = 0; // in any job, as the damaged book noted; 0 where it says nothing
};

// Numbers of one device in one job that are not there, first and last included.
struct GapLine {
    std::string job = {}, device = {}; // job: its reference; "" for a firm's own journal
    std::size_t from = 0, to = 0;
};

// What could still be read of a damaged book, and what not.
struct SalvagedBook {
    std::string file = {}, book = {}; // the damaged one, and the new one
    std::size_t entries = 0, personal = 0, texts = 0, photos = 0;
    bool whole = false; // nothing is known to be missing
    std::vector<SalvagedDeviceLine> devices = {};
    std::vector<GapLine> gaps = {};
    std::size_t refused = 0;          // rows that look like entries and do not hold
    std::size_t named = 0;            // entries that others knew of and that are not there
    std::size_t missing_personal = 0; // and were not erased
    Lines missing_texts = {}, missing_photos = {};
    Lines remarks = {};
};

struct ErasedLine {
    std::string job = {}; // its reference; "" for the firm's own journal
    std::size_t values = 0, photos = 0;
};

struct ErasedAll {
    std::string person = {};
    std::vector<ErasedLine> jobs = {};
    Lines still_named = {}; // free text that has the name in it, and stands
};

struct DeviceLine {
    std::string device = {}, first_when = {}, last_when = {};
    std::size_t entries = 0;
    bool is_this = false;
    std::string revoked = {}; // when and why, when it was reported lost
};

struct SettleSideLine {
    std::string entry = {}, name = {}, by = {}, when = {}, device = {}, says = {};
};

// What two devices said apart.
struct SettleLine {
    std::string id = {}, about = {}, says = {}, part = {}, place = {}, kind = {}, field = {};
    bool holds = false, open = true;
    std::vector<SettleSideLine> sides = {};
    std::string kept = {}, why = {}, settled_by = {}, settled_at = {};
};

struct SettleList {
    JobName job = {};
    std::vector<SettleLine> items = {}; // open first
};

} // namespace undersheet::desk
