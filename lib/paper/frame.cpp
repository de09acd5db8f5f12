#include "paper/frame.h"

#include "job/queries.h"

namespace undersheet::paper {

namespace {

std::string check_value(const job::Job& job) {
    std::vector<entry::Hash> names;
    for (const entry::Entry& entry : *job.entries)
        if (entry.job == job.id && entry.when.unix_s <= job.as_of.unix_s) names.push_back(entry.hash);
    return entry::hash_text(entry::digest_of(names));
}

Foot foot_of(const job::Job& job, const Setting& setting) {
    const Words& words = setting.words;
    Foot foot;
    for (const char* key : {"caution.falls", "caution.solvent", "caution.heat", "caution.knives",
                            "caution.lifting", "caution.cables", "caution.figures"})
        foot.cautions.push_back(words.say(key));
    foot.standing = words.say("foot.standing");
    foot.made_with = words.say("foot.made_with", {{"program", setting.program},
                                                  {"method", words.text(setting.method.name())},
                                                  {"version", setting.method.version()},
                                                  {"hash", entry::short_name(setting.method.hash())}});
    foot.check_value = check_value(job);
    return foot;
}

} // namespace

Document framed(std::string name, const job::Job& job, const Setting& setting) {
    const Words& words = setting.words;
    Document paper;
    paper.language = words.language();
    paper.head = {.firm = job::firm_said(job, "name"),
                  .firm_address = job::firm_said(job, "address"),
                  .firm_phone = job::firm_said(job, "phone"),
                  .job = job.ref,
                  .roof = job.roof_name,
                  .customer = words.held(job.personal("site", "customer")),
                  .customer_address = words.held(job.personal("site", "address")),
                  .name = std::move(name),
                  .number = setting.number,
                  .issue = setting.issue,
                  .date = words.date(entry::date_of(job.as_of))};
    paper.foot = foot_of(job, setting);
    return paper;
}

} // namespace undersheet::paper
