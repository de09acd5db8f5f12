#include "job/stock.h"

#include "job/batches.h"

#include "base/text.h"

#include <algorithm>

namespace undersheet::job {
namespace {

std::vector<std::string> labels_in(const entry::Value& data) {
    std::vector<std::string> labels;
    for (const auto& piece : split(data.text_of("tin"), ',')) {
        if (!trimmed(piece).empty()) labels.emplace_back(trimmed(piece));
    }
    for (const auto& item : data.list_of("tin")) {
        if (item.text() != nullptr) labels.push_back(*item.text());
    }
    return labels;
}

} // namespace

std::vector<TinUse> tin_uses(const Job& job) {
    std::vector<TinUse> uses;
    const auto take = [&](const entry::Entry& from, const entry::Value& data, const std::string& part) {
        for (const auto& label : labels_in(data)) uses.push_back({job.tin(label), label, part, &from});
    };
    for (const Part& part : job.parts) {
        for (const PartEvent& event : part.events) {
            if (event.event == Event::begin || event.event == Event::resume)
                take(*event.entry, event.entry->data, part.name);
        }
        for (const Tick& tick : part.ticks) {
            take(*tick.entry, tick.data, part.name);
            for (const NamedBatch& named : batches_named(part, tick))
                for (const Reading* tin : tins_of(job, named))
                    uses.push_back({tin, tin->label, part.name, tick.entry});
        }
    }
    for (const Reading* use : job.all("use")) take(*use->entry, use->data, use->part);
    return uses;
}

std::vector<NamedBatch> batches_named(const Part& part, const Tick& tick) {
    const std::pair<const char*, const char*> fields[] = {
        {"primer_batch", "primer"},
        {"tape_batch", "flashing_tape"},
        {"sealant_batch", part.stage == "chase" ? "chase_sealant" : "lap_sealant"}};
    std::vector<NamedBatch> named;
    for (const auto& [field, product] : fields) {
        const std::string batch = tick.data.text_of(field);
        if (!batch.empty()) named.push_back({batch, product});
    }
    return named;
}

std::vector<const Reading*> tins_of(const Job& job, const NamedBatch& named) {
    std::vector<const Reading*> tins = job.all("tin");
    std::erase_if(tins, [&](const Reading* tin) {
        return tin->word("product") != named.product || alike(named.batch, tin->word("batch")) != Alike::same;
    });
    return tins;
}

std::optional<entry::Date> last_use_of(const Job& job, std::string_view label) {
    std::optional<entry::Date> last;
    for (const TinUse& use : tin_uses(job)) {
        const bool same = use.label == label || (use.tin != nullptr && use.tin->label == label);
        const entry::Date day = entry::date_of(use.entry->when);
        if (same && (!last || *last < day)) last = day;
    }
    return last;
}

bool has_label_photo(const Job& job, const Reading& of) {
    const auto photos = job.all("photo");
    return std::any_of(photos.begin(), photos.end(), [&](const Reading* photo) {
        const std::string shown = photo->word("label_of").empty() ? photo->label : photo->word("label_of");
        if (shown.empty()) return false;
        return shown == of.label || shown == of.word("batch") || shown == of.kind;
    });
}

} // namespace undersheet::job
