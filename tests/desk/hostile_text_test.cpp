// Hostile text as people can type it, through the desk: names, references, every text of every reading, reasons, decisions
// and punch texts. What is kept comes out of every paper and every answer as the text it was. tests/paper/hostile_roof_test.cpp
// does the same with what only a program could have written.
#include "tests/desk/desk_support.h"

#include "base/text.h"
#include "desk/json.h"
#include "entry/json.h"
#include "method/kinds.h"
#include "schema/embedded.h"
#include "tests/support/attacks.h"
#include "tests/support/page_scan.h"

#include <algorithm>

using namespace undersheet;

namespace {

using method::FieldType;

// Cut as a shell would: blanks between words, quotes hold them together and fall away.
std::vector<std::string> words_of(const std::string& command) {
    std::vector<std::string> words(1);
    bool quoted = false;
    for (const char c : command) {
        if (c == '"')
            quoted = !quoted;
        else if (c == ' ' && !quoted)
            words.emplace_back();
        else
            words.back() += c;
    }
    return words;
}

// The example of a kind as it would be typed, with every free text an attack.
desk::Record attacked(const method::Kind& kind, const std::string& attack) {
    desk::Record record{kind.name, {}, {}, {}};
    const auto words = words_of(kind.example);
    for (std::size_t i = 3; i < words.size(); ++i) {
        if (words[i] == "--at") record.place = words[++i];
        if (words[i] == "--part") record.part = words[++i];
        const auto name = words[i].substr(0, words[i].find('='));
        const auto* field = kind.field(name);
        const bool free =
            field != nullptr && (field->type == FieldType::text || field->type == FieldType::words);
        const bool people = field != nullptr && field->type == FieldType::people; // who is in this book
        if (field != nullptr && !free) record.fields.push_back(people ? name + "=IP" : words[i]);
    }
    for (const auto& field : kind.fields) {
        if (field.type == FieldType::text || field.type == FieldType::words)
            record.fields.push_back(field.name + "=" + attack + "~" + kind.name + "." + field.name + "~");
    }
    return record;
}

// A firm, two people, a job and a morning's readings, all of them hostile.
class HostileDesk {
public:
    explicit HostileDesk(std::string attack) : attack_(std::move(attack)) {
        good(desk::Desk::start(path(), {text("firm.name"), text("firm.address"), text("firm.phone"), "", ""},
                               world()));
        good(open().add_person({}, {text("person.name"), "installer", "IP", text("person.firm"), "", ""}));
        good(open().open_job(by(), {text("open.ref"), text("open.roof"), "", false, ""}));
    }
    [[nodiscard]] desk::Desk open() { return good(desk::Desk::open(path(), world())); }
    [[nodiscard]] static desk::Asked by() { return {"", "IP", "2026-06-11T08:10:00+01:00"}; }
    [[nodiscard]] std::string text(const std::string& name) const { return attack_ + "~" + name + "~"; }
    [[nodiscard]] const std::string& attack() const { return attack_; }

    void record_every_kind() {
        for (const char* edge : {"AB gutter", "BC kerb", "CD wall", "DA kerb"}) {
            const auto words = words_of(edge);
            good(open().record(
                by(), {"edge", words[0], "", {"kind=" + words[1], "behind=" + text("edge.behind")}}));
        }
        for (const char* tape : {"AB 4", "BC 2.534", "CD 4", "DA 2.534", "BD 4.735"}) { // AC is the example's
            const auto words = words_of(tape);
            good(open().record(by(), {"tape", words[0], "", {"m=" + words[1]}}));
        }
        const auto kinds = *method::Catalogue::read(schema::kinds_json());
        for (const auto& kind : kinds.kinds()) {
            if (!kind.example.starts_with("undersheet record ") || kind.name == "edge") continue;
            if (kind.name == "use" || kind.name == "work")
                continue; // name a tin and a step that must be there
            INFO(kind.name);
            const auto kept = open().record(by(), attacked(kind, attack_));
            REQUIRE(line_of(kept) == "done");
            CHECK(kept->is_kept());
            ++recorded_;
        }
    }
    void answer() {
        const auto findings = good(open().findings(by())).open;
        const auto decidable = std::find_if(findings.begin(), findings.end(),
                                            [](const auto& finding) { return finding.decidable; });
        REQUIRE(decidable != findings.end());
        good(open().give_reason(by(), {findings.front().id, text("reason.text")}));
        good(open().note_told(by(), {findings.front().id, text("told.whom")}));
        good(open().decide(by(),
                           {decidable->id, text("decide.decider"), text("decide.role"), text("decide.why")}));
        good(open().punch_add(by(), {text("punch_add.text"), "AB", "", "note", {}}));
        good(open().punch_clear(by(), {"1", text("punch_clear.why"), {}}));
        const auto air = good(open().record(by(), {"air", "", "", {"air_c=13", "rh_pct=66"}}));
        good(open().correct(by(), {air.name, {"air_c=14"}, text("correct.why")}));
        good(open().withdraw(by(), {air.name, text("withdraw.why")}));
        good(open().move(by(),
                         {"leave_out",
                          "chase/CD",
                          "",
                          {"why=" + text("leave_out.why"), "agreed_by=" + text("leave_out.agreed_by")}}));
    }
    [[nodiscard]] int recorded() const { return recorded_; }

private:
    [[nodiscard]] std::string path() const { return folder_.file("hostile.book"); }
    [[nodiscard]] std::unique_ptr<entry::World> world() {
        return std::make_unique<FixedWorld>(++starts_, "2026-06-11T12:00:00+01:00");
    }
    TempFolder folder_;
    std::string attack_;
    std::uint64_t starts_ = 0;
    int recorded_ = 0;
};

void gather(const entry::Value& value, std::string& all) {
    if (value.text() != nullptr) all += *value.text() + '\x1F';
    if (value.list() != nullptr)
        for (const auto& item : *value.list()) gather(item, all);
    if (value.map() != nullptr)
        for (const auto& member : *value.map()) gather(member.value, all);
}

std::string texts_in(const std::string& json) {
    const auto read = entry::read_json(json);
    REQUIRE(read.ok());
    std::string all;
    gather(*read, all);
    return all;
}

void check_papers(HostileDesk& test) {
    const auto prices = desk::example_prices();
    for (const auto& name : desk::paper_names()) {
        if (name == "look") continue; // of a visit after the hand-over; tests/paper has a hostile one
        INFO(name);
        const auto as = [&](const char* format) {
            return good(test.open().paper(test.by(), name, format, prices)).bytes;
        };
        const auto page = test::read_page(as("html"));
        CHECK(page.strange == "");
        CHECK(page.text.find("open.ref~") != std::string::npos);
        for (const auto& cell : test::cells_of(as("csv"))) {
            INFO(cell);
            CHECK_FALSE(test::would_be_worked_out(cell));
        }
        CHECK(texts_in(as("json")).find(test.text("open.ref")) != std::string::npos);
        CHECK_FALSE(has_control_characters(as("txt")));
    }
}

void check_answers(HostileDesk& test) {
    auto desk = test.open();
    const std::string all = texts_in(desk::json_of(good(desk.people()))) +
                            texts_in(desk::json_of(good(desk.jobs()))) +
                            texts_in(desk::json_of(good(desk.stages(test.by())))) +
                            texts_in(desk::json_of(good(desk.findings(test.by())))) +
                            texts_in(desk::json_of(good(desk.punch_ever(test.by())))) +
                            texts_in(desk::json_of(good(desk.history(test.by()))));
    for (const char* name : {"person.name", "person.firm", "open.ref", "open.roof", "decide.why",
                             "reason.text", "punch_add.text", "punch_clear.why", "withdraw.why",
                             "correct.why", "leave_out.why", "site.fragile_where", "edge.behind"}) {
        INFO(name);
        CHECK(all.find(test.text(name)) != std::string::npos);
    }
}

} // namespace

TEST_CASE("hostile text typed anywhere comes out of every paper and every answer as the text it was") {
    for (const auto& attack : test::typed_attacks()) {
        INFO(attack);
        HostileDesk test(attack);
        test.record_every_kind();
        CHECK(test.recorded() > 20);
        test.answer();
        check_papers(test);
        check_answers(test);
        CHECK(good(test.open().verify()).ok);
    }
}

TEST_CASE("a character that nobody sees is refused in every typed text, and nothing is kept") {
    DeskTest test;
    const auto before = good(test.open().verify()).entries;
    for (const std::string bad : {"x\u202Ey", "x\u200By", "\uFEFFx", "x\u2066y", "x\u2028y"}) {
        INFO(bad);
        for (const std::string field : {"under_roof", "access_text", "customer"}) {
            const auto refused = test.record("site", {field + "=" + bad});
            CHECK(refused.fault().code == Code::text_not_utf8);
            CHECK(refused.fault().where == "site " + field);
        }
        CHECK_FALSE(test.open().punch_add(DeskTest::by("IP"), {bad, "", "", "note", {}}).ok());
        CHECK_FALSE(test.open().open_job(DeskTest::by("IP"), {bad, "porch", "", false, ""}).ok());
        CHECK_FALSE(test.open().change_firm(DeskTest::by("IP"), {bad, "", "", "", ""}).ok());
    }
    CHECK(good(test.open().verify()).entries == before);
    CHECK(test.record("site", {"access_text=می\u200Cخواهم \U0001F468\u200D\U0001F527"}).ok());
}

TEST_CASE("a control character, and a line break where there is one line, are refused and nothing is kept") {
    DeskTest test;
    for (const std::string bad : {"x\t=1", "a\rb", "\x1B[2J", "\x7F", "\xC0\xAF"}) {
        INFO(bad);
        CHECK(test.record("site", {"under_roof=" + bad}).fault().code == Code::text_not_utf8);
        CHECK(test.record("site", {"access_text=" + bad}).fault().code == Code::text_not_utf8);
        CHECK_FALSE(test.open().punch_add(DeskTest::by("IP"), {bad, "", "", "note", {}}).ok());
        CHECK_FALSE(test.open().open_job(DeskTest::by("IP"), {bad, "roof", "", false, ""}).ok());
        CHECK_FALSE(test.open().add_person(DeskTest::by("IP"), {bad, "installer", "", "", "", ""}).ok());
    }
    CHECK(test.record("site", {"under_roof=a\n=1"}).fault().code == Code::text_not_utf8);
    CHECK(good(test.record("site", {"access_text=a\n=1"})).is_kept());
    CHECK(good(test.open().history({})).lines.size() == 5);
}
