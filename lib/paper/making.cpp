#include "paper/making.h"

#include "base/text.h"
#include "paper/frame.h"

namespace undersheet::paper {
namespace {

// What the camera's own clock said, where that is another minute than the one it was kept under.
std::string camera_words(const Making& making, const job::Reading& photo) {
    constexpr std::size_t kToTheMinute = 16; // 2026-06-11T08:05
    const std::string taken = photo.word("camera_time");
    const auto time = entry::parse_time(taken + "Z");
    if (!time || photo.when().text.starts_with(taken.substr(0, kToTheMinute))) return {};
    return making.say("photograph.by_camera", {{"when", making.words.date_and_time(*time)}});
}

} // namespace

Making::Making(const job::Job& made_of, const job::Judgement& judged, const Setting& set,
               std::string_view name_key)
    : job(made_of), judgement(judged), setting(set), words(set.words), said(made_of, set.words, set.kinds),
      punch(job::open_punch(made_of, judged)), paper(framed(set.words.say(name_key), made_of, set)) {}

std::string Making::say(std::string_view key, Fillings fillings) const { return words.say(key, fillings); }

std::string Making::person(const entry::Entry* entry) const {
    return entry == nullptr ? std::string() : job.person_name(entry->author);
}

std::string Making::when(const entry::Entry* entry) const {
    return entry == nullptr ? std::string() : words.date_and_time(entry->when);
}

std::string Making::by(const entry::Entry* entry) const {
    return entry == nullptr ? std::string() : say("by", {{"who", person(entry)}, {"when", when(entry)}});
}

std::string Making::signed_how(const job::SignOff& signature) const {
    std::vector<std::string> how;
    if (signature.own_check) how.push_back(say("signature.own_check"));
    if (signature.entry->own_key) how.push_back(say("signature.own_hand"));
    return joined(how, "; ");
}

std::string Making::severity(method::Severity severity) const {
    switch (severity) {
    case method::Severity::stop:
        return say("severity.stop");
    case method::Severity::put_right:
        return say("severity.put_right");
    case method::Severity::note:
        break;
    }
    return say("severity.note");
}

std::string Making::holds(const job::PunchRow& row) const {
    std::vector<std::string> all;
    for (const job::Worded& hold : row.holds_as) all.push_back(said.again(hold));
    return joined(all, ", ");
}

Photograph Making::photograph(const job::Reading& photo) const {
    std::vector<std::string> pieces;
    const std::string at = said.place(photo.place);
    for (const std::string& piece : {photo.word("shows"), at, words.date_and_time(photo.when())})
        if (!piece.empty()) pieces.push_back(piece);
    if (const std::string by_camera = camera_words(*this, photo); !by_camera.empty())
        pieces.push_back(by_camera);
    Photograph picture{photo.word("sha256"), joined(pieces, ", "), "", ""};
    if (setting.picture) picture.bytes = setting.picture(picture.hash);
    if (!picture.bytes.empty())
        picture.media_type = photo.word("media") == "png" ? "image/png" : "image/jpeg";
    return picture;
}

void Making::fact(std::vector<Fact>& facts, std::string_view key, std::string value) const {
    if (!value.empty()) facts.push_back({say(key), std::move(value)});
}

std::vector<Photograph> Making::photographs(const std::vector<const job::Reading*>& photos) const {
    std::vector<Photograph> pictures;
    for (const job::Reading* photo : photos) pictures.push_back(photograph(*photo));
    return pictures;
}

std::string Making::air(const job::Reading& reading) const {
    std::vector<std::string> pieces;
    for (const auto& [key, field] : {std::pair{"air.air", "air_c"},
                                     {"air.humidity", "rh_pct"},
                                     {"air.deck", "surface_c"},
                                     {"air.wind", "wind_ms"},
                                     {"air.gusts", "gust_ms"},
                                     {"air.sky", "sky"}}) {
        const std::string value = said.value(reading, field);
        if (!value.empty()) pieces.push_back(say(key, {{"value", value}}));
    }
    return joined(pieces, ", ");
}

std::string Making::traced(const job::Reading& reading) const {
    std::vector<std::string> names;
    for (const entry::Entry* entry : reading.stands_on) names.push_back(entry::short_name(entry->hash));
    if (names.empty()) names.push_back(entry::short_name(reading.entry->hash));
    return joined(names, ", ");
}

std::string Making::traced(const std::vector<const job::Reading*>& readings) const {
    std::vector<std::string> names;
    for (const job::Reading* reading : readings) names.push_back(traced(*reading));
    return joined(names, ", ");
}

void Making::traced_facts(const job::Reading& reading, const std::vector<std::string_view>& leave_out) {
    std::vector<Fact> rows = said.facts(reading, leave_out);
    if (!rows.empty()) rows.push_back({say("column.entry"), traced(reading)});
    facts(std::move(rows));
}

void Making::heading(std::string_view key) { paper.heading(say(key)); }

void Making::sentence(std::string_view key, Fillings fillings) { paper.paragraph(say(key, fillings)); }

void Making::table(std::string caption, const std::vector<std::string_view>& headers, std::vector<Row> rows) {
    if (rows.empty()) return nothing();
    Table table{std::move(caption), {}, std::move(rows)};
    for (std::string_view header : headers) {
        const bool is_figures = header.back() == '#';
        if (is_figures) header.remove_suffix(1);
        table.headers.push_back(
            {say("column." + std::string(header)), is_figures ? Column::figures : Column::words});
    }
    paper.add(std::move(table));
}

void Making::facts(std::vector<Fact> rows) {
    if (rows.empty()) return nothing();
    paper.add(Facts{std::move(rows)});
}

void Making::nothing() { sentence("nothing_recorded"); }

} // namespace undersheet::paper
