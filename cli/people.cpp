#include "cli/show.h"
#include "cli/verb.h"

#include "base/text.h"

namespace undersheet::cli {
namespace {

void show_person(const desk::PersonLine& person, Screen& screen) {
    std::string about = person.name + ", " + plain_words(person.role);
    if (!person.firm.empty()) about += ", " + person.firm;
    if (person.has_pin) about += ", signs with a PIN here";
    if (!person.ends.empty()) about += ", until " + person.ends;
    screen.set_in("  " + padded(person.initials, 5) + " ", about);
}

int run_people(const Arguments& arguments, Screen& screen) {
    return answer(
        arguments, screen, [](desk::Desk& desk) { return desk.people(); },
        [&](const std::vector<desk::PersonLine>& people) {
            if (people.empty()) screen.line("Nobody yet: undersheet people add NAME --role installer");
            for (const auto& person : people) show_person(person, screen);
        });
}

int run_person_add(const Arguments& arguments, Screen& screen) {
    const desk::NewPerson person = {arguments.one("NAME"),       arguments.one("--role"),
                                    arguments.one("--initials"), arguments.one("--firm"),
                                    arguments.one("--cards"),    arguments.one("--ends")};
    auto desk = open_desk(arguments);
    if (!desk) return screen.refuse(desk.fault());
    const auto added = desk->add_person(asked(arguments), person);
    if (!added) return screen.refuse(added.fault());
    if (arguments.has("--json")) {
        screen.bytes(desk::json_of(std::vector<desk::PersonLine>{*added}));
    } else {
        screen.set_in("", "May record and sign from now on:");
        show_person(*added, screen);
    }
    return 0;
}

} // namespace

std::vector<Verb> people_verbs() {
    return {{"people",
             "who may record and sign",
             "undersheet people",
             {},
             {book_option(), {"--json", "", "write JSON for scripts"}},
             run_people},
            {"people add",
             "puts somebody on the book and on every open job",
             "undersheet people add \"Isolde Pell\" --role installer --initials IP",
             {{"NAME", "the whole name, between quotes"}},
             {{"--role", "ROLE", "installer, helper, office, customer, surveyor or other", true},
              {"--initials", "IP", "what the person signs with; else made from the name"},
              {"--firm", "NAME", "when it is not the firm of the book"},
              {"--cards", "TEXT", "competence cards with number and expiry"},
              {"--ends", "DATE", "the last day on the book"},
              {"--by", "NAME", "who says so; the first person needs nobody"},
              book_option(),
              {"--when", "TIME", "with offset; else now"},
              {"--json", "", "write JSON for scripts"}},
             run_person_add}};
}

} // namespace undersheet::cli
