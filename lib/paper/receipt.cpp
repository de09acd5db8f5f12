#include "paper/receipt.h"

#include "entry/witness.h"
#include "paper/qr.h"

namespace undersheet::paper {

void fill_customer(const Making& making, const entry::Entry& signed_at, Signature& customer) {
    const std::string away = signed_at.data.text_of("not_present");
    customer.name = making.words.held(signed_at.field_text("customer"));
    customer.when = making.when(&signed_at);
    customer.note = away.empty() ? making.say("completion.acknowledged")
                                 : making.say("completion.not_present", {{"how", away}});
}

void add_receipt(Making& making, const entry::Entry* signed_at) {
    if (signed_at == nullptr || signed_at->data.find("customer") == nullptr) return;
    const entry::Causality causality(*making.job.entries);
    const auto at = causality.find(signed_at->hash);
    if (!at) return;
    making.heading("section.receipt");
    making.paper.add(Paragraph{making.say("completion.receipt_why"), true});
    const std::string receipt = entry::receipt_text(entry::receipt_of(*making.job.entries, causality, *at));
    making.paper.add(Paragraph{making.say("completion.receipt", {{"receipt", receipt}}), true});
    making.paper.add(qr_drawing(receipt, making.say("completion.receipt_code")));
}

} // namespace undersheet::paper
