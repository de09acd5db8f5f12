// The deck and what is measured on it: heads, fixings, tape, doubt.
#include "desk/own.h"
#include "desk/reckon_topics.h"

#include "trade/doubt.h"
#include "trade/fixings.h"
#include "trade/heads.h"
#include "trade/tape.h"

namespace undersheet::desk {
namespace {

using entry::Value;

Result<Value> heads(const Value& in) {
    trade::HeadsInput given{.total = count(in, "total"),
                            .checked = count(in, "checked"),
                            .proud = count(in, "proud"),
                            .confidence_pct = exact(in, "confidence_pct")};
    if (in.find("allow_pct") != nullptr) given.allow_pct = exact(in, "allow_pct");
    const auto found = trade::heads(given);
    if (!found) return found.fault();
    Value out;
    put(out, "found_pct", found->found_pct);
    out.set("at_most", found->at_most);
    put(out, "at_most_pct", found->at_most_pct);
    if (found->check_more) out.set("check_more", *found->check_more);
    return out;
}

Result<Value> fixings(const Value& in) {
    const trade::FixingRule rule{.least_length_mm = own_method().limit("fixing_length_mm"),
                                 .length_per_thickness = own_method().limit("fixing_length_times")};
    const auto found = trade::fixings({number(in, "board_mm")}, rule);
    if (!found) return found.fault();
    Value out;
    put(out, "length_mm", found->length_mm);
    put(out, "diameter_mm", found->diameter_mm);
    return out;
}

Result<Value> tape(const Value& in) {
    const auto found = trade::tape({.m = number(in, "m"),
                                    .tape_class = static_cast<int>(count(in, "class")),
                                    .hook = in.is_yes("hook")});
    if (!found) return found.fault();
    Value out;
    put(out, "mpe_mm", found->mpe_mm);
    put(out, "u_mm", trade::limit_u(found->mpe_mm));
    return out;
}

Result<Value> doubt(const Value& in) {
    const auto side = in.text_of("side") == "lower" ? trade::Side::lower : trade::Side::upper;
    const auto found = trade::doubt({number(in, "value"), number(in, "u"), number(in, "limit"), side});
    if (!found) return found.fault();
    Value out;
    put(out, "conforms_pct", found->conforms_pct);
    return out;
}

} // namespace

std::vector<Topic> deck_topics() {
    return {{"heads", heads}, {"fixings", fixings}, {"tape", tape}, {"doubt", doubt}};
}

} // namespace undersheet::desk
