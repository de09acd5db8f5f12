#include "paper/frame.h"

#include "tests/paper/troubled_roof.h"

using namespace undersheet;
using namespace undersheet::paper;

namespace {

Document framed_at(const test::Site& site, const std::string& now) {
    return framed("Deck inspection", site.fold(now), test::test_setting());
}

} // namespace

TEST_CASE("the head names firm, job, roof, customer and the day the paper speaks of") {
    const Head head = framed_at(test::roof_being_inspected(), test::kFirstMorning).head;
    CHECK(head.firm == "Harrow & Finch");
    CHECK(head.firm_phone == "01632 960145");
    CHECK(head.job == "HF-12");
    CHECK(head.roof == "back extension");
    CHECK(head.customer == "Mrs Odile Ferring");
    CHECK(head.customer_address == "9 Tanners Row\nMarlow Wick\nZZ3 4AB");
    CHECK(head.name == "Deck inspection");
    CHECK(head.date == "20 May 2026");
}

TEST_CASE("the foot carries seven cautions, what the paper is not, the program and the method") {
    const Foot foot = framed_at(test::roof_being_inspected(), test::kFirstMorning).foot;
    CHECK(foot.cautions.size() == 7);
    CHECK(foot.standing == "Evidence of what was done; not a design, not a substitute for competence.");
    CHECK(foot.made_with.find("undersheet test") != std::string::npos);
    CHECK(foot.made_with.find(entry::short_name(test::default_method().hash())) != std::string::npos);
}

TEST_CASE("the check value is the digest over the entries up to that time, in their order") {
    const test::Site site = test::roof_being_inspected();
    std::vector<entry::Hash> names;
    for (const entry::Entry& entry : site.entries()) names.push_back(entry.hash);
    CHECK(framed_at(site, test::kFirstMorning).foot.check_value == entry::hash_text(entry::digest_of(names)));
    CHECK(framed_at(site, "08:00").foot.check_value != framed_at(site, test::kFirstMorning).foot.check_value);
}

TEST_CASE("a customer whose data were erased is printed as erased") {
    test::Site site = test::roof_being_inspected();
    for (const entry::Entry& entry : site.entries()) {
        if (entry.kind != "site") continue;
        auto& erased = const_cast<entry::Entry&>(entry); // the site hands its entries out read-only
        erased.personal.clear();
        erased.data.set("customer", entry::Value().set("cid", std::string(64, 'a')));
    }
    CHECK(framed_at(site, test::kFirstMorning).head.customer == "(erased)");
}
