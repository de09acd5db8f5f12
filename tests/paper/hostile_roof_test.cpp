// Every text of every kind an attack, every paper in every format: what comes out is read back and is still only text.
#include "tests/paper/hostile_roof.h"

#include "base/text.h"
#include "entry/json.h"
#include "paper/clean.h"
#include "paper/csv.h"
#include "paper/html.h"
#include "paper/json.h"
#include "paper/papers.h"
#include "paper/text.h"
#include "schema/embedded.h"
#include "tests/support/attacks.h"
#include "tests/support/page_scan.h"

using namespace undersheet;
using namespace undersheet::paper;

namespace {

method::PriceList prices(const std::string& attack) {
    auto list = *method::PriceList::read(schema::prices_example_json());
    list.name = attack + "~prices.name~";
    for (auto& cost : list.costs) cost.says = attack + "~prices.cost~";
    list.terms = {attack + "~prices.terms~"};
    if (list.vat) list.vat->reason = attack + "~prices.vat~";
    return list;
}

// Every paper of the hostile roof, made once.
const std::vector<Document>& papers_under(const std::string& attack) {
    static std::map<std::string, std::vector<Document>> made;
    auto& papers = made[attack];
    if (!papers.empty()) return papers;
    const auto entries = test::hostile_roof(attack);
    const auto seen_with = [&](const std::optional<entry::Hash>& supplement) {
        return *job::fold(entries, test::default_method(), test::default_kinds(),
                          *entry::parse_time(test::kHandedOver), supplement);
    };
    const auto job = seen_with({});
    REQUIRE(job.supplements.size() == 1);
    const auto visited = seen_with(job.supplements[0].opened->hash);
    const auto judged = job::judge(job, test::default_method(), test::default_kinds());
    const auto visit_judged = job::judge(visited, test::default_method(), test::default_kinds());
    Setting setting = test::test_setting();
    const auto list = prices(attack);
    setting.prices = &list;
    setting.number = attack + "~setting.number~";
    for (const auto& name : paper_names()) {
        const bool is_visit = name == "look";
        const auto paper =
            make_paper(name, is_visit ? visited : job, is_visit ? visit_judged : judged, setting);
        CAPTURE(name, attack);
        REQUIRE(paper.ok());
        papers.push_back(*paper);
    }
    return papers;
}

// An address is set line by line without the blanks round them, and an attribute of a page has one line: of an attack with
// several the last is looked for.
std::string last_line(const std::string& attack) {
    return std::string(trimmed(std::string_view(attack).substr(attack.rfind('\n') + 1)));
}

// Every text in a value, one after the other.
void gather(const entry::Value& value, std::string& all) {
    if (value.text() != nullptr) all += *value.text() + '\x1F';
    if (value.list() != nullptr)
        for (const auto& item : *value.list()) gather(item, all);
    if (value.map() != nullptr)
        for (const auto& member : *value.map()) gather(member.value, all);
}

} // namespace

TEST_CASE("nothing that anybody wrote becomes markup on any paper, and all of it can be read there") {
    std::set<std::string> seen;
    for (const auto& attack : test::written_attacks()) {
        for (const Document& paper : papers_under(attack)) {
            const auto page = test::read_page(render_html(paper, Words::english()));
            REQUIRE(page.strange == "");
            CHECK(test::torn(page.text, clean(last_line(attack))) == "");
            seen.merge(test::named_in(page.text));
        }
    }
    for (const char* name : {"firm.name",
                             "firm.address",
                             "person.name",
                             "open.ref",
                             "open.roof",
                             "site.customer",
                             "site.address",
                             "site.fragile_where",
                             "punch_add.text",
                             "punch_clear.why",
                             "decide.why",
                             "decide.decider",
                             "reopen.why",
                             "photo.shows",
                             "prices.terms",
                             "prices.cost",
                             "setting.number",
                             "gutter.drains_to",
                             "supplement.complaint",
                             "look.seen",
                             "look.cause_text",
                             "look.state_after",
                             "supplement_sign.customer"}) {
        INFO(name);
        CHECK(seen.contains(name));
    }
    CHECK(seen.size() > 30);
}

TEST_CASE("no cell of any paper is a formula to a spreadsheet") {
    for (const auto& attack : test::written_attacks()) {
        std::set<std::string> seen;
        for (const Document& paper : papers_under(attack)) {
            for (const auto& cell : test::cells_of(render_csv(paper, Words::english()))) {
                INFO(cell);
                CHECK_FALSE(test::would_be_worked_out(cell));
                seen.merge(test::named_in(cell));
            }
        }
        CHECK(seen.size() > 10);
    }
}

TEST_CASE("every paper as JSON can be read and holds what was written literally") {
    for (const auto& attack : test::written_attacks()) {
        std::set<std::string> seen;
        for (const Document& paper : papers_under(attack)) {
            const auto read = entry::read_json(render_json(paper));
            REQUIRE(read.ok());
            std::string all;
            gather(*read, all);
            INFO(attack);
            CHECK(test::torn(all, last_line(attack)) == "");
            seen.merge(test::named_in(all));
        }
        CHECK(seen.size() > 30);
    }
}

TEST_CASE("every paper as text holds no control character and nothing that turns the writing round") {
    for (const auto& attack : test::written_attacks()) {
        for (const Document& paper : papers_under(attack)) {
            const std::string text = render_text(paper, Words::english());
            CHECK_FALSE(has_control_characters(text));
            for (const char* turn : {"\xE2\x80\xAA", "\xE2\x80\xAB", "\xE2\x80\xAD", "\xE2\x80\xAE",
                                     "\xE2\x81\xA6", "\xE2\x81\xA7", "\xE2\x80\xA8", "\xE2\x80\xA9"})
                CHECK(text.find(turn) == std::string::npos);
        }
    }
}

TEST_CASE("the readers of this test see an attack when there is one") {
    const std::string good = "<p class=\"quiet\">a &amp; b</p>";
    CHECK(test::read_page(good).strange == "");
    CHECK(test::read_page(good).text == "quiet\x1F\x1F"
                                        "a & b\x1F");
    for (const char* bad :
         {"<script>x</script>", "<p onload=\"x\">", "<p class=x>", "<b>", "a > b", "a & b", "&nbsp;",
          "<img src=\"http://x\">", "<style>a</b></style>", "<p class=\"a<\">", "<p", "<!-- x -->"}) {
        INFO(bad);
        CHECK(test::read_page(bad).strange != "");
    }
    CHECK(test::cells_of("\xEF\xBB\xBF\"a\"\"b\",c\r\n\"d\ne\",'=1") ==
          std::vector<std::string>{"a\"b", "c", "d\ne", "'=1"});
    for (const char* bad : {"=1", "@x", "+a", "-1+2", "\t=1", "\r=1", "-"})
        CHECK(test::would_be_worked_out(bad));
    for (const char* fine : {"", "'=1", "-1.5", "+44", "a=1", " =1"})
        CHECK_FALSE(test::would_be_worked_out(fine));
    CHECK(test::torn("xx<b>~a.b~", "<b>") == "");
    CHECK(test::torn("xx<b>~a.b~ and ~a.b~", "<b>") == "a.b");
}
