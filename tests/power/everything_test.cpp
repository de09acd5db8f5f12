// The built program does everything it can do to a book, and the power is cut behind every step that it asked of the disk.
//
// UNDERSHEET_POWER_DEMO, for nights: every sort of image (with "turns" one behind each step), and then the whole demo job as
// fixtures/demo/job.sh types it.
#include "tests/power/cutting.h"
#include "tests/support/temp_folder.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <iostream>

using namespace undersheet;
using power::Step;

namespace {

const std::string kPhoto = std::string("\xFF\xD8\xFF\xE0", 4) + "the gutter";

// The program with the recorder in it, as a program of its own.
class Traced {
public:
    Traced() {
        std::filesystem::create_directories(folder());
        write_file(program(), "#!/bin/sh\nexec env -u UNDERSHEET_BY LD_PRELOAD=" UNDERSHEET_RECORDER
                              " UNDERSHEET_TRACE=" +
                                  trace() + " UNDERSHEET_TRACE_FOLDER=" + folder() +
                                  " " UNDERSHEET_PROGRAM " \"$@\"\n");
        std::filesystem::permissions(program(), std::filesystem::perms::owner_all);
    }
    [[nodiscard]] std::string folder() const { return folder_.file("work"); }
    [[nodiscard]] std::string trace() const { return folder_.file("trace"); }
    [[nodiscard]] std::string program() const { return folder_.file("traced"); }
    [[nodiscard]] std::string file(const std::string& name) const { return folder() + "/" + name; }

    // Shell lines; $U is the program at the time set last.
    void run(const std::string& lines) const {
        const std::string script = "set -e; export XDG_DATA_HOME=" + folder() + "; cd " + folder() +
                                   "; U=" + program() + "; " + lines;
        write_file(folder_.file("script"), script);
        const int status =
            std::system(("bash " + folder_.file("script") + " >" + folder_.file("said") + " 2>&1").c_str());
        INFO(bytes_of_file(folder_.file("said")));
        REQUIRE(status == 0);
    }
    [[nodiscard]] power::Cutting cutting() const {
        power::Cutting cutting;
        cutting.trace = trace();
        cutting.folder = folder();
        return cutting;
    }

private:
    TempFolder folder_;
};

// Every way of writing there is, on two phones: A and B are their books.
constexpr const char* kEverything = R"(
A="--book $PWD/a.book --by IP"; B="--book $PWD/b.book --by WP"
at() { export UNDERSHEET_CLOCK=2026-06-11T$1:00+01:00; }
at 08:00
$U start $PWD/a.book --firm 'Pell & Daughter'
$U people add 'Isolde Pell' --role installer --initials IP --book $PWD/a.book
$U people add 'Wren Pell' --role installer --initials WP $A
$U jobs new A-07 --roof 'small dormer' $A
$U record edge kind=wall --at CD $A
$U record site 'customer=Caspar Dunmoor' $A
$U photo $PWD/gutter.jpg --of AB --shows 'the gutter' $A
$U hand --all -o $PWD/all.hand --book $PWD/a.book
at 08:10
$U start $PWD/b.book --from $PWD/all.hand
$U record chase height_mm=165 --at CD+0.10 $A
$U record chase height_mm=140 --at CD+0.10 $B
$U photo $PWD/wall.jpg --of CD --shows 'the wall' $B
$U hand A-07 -o $PWD/b.hand --book $PWD/b.book
$U take $PWD/b.hand --book $PWD/a.book
item=$($U settle --book $PWD/a.book | grep -oE 'M[0-9a-f]{8}' | head -n 1)
side=$($U settle --book $PWD/a.book --json | grep -oE '"entry": "[0-9a-f]{64}' | head -n 1 | grep -oE '[0-9a-f]{64}')
at 08:20
$U settle $item --keep $side --why 'measured twice' $A
$U punch add 'scuff on the trim' --at BC --severity note $A
lost=$($U devices --book $PWD/a.book --json | grep -B5 '"this": false' | grep -oE '[0-9a-f]{32}' | head -n 1)
$U revoke $lost --why 'left on a train' $A
$U retention 12 --why 'guarantee and claims' $A
picture=$($U history --book $PWD/a.book --json | grep -B8 '"kind": "photo"' | grep -oE '"entry": "[0-9a-f]{64}' | head -n 1 | grep -oE '[0-9a-f]{8}' | head -n 1)
at 08:30
$U erase 'Caspar Dunmoor' --why 'asked by letter' --although 'was never a customer' --photo $picture $A
)";

// Typed once for all tests.
const Traced& everything() {
    static const Traced traced;
    static const bool is_typed = [] {
        write_file(traced.file("gutter.jpg"), kPhoto);
        write_file(traced.file("wall.jpg"), kPhoto + " and the wall");
        traced.run(kEverything);
        return true;
    }();
    REQUIRE(is_typed);
    return traced;
}

void type_the_demo(const Traced& traced) {
    traced.run("cd /; env UNDERSHEET=$U DRAW_PHOTO=" UNDERSHEET_DRAW_PHOTO " bash " UNDERSHEET_SOURCE_DIR
               "/fixtures/demo/job.sh " +
               traced.folder());
}

bool is_long_run() { return std::getenv("UNDERSHEET_POWER_DEMO") != nullptr; }
bool has_all_images() {
    return is_long_run() && std::getenv("UNDERSHEET_POWER_DEMO") != std::string("turns");
}

void cut(const power::Cutting& cutting) {
    const auto counted = power::cut_everywhere(cutting);
    std::cout << "power: " << counted.programs << " commands that write, " << counted.steps << " steps; "
              << counted.good << " of " << counted.images << " disks good (" << counted.looked
              << " files differ and were verified); seed " << cutting.seed << std::endl;
    INFO("seed " << cutting.seed << ": " << counted.first_bad);
    CHECK(counted.programs > 15);
    CHECK(counted.steps > 300);
    CHECK(counted.good == counted.images);
}

} // namespace

TEST_CASE("wherever the power is cut while a book is used in every way, nothing that was told is lost") {
    auto cutting = everything().cutting();
    cutting.seed = std::random_device{}();
    cutting.all_images = has_all_images();
    cut(cutting);
    if (!is_long_run()) return;
    const Traced demo;
    type_the_demo(demo);
    cutting = demo.cutting();
    cutting.seed = std::random_device{}();
    cutting.all_images = has_all_images();
    cut(cutting);
}

// The harness must find what is known to be weak, or it proves nothing.
TEST_CASE("the same cutting finds the loss when any sort of sync is left out") {
    const Traced& traced = everything();
    const std::vector<std::pair<std::string, power::LeftOut>> weak = {
        {"no sync of a book",
         [](const Step& step) { return step.kind == Step::Kind::sync && step.file.ends_with(".book"); }},
        {"no sync of a journal",
         [](const Step& step) { return step.kind == Step::Kind::sync && step.file.ends_with("-journal"); }},
        {"no sync of a folder",
         [&](const Step& step) { return step.kind == Step::Kind::sync && step.file == traced.folder(); }},
        {"no sync of a photograph", [](const Step& step) {
             return step.kind == Step::Kind::sync && step.file.find(".photos/") != step.file.npos;
         }}};
    for (const auto& [what, left_out] : weak) {
        auto cutting = traced.cutting();
        cutting.is_left_out = left_out;
        cutting.stop_at_bad = true;
        INFO(what);
        CHECK_FALSE(power::cut_everywhere(cutting).first_bad.empty());
    }
}
