#include "desk/language.h"

namespace undersheet::desk {

Result<const paper::Words*> words_for(std::string_view asked, const std::string& firms) {
    if (!asked.empty()) return paper::Words::of(asked);
    if (firms.empty()) return &paper::Words::english();
    auto words = paper::Words::of(firms);
    if (words) return words;
    Fault fault = words.fault(); // recorded by a later program
    fault.where = "the firm's language";
    fault.clears = "--language " + fault.clears;
    return fault;
}

} // namespace undersheet::desk
