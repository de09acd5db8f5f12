// The days to come, as a calendar takes them.
#include "paper/reminders.h"

#include "base/text.h"
#include "paper/care.h"
#include "paper/guarantee.h"
#include "paper/papers.h"
#include "tests/paper/troubled_roof.h"

#include <algorithm>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

Guarantee guarantee(const char* from, int years) { return {*entry::parse_date(from), years, "", nullptr}; }

Document care_of(const test::Site& site, const std::string& now) {
    const auto job = site.fold(now);
    return care(job, job::judge(job, test::default_method(), test::default_kinds()), test::test_setting());
}

std::string calendar(const Document& document) {
    const auto written = render_ics(document, Words::english());
    REQUIRE(written.ok());
    return *written;
}

// A document with one day in it.
Document with_day(const std::string& what, const std::string& more) {
    Document document;
    document.reminders.push_back({"a-look-1@undersheet.invalid",
                                  {2027, 6, 11},
                                  *entry::parse_time("2026-06-11T15:05:00+01:00"),
                                  what,
                                  more});
    return document;
}

} // namespace

TEST_CASE("a guarantee of ten years from 11 June ends with 10 June, and the first look is due a year on") {
    const auto ten = guarantee("2026-06-11", 10);
    CHECK(entry::date_text(ten.last_day()) == "2036-06-10");
    CHECK(entry::date_text(ten.look_due(1)) == "2027-06-11");
    CHECK(entry::date_text(guarantee("2026-01-01", 1).last_day()) == "2026-12-31");
}

TEST_CASE("a guarantee from a 29 February has its looks on the 28th, and on the 29th where there is one") {
    const auto leap = guarantee("2028-02-29", 10);
    CHECK(entry::date_text(leap.look_due(1)) == "2029-02-28");
    CHECK(entry::date_text(leap.look_due(4)) == "2032-02-29");
    CHECK(entry::date_text(leap.last_day()) == "2038-02-28");
    CHECK(entry::date_text(guarantee("2028-02-29", 4).last_day()) == "2032-02-28");
}

TEST_CASE(
    "the care paper of a handed-over roof has a look for every year and the last day of the guarantee") {
    const auto document = care_of(test::troubled_roof(), test::kHandedOver);
    const auto kept = guarantee_of(test::troubled_roof().fold(test::kHandedOver));
    REQUIRE(kept.has_value());
    REQUIRE(document.reminders.size() == static_cast<std::size_t>(kept->years));
    CHECK(document.reminders.front().on == kept->look_due(1));
    CHECK(document.reminders.back().on == kept->last_day());
    const std::string text = calendar(document);
    CHECK(text.starts_with("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:"));
    CHECK(text.ends_with("END:VCALENDAR\r\n"));
    std::size_t events = 0;
    for (const auto& line : split(text, '\n')) events += line == "BEGIN:VEVENT\r" ? 1U : 0U;
    CHECK(events == document.reminders.size());
    CHECK(text == calendar(care_of(test::troubled_roof(), test::kHandedOver)));
}

TEST_CASE("the next look counts from the last yearly look that was done, or is the day its visit named") {
    const auto looked = [](const std::string& why, const std::string& data, bool is_signed = true) {
        auto site = test::troubled_roof();
        site.go_on_in(
            site.record("supplement", "2027-04-02T09:00:00+01:00", R"({"number":1,"why":")" + why + "\"}")
                .hash);
        site.record("look", "2027-04-02T09:10:00+01:00", data, "AB");
        if (is_signed) site.record("supplement_sign", "2027-04-02T09:50:00+01:00", "{}");
        site.go_on_in({});
        return care_of(site, "2027-04-03T09:00:00+01:00");
    };
    const auto says = [](const Document& paper, const std::string& words) {
        return test::words_of(paper).find(words) != std::string::npos;
    };
    const auto yearly = looked("yearly", R"({"seen":"all sound"})");
    CHECK(says(yearly, "The roof was last looked at on 2 April 2027."));
    CHECK(says(yearly, "The next look is due on 2 April 2028, then every year."));
    CHECK(yearly.reminders.front().on == entry::Date{2028, 4, 2});
    CHECK(yearly.reminders.front().uid.find("-look-2@") != std::string::npos); // moves the one a calendar has
    CHECK(yearly.reminders.back().on == entry::Date{2036, 5, 20});
    CHECK(yearly.reminders.size() == 10); // nine looks, 2028 to 2036, and the end
    CHECK(says(looked("call", R"({"seen":"a lifted patch","next_due":"2027-10-05"})"),
               "is due on 5 October 2027"));
    for (const auto& paper : {looked("call", R"({"seen":"a lifted patch"})"),
                              looked("yearly", R"({"seen":"all sound"})", false)}) {
        CHECK_FALSE(
            says(paper, "last looked at")); // a visit for a leak is no yearly look, nor is one not signed
        CHECK(says(paper, "is due on 21 May 2027"));
    }
}

TEST_CASE("a roof whose guarantee is not written down names no day, and says which papers will") {
    const auto document = care_of(test::Site().opened(), "09:00");
    CHECK(document.reminders.empty());
    const auto refused = render_ics(document, Words::english());
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::record_too_thin);
    CHECK(test::words_of(document).find("The first look is due a year after the guarantee begins") !=
          std::string::npos);
}

TEST_CASE("what people typed cannot become a line or a field of the calendar") {
    const std::string text = calendar(with_day("roof\nEND:VEVENT\r\nX:1", "a;b,c\\d\ne"));
    CHECK(text.find("SUMMARY:roof\\nEND:VEVENT\\nX:1\r\n") != std::string::npos);
    CHECK(text.find("DESCRIPTION:a\\;b\\,c\\\\d\\ne\r\n") != std::string::npos);
    CHECK(text.find("\r\nEND:VEVENT\r\nX:1") == std::string::npos);
}

TEST_CASE("lines are folded before the 76th byte, and never within a character") {
    for (const std::string piece : {"x", "é", "屋", "🛠"}) {
        for (std::size_t count = 10; count < 160; ++count) {
            std::string what;
            for (std::size_t i = 0; i < count; ++i) what += piece;
            const std::string text = calendar(with_day(what, ""));
            CHECK(is_utf8(text));
            for (const auto& line : split(text, '\n')) {
                CHECK(line.size() <= 76); // with its carriage return
                CHECK(is_utf8(line));
            }
            CHECK(replaced(text, "\r\n ", "").find("SUMMARY:" + what + "\r\n") != std::string::npos);
        }
    }
}

TEST_CASE("the time it was written is given in UTC, the day itself in no zone") {
    const std::string text = calendar(with_day("look", ""));
    CHECK(text.find("DTSTAMP:20260611T140500Z\r\n") != std::string::npos);
    CHECK(text.find("DTSTART;VALUE=DATE:20270611\r\n") != std::string::npos);
}
