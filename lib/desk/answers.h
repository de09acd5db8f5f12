// What the desk hands back: plain values, ready to be shown. Nothing here has to be worked out any further.
//
// Every answer about a job names it. Times are as written (RFC 3339); the figures stand inside the sentences, already in
// the unit and with the digits the instrument gives. json.h writes each of them for scripts.
// Threads: plain values.
#pragma once

#include "base/fault.h"
#include "desk/answers_handing.h"

#include <cstdint>
#include <string>
#include <vector>

namespace undersheet::desk {

struct Started {
    std::string book = {}, firm = {}, device = {};
};

struct PersonLine {
    std::string id = {}, name = {}, initials = {}, role = {}, firm = {}, ends = {};
    bool has_pin = false; // on this device
};

struct JobLine {
    JobName job = {};
    std::string id = {}, opened = {}, handed_over = {}, finished = {};
    std::string asked_by =
        {}; // what --job takes for this one alone: its ref, or where others are called so its short id
    std::string standing = {}; // "under way: band/AB, wall/CD", "handed over", "from paper"
    std::size_t entries = 0;
    bool from_paper = false, current = false; // current: the job last worked on
};

// One thing in the way, and what would clear it.
struct Held {
    std::string why = {}, clears = {};
    std::string finding = {}; // its id, when a finding is in the way
    bool decidable = false;   // a named decision can let it go
    std::string after = {};   // the part that has to be signed first, when that is all there is to it
};

// One thing kept, or why it was not. Exactly one of `entry` and `held_by` says something.
struct Kept {
    JobName job = {};
    std::string entry = {}, name = {}; // the whole hash, and the short form people type
    std::string kind = {}, heading = {}, place = {}, part = {}, when = {}, by = {};
    std::string says = {};     // "air 13 °C, rh 66 %, surface 14 °C"
    Lines asked = {};          // what looks odd: kept as it is, worth a second look
    Lines marks = {};          // written later, ahead of the clock, clock set by hand
    std::string bond_now = {}; // for an air reading: can I bond now?
    std::string now = {};      // where the part stands after it
    std::string receipt = {};  // of a customer's signature: for the customer to keep
    std::vector<Held> held_by = {};
    [[nodiscard]] bool is_kept() const { return held_by.empty(); }
};

// A later visit to a roof that was handed over, with a record of its own.
struct SupplementLine {
    JobName job = {};
    std::string number = {}, why = {}, complaint = {}, opened_at = {}, opened_by = {};
    std::string signed_at = {}, signed_by = {}; // "" while it is open
    std::size_t entries = 0;
};

struct BadLine {
    std::size_t line = 0; // 1 is the first
    Fault fault = {};
};

// Many lines fed at once: all of them kept, or none.
struct KeptMany {
    JobName job = {};
    std::size_t kept = 0;
    Lines asked = {}; // "line 4: …"
    std::vector<BadLine> bad = {};
    std::string bond_now = {};
};

struct FindingLine {
    std::string id = {}, rule = {}, severity = {}, severity_text = {};
    std::string place = {}, part = {}, says = {}, value = {}, limit = {}, source = {}, mark = {}, clears = {};
    bool near = false, decidable = false;
    std::string decided = {}, reason = {}, told = {};
    Lines entries = {}; // whole hashes
};

struct Findings {
    JobName job = {};
    std::string as_of = {};
    std::vector<FindingLine> open = {}; // worst first
    std::vector<FindingLine> let_go = {};
    Lines not_looked = {};
};

struct StepLine {
    std::string name = {}, says = {}, entry = {};
    bool must = true, done = false;
};

struct PartLine {
    std::string part = {}, stage = {}, title = {}, state = {}, state_text = {};
    Lines may = {};
    std::vector<StepLine> steps = {};
    std::vector<Held> held_by = {};
    std::string signed_by = {}, signed_at = {}, note = {};
};

struct Stages {
    JobName job = {};
    std::string as_of = {}, bond_now = {};
    std::vector<PartLine> parts = {}; // in the order of work
};

// The chain behind a verdict, from what was recorded to the limit it was held against.
struct WhyStep {
    std::string heading = {};
    Lines lines = {};
};

struct Why {
    JobName job = {};
    std::string about = {}, verdict = {};
    std::vector<WhyStep> steps = {};
    // Nothing without lines.
    void add(std::string heading, Lines lines);
};

// --- the take-off ---

struct AllowanceLine {
    std::string key = {}, value = {}, mark = {}, source = {}, says = {};
};

struct PackLine {
    std::string size = {}; // in the unit of the line
    std::int64_t count = 0;
};

// One thing counted, ordered, worked or charged. Money is in minor units of the take-off's currency.
struct TakeOffLine {
    std::string section = {}, name = {}, title = {}; // areas, materials, labour, price; "deck_adhesive"
    std::string amount = {}, unit = {};              // exact; "" for a line that is only money
    std::string amount_words = {};                   // "12.05 l", for people
    std::vector<PackLine> packs = {};
    std::string packs_words = {}; // "1 x 10 + 1 x 2.5 l"
    bool has_price = false;
    std::int64_t price_minor = 0;
    std::string price_words = {}; // "118.00"
    std::string remark = {};
    Lines working = {};
    std::vector<AllowanceLine> allowances = {};
};

// What the record says was used, beside what was planned.
struct UsedLine {
    std::string name = {}, title = {}, planned = {}, used = {}, unit = {}; // exact amounts
    std::string planned_words = {}, used_words = {}, share_words = {};     // "12.05 l", "95 % of it"
    std::string remark = {};
    Lines working = {};
};

struct TrimRunLine {
    std::string edge = {};
    std::int64_t length_mm = 0;
    std::vector<std::int64_t> pieces_mm = {};
};

struct TrimBarLine {
    std::int64_t stock_mm = 0;
    std::vector<std::int64_t> pieces_mm = {};
    std::int64_t left_mm = 0; // after the last cut
};

struct TrimLine {
    std::string item = {}, joint = {}; // "gap" or "lap"
    std::int64_t joint_mm = 0;
    bool best = false;
    std::vector<TrimRunLine> runs = {};
    std::vector<TrimBarLine> bars = {};
};

struct TakeOff {
    JobName job = {};
    std::string as_of = {}, price_list = {}, currency = {}; // both "" without a price list
    std::vector<TakeOffLine> lines = {};                    // in the order of the order
    std::vector<TrimLine> trims = {};
    std::vector<UsedLine> used = {};
    Lines remarks = {};
};

// --- the day ---

struct DayWork {
    std::string stage = {}, part = {}; // "band", "band/AB, BC"
    std::string hours = {};            // of one person, "1.2"
    int minutes = 0, wait_min = 0;     // of the crew, and before the next
    std::string from = {}, to = {};    // RFC 3339; "" where it does not fit
};

struct DaySpoiled {
    std::string from = {}, to = {}; // 10:15
    std::vector<std::string> stages = {};
    std::string why = {};
};

struct DayLine {
    std::string date = {}, light_from = {}, light_to = {}; // "" where the place is not known
    std::vector<DaySpoiled> spoiled = {};
};

struct DayAnswer {
    JobName job = {};
    std::string as_of = {}, made = {}; // when the forecast was made, as it says itself
    std::vector<DayWork> row = {};     // what is left, the earliest it can be done
    bool fits = false;
    std::string one_go_from = {},
                one_go_to = {}; // the earliest run without a pause but the waits; "" for none
    std::vector<DayLine> days = {};
    Lines assumed = {};
};

struct PunchLine {
    std::string number = {}, severity = {}, severity_text = {}, place = {}, part = {}, says = {}, clears = {};
    bool open = true;
    Lines holds = {}, also_raised_as = {};
    std::string raised_by = {}, raised_at = {}, cleared_by = {}, cleared_at = {}, looked_by = {},
                looked_at = {}, let_go = {};
};

struct Punch {
    JobName job = {};
    std::string as_of = {};
    std::vector<PunchLine> rows = {};
};

struct HistoryLine {
    std::string entry = {}, name = {}, kind = {}, heading = {}, place = {}, part = {}, when = {}, clock = {},
                by = {}, device = {};
    std::string says = {};
    Lines marks = {};   // written later, ahead of the clock, corrected by …, withdrawn by …
    Lines changes = {}; // "surface 14 °C -> 13 °C"
};

struct History {
    JobName job = {};
    std::vector<HistoryLine> lines = {}; // as it happened
    Lines problems = {};                 // what was kept but could not be counted, and why
};

struct PaperMade {
    JobName job = {};
    std::string name = {}, bytes = {};
};

struct VerifyFault {
    std::string entry = {}, device = {}, what = {};
    std::int64_t seq = 0;
};

// One signature, and the entries of other devices that stand around it: it was made after the one and before the other.
struct SignatureLine {
    std::string job = {}, part = {}, kind = {}, entry = {}, device = {}, when = {};
    std::string after = {}, after_when = {}, before = {}, before_when = {}; // "" where there is none
    std::string own_key = {}; // the person's, where a PIN was given
};

struct Verified {
    bool ok = false, witnessed = false;
    std::size_t entries = 0, unwitnessed = 0, receipts = 0; // receipts: that were held against it and fit
    std::size_t missing_personal = 0;                       // values that nobody erased and that are not held
    std::size_t clock_by_hand = 0; // entries that say so of themselves: their times are held against nothing
    std::string digest = {};
    std::vector<VerifyFault> faults = {};
    std::vector<VerifyFault> doubts = {}; // about clocks and PINs: shown, and no fault
    std::vector<SignatureLine> signatures = {};
};

// --- the catalogue of kinds, for help, completion and reference ---

struct ChoiceLine {
    std::string word = {}, meaning = {};
};

struct FieldLine {
    std::string name = {}, type = {}, unit = {}, prompt = {}, odd = {}, fallback = {};
    std::string least = {}, most = {}, usual_least = {}, usual_most = {}; // "" when there is no such bound
    std::vector<ChoiceLine> choices = {};
    bool required = false, personal = false, may_skip = false;
};

struct KindLine {
    std::string name = {}, heading = {}, prompt = {}, group = {}, judging = {}, place = {}, example = {};
    bool place_required = false, part_required = false, typed = true; // typed: people record it themselves
    std::vector<FieldLine> fields = {};
};

} // namespace undersheet::desk
