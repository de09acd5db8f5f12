#include "paper/qr.h"

#include "entry/hash.h"
#include "paper/svg.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

const std::string kReceipt = "undersheet.receipt.1 " + std::string(64, 'a') + " " + std::string(64, 'b');

// Each dark module as '#', the quiet zone left off, worked out from the rectangles that were drawn.
std::vector<std::string> modules(const Drawing& drawing, double module_mm) {
    const auto side = static_cast<std::size_t>(drawing.width_mm / module_mm + 0.5) - 8;
    std::vector<std::string> rows(side, std::string(side, '.'));
    for (const Shape& shape : drawing.shapes) {
        const auto& path = std::get<Path>(shape);
        if (path.fill != Fill::ink) continue;
        const auto row = static_cast<std::size_t>(path.spots[0].y_mm / module_mm + 0.5) - 4;
        const auto from = static_cast<std::size_t>(path.spots[0].x_mm / module_mm + 0.5) - 4;
        const auto to = static_cast<std::size_t>(path.spots[2].x_mm / module_mm + 0.5) - 4;
        for (std::size_t x = from; x < to; ++x) rows.at(row).at(x) = '#';
    }
    return rows;
}

} // namespace

TEST_CASE("a receipt's code has its three finders, its timing and a light border") {
    const Drawing drawing = qr_drawing(kReceipt, "receipt");
    const auto rows = modules(drawing, 0.7);
    REQUIRE(rows.size() % 4 == 1); // 17 + 4 times the version, ISO/IEC 18004
    const std::size_t last = rows.size() - 7;
    for (const auto& [x, y] :
         std::vector<std::pair<std::size_t, std::size_t>>{{0, 0}, {last, 0}, {0, last}}) {
        CHECK(rows[y].substr(x, 7) == "#######");
        CHECK(rows[y + 1].substr(x, 7) == "#.....#");
        CHECK(rows[y + 3].substr(x, 7) == "#.###.#");
    }
    for (std::size_t x = 8; x < last - 1; ++x) CHECK(rows[6][x] == (x % 2 == 0 ? '#' : '.'));
    CHECK(drawing.width_mm == Approx(0.7 * static_cast<double>(rows.size() + 8)));
}

// The picture of this very drawing was scanned by an independent reader (zbarimg 0.23.92, `zbarimg --raw -q receipt.png`), which
// printed the receipt. Another drawing has to be scanned again before its digest may stand here.
TEST_CASE("the code is the one that an independent reader has read") {
    std::string all;
    for (const auto& row : modules(qr_drawing(kReceipt, "receipt"), 0.7)) all += row + "\n";
    CHECK(entry::short_name(entry::sha256(all)) == "ce24e395");
}

TEST_CASE("in the dark the code stays black on white") {
    const std::string page = svg(qr_drawing(kReceipt, "receipt")).written();
    CHECK(page.find("no-line paper\"") != std::string::npos);
    CHECK(page.find("no-line ink\"") != std::string::npos);
}
