// What the sheet is bonded, patched and sealed with: adhesives, tape, primer, sealants, wedges.
#include "base/text.h"
#include "job/takeoff_making.h"

namespace undersheet::job {
namespace {

constexpr double kMm2_a_m2 = 1e6;
constexpr double kMm3_a_l = 1e6;

struct AdhesiveRow {
    const char *name, *title, *cover, *spare;
    double trade::Areas::*area;
};
const AdhesiveRow kAdhesives[] = {
    {"deck_adhesive", "field adhesive", "field_cover_m2_l", "field_spare_pct", &trade::Areas::field_m2},
    {"contact_adhesive", "contact adhesive", "contact_cover_m2_l", "contact_spare_pct",
     &trade::Areas::contact_m2},
};

TakeOffLine adhesive(const Making& making, const AdhesiveRow& row) {
    const double area_m2 = making.made.areas.*row.area;
    const double faces = making.rate("bond_faces");
    const double cover_m2_l = making.rate(row.cover);
    const double litres = faces * area_m2 / cover_m2_l;
    Working working{shortest(faces, 2) + " faces x " + in_words(area_m2, "m2") + " = " +
                        in_words(faces * area_m2, "m2"),
                    "/ " + shortest(cover_m2_l, 3) + " m² to the litre = " + in_words(litres, "l")};
    const double all = making.with_spare(litres, row.spare, "l", working);
    return {.section = {},
            .name = row.name,
            .title = row.title,
            .amount = in_millionths(all),
            .unit = "l",
            .working = std::move(working),
            .allowances = making.rows({"bond_faces", row.cover, row.spare})};
}

struct PatchRow {
    PatchSort sort;
    const char *key, *one, *many;
};
const PatchRow kPatchRows[] = {
    {PatchSort::wall, "patch_wall_mm", "place at a wall", "places at a wall"},
    {PatchSort::inner, "patch_inner_mm", "inner corner", "inner corners"},
    {PatchSort::opening, "patch_opening_mm", "at openings", "at openings"},
    {PatchSort::extra, "patch_extra_mm", "more", "more"},
};

// Patches of one sort are alike, so everything about them is their number times something.
struct PatchSum {
    double tape_m = 0, primed_m2 = 0, bead_m = 0;
    Working tape, primed, bead;
};

std::size_t count_patches(const Making& making, PatchSort sort) {
    std::size_t found = 0;
    for (const CountedPatch& patch : making.roof.patches) found += patch.sort == sort ? 1 : 0;
    return found;
}

void add_sort(const Making& making, const PatchRow& row, PatchSum& sum) {
    const std::size_t patches = count_patches(making, row.sort);
    if (patches == 0) return;
    const auto number = static_cast<double>(patches);
    const double length_mm = making.rate(row.key);
    const double width_mm = making.rate("patch_width_mm");
    const double past_mm = 2 * making.rate("primer_order_mm");
    sum.tape_m += number * length_mm / 1000;
    sum.primed_m2 += number * (length_mm + past_mm) * (width_mm + past_mm) / kMm2_a_m2;
    sum.bead_m += number * 2 * (length_mm + width_mm) / 1000;
    const std::string of = counted(patches, row.one, row.many) + " x ";
    sum.tape.push_back(of + shortest(length_mm, 1) + " mm");
    sum.primed.push_back(of + shortest(length_mm + past_mm, 1) + " x " + shortest(width_mm + past_mm, 1) +
                         " mm");
    sum.bead.push_back(of + in_words(2 * (length_mm + width_mm) / 1000, "m"));
}

PatchSum patch_sum(const Making& making) {
    PatchSum sum;
    for (const PatchRow& row : kPatchRows) add_sort(making, row, sum);
    return sum;
}

void tape(Making& making, const PatchSum& sum) {
    Working working = sum.tape;
    working.push_back("= " + in_words(sum.tape_m, "m"));
    const double all = making.with_spare(sum.tape_m, "tape_spare_pct", "m", working);
    add_material(making, {.section = {},
                          .name = "flashing_tape",
                          .title = "flashing tape",
                          .amount = in_millionths(all),
                          .unit = "m",
                          .working = std::move(working),
                          .allowances = making.rows({"patch_wall_mm", "patch_inner_mm", "patch_opening_mm",
                                                     "patch_extra_mm", "tape_spare_pct"})});
}

void primer(Making& making, const PatchSum& sum) {
    Working working = sum.primed;
    const double cover_m2_l = making.rate("primer_cover_m2_l");
    const double litres = sum.primed_m2 / cover_m2_l;
    working.push_back("= " + in_words(sum.primed_m2, "m2") + " / " + shortest(cover_m2_l, 3) +
                      " m² to the litre = " + in_words(litres, "l"));
    const double all = making.with_spare(litres, "primer_spare_pct", "l", working);
    add_material(making,
                 {.section = {},
                  .name = "primer",
                  .title = "primer",
                  .amount = in_millionths(all),
                  .unit = "l",
                  .working = std::move(working),
                  .allowances = making.rows({"primer_order_mm", "primer_cover_m2_l", "primer_spare_pct"})});
}

void lap_sealant(Making& making, const PatchSum& sum) {
    Working working = sum.bead;
    const double bead_m = making.rate("lap_bead_m_cartridge");
    const double cartridges = sum.bead_m / bead_m;
    working.push_back("= " + in_words(sum.bead_m, "m") + " / " + shortest(bead_m, 2) +
                      " m to the cartridge = " + in_words(cartridges, ""));
    const double all = making.with_spare(cartridges, "lap_spare_pct", "", working);
    add_material(making, {.section = {},
                          .name = "lap_sealant",
                          .title = "lap sealant",
                          .amount = in_millionths(all),
                          .unit = "cartridge",
                          .working = std::move(working),
                          .allowances = making.rows({"lap_bead_m_cartridge", "lap_spare_pct"})});
}

void chase_sealant(Making& making) {
    const double b_mm = making.rate("chase_joint_b_mm");
    const double d_mm = making.rate("chase_joint_d_mm");
    const double length_m = metres_of(making.roof, "chase");
    const double litres = length_m * 1000 * b_mm * d_mm / kMm3_a_l;
    Working working{in_words(length_m, "m") + " x " + shortest(b_mm, 1) + " x " + shortest(d_mm, 1) +
                    " mm = " + in_words(litres, "l")};
    const double all = making.with_spare(litres, "chase_spare_pct", "l", working);
    add_material(making,
                 {.section = {},
                  .name = "chase_sealant",
                  .title = "chase sealant",
                  .amount = in_millionths(all),
                  .unit = "l",
                  .working = std::move(working),
                  .allowances = making.rows({"chase_joint_b_mm", "chase_joint_d_mm", "chase_spare_pct"})});
}

// One at each end of every edge, and between them no further apart than the spacing.
void wedges(Making& making) {
    const double spacing_mm = making.rate("wedge_spacing_mm");
    double all = 0;
    Working working;
    for (const CountedEdge& edge : making.roof.edges) {
        if (!edge.has("chase")) continue;
        const double spaces = rounded_up(static_cast<double>(edge.length_mm) / spacing_mm);
        all += spaces + 1;
        working.push_back(edge.name + " " + in_metres(edge.length_mm) + " m: " + shortest(spaces, 0) +
                          " spaces, " + shortest(spaces + 1, 0));
    }
    add_material(making, {.section = {},
                          .name = "wedges",
                          .title = "wedges",
                          .amount = in_millionths(all),
                          .unit = "piece",
                          .working = std::move(working),
                          .allowances = making.rows({"wedge_spacing_mm"})});
}

} // namespace

void add_adhesives(Making& making) {
    for (const AdhesiveRow& row : kAdhesives) add_material(making, adhesive(making, row));
}

void add_patches(Making& making) {
    if (making.roof.patches.empty()) return;
    const PatchSum sum = patch_sum(making);
    tape(making, sum);
    primer(making, sum);
    lap_sealant(making, sum);
}

void add_chase(Making& making) {
    if (metres_of(making.roof, "chase") <= 0) return;
    chase_sealant(making);
    wedges(making);
}

} // namespace undersheet::job
