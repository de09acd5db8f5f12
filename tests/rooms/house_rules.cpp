#include "tests/rooms/house_rules.h"

#include "base/text.h"

#include <algorithm>
#include <array>
#include <fstream>
#include <map>
#include <optional>
#include <set>
#include <string_view>

namespace undersheet::house {

namespace fs = std::filesystem;
using Words = std::set<std::string, std::less<>>;

namespace {

// A room includes its own files and rooms of a lower rank.
const std::map<std::string, int, std::less<>> kRank = {
    {"base", 0},   {"schema", 0}, {"trade", 1}, {"entry", 1}, {"picture", 1}, {"pdf", 2},
    {"method", 2}, {"job", 3},    {"book", 3},  {"paper", 4}, {"desk", 5},    {"capi", 6},
};

// The command line, and whoever installs the library, see only these.
const Words kSeenByCli = {"desk", "base", "cli"};
const Words kInstalled = {"desk", "capi", "base"};

// Other people's libraries, by how their headers begin, and the rooms that may use them.
struct Library {
    std::string_view begins;
    Words rooms;
    bool in_headers;
};
const std::vector<Library> kLibraries = {
    {"Eigen/", {"trade"}, false},
    {"nlohmann/", {"entry", "method", "job", "book", "paper", "desk", "capi"}, false},
    {"sodium", {"entry", "book"}, false},
    {"SQLiteCpp/", {"book"}, true},
    {"sqlite3.h", {"book"}, true},
    {"turbojpeg.h", {"picture"}, false},
    {"zlib", {"pdf"}, false},
    {"CLI/", {"cli"}, true},
};

// Words that betray a dependency the room has sworn off.
struct SwornOff {
    std::string_view word;
    Words rooms;
    std::string_view why;
};
const std::vector<SwornOff> kSwornOff = {
    {"system_clock",
     {"base", "trade", "picture", "pdf", "method", "job", "paper"},
     "the time comes from outside"},
    {"steady_clock",
     {"base", "trade", "picture", "pdf", "method", "job", "paper"},
     "the time comes from outside"},
    {"std::time(",
     {"base", "trade", "picture", "pdf", "method", "job", "paper"},
     "the time comes from outside"},
    {"<fstream>", {"base", "trade", "picture", "pdf", "entry", "job"}, "files are read elsewhere"},
    {"<filesystem>", {"base", "trade", "picture", "pdf", "entry", "job"}, "files are read elsewhere"},
    {"<thread>",
     {"base", "trade", "entry", "picture", "pdf", "method", "job", "paper"},
     "nothing here runs by itself"},
    {"<iostream>",
     {"base", "trade", "entry", "picture", "pdf", "method", "job", "book", "paper", "desk", "capi"},
     "only cli prints"},
};

constexpr std::array<std::string_view, 7> kSqlBegins = {
    "select ", "insert into ", "delete from ", "create table ", "create index ", "update ", "pragma ",
};

const Words kTopLevel = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "LICENSE", "lib",  "cli",
                         "schema",         "tests",     "fixtures",      "docs",    "build"};

constexpr std::size_t kHeaderLines = 300;
constexpr std::size_t kSourceLines = 500;
constexpr std::size_t kTestLines = 300;

struct File {
    std::string path; // from the top of the tree
    std::string room; // trade, or cli
    bool is_header = false;
    bool is_face = false; // a header that others see: reached from the desk's, the C interface's or from cli
};

std::string room_of_include(std::string_view included) {
    return std::string(included.substr(0, included.find('/')));
}

std::string with_rank(const std::string& room) {
    const auto found = kRank.find(room);
    return found == kRank.end() ? room : room + " [" + std::to_string(found->second) + "]";
}

std::optional<std::string> edge_offence(const File& from, const std::string& included) {
    const auto to = room_of_include(included);
    const auto refused = with_rank(from.room) + " may not include " + with_rank(to) + " (" + included + ")";
    if (from.room == "cli") return kSeenByCli.contains(to) ? std::nullopt : std::optional(refused);
    if (!kRank.contains(to)) return "\"" + included + "\" names no room";
    if (from.is_face && !kInstalled.contains(to))
        return refused + ": installed headers reach this one, and not " + to;
    if (to == from.room || kRank.at(to) < kRank.at(from.room)) return std::nullopt;
    return refused;
}

std::optional<std::string> library_offence(const File& from, const std::string& included) {
    for (const auto& library : kLibraries) {
        if (!included.starts_with(library.begins)) continue;
        if (!library.rooms.contains(from.room)) return from.room + " may not use <" + included + ">";
        if (from.is_header && !library.in_headers) return "<" + included + "> may not stand in a header";
    }
    return std::nullopt;
}

// The name between the quotes or brackets of an include line; empty when it is none.
std::string included_by(std::string_view line, char opens, char closes) {
    if (!line.starts_with("#include")) return {};
    const auto open = line.find(opens);
    const auto close = open == line.npos ? open : line.find(closes, open + 1);
    return close == line.npos ? std::string() : std::string(line.substr(open + 1, close - open - 1));
}

std::optional<std::string> include_offence(const File& from, std::string_view line) {
    if (const auto ours = included_by(line, '"', '"'); !ours.empty()) return edge_offence(from, ours);
    return library_offence(from, included_by(line, '<', '>'));
}

std::optional<std::string> sworn_off_offence(const File& from, std::string_view line) {
    for (const auto& row : kSwornOff)
        if (row.rooms.contains(from.room) && line.find(row.word) != line.npos)
            return from.room + " does without " + std::string(row.word) + ": " + std::string(row.why);
    return std::nullopt;
}

std::optional<std::string> sql_offence(const File& from, std::string_view line) {
    if (from.room == "book") return std::nullopt;
    const auto lower = lower_ascii(line);
    for (const auto word : kSqlBegins)
        for (const std::string open : {"\"", "r\"("})
            if (lower.find(open + std::string(word)) != lower.npos) return "SQL belongs in lib/book";
    return std::nullopt;
}

std::vector<std::string> lines_of(const fs::path& path) {
    std::ifstream in(path);
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

std::size_t most_lines(const std::string& path) {
    if (path.starts_with("tests/")) return kTestLines;
    return path.ends_with(".h") ? kHeaderLines : kSourceLines;
}

void judge_size(const std::string& path, std::size_t lines, std::vector<Offence>& offences) {
    const auto most = most_lines(path);
    if (lines > most)
        offences.push_back({path, 0, std::to_string(lines) + " lines, at most " + std::to_string(most)});
}

void judge_lines(const File& file, const std::vector<std::string>& lines, std::vector<Offence>& offences) {
    for (std::size_t at = 0; at < lines.size(); ++at) {
        const auto line = trimmed(lines[at]);
        if (line.starts_with("//")) continue;
        for (const auto judge : {include_offence, sworn_off_offence, sql_offence})
            if (const auto what = judge(file, line)) offences.push_back({file.path, at + 1, *what});
    }
}

// lib/trade/air.h lies in trade, cli/main.cpp in cli; a test belongs to no room.
File placed(const std::string& path, const Words& faces) {
    const auto pieces = split(path, '/');
    const auto room = pieces.front() == "lib" && pieces.size() > 2 ? pieces[1] : pieces.front();
    return {path, room, path.ends_with(".h"), faces.contains(path)};
}

std::vector<std::string> sources_under(const fs::path& tree, const std::string& folder) {
    std::vector<std::string> paths;
    if (!fs::exists(tree / folder)) return paths;
    for (const auto& item : fs::recursive_directory_iterator(tree / folder)) {
        const auto extension = item.path().extension();
        if (extension == ".h" || extension == ".cpp")
            paths.push_back(item.path().lexically_relative(tree).generic_string());
    }
    std::sort(paths.begin(), paths.end());
    return paths;
}

// Adds that header and every header of ours that it reaches.
void reach(const fs::path& tree, const std::string& path, Words& reached) {
    if (!fs::exists(tree / path) || !reached.insert(path).second) return;
    for (const auto& line : lines_of(tree / path))
        if (const auto ours = included_by(line, '"', '"'); !ours.empty()) reach(tree, "lib/" + ours, reached);
}

Words faces_of(const fs::path& tree) {
    Words faces;
    reach(tree, "lib/desk/desk.h", faces);
    for (const auto& header : sources_under(tree, "lib/capi"))
        if (header.ends_with(".h")) reach(tree, header, faces);
    for (const auto& source : sources_under(tree, "cli"))
        for (const auto& line : lines_of(tree / source))
            reach(tree, "lib/" + included_by(line, '"', '"'), faces);
    erase_if(faces, [](const auto& path) {
        return !path.starts_with("lib/desk/") && !path.starts_with("lib/capi/");
    });
    return faces;
}

void judge_top_level(const fs::path& tree, std::vector<Offence>& offences) {
    for (const auto& item : fs::directory_iterator(tree)) {
        const auto name = item.path().filename().string();
        if (!name.starts_with(".") && !kTopLevel.contains(name))
            offences.push_back({name, 0, "the top level is fixed, and this is not on it"});
    }
}

} // namespace

std::string text_of(const Offence& offence) {
    const auto line = offence.line == 0 ? "" : ":" + std::to_string(offence.line);
    return offence.file + line + ": " + offence.what;
}

std::vector<Offence> offences_in(const fs::path& tree) {
    std::vector<Offence> offences;
    judge_top_level(tree, offences);
    const auto faces = faces_of(tree);
    for (const std::string folder : {"lib", "cli", "tests"}) {
        for (const auto& path : sources_under(tree, folder)) {
            const auto lines = lines_of(tree / path);
            judge_size(path, lines.size(), offences);
            if (folder != "tests") judge_lines(placed(path, faces), lines, offences);
        }
    }
    return offences;
}

} // namespace undersheet::house
