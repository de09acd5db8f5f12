#include "paper/papers.h"

#include "tests/paper/troubled_roof.h"

using namespace undersheet;
using namespace undersheet::paper;

namespace {

struct Made {
    job::Job job;
    job::Judgement judgement;
};

Made made(const test::Site& site, const std::string& now) {
    Made both{site.fold(now), {}};
    both.judgement = job::judge(both.job, test::default_method(), test::default_kinds());
    return both;
}

} // namespace

TEST_CASE("every paper is written in every format, of an empty job too") {
    const auto empty = made(test::Site(), "09:00");
    for (const std::string& name : paper_names())
        for (const std::string& format : paper_formats()) {
            CAPTURE(name, format);
            const auto written = write_paper(name, format, empty.job, empty.judgement, test::test_setting());
            if (name == "order" || name == "offer") {
                CHECK(written.fault().code == Code::prices_malformed);
                continue;
            }
            if (name == "look") { // nobody came back
                CHECK(written.fault().code == Code::record_too_thin);
                continue;
            }
            if (format == "ics") { // no day to come before there is a guarantee
                CHECK(written.fault().code == Code::record_too_thin);
                continue;
            }
            REQUIRE(written.ok());
            CHECK(written->size() > (format == "csv" ? 50 : 500));
        }
}

TEST_CASE("a paper or a format there is none of is refused with those there are") {
    const auto empty = made(test::Site(), "09:00");
    const auto paper = write_paper("receipt", "html", empty.job, empty.judgement, test::test_setting());
    CHECK(paper.fault().code == Code::paper_unknown);
    CHECK(one_line(paper.fault()) == "there is no paper 'receipt'; inspection, stages, punch, completion, "
                                     "care, office, look, order, offer");
    const auto format = write_paper("punch", "doc", empty.job, empty.judgement, test::test_setting());
    CHECK(format.fault().code == Code::format_unknown);
#ifdef UNDERSHEET_PDF
    CHECK(one_line(format.fault()) == "a paper is not written as 'doc'; html, txt, json, csv, ics, pdf");
#else
    CHECK(one_line(format.fault()) == "a paper is not written as 'doc'; html, txt, json, csv, ics");
#endif
}

TEST_CASE("the same job gives the same bytes") {
    const auto first = made(test::troubled_roof(), test::kHandedOver);
    const auto again = made(test::troubled_roof(), test::kHandedOver);
    for (const std::string name : {"inspection", "stages", "punch", "completion"})
        CHECK(*write_paper(name, "html", first.job, first.judgement, test::test_setting()) ==
              *write_paper(name, "html", again.job, again.judgement, test::test_setting()));
}

TEST_CASE("a paper is filled with the pictures it is handed, in their own kind") {
    const auto roof = made(test::troubled_roof(), test::kHandedOver);
    auto setting = test::test_setting();
    setting.picture = [](std::string_view sha256) { return sha256.front() == 'a' ? "bytes" : ""; };
    const std::string page = *write_paper("completion", "html", roof.job, roof.judgement, setting);
    CHECK(page.find("<img src=\"data:image/png;base64,Ynl0ZXM=\" alt=\"(a) a proud head, 1.20 m along AB") !=
          std::string::npos);
    CHECK(page.find("is not at hand here") != std::string::npos);
}
