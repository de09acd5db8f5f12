#include "paper/photographs.h"

#include "base/text.h"

namespace undersheet::paper {
namespace {

// One for each photograph; empty for one that was taken of no place on the plan.
std::vector<std::string> letters_of(const Making& making, const Photos& photos) {
    const bool has_plan = making.job.roof.polygon().size() >= 3;
    std::vector<std::string> letters;
    std::size_t given = 0;
    for (const job::Reading* photo : photos) {
        const bool is_on_it = has_plan && job::locate(making.job.roof, photo->place).has_value();
        letters.push_back(is_on_it ? small_letter(given++) : "");
    }
    return letters;
}

} // namespace

PlanAbout with_photographs(const Making& making, const Photos& photos, PlanAbout about) {
    const auto letters = letters_of(making, photos);
    std::map<std::string, std::vector<std::string>> by_place;
    for (std::size_t i = 0; i < photos.size(); ++i)
        if (!letters[i].empty()) by_place[entry::place_text(photos[i]->place)].push_back(letters[i]);
    if (by_place.empty()) return about;
    for (const auto& [place, there] : by_place) mark(making, place, joined(there, " "), about);
    about.add_note(making.say("plan.photographs_note"));
    return about;
}

void add_photographs(Making& making, const Photos& photos, std::string_view none_key) {
    making.heading("section.photographs");
    if (photos.empty()) return making.sentence(none_key);
    std::vector<Photograph> pictures = making.photographs(photos);
    const auto letters = letters_of(making, photos);
    for (std::size_t i = 0; i < pictures.size(); ++i) {
        std::string& caption = pictures[i].caption;
        if (!letters[i].empty())
            caption = making.say("photographs.lettered", {{"letter", letters[i]}, {"says", caption}});
    }
    making.paper.add(Photographs{std::move(pictures)});
    making.sentence("photographs.kept");
}

} // namespace undersheet::paper
