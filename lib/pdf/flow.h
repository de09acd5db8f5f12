// Strips laid on pages, one under the other.
//
// Promises: a heading, or whatever else keeps what follows, is never the last thing on a page; a group that is kept whole is not parted
//   where it fits on a page; a table that goes on overleaf begins there with its header. What sinks to the foot of a page is not alone
//   on it, unless what comes before it leaves it no room on any. Nothing lies below the frame, unless one strip is higher than it.
// Threads: pure function.
#pragma once

#include "pdf/strips.h"

#include <optional>

namespace undersheet::pdf {

struct Group {
    Strips strips;
    double before_pt = 0; // air above it, not at the top of a page
    Strips lead = {}; // before it where it does not begin a page: the line that parts it from what is above
    bool is_whole = true;
    bool keeps_next = false;
    bool starts_page = false;
    bool sinks = false; // to the foot of its page, together with the end of what comes before it
    std::optional<std::size_t> header = {};
    int level = 0; // of its bookmark; 0 has none
    std::string title = {};
};

struct Story {
    std::vector<Group> groups;
    std::vector<Strips> headers; // of tables, for overleaf
};

struct Frame {
    double left_pt = 0, top_pt = 0, height_pt = 0;
};

struct Flowed {
    std::vector<Page> pages; // at least one
    std::vector<Bookmark> bookmarks;
};

[[nodiscard]] Flowed flowed(const Story& story, const Frame& frame);

} // namespace undersheet::pdf
