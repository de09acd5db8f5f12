// The method: how a firm does the job. Every limit with its source, every stage with its steps, what must come before
// what, when a reading is wrong, and what opening a part again does to the parts after it.
//
// Promises: read() checks the file against its JSON Schema and then against itself (every name used is defined) and
//   names line and reason; a job is pinned to the hash of the method it began with.
// Does not: judge. The rows are read here and applied in job.
// Threads: read once, then share freely.
#pragma once

#include "entry/hash.h"
#include "entry/value.h"

#include <optional>
#include <string>
#include <vector>

namespace undersheet::method {

enum class Severity { note, put_right, stop };
[[nodiscard]] std::string_view severity_word(Severity severity); // "note", "put_right", "stop"
[[nodiscard]] std::string_view
severity_text(Severity severity); // "note", "put right before covering", "stop"

// One figure of the trade, its unit in its key. `near`: the value on the good side where the instrument's error begins to
// matter. `mark`: P common practice, G published guidance, M published but from memory.
struct Limit {
    std::string key, source, mark, says;
    double value = 0;
    std::optional<double> near = {};
};

enum class Moment { start, sign };
enum class Reach { all, touching, part };
// What a finding holds: the start or the sign-off of the parts of a stage; all of them, those that touch the finding's
// place (within `within` metres, a limit's key), or only the part the finding is about. `stage` "" is every stage.
struct Hold {
    std::string stage;
    Moment moment = Moment::sign;
    Reach reach = Reach::all;
    std::string within = {};
};

// is_no needs the word; not_yes also holds when nothing was said; present also holds for "not looked".
enum class Test {
    under,
    at_or_under,
    over,
    at_or_over,
    one_of,
    not_words,
    not_field,
    missing,
    present,
    not_looked,
    is_yes,
    is_no,
    not_yes
};
// Is the field a number held against a limit?
[[nodiscard]] bool compares(Test test);

struct Condition {
    std::string field;
    Test test = Test::one_of;
    std::string limit = {};              // key of the limit that is compared with
    std::string other = {};              // the other field of not_field
    std::vector<std::string> words = {}; // the words of one_of
};

// One step of a rule's ladder, the worst first: the first that matches is the verdict.
struct Level {
    Severity severity = Severity::note;
    std::string limit = {};
    std::vector<std::string> words = {};
    std::vector<Hold> holds = {};
    std::string clears = {}; // overrides the rule's
};

// A rule looks at the readings of one kind. Either `fields`, `test` and `levels` say all (any of the fields), or `worked`
// names the computation in job that says which level holds where. Text may use {place} {value} {limit} {part} {label}.
struct Rule {
    std::string name, kind, worked, text, clears;
    std::vector<std::string> fields = {};
    Test test = Test::one_of;
    std::string other = {};
    std::vector<Condition> only_if = {};
    std::vector<Level> levels = {};
    bool decidable = true;  // may a named decision let it go
    bool by_reason = false; // a reason answers it: from then on it is a note
    bool rereads = false;   // only asks for a second reading: says nothing about the roof
    int line = 0;
    [[nodiscard]] const Level* level(Severity severity) const;
    [[nodiscard]] const Level* level_with(std::string_view limit) const;
};

// A must-do (or wanted) step of a stage. It is done by a tick that brings `fields`, or by a record of kind `by_record`.
// `after` names the step whose latest tick must be younger, with its fields `clean` all saying so; `restarts` names steps
// that are undone when this one is ticked again.
struct Step {
    std::string name, says, by_record, by_field, after;
    std::vector<std::string> fields = {}; // needed with the tick
    std::vector<std::string> clean = {};  // fields of `after` that must read "clean"
    std::vector<std::string> restarts = {};
    bool must = true;
    bool opens_adhesive = false; // a coat: open until a later step of the part closes it
    bool closes_adhesive = false;
    bool uses_heat = false;
    bool decidable = true;
};

// What a stage is made of: `per` says which things of the roof each part is done to.
struct Stage {
    std::string name, title, per;
    std::vector<Step> steps = {};
    std::vector<std::string> products = {};     // a tin of one of these must be named
    std::vector<std::string> start_guards = {}; // safety, reading, moisture, dust, tin, solvent, heights …
    std::vector<std::string> sign_guards = {};
    bool may_leave_out = false;
    bool bonds = false; // lies under or in adhesive: the sheet is bonded once one has begun
    [[nodiscard]] const Step* step(std::string_view name) const;
};

enum class Which { all, same, touching, previous };
// "A part of `stage` may start only when these parts of `needs` are signed, left out or not needed."
struct Need {
    std::string stage, needs;
    Which which = Which::all;
};

enum class Effect { doubt, open_again };
// "When a part of `reopened` is opened again, these parts of `later` are put in doubt or opened again too."
struct Reopening {
    std::string reopened, later;
    std::string when = {}; // "", "bare" (nothing bonded yet), "bonded"
    Effect effect = Effect::doubt;
    Which which = Which::all;
};

// "A record of this kind puts a signed part of this stage in doubt", unless a part of `unless_begun` has begun.
struct Doubt {
    std::string kind, stage, says, unless_begun;
    std::optional<Condition> only_if = {};
};

// A kind of reading that an inspection cannot do without where the roof has such a thing ("roof" always has).
struct LookedFor {
    std::string kind, of;
};

class Method {
public:
    static Result<Method> read(std::string_view json_text);

    [[nodiscard]] const entry::Hash& hash() const { return hash_; }
    [[nodiscard]] const std::string& name() const { return name_; }
    [[nodiscard]] const std::string& version() const { return version_; }
    [[nodiscard]] const Limit* find_limit(std::string_view key) const;
    [[nodiscard]] double
    limit(std::string_view key) const; // our own mistake when it is not there: throws std::logic_error
    [[nodiscard]] const Stage* stage(std::string_view name) const;
    [[nodiscard]] const Rule* rule(std::string_view name) const;

    [[nodiscard]] const std::vector<Limit>& limits() const { return limits_; }
    [[nodiscard]] const std::vector<Stage>& stages() const { return stages_; }
    [[nodiscard]] const std::vector<Need>& needs() const { return needs_; }
    [[nodiscard]] const std::vector<Rule>& rules() const { return rules_; }
    [[nodiscard]] const std::vector<Reopening>& reopenings() const { return reopenings_; }
    [[nodiscard]] const std::vector<Doubt>& doubts() const { return doubts_; }
    // "kind.field" that must be said before anybody works on the roof, and before solvent is opened.
    [[nodiscard]] const std::vector<std::string>& safety() const { return safety_; }
    [[nodiscard]] const std::vector<std::string>& solvent() const { return solvent_; }
    [[nodiscard]] const std::vector<LookedFor>& looked_for() const { return looked_for_; }
    [[nodiscard]] const std::vector<std::string>& chased_abutments() const { return chased_abutments_; }
    [[nodiscard]] int patches_per(std::string_view opening_type) const; // 0 when none is needed

private:
    friend class MethodReader;
    entry::Hash hash_ = {};
    std::string name_, version_;
    std::vector<Limit> limits_;
    std::vector<Stage> stages_;
    std::vector<Need> needs_;
    std::vector<Rule> rules_;
    std::vector<Reopening> reopenings_;
    std::vector<Doubt> doubts_;
    std::vector<std::string> safety_, solvent_, chased_abutments_;
    std::vector<LookedFor> looked_for_;
    std::vector<std::pair<std::string, int>> patches_per_;
};

} // namespace undersheet::method
