// The built program, started as a person starts it: words in, two streams and an exit code out.
//
// UNDERSHEET_PROGRAM names it. The environment is emptied of everything the program listens to, then set by the test.
#pragma once

#include "tests/support/temp_folder.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <sys/wait.h>

namespace undersheet {

struct Ran {
    int code = -1;
    std::string out, err;
    // How many lines the messages are.
    [[nodiscard]] std::size_t message_lines() const {
        return static_cast<std::size_t>(std::count(err.begin(), err.end(), '\n'));
    }
    [[nodiscard]] bool says(const std::string& words) const { return err.find(words) != std::string::npos; }
    [[nodiscard]] bool shows(const std::string& words) const { return out.find(words) != std::string::npos; }
};

class Program {
public:
    explicit Program(std::string clock = "2026-06-11T09:00:00+01:00") : clock_(std::move(clock)) {}

    // `words` are shell words: quote what has blanks. `before` stands before the program: "yes |", "ulimit -f 8;".
    [[nodiscard]] Ran run(const std::string& words, const std::string& before = {}) const {
        const std::string out = file("stdout"), err = file("stderr");
        return shell(before + " " + command(words) + " >" + out + " 2>" + err, out, err);
    }
    // As run(), for a whole line of the shell; $U is the program.
    [[nodiscard]] Ran pipe(const std::string& line) const {
        const std::string out = file("stdout"), err = file("stderr");
        return shell("U='" + command("") + "'; { " + line + "; } >" + out + " 2>" + err, out, err);
    }
    // A book with two people and one job.
    void start() const {
        REQUIRE(run("start roofs.book --firm 'Pell & Daughter'").code == 0);
        REQUIRE(run("people add 'Isolde Pell' --role installer --initials IP").code == 0);
        REQUIRE(run("people add 'Wren Pell' --role installer --initials WP --by IP").code == 0);
        REQUIRE(run("jobs new A-07 --roof 'small dormer' --by IP").code == 0);
    }
    // The edges of a roof with four corners: gutter, two kerbs, wall.
    void survey() const {
        REQUIRE(run("record edge kind=gutter --at AB --by IP").code == 0);
        REQUIRE(run("record edge kind=kerb --at BC --by IP").code == 0);
        REQUIRE(run("record edge kind=wall --at CD --by IP").code == 0);
        REQUIRE(run("record edge kind=kerb --at DA --by IP").code == 0);
    }
    void set_clock(std::string clock) { clock_ = std::move(clock); }
    [[nodiscard]] std::string file(const std::string& name) const { return folder_.file(name); }
    [[nodiscard]] std::string book() const { return bytes_of_file(file("roofs.book")); }

private:
    [[nodiscard]] std::string command(const std::string& words) const {
        return "env -u UNDERSHEET_BY -u NO_COLOR UNDERSHEET_CLOCK=" + clock_ +
               " UNDERSHEET_BOOK=" + file("roofs.book") + " XDG_DATA_HOME=" + folder_.path() + " " +
               UNDERSHEET_PROGRAM + " " + words;
    }
    [[nodiscard]] Ran shell(const std::string& line, const std::string& out, const std::string& err) const {
        const int status = std::system(("cd " + folder_.path() + " && " + line).c_str());
        return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, bytes_of_file(out), bytes_of_file(err)};
    }

    TempFolder folder_;
    std::string clock_;
};

} // namespace undersheet
