// A damaged book of a whole job: what the desk says of it, and that the new book can be worked with.
#include "desk/json.h"
#include "entry/json.h"
#include "method/json_schema.h"
#include "schema/embedded.h"
#include "tests/desk/desk_support.h"

using namespace undersheet;

namespace {

constexpr std::size_t kPageBytes = 4096;

std::string held_against_schema(const desk::SalvagedBook& salvaged) {
    const auto shape = good(entry::read_json(schema::salvage_schema_json()));
    const auto fits = method::check_shape(shape, good(entry::read_json(desk::json_of(salvaged))), "salvage");
    return fits ? "done" : one_line(fits.fault());
}

struct Job {
    Job() {
        test.survey();
        test.open_the_day();
        good(test.record("site", {"customer=Caspar Dunmoor"}));
        good(test.record("chase", {"height_mm=130"}, "CD+0.10"));
    }
    [[nodiscard]] std::string with_a_page_gone(const std::string& holds) const {
        std::string bytes = bytes_of_file(test.path());
        const auto at = bytes.find(holds);
        REQUIRE(at != std::string::npos);
        return bytes.replace(at / kPageBytes * kPageBytes, kPageBytes, std::string(kPageBytes, '\0'));
    }
    desk::SalvagedBook salvage(const std::string& bytes) {
        write_file(folder.file("damaged.book"), bytes);
        return good(desk::Desk::salvage({folder.file("damaged.book"), folder.file("new.book"), {}}));
    }
    desk::Desk salvaged() {
        return good(desk::Desk::open({folder.file("new.book"), "2026-06-12T08:00:00+01:00"}));
    }

    DeskTest test;
    TempFolder folder;
};

} // namespace

TEST_CASE("a book that is whole is salvaged with the same papers") {
    Job job;
    const auto said = job.salvage(bytes_of_file(job.test.path()));
    CHECK(said.whole);
    CHECK(held_against_schema(said) == "done");
    for (const std::string& paper : desk::paper_names()) {
        if (paper == "offer") continue; // needs prices
        CHECK(line_of(job.salvaged().paper({}, paper, "txt")) ==
              line_of(job.test.open().paper({}, paper, "txt")));
    }
    CHECK(good(job.salvaged().verify()).digest == good(job.test.open().verify()).digest);
}

TEST_CASE("of a job with a page gone the rest can be read, judged, verified and gone on with") {
    Job job;
    const auto said = job.salvage(job.with_a_page_gone("\"height_mm\":130"));
    CHECK_FALSE(said.whole);
    CHECK(held_against_schema(said) == "done");
    REQUIRE_FALSE(said.gaps.empty());
    REQUIRE(said.devices.size() == 1);
    CHECK(said.devices[0].entries < said.devices[0].written);
    auto desk = job.salvaged();
    CHECK(good(desk.verify()).entries == said.entries);
    CHECK(line_of(desk.findings({})) == "done");
    CHECK(line_of(desk.stages({})) == "done");
}

TEST_CASE("a page gone from the middle leaves a gap that verify goes on naming") {
    Job job;
    const auto said = job.salvage(job.with_a_page_gone("\"kind\":\"kerb\""));
    REQUIRE_FALSE(said.gaps.empty());
    const auto verified = good(job.salvaged().verify());
    REQUIRE_FALSE(verified.ok);
    for (const auto& fault : verified.faults) {
        INFO(fault.what);
        CHECK(fault.what.find("missing or was changed") != std::string::npos);
    }
}
