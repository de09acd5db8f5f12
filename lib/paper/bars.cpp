#include "paper/bars.h"

#include "base/text.h"

#include <algorithm>
#include <map>

namespace undersheet::paper {
namespace {

// In mm on paper; 176 is what A4 leaves between its margins.
constexpr double kBarsLeft = 24; // for "2 × 2500"
constexpr double kBarHeight = 6.5, kRowHeight = 10;
constexpr double kLabelSize = 3, kDown = 4.3; // from the top of a bar to the line its letters stand on
constexpr double kLetterWidth = 0.55;         // of the label size: the middling width of letters and figures
constexpr double kAir = 2;                    // round a label

struct Piece {
    std::int64_t mm = 0;
    std::string edge;
    friend bool operator==(const Piece& a, const Piece& b) { return a.mm == b.mm && a.edge == b.edge; }
};

struct DrawnBar {
    std::int64_t stock_mm = 0;
    std::vector<Piece> pieces;
    std::int64_t left_mm = 0;
    int count = 1;
};

// The bars know lengths only; equal pieces are the same piece to a saw, so the next run that needs one has it.
std::vector<DrawnBar> with_edges(const job::TrimCuts& cuts) {
    std::multimap<std::int64_t, std::string> edges;
    for (const auto& run : cuts.runs)
        for (const std::int64_t piece : run.pieces_mm) edges.emplace(piece, run.edge);
    std::vector<DrawnBar> bars;
    for (const auto& bar : cuts.bars) {
        DrawnBar& drawn = bars.emplace_back(DrawnBar{bar.stock_mm, {}, bar.left_mm});
        for (const std::int64_t piece : bar.pieces_mm) {
            const auto found = edges.find(piece);
            drawn.pieces.push_back({piece, found == edges.end() ? "" : found->second});
            if (found != edges.end()) edges.erase(found);
        }
    }
    return bars;
}

std::vector<DrawnBar> alike_once(const std::vector<DrawnBar>& bars) {
    std::vector<DrawnBar> rows;
    for (const DrawnBar& bar : bars) {
        const auto same = std::find_if(rows.begin(), rows.end(), [&](const DrawnBar& row) {
            return row.stock_mm == bar.stock_mm && row.pieces == bar.pieces;
        });
        if (same == rows.end())
            rows.push_back(bar);
        else
            ++same->count;
    }
    return rows;
}

std::string stock_words(const DrawnBar& bar, const Words& words) {
    return words.say("bars.stock", {{"n", std::to_string(bar.count)}, {"mm", std::to_string(bar.stock_mm)}});
}

std::string piece_words(const Piece& piece, const Words& words) {
    return words.say("bars.piece", {{"mm", std::to_string(piece.mm)}, {"edge", piece.edge}});
}

std::string left_words(const DrawnBar& bar, const Words& words) {
    return words.say("bars.left", {{"mm", std::to_string(bar.left_mm)}});
}

std::string row_words(const DrawnBar& bar, const Words& words) {
    std::vector<std::string> pieces;
    for (const Piece& piece : bar.pieces) pieces.push_back(piece_words(piece, words));
    if (bar.left_mm > 0) pieces.push_back(left_words(bar, words));
    return words.say("bars.row", {{"stock", stock_words(bar, words)}, {"pieces", joined(pieces, " | ")}});
}

double room_of(const std::string& text) {
    return static_cast<double>(character_count(text)) * kLabelSize * kLetterWidth + kAir;
}

class BarDrawer {
public:
    BarDrawer(Drawing& drawing, double mm_of_one, const Words& words)
        : drawing_(drawing), scale_(mm_of_one), words_(words) {}

    void row(const DrawnBar& bar) {
        drawing_.label({0, top_ + kDown}, stock_words(bar, words_), Anchor::start, kLabelSize);
        double x = kBarsLeft;
        for (const Piece& piece : bar.pieces) x = box(x, piece.mm, piece_words(piece, words_), Stroke::line);
        // The saw's part is too thin to draw; what is left stands at the end of the bar.
        const double end = kBarsLeft + static_cast<double>(bar.stock_mm) * scale_;
        x = end - static_cast<double>(bar.left_mm) * scale_;
        if (bar.left_mm > 0) box(x, bar.left_mm, left_words(bar, words_), Stroke::dashed);
        top_ += kRowHeight;
    }

private:
    // Gives where the next one begins. A label too long for its box is left to the words under the drawing.
    double box(double x, std::int64_t length_mm, const std::string& text, Stroke stroke) {
        const double wide = static_cast<double>(length_mm) * scale_;
        const Fill fill = stroke == Stroke::dashed ? Fill::none : Fill::tint;
        drawing_.rectangle({x, top_}, wide, kBarHeight, stroke, fill);
        if (room_of(text) <= wide)
            drawing_.label({x + wide / 2, top_ + kDown}, text, Anchor::middle, kLabelSize);
        return x + wide;
    }

    Drawing& drawing_;
    double scale_;
    const Words& words_;
    double top_ = 1;
};

} // namespace

Drawing bars_drawing(const job::TrimCuts& cuts, std::string title, const Words& words) {
    const auto bars = alike_once(with_edges(cuts));
    Drawing drawing{std::move(title), kFullDrawing_mm, kRowHeight * static_cast<double>(bars.size())};
    std::int64_t longest_mm = 1;
    for (const DrawnBar& bar : bars) longest_mm = std::max(longest_mm, bar.stock_mm);
    BarDrawer drawer(drawing, (kFullDrawing_mm - kBarsLeft - 1) / static_cast<double>(longest_mm), words);
    for (const DrawnBar& bar : bars) {
        drawer.row(bar);
        drawing.words.push_back(row_words(bar, words));
    }
    return drawing;
}

} // namespace undersheet::paper
