// Heat through a roof, and the water that settles inside it.
#include "desk/reckon_topics.h"

#include "trade/heat.h"

namespace undersheet::desk {
namespace {

using entry::List;
using entry::Value;

trade::Layer layer_of(const Value& of) {
    return {.r_m2k_w = optional_number(of, "r_m2k_w"),
            .thickness_mm = optional_number(of, "thickness_mm"),
            .conductivity_w_mk = optional_number(of, "conductivity_w_mk"),
            .sd_m = optional_number(of, "sd_m")};
}

std::optional<trade::Climate> climate_of(const Value& in, const char* key) {
    const Value* climate = in.find(key);
    if (climate == nullptr) return std::nullopt;
    return trade::Climate{number(*climate, "air_c"), number(*climate, "rh_pct")};
}

Value interfaces_of(const std::vector<trade::Interface>& interfaces) {
    Value list = List{};
    for (const trade::Interface& face : interfaces) {
        Value row;
        put(row, "t_c", face.t_c);
        put(row, "saturation_pa", face.saturation_pa);
        put(row, "vapour_pa", face.vapour_pa);
        put(row, "settled_pa", face.settled_pa);
        list.push(std::move(row));
    }
    return list;
}

Value condensate_of(const std::vector<trade::Condensate>& condensate) {
    Value list = List{};
    for (const trade::Condensate& wet : condensate) {
        Value row;
        row.set("interface", static_cast<std::int64_t>(wet.interface));
        put(row, "g_m2_month", wet.g_m2_month);
        list.push(std::move(row));
    }
    return list;
}

Result<Value> heat(const Value& in) {
    trade::HeatInput given{.rsi = number(in, "rsi"), .rse = number(in, "rse")};
    for (const Value& layer : in.list_of("layers")) given.layers.push_back(layer_of(layer));
    given.inside = climate_of(in, "inside");
    given.outside = climate_of(in, "outside");
    const auto found = trade::heat(given);
    if (!found) return found.fault();
    Value out;
    put(out, "u_w_m2k", found->u_w_m2k);
    put(out, "frsi", found->frsi);
    if (found->interfaces) out.set("interfaces", interfaces_of(*found->interfaces));
    if (found->condensate) out.set("condensate", condensate_of(*found->condensate));
    out.set("inside_face_wet", found->inside_face_wet);
    return out;
}

} // namespace

std::vector<Topic> heat_topics() { return {{"heat", heat}}; }

} // namespace undersheet::desk
