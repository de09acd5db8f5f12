// Entries of any content, folded, judged and printed.
#include "tests/fuzz/small_job.h"

#include "base/text.h"
#include "entry/json.h"
#include "job/day.h"
#include "job/day_work.h"
#include "job/forecast.h"
#include "job/punch.h"
#include "job/queries.h"
#include "job/takeoff.h"
#include "paper/csv.h"
#include "paper/html.h"
#include "paper/json.h"
#include "paper/papers.h"
#include "paper/text.h"
#include "schema/embedded.h"
#include "tests/fuzz/targets.h"

#include <algorithm>

namespace undersheet::fuzz {
namespace {

using entry::Value;

constexpr std::string_view kMorning =
    R"({"kind":"open","data":{"ref":"A-07","roof":"small dormer"}}
{"kind":"firm","data":{"name":"Pell & Daughter"}}
{"kind":"person","data":{"person":"p0000000001","role":"installer","name":"Isolde Pell","initials":"IP"}}
{"kind":"site","data":{"edge_protection":"scaffold_rail","height_m":2.6,"fragile":"none","cable_within_3m":"no","asbestos":"none_seen"}}
{"kind":"day","data":{"people":["p0000000001"],"briefing":"yes","plan":"yes","extinguisher":"yes","solvent_care":"yes","data_sheet":"yes"}}
{"kind":"edge","place":"AB","data":{"kind":"gutter"}}
{"kind":"edge","place":"BC","data":{"kind":"kerb"}}
{"kind":"edge","place":"CD","data":{"kind":"wall"}}
{"kind":"edge","place":"DA","data":{"kind":"kerb"}}
{"kind":"tape","place":"AB","data":{"m":3.2}}
{"kind":"tape","place":"BC","data":{"m":2.1}}
{"kind":"tape","place":"CD","data":{"m":3.199}}
{"kind":"tape","place":"DA","data":{"m":2.101}}
{"kind":"tape","place":"AC","data":{"m":3.828}}
{"kind":"tape","place":"BD","data":{"m":3.827}}
{"kind":"abutment","place":"CD","data":{"type":"brick"}}
{"kind":"chase","place":"CD+0.10","data":{"height_mm":130}}
{"kind":"board","data":{"material":"plywood3","thickness_mm":18,"support_mm":400,"gap_mm":3,"soft":"none"}}
{"kind":"moisture","place":"0.30,0.30","data":{"label":"M1","reading_pct":12.1,"board_c":15.5,"setting":"2"}}
{"kind":"level","place":"0,0","data":{"z_mm":0}}
{"kind":"level","place":"3.20,2.10","data":{"z_mm":48}}
{"kind":"level","place":"0,2.10","data":{"z_mm":47}}
{"kind":"sheet","data":{"batch":"SH-41A","width_m":3.05,"length_m":3.6,"thickness_mm":1.2}}
{"kind":"tin","data":{"product":"deck_adhesive","batch":"FA-9","use_by":"2027-01-31","size_l":5,"low_c":5,"high_c":25}}
{"kind":"air","data":{"air_c":15,"rh_pct":65,"surface_c":14}}
{"kind":"begin","part":"deck","data":{}}
{"kind":"tick","part":"deck","data":{"step":"heads"}}
{"kind":"sign","part":"deck","data":{}}
{"kind":"punch_add","data":{"number":1,"text":"scuff","severity":"put_right"}})";

constexpr std::string_view kForecast = "from,air_c,rh_pct\n2026-06-11T13:00:00+01:00,16,60\n"
                                       "2026-06-11T14:00:00+01:00,17,58\n2026-06-12T09:00:00+01:00,15,70\n";

// As much of the written form as a line leaves open, set behind the entry before.
Value body_of(const Value& line, const job::EntryList& before) {
    const std::string id = "0197000000000000";
    const auto number = static_cast<std::int64_t>(before.size()) + 1;
    Value body;
    body.set("author", line.text_of("author", "p0000000001")).set("boot", id);
    body.set("clock", "2026-06-11T12:00:00+01:00").set("dev", id + id).set("job", id + id);
    body.set("id", "01970000-0000-7000-8000-0000" +
                       hex(std::vector<std::uint8_t>{0, 0, 0, static_cast<std::uint8_t>(number)}));
    body.set("seq", number).set("dctr", number).set("lam", number).set("mono_millis", number);
    body.set("v", "undersheet.entry.1").set("kind", line.text_of("kind"));
    body.set("when", line.text_of("when", "2026-06-11T08:10:00+01:00"));
    for (const char* member : {"place", "part", "data", "raw"}) {
        if (const Value* given = line.find(member)) body.set(member, *given);
    }
    for (const entry::Entry& entry : before) // the last one that was opened
        if (entry.kind == "supplement" && line.find("visit") != nullptr)
            body.set("supplement", entry::hash_text(entry.hash));
    if (before.empty()) return body;
    const std::string hash = entry::hash_text(before.back().hash);
    return body.set("prev", hash).set("dprev", hash);
}

void make_lists(const job::Job& job, const job::Judgement& judged, const method::Method& method) {
    (void)job::punch_now(job, judged);
    (void)job::not_looked(job, method, own_kinds());
    (void)job::take_off(job, method);
    static const auto kHours = job::read_forecast(kForecast, own_kinds());
    const auto row = job::work_left(job, method);
    if (row) (void)job::plan_days(job, method, own_kinds(), *kHours, *row);
}

void print(const job::Job& job, const job::Judgement& judged, const method::Method& method) {
    const paper::Setting setting{
        paper::Words::english(), method, own_kinds(), {}, "1", "undersheet", {}, nullptr};
    for (const auto& name : paper::paper_names()) {
        const auto made = paper::make_paper(name, job, judged, setting);
        if (!made) {
            promise_readable(made.fault());
            continue;
        }
        const auto& words = paper::Words::english();
        promise(is_utf8(paper::render_html(*made, words)), "the " + name + " as a page is no text");
        promise(is_utf8(paper::render_text(*made, words)), "the " + name + " is no text");
        promise(is_utf8(paper::render_csv(*made, words)), "the " + name + " as a table is no text");
        promise(entry::read_json(paper::render_json(*made)).ok(), "the " + name + " is no JSON");
    }
}

} // namespace

const method::Catalogue& own_kinds() {
    static const auto kRead = method::Catalogue::read(schema::kinds_json());
    return *kRead;
}

const method::Method& own_method() {
    static const auto kRead = method::Method::read(schema::method_json());
    return *kRead;
}

job::EntryList entries_from(std::string_view json_lines) {
    job::EntryList entries;
    for (const auto& text : split(json_lines, '\n')) {
        const auto line = entry::read_json(text, {.bytes = 64U << 10U, .depth = 8, .members = 256});
        if (!line) continue;
        auto read = entry::read_entry(entry::write_strict(body_of(*line, entries)), {});
        if (read) entries.push_back(*std::move(read));
    }
    return entries;
}

const job::EntryList& small_job() {
    static const auto kEntries = entries_from(kMorning);
    return kEntries;
}

void judge_and_print(const job::EntryList& entries, const method::Method& method,
                     const std::optional<entry::Hash>& within) {
    const auto noon = *entry::parse_time("2026-06-11T12:00:00+01:00");
    const auto folded = job::fold(entries, method, own_kinds(), noon, within);
    if (!folded) return promise_readable(folded.fault());
    for (const auto& supplement : folded->supplements)
        if (!within) judge_and_print(entries, method, supplement.opened->hash);
    const auto judged = job::judge(*folded, method, own_kinds());
    for (const auto& part : folded->parts) {
        (void)job::refusal_of(*folded, judged, method,
                              {part.name, job::Event::sign, "p0000000001", noon, {}, {}});
    }
    make_lists(*folded, judged, method);
    print(*folded, judged, method);
}

// Behind the entries of the morning come as many as the input has lines.
void fold_anything(std::string_view bytes) {
    constexpr std::ptrdiff_t kMostLines = 60;
    if (std::count(bytes.begin(), bytes.end(), '\n') > kMostLines) return;
    const bool alone = bytes.starts_with('\n'); // an empty first line: without the morning
    judge_and_print(
        entries_from(alone ? std::string(bytes) : std::string(kMorning) + "\n" + std::string(bytes)),
        own_method());
}

} // namespace undersheet::fuzz
