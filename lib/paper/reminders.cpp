#include "paper/reminders.h"

#include "base/text.h"
#include "paper/guarantee.h"

namespace undersheet::paper {
namespace {

constexpr std::string_view kLineEnd = "\r\n";
constexpr std::size_t kMostOctets = 75; // of a line, RFC 5545 section 3.1

// RFC 5545 section 3.3.11.
std::string escaped(std::string text) {
    text = replaced(std::move(text), "\\", "\\\\");
    text = replaced(std::move(text), ";", "\\;");
    text = replaced(std::move(text), ",", "\\,");
    text = replaced(std::move(text), "\r", "");
    return replaced(std::move(text), "\n", "\\n");
}

bool begins_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }

// Long lines go on in the next one after a blank; a character is never cut in two.
void add_line(std::string& out, std::string_view name, const std::string& value) {
    std::string line(name);
    line.append(":").append(value);
    std::size_t room = kMostOctets, at = 0;
    while (line.size() - at > room) {
        std::size_t end = at + room;
        while (!begins_character(line[end])) --end;
        out.append(line, at, end - at).append(kLineEnd).append(" ");
        at = end;
        room = kMostOctets - 1;
    }
    out.append(line, at).append(kLineEnd);
}

std::string basic(const entry::Date& date) { return replaced(entry::date_text(date), "-", ""); }

// 20260611T090500Z
std::string utc(const entry::Time& time) {
    const entry::Time there = entry::time_at(time.unix_s, 0);
    return replaced(replaced(there.text.substr(0, 19), "-", ""), ":", "") + "Z";
}

void add_event(std::string& out, const Reminder& reminder) {
    add_line(out, "BEGIN", "VEVENT");
    add_line(out, "UID", reminder.uid);
    add_line(out, "DTSTAMP", utc(reminder.written));
    add_line(out, "DTSTART;VALUE=DATE", basic(reminder.on));
    add_line(out, "SUMMARY", escaped(reminder.what));
    add_line(out, "DESCRIPTION", escaped(reminder.more));
    add_line(out, "TRANSP", "TRANSPARENT");
    add_line(out, "BEGIN", "VALARM");
    add_line(out, "ACTION", "DISPLAY");
    add_line(out, "DESCRIPTION", escaped(reminder.what));
    add_line(out, "TRIGGER", "-P14D");
    add_line(out, "END", "VALARM");
    add_line(out, "END", "VEVENT");
}

} // namespace

Reminder day_to_come(const Making& making, const std::string& name, const entry::Date& on,
                     const entry::Time& written, std::string_view what_key) {
    const std::string about = joined({making.paper.head.roof, making.paper.head.customer_address}, ", ");
    return Reminder{making.job.id + "-" + name + "@undersheet.invalid", on, written,
                    making.say(what_key, {{"roof", making.paper.head.roof}}),
                    replaced(about, "\n", ", ") + "\n" +
                        making.say("remind.ring", {{"who", whom_to_ring(making)}})};
}

// One event for each year instead of a rule that repeats: every calendar shows those, and a 29 February needs no care.
std::vector<Reminder> reminders_of(const Making& making) {
    const auto guarantee = guarantee_of(making.job);
    if (!guarantee) return {};
    const entry::Time& written = guarantee->written->when;
    std::vector<Reminder> reminders;
    for (int year = 1; year < guarantee->years; ++year)
        reminders.push_back(day_to_come(making, "look-" + std::to_string(year), guarantee->look_due(year),
                                        written, "remind.look"));
    reminders.push_back(day_to_come(making, "end", guarantee->last_day(), written, "remind.end"));
    return reminders;
}

Result<std::string> render_ics(const Document& document, const Words& words) {
    if (document.reminders.empty())
        return Fault{Code::record_too_thin,
                     "this paper names no day to come",
                     {},
                     "the completion record and the care paper do, once the guarantee is written down; a "
                     "look with next_due does"};
    std::string out;
    add_line(out, "BEGIN", "VCALENDAR");
    add_line(out, "VERSION", "2.0");
    add_line(out, "PRODID", "-//undersheet//" + words.language() + "//");
    for (const Reminder& reminder : document.reminders) add_event(out, reminder);
    add_line(out, "END", "VCALENDAR");
    return out;
}

} // namespace undersheet::paper
