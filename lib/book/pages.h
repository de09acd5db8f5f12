// Reads rows straight out of the pages of a database file that SQLite itself gives up on.
//
// Each page is looked at by itself: what stands on a page that is whole is found, whatever happened to the pages that lead to
// it. Nothing says which table a row was of; who asks knows its rows by their shape, and believes none of them.
// Promises: no page, however it looks, is read beyond the file, and none takes longer than its size warrants.
// Source: "Database File Format", sqlite.org/fileformat2.html, sections 1.3, 1.6 and 2.1.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace undersheet::book {

struct PageValue {
    enum class Sort { nothing, number, text, bytes };
    Sort sort = Sort::nothing; // a number that is not whole is nothing to us
    std::int64_t number = 0;
    std::string bytes = {}; // of text too
};
using PageRow = std::vector<PageValue>;

// Every row that can be read to its end, page by page; one that stands twice is told twice.
void each_row_of_pages(std::string_view file, const std::function<void(const PageRow&)>& row);

} // namespace undersheet::book
