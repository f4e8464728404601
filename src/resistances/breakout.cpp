// A body of concrete breaks out with one insert or a group in tension.
//
//   N_cbg = (A_Nc / A_Nco) psi_ec psi_ed psi_c psi_cp N_b        A_Nco = 9 h_ef^2
//   psi_ec = 1 / (1 + e / (1.5 h_ef)), both axes multiplied
//   psi_ed = 1 where c_a,min >= 1.5 h_ef, else 0.7 + 0.3 c_a,min / (1.5 h_ef)
//   h_ef everywhere above is that of near_edges.cpp where edges are near in three or four directions
//
// Source   ACI 318-19 17.6.2.1 to 17.6.2.6; 17.9.2 for the least spacing.
// Inputs   inserts of one face with equal h_ef (a group, by ACI 318-19 2.3, has about equal depths); f_c
//          for the formulas.
// Range    spacing of at least 4 d_a. No supplementary reinforcement is counted.

#include "resistances/breakout.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "resistances/basic_breakout.hpp"
#include "resistances/breakout_parts.hpp"
#include "resistances/en_1992_4.hpp"
#include "resistances/lb_in_terms.hpp"
#include "resistances/near_edges.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

constexpr double rounding = 1e-9;  // of positions: 3 in between 12 in and 15 in is not 3 in to the last bit

Ratio eccentricity_factor(const Eccentricity& e, Length reach) {
  return 1.0 / ((1.0 + abs(e.u) / reach) * (1.0 + abs(e.v) / reach));
}

Ratio edge_factor(Length c_amin, Length reach, const tables::HeadedInsertModel& model) {
  if (c_amin >= reach) return 1.0;
  return model.psi_ed_base.value + model.psi_ed_slope.value * (c_amin / reach);
}

struct Factors {
  Length depth, reach;
  Area A_Nc, A_Nco;
  Ratio psi_ec, psi_ed;
};

Step area_step(Group group, const GroupLayout& layout, const Factors& f) {
  Step step{.words = fmt::format("area of the breakout body of {} on the face, cut off at edges and openings",
                                 inserts_in_words(group)),
            .result = lb_in("A_Nc", f.A_Nc),
            .formula = {},
            .given = {},
            .clause = "ACI 318-19 17.6.2.1.1",
            .sources = {}};
  if (const auto shape = area_formula(group, layout, f.reach, f.A_Nc)) {
    step.formula = shape->formula;
    step.given = {lb_in("c_1", shape->c[0]), lb_in("r", f.reach), lb_in("c_2", shape->c[1]), lb_in("c_3", shape->c[2]),
                  lb_in("c_4", shape->c[3])};
  }
  return step;
}

void record(Group group, const GroupLayout& layout, const Eccentricity& e, const Factors& f,
            const tables::HeadedInsertModel& model, Trace& trace) {
  trace.add([&] {
    return Step{.words = "how far the breakout body reaches from an insert",
                .result = lb_in("r", f.reach),
                .formula = "k_h * h_ef",
                .given = {lb_in("k_h", model.cone_extent.value), lb_in("h_ef", f.depth)},
                .clause = "ACI 318-19 17.6.2.1",
                .sources = {model.cone_extent.source}};
  });
  trace.add([&] { return area_step(group, layout, f); });
  trace.add([&] {
    return Step{.words = "area of the breakout body of one insert far from edges",
                .result = lb_in("A_Nco", f.A_Nco),
                .formula = "(2 * r)^2",
                .given = {lb_in("r", f.reach)},
                .clause = "ACI 318-19 17.6.2.1.4",
                .sources = {}};
  });
  trace.add([&] {
    return Step{.words = "the resultant acts beside the centroid of the group",
                .result = lb_in("psi_ec", f.psi_ec),
                .formula = "1 / ((1 + e_u / r) * (1 + e_v / r))",
                .given = {lb_in("e_u", abs(e.u)), lb_in("r", f.reach), lb_in("e_v", abs(e.v))},
                .clause = "ACI 318-19 17.6.2.3",
                .sources = {}};
  });
  trace.add([&] {
    return Step{.words = "an edge near the inserts",
                .result = lb_in("psi_ed", f.psi_ed),
                .formula = layout.edges.nearest >= f.reach ? "1" : "b + a * c_amin / r",
                .given = {lb_in("b", model.psi_ed_base.value), lb_in("a", model.psi_ed_slope.value),
                          lb_in("c_amin", layout.edges.nearest), lb_in("r", f.reach)},
                .clause = "ACI 318-19 17.6.2.4",
                .sources = {model.psi_ed_base.source, model.psi_ed_slope.source}};
  });
}

}  // namespace

std::string inserts_in_words(Group group) {
  std::string words = group.size() == 1 ? "insert " : "inserts ";
  for (std::size_t i = 0; i < group.size(); ++i) words += (i == 0 ? "" : ", ") + group[i]->id;
  return words;
}

// Why this group is outside the range of the formulas; nothing: it is inside.
std::optional<NotAssessed> outside_range(Group group, const GroupLayout& layout, Stress f_c,
                                         const tables::HeadedInsertModel& model) {
  const HeadedInsert& first = *group.front();
  if (!is_usable(f_c)) return NotAssessed{"the concrete strength is not a number above zero", {}};
  for (const HeadedInsert* insert : group) {
    if (!is_usable(insert->h_ef) || !is_usable(insert->d_a) || !is_usable(insert->lambda_a))
      return NotAssessed{fmt::format("insert {} is not described by numbers above zero", insert->id), {}};
    if (!(abs(insert->h_ef - first.h_ef) <= rounding * first.h_ef))
      return NotAssessed{
          fmt::format("inserts {} and {} break out together but differ in embedment", first.id, insert->id),
          "one embedment for all inserts of the group, or more distance between them"};
    if (!(layout.s_min >= (1.0 - rounding) * model.minimum_spacing.value * insert->d_a))
      return NotAssessed{fmt::format("inserts of the group of {} are nearer than {:g} shank diameters",
                                     first.id, model.minimum_spacing.value.value()),
                         "more distance between the inserts"};
  }
  return {};
}

std::optional<AreaFormula> area_formula(Group group, const GroupLayout& layout, Length r, Area area) {
  if (group.size() != 1) return {};
  const auto& c = layout.edges.c;
  const auto reach = [&](std::size_t i) { return std::min(c[i], r); };
  const Area rectangle = (reach(0) + reach(1)) * (reach(2) + reach(3));
  if (!(abs(rectangle - area) <= rounding * area)) return {};  // cut in another shape: no formula to print
  return AreaFormula{"(min(c_1, r) + min(c_2, r)) * (min(c_3, r) + min(c_4, r))", c};
}

Outcome<Resistance<Force>> breakout(Group group, ProjectedAreas& areas, const Eccentricity& eccentricity,
                                    Stress f_c, const tables::HeadedInsertModel& model, Trace& trace) {
  if (model.en) return en_breakout(group, areas, eccentricity, f_c, model, trace);
  const Outcome<GroupLayout>& placed = areas.layout(group);
  if (const auto* why = std::get_if<NotAssessed>(&placed)) return *why;
  const auto& layout = std::get<GroupLayout>(placed);
  if (auto why = outside_range(group, layout, f_c, model)) return *std::move(why);
  if (!is_finite(eccentricity.u) || !is_finite(eccentricity.v))
    return NotAssessed{"the place of the resultant of the group is not a number", {}};

  const HeadedInsert& insert = *group.front();
  const Length depth = depth_near_edges(insert.h_ef, layout, model, trace);
  const Length reach = model.cone_extent.value * depth;
  const Outcome<Area>& area = areas.area(group, reach);
  if (const auto* why = std::get_if<NotAssessed>(&area)) return *why;

  const Factors f{.depth = depth,
                  .reach = reach,
                  .A_Nc = std::get<Area>(area),
                  .A_Nco = 4.0 * reach * reach,
                  .psi_ec = eccentricity_factor(eccentricity, reach),
                  .psi_ed = edge_factor(layout.edges.nearest, reach, model)};
  const Sourced<Ratio>& psi_c = insert.cracked ? model.psi_c_cracked : model.psi_c_uncracked;
  record(group, layout, eccentricity, f, model, trace);
  const Force N_b = basic_breakout(depth, insert.lambda_a, f_c, model, trace);
  const Force N_cb = (f.A_Nc / f.A_Nco) * f.psi_ec * f.psi_ed * psi_c.value * model.psi_cp.value * N_b;
  if (!is_usable(N_cb))
    return NotAssessed{
        fmt::format("the breakout strength about insert {} is not a number above zero", insert.id), {}};
  trace.add([&] {
    return Step{.words = fmt::format("breakout strength of {} in tension", inserts_in_words(group)),
                .result = lb_in("N_cb", N_cb),
                .formula = "A_Nc / A_Nco * psi_ec * psi_ed * psi_c * psi_cp * N_b",
                .given = {lb_in("A_Nc", f.A_Nc), lb_in("A_Nco", f.A_Nco), lb_in("psi_ec", f.psi_ec),
                          lb_in("psi_ed", f.psi_ed), lb_in("psi_c", psi_c.value),
                          lb_in("psi_cp", model.psi_cp.value), lb_in("N_b", N_b)},
                .clause = group.size() == 1 ? "ACI 318-19 17.6.2.1(a)" : "ACI 318-19 17.6.2.1(b)",
                .sources = {psi_c.source, model.psi_cp.source}};
  });
  return Resistance<Force>{N_cb};
}

}  // namespace firstpick::resistances
