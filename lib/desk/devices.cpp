// The devices that wrote in a book, and what to do when one is lost.
#include "base/text.h"
#include "desk/desk.h"
#include "desk/journals.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

using entry::Entry;

void count_in(const Entry& entry, std::map<std::string, DeviceLine>& devices) {
    DeviceLine& line = devices[entry.device];
    line.device = entry.device;
    ++line.entries;
    const auto time = entry.when.text;
    const auto is_earlier = [&](const std::string& than) {
        const auto other = entry::parse_time(than);
        return !other || entry.when.unix_s < other->unix_s;
    };
    if (line.first_when.empty() || is_earlier(line.first_when)) line.first_when = time;
    if (line.last_when.empty() || !is_earlier(line.last_when)) line.last_when = time;
}

std::vector<DeviceLine> lines_of(const std::vector<Journal>& journals, const std::string& own) {
    std::map<std::string, DeviceLine> devices;
    for (const Journal& journal : journals) {
        for (const Entry& entry : journal.entries) count_in(entry, devices);
    }
    for (const Entry& entry : journals.front().entries) {
        const auto lost = devices.find(entry.data.text_of("device"));
        if (entry.kind == "revoke" && lost != devices.end())
            lost->second.revoked = entry.when.text + ", " + entry.data.text_of("why");
    }
    std::vector<DeviceLine> lines;
    for (auto& [device, line] : devices) {
        line.is_this = device == own;
        lines.push_back(std::move(line));
    }
    return lines;
}

Result<DeviceLine> device_meant(const std::vector<DeviceLine>& lines, std::string_view typed) {
    constexpr std::size_t kShortest = 4;
    std::vector<DeviceLine> meant;
    for (const auto& line : lines) {
        if (typed.size() >= kShortest && line.device.starts_with(lower_ascii(typed))) meant.push_back(line);
    }
    if (meant.size() == 1) return meant.front();
    return Fault{Code::argument_wrong,
                 "'" + std::string(typed) + "' is no device of this book",
                 {},
                 "undersheet devices lists them; 4 digits or more"};
}

bool wrote_in(const Journal& journal, const std::string& device) {
    return std::any_of(journal.entries.begin(), journal.entries.end(),
                       [&](const Entry& entry) { return entry.device == device; });
}

} // namespace

Result<std::vector<DeviceLine>> Desk::devices() {
    auto book = session_->reader();
    if (!book) return book.fault();
    auto journals = all_journals(**book);
    if (!journals) return journals.fault();
    return lines_of(*journals, (*book)->device());
}

// In the firm's journal and in every job where it wrote, so that a job handed over alone says it too.
Result<DeviceLine> Desk::revoke(const Asked& asked, std::string_view device, std::string_view why) {
    auto writing = office_writing(*session_, asked);
    if (!writing) return writing.fault();
    auto journals = all_journals(*writing->book);
    if (!journals) return journals.fault();
    auto lost = device_meant(lines_of(*journals, writing->book->device()), device);
    if (!lost) return lost;
    if (lost->is_this)
        return Fault{Code::argument_wrong, "that is this device", {}, "say it on another device of the firm"};
    Typed typed = {"revoke", {}, {}, {}};
    typed.put("device", lost->device);
    typed.put("why", why);
    std::vector<entry::Draft> drafts;
    for (const Journal& journal : *journals) {
        if (!journal.ref.empty() && !wrote_in(journal, lost->device)) continue;
        auto draft = writing->draft(typed, journal.job);
        if (!draft) return draft.fault();
        drafts.push_back(std::move(*draft));
    }
    if (auto kept = writing->book->append(std::move(drafts)); !kept) return kept.fault();
    lost->revoked = writing->when.text + ", " + std::string(why);
    return lost;
}

} // namespace undersheet::desk
