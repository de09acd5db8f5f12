#include "tests/desk/desk_support.h"

using namespace undersheet;

namespace {

// A roof taken over from paper, and so closed.
struct OldRoof : DeskTest {
    OldRoof() { good(open().open_job(by("IP"), {"B-02", "old kitchen roof", "", true, "2019-08-30"})); }

    Result<desk::SupplementLine> begin(const std::string& why, const std::string& when = "09:00") {
        return open().open_supplement(by("IP", when), {why, "drip by the window"});
    }
    Result<desk::Kept> look(const std::string& supplement = {}, const std::string& when = "09:10") {
        desk::Asked asked = by("IP", when);
        asked.supplement = supplement;
        return open().record(asked, {"look", "", "", {"seen=tape lifted at one corner"}});
    }
    Result<desk::Kept> sign(const desk::SupplementSign& how, const std::string& when = "09:30") {
        return open().sign_supplement(by("IP", when), how);
    }
    std::string paper(const char* name, const char* format = "txt") {
        return good(open().paper(by("IP", "12:00"), name, format)).bytes;
    }
};

} // namespace

TEST_CASE("a job that was handed over takes nothing more, and says which command does") {
    OldRoof roof;
    CHECK(
        line_of(roof.look()) ==
        "job B-02 is closed since the hand-over; undersheet supplement open --why yearly|call|claim|recall");
}

TEST_CASE("a supplement is for after the hand-over") {
    DeskTest test;
    CHECK(line_of(test.open().open_supplement(DeskTest::by("IP", "09:00"), {"call", ""})) ==
          "job A-07 is not handed over yet; record it on the job itself");
}

TEST_CASE("why somebody came back is one of four words") {
    OldRoof roof;
    CHECK(line_of(roof.begin("soon")) ==
          "supplement why: 'soon' is not one of its words; there are yearly, call, claim, recall");
    for (const char* why : {"yearly", "call", "claim", "recall"}) CHECK(roof.begin(why).ok());
}

TEST_CASE("what is recorded once a supplement is open belongs to it without being told") {
    OldRoof roof;
    const auto opened = good(roof.begin("call"));
    CHECK(opened.number == "1");
    CHECK(opened.complaint == "drip by the window");
    CHECK(good(roof.look()).job.supplement == "1");
    const auto lines = good(roof.open().supplements({}));
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].entries == 1);
    CHECK(lines[0].signed_at.empty());
    CHECK(good(roof.open().stages({})).job.supplement == "1");
    CHECK(good(roof.open().stages({.supplement = "0"})).job.supplement.empty());
}

TEST_CASE("a supplement is signed when what was seen is written and the customer signed or was not there") {
    OldRoof roof;
    good(roof.begin("call"));
    const auto held = good(roof.sign({}));
    REQUIRE(held.held_by.size() == 2);
    CHECK(held.held_by[0].why == "nothing is written of what was seen");
    CHECK(held.held_by[1].why == "the customer has not signed");
    good(roof.look());
    CHECK(good(roof.sign({}, "09:20")).held_by.size() == 1);
    const auto both = good(roof.sign({"Mrs Ebba Lorn", "by post"}, "09:21"));
    REQUIRE(both.held_by.size() == 1);
    CHECK(both.held_by[0].why == "the customer cannot sign and be away");
    const auto signed_off = good(roof.sign({"Mrs Ebba Lorn", ""}));
    REQUIRE(signed_off.is_kept());
    CHECK(signed_off.receipt.starts_with("undersheet.receipt.1 "));
    CHECK(good(roof.open().supplements({.supplement = "1"}))[0].signed_by == "Isolde Pell");
}

TEST_CASE("a signed supplement takes no more, and the next one has the next number") {
    OldRoof roof;
    good(roof.begin("call"));
    good(roof.look());
    REQUIRE(good(roof.sign({"", "sent on 12 June by letter"})).is_kept());
    CHECK(line_of(roof.look("1", "10:00")) ==
          "supplement 1 of job B-02 is signed; undersheet supplement open begins another");
    CHECK(line_of(roof.look("", "10:00")).starts_with("job B-02 is closed since the hand-over"));
    CHECK(good(roof.begin("yearly", "10:10")).number == "2");
    CHECK(good(roof.look("", "10:20")).job.supplement == "2");
}

TEST_CASE("where two supplements are open somebody has to say which") {
    OldRoof roof;
    good(roof.begin("call"));
    good(roof.begin("claim", "09:05"));
    CHECK(line_of(roof.look()) == "job B-02 is closed since the hand-over; say which: --supplement 1 or 2");
    CHECK(good(roof.look("2")).job.supplement == "2");
    CHECK(line_of(roof.look("3")) == "--supplement: job B-02 has no supplement '3'; there is 1, 2");
}

TEST_CASE("many lines fed at once go into the supplement they are fed for") {
    OldRoof roof;
    good(roof.begin("call"));
    good(roof.begin("claim", "09:05"));
    const std::string lines =
        R"({"kind":"look","by":"IP","when":"2026-06-11T09:20:00+01:00","data":{"seen":"dry"}})"
        "\n";
    desk::Asked asked;
    asked.supplement = "2";
    CHECK(good(roof.open().record_lines(asked, lines)).kept == 1);
    CHECK(good(roof.open().supplements({}))[1].entries == 1);
}

TEST_CASE("the papers of the first record say that there was a later visit and else what they said before") {
    OldRoof roof;
    const std::string stages = roof.paper("stages", "csv");
    CHECK(roof.paper("completion").find("Since the hand-over") == std::string::npos);
    good(roof.begin("call"));
    good(roof.look());
    CHECK(roof.paper("stages", "csv") == stages);
    CHECK(roof.paper("completion")
              .find("Supplement 1: the customer rang, begun 11 June 2026, 09:00, not signed yet") !=
          std::string::npos);
}

TEST_CASE("the paper of a visit is that of the open one, else of the last") {
    OldRoof roof;
    CHECK(
        line_of(roof.open().paper(DeskTest::by("IP"), "look", "txt")) ==
        "job B-02 has no supplement; undersheet supplement open --why yearly begins one after the hand-over");
    good(roof.begin("call"));
    good(roof.look());
    CHECK(roof.paper("look").find("Supplement 1: the customer rang") != std::string::npos);
    REQUIRE(good(roof.sign({"", "sent on 12 June by letter"})).is_kept());
    CHECK(roof.paper("look").find("Supplement 1: the customer rang") != std::string::npos);
    good(roof.begin("yearly", "10:10"));
    CHECK(roof.paper("look").find("Supplement 2: yearly look") != std::string::npos);
}

TEST_CASE("verify counts a supplement's entries like any other") {
    OldRoof roof;
    good(roof.begin("call"));
    good(roof.look());
    CHECK(good(roof.open().verify()).ok);
}
