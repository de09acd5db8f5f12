// Reads the method file into its rows, then checks that every name one row uses is defined by another.
#include "method/json_schema.h"
#include "method/method.h"

#include "base/text.h"
#include "entry/json.h"
#include "schema/embedded.h"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <set>

namespace undersheet::method {
namespace {

using entry::Value;

constexpr std::array kTestWords{"under",     "at_or_under", "over",    "at_or_over", "one_of",
                                "not_words", "not_field",   "missing", "present",    "not_looked",
                                "is_yes",    "is_no",       "not_yes"};
constexpr std::array kWhichWords{"all", "same", "touching", "previous"};
constexpr std::array kSeverityWords{"note", "put_right", "stop"};

// The schema has already refused every word that is not in the list.
template <class Enum, std::size_t N>
Enum word_to(const std::array<const char*, N>& words, std::string_view word) {
    const auto found = std::find(words.begin(), words.end(), word);
    return static_cast<Enum>(found - words.begin());
}

std::vector<std::string> words_of(const Value& row, std::string_view key) {
    std::vector<std::string> words;
    for (const Value& word : row.list_of(key)) words.push_back(*word.text());
    return words;
}

bool flag(const Value& row, std::string_view key, bool fallback) {
    const Value* found = row.find(key);
    return found == nullptr ? fallback : *found->boolean();
}

Fault wrong_row(int line, const std::string& what, const std::string& right) {
    return {Code::method_malformed, what, "method file, line " + std::to_string(line), right};
}

// "wall:start:touching:moisture_reach_m"
Result<Hold> read_hold(const std::string& text, int line) {
    const auto pieces = split(text, ':');
    const bool known =
        pieces.size() >= 2 && pieces.size() <= 4 && (pieces[1] == "start" || pieces[1] == "sign");
    if (!known)
        return wrong_row(line, "'" + text + "' is no hold",
                         "write stage:start or stage:sign, then :part or :touching");
    Hold hold{.stage = pieces[0] == "*" ? "" : pieces[0]};
    hold.moment = pieces[1] == "start" ? Moment::start : Moment::sign;
    const std::string reach = pieces.size() > 2 ? pieces[2] : "all";
    if (reach != "all" && reach != "touching" && reach != "part")
        return wrong_row(line, "'" + reach + "' is no reach", {});
    hold.reach = reach == "all" ? Reach::all : reach == "part" ? Reach::part : Reach::touching;
    if (pieces.size() == 4) hold.within = pieces[3];
    return hold;
}

Condition read_condition(const Value& row) {
    return {.field = row.text_of("field"),
            .test = word_to<Test>(kTestWords, row.text_of("is")),
            .limit = row.text_of("limit"),
            .other = row.text_of("other"),
            .words = words_of(row, "words")};
}

Result<Level> read_level(const Value& row) {
    Level level{.severity = word_to<Severity>(kSeverityWords, row.text_of("severity")),
                .limit = row.text_of("limit"),
                .words = words_of(row, "words"),
                .clears = row.text_of("clears")};
    for (const auto& text : words_of(row, "holds")) {
        auto hold = read_hold(text, row.line);
        if (!hold) return hold.fault();
        level.holds.push_back(*hold);
    }
    return level;
}

Result<Rule> read_method_rule(const Value& row) {
    Rule rule{.name = row.text_of("name"),
              .kind = row.text_of("kind"),
              .worked = row.text_of("worked"),
              .text = row.text_of("text"),
              .clears = row.text_of("clears"),
              .fields = words_of(row, "fields"),
              .other = row.text_of("other"),
              .decidable = flag(row, "decidable", true),
              .by_reason = flag(row, "by_reason", false),
              .rereads = flag(row, "rereads", false),
              .line = row.line};
    if (row.find("is") != nullptr) rule.test = word_to<Test>(kTestWords, row.text_of("is"));
    for (const Value& condition : row.list_of("only_if")) rule.only_if.push_back(read_condition(condition));
    for (const Value& level : row.list_of("levels")) {
        auto read = read_level(level);
        if (!read) return read.fault();
        rule.levels.push_back(*std::move(read));
    }
    return rule;
}

Limit read_limit(const Value& row) {
    Limit limit{.key = row.text_of("key"),
                .source = row.text_of("source"),
                .mark = row.text_of("mark"),
                .says = row.text_of("says"),
                .value = row.number_of("value", 0)};
    if (const Value* near = row.find("near")) limit.near = near->number()->value();
    return limit;
}

Step read_step(const Value& row) {
    return {.name = row.text_of("name"),
            .says = row.text_of("says"),
            .by_record = row.text_of("by_record"),
            .by_field = row.text_of("by_field"),
            .after = row.text_of("after"),
            .fields = words_of(row, "fields"),
            .clean = words_of(row, "clean"),
            .restarts = words_of(row, "restarts"),
            .must = flag(row, "must", true),
            .opens_adhesive = flag(row, "opens_adhesive", false),
            .closes_adhesive = flag(row, "closes_adhesive", false),
            .uses_heat = flag(row, "uses_heat", false),
            .decidable = flag(row, "decidable", true)};
}

Stage read_stage(const Value& row) {
    Stage stage{.name = row.text_of("name"),
                .title = row.text_of("title"),
                .per = row.text_of("per"),
                .products = words_of(row, "products"),
                .start_guards = words_of(row, "start_guards"),
                .sign_guards = words_of(row, "sign_guards"),
                .may_leave_out = flag(row, "may_leave_out", false),
                .bonds = flag(row, "bonds", false)};
    for (const Value& step : row.list_of("steps")) stage.steps.push_back(read_step(step));
    return stage;
}

Need read_need(const Value& row) {
    return {.stage = row.text_of("stage"),
            .needs = row.text_of("needs"),
            .which = word_to<Which>(kWhichWords, row.text_of("which"))};
}

Reopening read_reopening(const Value& row) {
    return {.reopened = row.text_of("reopened"),
            .later = row.text_of("later"),
            .when = row.text_of("when"),
            .effect = row.text_of("effect") == "doubt" ? Effect::doubt : Effect::open_again,
            .which = word_to<Which>(kWhichWords, row.text_of("which"))};
}

Doubt read_doubt(const Value& row) {
    Doubt doubt{.kind = row.text_of("kind"),
                .stage = row.text_of("stage"),
                .says = row.text_of("says"),
                .unless_begun = row.text_of("unless_begun")};
    if (const Value* only_if = row.find("only_if")) doubt.only_if = read_condition(*only_if);
    return doubt;
}

template <class Row>
std::vector<Row> read_rows(const Value& file, std::string_view key, Row (*read)(const Value&)) {
    std::vector<Row> rows;
    for (const Value& row : file.list_of(key)) rows.push_back(read(row));
    return rows;
}

std::vector<int> lines_of(const Value& file, std::initializer_list<std::string_view> keys) {
    std::vector<int> lines;
    for (const auto key : keys) {
        for (const Value& row : file.list_of(key)) lines.push_back(row.line);
    }
    return lines;
}

// Names that stand twice would make one row silently win over the other.
template <class Rows, class Name>
Done all_different(const Rows& rows, const std::vector<int>& lines, std::string_view what, Name name) {
    std::set<std::string> seen;
    std::size_t i = 0;
    for (const auto& row : rows) {
        if (!seen.insert(row.*name).second)
            return wrong_row(lines[i], "'" + row.*name + "' stands twice in " + std::string(what),
                             "keep one");
        ++i;
    }
    return {};
}

} // namespace

// Fills a Method and checks its names against each other.
class MethodReader {
public:
    static Result<Method> read(std::string_view text, const Value& file) {
        MethodReader reader;
        reader.fill(text, file);
        for (const Value& row : file.list_of("rules")) {
            auto rule = read_method_rule(row);
            if (!rule) return rule.fault();
            reader.made_.rules_.push_back(*std::move(rule));
        }
        if (auto done = reader.check(file); !done) return done.fault();
        return std::move(reader.made_);
    }

private:
    void fill(std::string_view text, const Value& file) {
        made_.hash_ = entry::sha256(text);
        made_.name_ = file.text_of("name");
        made_.version_ = file.text_of("version");
        made_.limits_ = read_rows<Limit>(file, "limits", read_limit);
        const auto rates = read_rows<Limit>(file, "takeoff", read_limit);
        made_.limits_.insert(made_.limits_.end(), rates.begin(), rates.end());
        made_.stages_ = read_rows<Stage>(file, "stages", read_stage);
        made_.needs_ = read_rows<Need>(file, "needs", read_need);
        made_.reopenings_ = read_rows<Reopening>(file, "reopenings", read_reopening);
        made_.doubts_ = read_rows<Doubt>(file, "doubts", read_doubt);
        made_.safety_ = words_of(file, "safety");
        made_.solvent_ = words_of(file, "solvent");
        for (const Value& row : file.list_of("looked_for")) {
            made_.looked_for_.push_back({.kind = row.text_of("kind"), .of = row.text_of("of")});
        }
        made_.chased_abutments_ = words_of(file, "chased_abutments");
        if (const Value* patches = file.find("patches_per")) {
            for (const auto& member : *patches->map()) {
                made_.patches_per_.emplace_back(member.key, static_cast<int>(member.value.number()->whole()));
            }
        }
    }

    Done all_names_different(const Value& file) const {
        const auto limits = lines_of(file, {"limits", "takeoff"});
        if (auto done = all_different(made_.limits_, limits, "limits", &Limit::key); !done) return done;
        const auto stages = lines_of(file, {"stages"});
        if (auto done = all_different(made_.stages_, stages, "stages", &Stage::name); !done) return done;
        return all_different(made_.rules_, lines_of(file, {"rules"}), "rules", &Rule::name);
    }

    Done check(const Value& file) const {
        if (auto done = all_names_different(file); !done) return done;
        if (auto done = check_stage_names(file); !done) return done;
        for (const Rule& rule : made_.rules_) {
            if (auto done = check_rule(rule); !done) return done;
        }
        return {};
    }

    Done known_stage(const std::string& name, int line) const {
        if (name.empty() || made_.stage(name) != nullptr) return {};
        return wrong_row(line, "there is no stage '" + name + "'", "use one of the stages of this file");
    }

    Done check_stage_names(const Value& file) const {
        for (std::size_t i = 0; i < made_.needs_.size(); ++i) {
            const int line = file.list_of("needs")[i].line;
            if (auto done = known_stage(made_.needs_[i].stage, line); !done) return done;
            if (auto done = known_stage(made_.needs_[i].needs, line); !done) return done;
        }
        for (std::size_t i = 0; i < made_.reopenings_.size(); ++i) {
            const int line = file.list_of("reopenings")[i].line;
            if (auto done = known_stage(made_.reopenings_[i].reopened, line); !done) return done;
            if (auto done = known_stage(made_.reopenings_[i].later, line); !done) return done;
        }
        for (std::size_t i = 0; i < made_.doubts_.size(); ++i) {
            const int line = file.list_of("doubts")[i].line;
            if (auto done = known_stage(made_.doubts_[i].stage, line); !done) return done;
        }
        return {};
    }

    Done known_limit(const std::string& key, int line) const {
        if (key.empty() || made_.find_limit(key) != nullptr) return {};
        return wrong_row(line, "there is no limit '" + key + "'", "add it to limits, or use another key");
    }

    Done check_level(const Rule& rule, const Level& level) const {
        if (auto done = known_limit(level.limit, rule.line); !done) return done;
        for (const Hold& hold : level.holds) {
            if (auto done = known_stage(hold.stage, rule.line); !done) return done;
            if (auto done = known_limit(hold.within, rule.line); !done) return done;
        }
        return {};
    }

    Done check_rule(const Rule& rule) const {
        if (rule.worked.empty() && (rule.fields.empty() || rule.kind.empty())) {
            return wrong_row(rule.line,
                             "rule '" + rule.name +
                                 "' says neither what is worked out nor which field is looked at",
                             "give kind, fields and is, or worked");
        }
        if (rule.levels.empty())
            return wrong_row(rule.line, "rule '" + rule.name + "' has no level", "give at least one");
        for (const Condition& condition : rule.only_if) {
            if (auto done = known_limit(condition.limit, rule.line); !done) return done;
        }
        for (const Level& level : rule.levels) {
            if (auto done = check_level(rule, level); !done) return done;
        }
        return {};
    }

    Method made_;
};

Result<Method> Method::read(std::string_view json_text) {
    const auto file = entry::read_json(json_text);
    if (!file) {
        const std::string where =
            file.fault().where.empty() ? "method file" : "method file, " + file.fault().where;
        return Fault{Code::method_malformed, file.fault().detail, where, file.fault().clears};
    }
    const auto schema = entry::read_json(schema::method_schema_json());
    if (!schema) return schema.fault();
    if (auto fits = check_shape(*schema, *file, "method file"); !fits) return fits.fault();
    return MethodReader::read(json_text, *file);
}

} // namespace undersheet::method
