// The roof's outline from its tapes.
#include "desk/reckon_topics.h"

#include "trade/outline.h"

namespace undersheet::desk {
namespace {

using entry::List;
using entry::Value;

trade::OutlineInput input_of(const Value& in) {
    trade::OutlineInput given;
    for (const Value& label : in.list_of("corners")) given.corners.push_back(*label.text());
    for (const Value& tape : in.list_of("tapes")) {
        given.tapes.push_back({.from = tape.text_of("from"),
                               .to = tape.text_of("to"),
                               .m = number(tape, "m"),
                               .sd_mm = optional_number(tape, "sd_mm")});
    }
    given.sd_mm = number(in, "sd_mm");
    return given;
}

Value corners_of(const trade::Outline& outline) {
    Value list = List{};
    for (const trade::Corner& corner : outline.corners) {
        Value row;
        row.set("label", corner.label);
        put(row, "x_m", corner.x_m);
        put(row, "y_m", corner.y_m);
        put(row, "sd_mm", corner.sd_mm);
        list.push(std::move(row));
    }
    return list;
}

Value between(const std::string& from, const std::string& to) {
    return Value().set("from", from).set("to", to);
}

Value tapes_of(const trade::Outline& outline) {
    Value list = List{};
    for (const trade::JudgedTape& tape : outline.tapes) {
        Value row = between(tape.from, tape.to);
        put(row, "m", tape.m);
        put(row, "residual_mm", tape.residual_mm);
        put(row, "redundancy", tape.redundancy);
        put(row, "w", tape.w);
        put(row, "from_others_m", tape.from_others_m);
        row.set("suspect", tape.suspect).set("perhaps", tape.perhaps);
        list.push(std::move(row));
    }
    return list;
}

void put_sizes(Value& out, const trade::Outline& outline) {
    Value angles = List{};
    for (const double angle : outline.angles_deg) angles.push(figure(angle));
    out.set("angles_deg", std::move(angles));
    put(out, "area_m2", outline.area_m2);
    put(out, "area_sd_m2", outline.area_sd_m2);
    put(out, "perimeter_m", outline.perimeter_m);
}

void put_verdict(Value& out, const trade::Outline& outline) {
    out.set("spare_tapes", outline.spare_tapes);
    put(out, "vpv", outline.vpv);
    if (outline.spare_tapes > 0) put(out, "vpv_limit", outline.vpv_limit);
    out.set("accepted", outline.accepted).set("can_locate", outline.can_locate);
    put(out, "misclosure_mm", outline.misclosure_mm);
}

// What to tape next, and why.
void put_next(Value& out, const trade::Outline& outline) {
    if (const auto& next = outline.next_tape) out.set("next_tape", between(next->from, next->to));
    if (!outline.other_shape) return;
    Value other = between(outline.other_shape->tape.from, outline.other_shape->tape.to);
    put(other, "here_m", outline.other_shape->here_m);
    put(other, "there_m", outline.other_shape->there_m);
    out.set("other_shape", std::move(other));
}

Result<Value> outline(const Value& in) {
    const auto found = trade::outline(input_of(in));
    if (!found) return found.fault();
    Value out;
    out.set("corners", corners_of(*found)).set("tapes", tapes_of(*found));
    put_sizes(out, *found);
    put_verdict(out, *found);
    put_next(out, *found);
    return out;
}

} // namespace

std::vector<Topic> outline_topics() { return {{"outline", outline}}; }

} // namespace undersheet::desk
