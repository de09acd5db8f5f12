// The pages of a damaged book. The input is laid over a whole one from its second page on (so that pages that look like pages
// come up at once), and is then a file of its own.
#include "book/pages.h"
#include "tests/fuzz/targets.h"
#include "tests/support/books.h"

namespace undersheet::fuzz {
namespace {

constexpr std::size_t kPageBytes = 4096;
constexpr std::size_t kMostPagesBytes = 1U << 16U;

const std::string& whole_book() {
    static const std::string bytes = [] {
        Shelf shelf;
        good(shelf.start().append({open_draft(kJob, "A-1"), site_draft("Mrs Ada Pell"), air_draft()}));
        return bytes_of_file(shelf.path());
    }();
    return bytes;
}

// No more is read out of a file than was in it, a few times over.
void read_pages(std::string_view file) {
    std::size_t told = 0;
    book::each_row_of_pages(file, [&](const book::PageRow& row) {
        promise(!row.empty(), "a row without values");
        for (const auto& value : row) told += value.bytes.size();
    });
    promise(told <= 16 * file.size(), "more was read than is there");
}

} // namespace

void read_damaged_pages(std::string_view bytes) {
    const auto part = bytes.substr(0, kMostPagesBytes);
    read_pages(part);
    std::string laid_over = whole_book();
    laid_over.replace(kPageBytes, std::min(part.size(), laid_over.size() - kPageBytes), part);
    read_pages(laid_over);
}

} // namespace undersheet::fuzz
