#include "paper/document.h"

#include <algorithm>
#include <utility>

namespace undersheet::paper {

Text::Text(std::string plain) { add(std::move(plain)); }

Text::Text(const char* plain) : Text(std::string(plain)) {}

Text& Text::add(std::string text, Weight weight) {
    if (!text.empty()) runs.push_back({std::move(text), weight});
    return *this;
}

bool Text::is_empty() const { return runs.empty(); }

std::string Text::words() const {
    std::string all;
    for (const Run& run : runs) all += run.text;
    return all;
}

Text strong(std::string text) { return Text().add(std::move(text), Weight::strong); }

Text struck(std::string text) { return Text().add(std::move(text), Weight::struck); }

Document& Document::add(Block block) {
    blocks.push_back(std::move(block));
    return *this;
}

Document& Document::heading(std::string text, int level) { return add(Heading{level, std::move(text)}); }

Document& Document::paragraph(Text text) { return add(Paragraph{std::move(text)}); }

} // namespace undersheet::paper
