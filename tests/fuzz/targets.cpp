#include "tests/fuzz/targets.h"

#include "base/text.h"

namespace undersheet::fuzz {

void promise_readable(const Fault& fault) {
    const std::string line = one_line(fault);
    promise(!line.empty(), "a refusal says nothing");
    promise(is_utf8(line), "a refusal is no text");
    promise(!has_control_characters(line) && line.find('\n') == std::string::npos,
            "a refusal is not one line");
}

const std::vector<Target>& targets() {
    static const std::vector<Target> kTargets = {
        {"strict", read_strict_form},  {"json", read_any_json},
        {"entry", read_an_entry},      {"catalogue", read_a_catalogue},
        {"method", read_a_method},     {"method_edit", read_an_edited_method},
        {"prices", read_prices},       {"lines", read_lines},
        {"forecast", read_a_forecast}, {"place", read_a_place},
        {"time", read_a_time},         {"decimal", read_a_decimal},
        {"reckon", reckon_anything},   {"fold", fold_anything},
        {"handed_over", take_a_file},  {"picture", read_a_picture},
        {"pages", read_damaged_pages},
    };
    return kTargets;
}

} // namespace undersheet::fuzz
