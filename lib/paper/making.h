// A paper in the making: the job, what was judged of it, the words, and the document it goes into.
//
// The sections of the papers are functions on this. An empty section says that nothing was recorded; none is left out.
#pragma once

#include "job/punch.h"
#include "paper/document.h"
#include "paper/said.h"
#include "paper/setting.h"

namespace undersheet::paper {

struct Making {
    Making(const job::Job& job, const job::Judgement& judgement, const Setting& setting,
           std::string_view name_key);

    [[nodiscard]] std::string say(std::string_view key, Fillings fillings = {}) const;
    [[nodiscard]] std::string
    by(const entry::Entry* entry) const; // "Isolde Pell, 11 June 2026, 09:05"; "" for none
    [[nodiscard]] std::string person(const entry::Entry* entry) const;
    [[nodiscard]] std::string when(const entry::Entry* entry) const;
    [[nodiscard]] std::string
    signed_how(const job::SignOff& signature) const;                 // "own check, with a PIN", or ""
    [[nodiscard]] std::string holds(const job::PunchRow& row) const; // "start of band, sign-off of final"
    [[nodiscard]] std::string severity(method::Severity severity) const;
    [[nodiscard]] Photograph photograph(const job::Reading& photo) const;
    void fact(std::vector<Fact>& facts, std::string_view key,
              std::string value) const; // nothing without a value
    [[nodiscard]] std::vector<Photograph> photographs(const std::vector<const job::Reading*>& photos) const;
    [[nodiscard]] std::string
    air(const job::Reading& reading) const; // "13 °C, humidity 66 %, deck 14.0 °C, wind 2.7 m/s"

    // The short names of the entries it stands on: whoever asks for a figure finds it in the journal.
    [[nodiscard]] std::string traced(const job::Reading& reading) const;
    [[nodiscard]] std::string traced(const std::vector<const job::Reading*>& readings) const;
    // All that was said of it, and the entries.
    void traced_facts(const job::Reading& reading, const std::vector<std::string_view>& leave_out = {});

    void heading(std::string_view key);
    void sentence(std::string_view key, Fillings fillings = {});
    // Headers are keys under "column."; one that ends in '#' holds figures.
    void table(std::string caption, const std::vector<std::string_view>& headers, std::vector<Row> rows);
    void facts(std::vector<Fact> rows);
    void nothing();

    const job::Job& job;
    const job::Judgement& judgement;
    const Setting& setting;
    const Words& words;
    Said said;
    std::vector<job::PunchRow> punch; // what is open now
    Document paper;
};

} // namespace undersheet::paper
