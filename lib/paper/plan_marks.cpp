#include "paper/plan.h"

#include "job/queries.h"
#include "paper/finding_items.h"

namespace undersheet::paper {

void PlanAbout::add_note(const std::string& more) { note += (note.empty() ? "" : " ") + more; }

void mark(const Making& making, const std::string& place, const std::string& text, PlanAbout& about) {
    const auto read = entry::parse_place(place);
    const auto at = read ? job::locate(making.job.roof, *read) : std::nullopt;
    if (!at) return;
    const std::string where = making.said.place(*read);
    about.marks.push_back({*at, text, making.say("plan.mark", {{"mark", text}, {"place", where}})});
}

std::string small_letter(std::size_t i) {
    constexpr std::size_t kLetters = 26;
    return (i < kLetters ? "" : small_letter(i / kLetters - 1)) +
           std::string(1, static_cast<char>('a' + i % kLetters));
}

PlanAbout plan_of_roof(const Making& making) {
    PlanAbout about{.title_key = "plan.roof"};
    add_patches_to(making, about);
    return about;
}

PlanAbout plan_of_boards(const Making& making) {
    PlanAbout about{.title_key = "plan.boards", .has_falls = false}; // the table has no places
    for (const job::Reading* board : making.job.all("board"))
        if (!board->label.empty()) mark(making, entry::place_text(board->place), board->label, about);
    return about;
}

PlanAbout plan_of_findings(const Making& making) {
    PlanAbout about{
        .title_key = "plan.findings", .note = making.say("plan.findings_note"), .has_falls = false};
    int number = 0;
    for (const job::Finding* finding : numbered(making))
        mark(making, finding->place, "(" + std::to_string(++number) + ")", about);
    return about;
}

PlanAbout plan_of_moisture(const Making& making) {
    PlanAbout about{.title_key = "plan.moisture",
                    .note = making.say("plan.moisture_note"),
                    .says_all = false,
                    .has_falls = false};
    for (const job::Reading* point : making.job.all("moisture"))
        if (point->number("reading_pct"))
            mark(making, entry::place_text(point->place), making.said.bare(*point, "reading_pct"), about);
    return about;
}

PlanAbout plan_of_levels(const Making& making) {
    PlanAbout about{.title_key = "plan.levels", .note = making.say("plan.levels_note"), .says_all = false};
    const auto run = job::latest_run(making.job);
    if (!run) return about;
    add_ponds_to(making, about);
    for (const auto& level : run->points)
        mark(making, entry::place_text(level.reading->place), making.said.bare(*level.reading, "z_mm"),
             about);
    return about;
}

} // namespace undersheet::paper
