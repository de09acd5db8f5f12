#include "base/text.h"
#include "cli/show.h"
#include "cli/verb.h"

namespace undersheet::cli {
namespace {

std::string device_words(const desk::SalvagedDeviceLine& line) {
    const std::string of = line.written > 0 ? std::to_string(line.entries) + " of " +
                                                  counted(line.written, "entry", "entries") + " it wrote"
                                            : counted(line.entries, "entry", "entries");
    return "device " + line.device.substr(0, 8) + ": " + of;
}

std::string gap_words(const desk::GapLine& gap) {
    const std::string where =
        gap.job.empty() ? "the firm's journal, or a job whose opening is lost" : "job " + gap.job;
    const std::string numbers = gap.from == gap.to
                                    ? "entry " + std::to_string(gap.from)
                                    : "entries " + std::to_string(gap.from) + " to " + std::to_string(gap.to);
    return where + ": " + numbers + " of device " + gap.device.substr(0, 8);
}

void show_missing(const desk::SalvagedBook& salvaged, Screen& screen) {
    const auto missing = [&](const std::string& what) { screen.set_in("  missing: ", what, Ink::red); };
    for (const auto& gap : salvaged.gaps) missing(gap_words(gap));
    if (salvaged.named > 0)
        missing(counted(salvaged.named, "entry", "entries") + " that other devices knew of");
    if (salvaged.missing_personal > 0)
        missing(counted(salvaged.missing_personal, "personal value", "personal values"));
    for (const auto& text : salvaged.missing_texts) missing("method or catalogue " + text.substr(0, 8));
    for (const auto& photo : salvaged.missing_photos) missing("photograph " + photo.substr(0, 8));
    if (salvaged.refused > 0)
        screen.set_in("  not taken: ",
                      counted(salvaged.refused, "entry that does not hold", "entries that do not hold"),
                      Ink::red);
}

void show_salvaged(const desk::SalvagedBook& salvaged, Screen& screen) {
    screen.set_in("", "Out of " + salvaged.file + ", a new book: " + salvaged.book, Ink::strong);
    screen.set_in("  ", counted(salvaged.entries, "entry", "entries") + ", " +
                            counted(salvaged.personal, "personal value", "personal values") + ", " +
                            counted(salvaged.texts, "method or catalogue", "methods and catalogues") + ", " +
                            counted(salvaged.photos, "photograph", "photographs"));
    for (const auto& device : salvaged.devices) screen.set_in("  ", device_words(device));
    show_missing(salvaged, screen);
    for (const auto& remark : salvaged.remarks) screen.set_in("  note: ", remark, Ink::yellow);
    if (salvaged.whole) screen.line("Nothing is known to be missing.", Ink::green);
    screen.set_in("next: ", salvaged.whole
                                ? "undersheet verify --book " + salvaged.book
                                : "undersheet take FILE --book " + salvaged.book +
                                      ", with what other devices or copies hand over, closes gaps");
}

int run_salvage(const Arguments& arguments, Screen& screen) {
    const auto salvaged =
        desk::Desk::salvage({arguments.one("DAMAGED"), arguments.one("-o"), arguments.all("--with")});
    if (!salvaged) return screen.refuse(salvaged.fault());
    if (arguments.has("--json"))
        screen.bytes(desk::json_of(*salvaged));
    else
        show_salvaged(*salvaged, screen);
    return 0;
}

} // namespace

std::vector<Verb> salvage_verbs() {
    return {{"salvage",
             "reads what is left of a damaged book into a new one, and says what is missing",
             "undersheet salvage roofs.book -o saved.book",
             {{"DAMAGED", "the damaged book; it is only read", Count::one, Sort::file}},
             {{"-o", "FILE", "where the new book is to be; a file that is there already is left alone", true,
               Sort::file},
              {"--with", "FILE",
               "a hand-over file of the firm: devices' keys that are lost here; may be given several times",
               false, Sort::file},
              {"--json", "", "write JSON for scripts"}},
             run_salvage}};
}

} // namespace undersheet::cli
