// A body of concrete breaks off towards an edge, in front of one insert or a row.
//
//   V_cb = (A_Vc / A_Vco) psi_ec psi_ed psi_c psi_h V_b              towards the edge
//   V_cb_par = 2 V_cb with psi_ed = 1                                along the edge
//   A_Vc = (min(1.5 c_a1, c_a2) + s + min(1.5 c_a1, c_a2')) min(1.5 c_a1, h_a),   A_Vco = 4.5 c_a1^2
//   psi_ec = 1 / (1 + e / (1.5 c_a1)),   psi_ed = 0.7 + 0.3 c_a2 / (1.5 c_a1) <= 1,
//   psi_h = sqrt(1.5 c_a1 / h_a) >= 1
//   V_b: basic_shear_breakout.cpp;   c_a1 everywhere: narrow_section.cpp in a narrow and thin section
//
// Source   ACI 318-19 17.7.2.1 to 17.7.2.6. No edge reinforcement is counted.

#include "resistances/shear_breakout.hpp"

#include <algorithm>
#include <cmath>

#include "resistances/basic_shear_breakout.hpp"
#include "resistances/en_1992_4.hpp"
#include "resistances/lb_in_terms.hpp"
#include "resistances/narrow_section.hpp"

namespace firstpick::resistances {

namespace {

struct EdgeFactors {
  Length c_a1, reach, depth;  // c_a1 to calculate with; 1.5 c_a1; min(1.5 c_a1, h_a)
  std::array<Length, 2> sides;
  Length c_a2;
  Area A_Vc, A_Vco;
  Ratio psi_ec, psi_ed, psi_h;
};

EdgeFactors factors(const ShearEdge& edge, Length c_a1, const tables::HeadedInsertModel& model) {
  const Length reach = model.shear_extent.value * c_a1;
  const Length depth = std::min(reach, edge.h_a);
  const std::array<Length, 2> sides{std::min(reach, edge.c_a2[0]), std::min(reach, edge.c_a2[1])};
  const Length c_a2 = std::min(edge.c_a2[0], edge.c_a2[1]);
  return {.c_a1 = c_a1,
          .reach = reach,
          .depth = depth,
          .sides = sides,
          .c_a2 = c_a2,
          .A_Vc = (sides[0] + edge.s + sides[1]) * depth,
          .A_Vco = 2.0 * reach * reach,
          .psi_ec = 1.0 / (1.0 + edge.eccentricity / reach),
          .psi_ed = c_a2 >= reach ? Ratio{1.0}
                                  : model.psi_edV_base.value + model.psi_edV_slope.value * (c_a2 / reach),
          .psi_h = edge.h_a >= reach ? Ratio{1.0} : root(reach / edge.h_a)};
}

void record_areas(const ShearEdge& edge, const EdgeFactors& f, const tables::HeadedInsertModel& model,
                  Trace& trace) {
  trace.add([&] {
    return Step{.words = "how far the breakout body reaches sideways and down",
                .result = lb_in("r", f.reach),
                .formula = "k_h * c_a1",
                .given = {lb_in("k_h", model.shear_extent.value), lb_in("c_a1", f.c_a1)},
                .clause = "ACI 318-19 17.7.2.1",
                .sources = {model.shear_extent.source}};
  });
  trace.add([&] {
    return Step{.words = "area of the breakout body on the side of the edge",
                .result = lb_in("A_Vc", f.A_Vc),
                .formula = "(min(r, c_a2_left) + s + min(r, c_a2_right)) * min(r, h_a)",
                .given = {lb_in("r", f.reach), lb_in("c_a2_left", edge.c_a2[0]), lb_in("s", edge.s),
                          lb_in("c_a2_right", edge.c_a2[1]), lb_in("h_a", edge.h_a)},
                .clause = "ACI 318-19 17.7.2.1.1",
                .sources = {}};
  });
  trace.add([&] {
    return Step{.words = "that area of one insert in deep concrete, far from corners",
                .result = lb_in("A_Vco", f.A_Vco),
                .formula = "2 * r^2",
                .given = {lb_in("r", f.reach)},
                .clause = "ACI 318-19 17.7.2.1.3",
                .sources = {}};
  });
}

void record_factors(const ShearEdge& edge, const EdgeFactors& f, const tables::HeadedInsertModel& model,
                    Trace& trace) {
  trace.add([&] {
    return Step{.words = "the resultant shear acts beside the centroid of the row",
                .result = lb_in("psi_ec", f.psi_ec),
                .formula = "1 / (1 + e / r)",
                .given = {lb_in("e", edge.eccentricity), lb_in("r", f.reach)},
                .clause = "ACI 318-19 17.7.2.3",
                .sources = {}};
  });
  trace.add([&] {
    return Step{.words = "a corner near the insert",
                .result = lb_in("psi_ed", f.psi_ed),
                .formula = f.c_a2 >= f.reach ? "1" : "b + a * c_a2 / r",
                .given = {lb_in("b", model.psi_edV_base.value), lb_in("a", model.psi_edV_slope.value),
                          lb_in("c_a2", f.c_a2), lb_in("r", f.reach)},
                .clause = "ACI 318-19 17.7.2.4",
                .sources = {model.psi_edV_base.source, model.psi_edV_slope.source}};
  });
  trace.add([&] {
    return Step{.words = "concrete thinner than the breakout body is deep",
                .result = lb_in("psi_h", f.psi_h),
                .formula = "sqrt(max(r / h_a, 1))",
                .given = {lb_in("r", f.reach), lb_in("h_a", edge.h_a)},
                .clause = "ACI 318-19 17.7.2.6",
                .sources = {}};
  });
}

}  // namespace

EdgeStrength shear_breakout(const ShearEdge& edge, Stress f_c, const tables::HeadedInsertModel& model,
                            Trace& trace) {
  if (model.en) return en_shear_breakout(edge, f_c, model, trace);
  const Length c_a1 = edge_distance_in_section(edge, model, trace);
  const EdgeFactors f = factors(edge, c_a1, model);
  const Sourced<Ratio>& psi_c = edge.cracked ? model.psi_cV_cracked : model.psi_cV_uncracked;
  const Force V_b = basic_shear_breakout(c_a1, edge.h_ef, edge.d_a, edge.lambda_a, f_c, model, trace);
  const Force V_far = (f.A_Vc / f.A_Vco) * f.psi_ec * psi_c.value * f.psi_h * V_b;
  EdgeStrength strength{f.psi_ed * V_far, model.parallel_shear.value * V_far};

  record_areas(edge, f, model, trace);
  record_factors(edge, f, model, trace);
  trace.add([&] {
    return Step{.words = "breakout strength against a shear towards the edge",
                .result = lb_in("V_cb", strength.towards),
                .formula = "A_Vc / A_Vco * psi_ec * psi_ed * psi_c * psi_h * V_b",
                .given = {lb_in("A_Vc", f.A_Vc), lb_in("A_Vco", f.A_Vco), lb_in("psi_ec", f.psi_ec),
                          lb_in("psi_ed", f.psi_ed), lb_in("psi_c", psi_c.value), lb_in("psi_h", f.psi_h),
                          lb_in("V_b", V_b)},
                .clause = "ACI 318-19 17.7.2.1",
                .sources = {psi_c.source}};
  });
  trace.add([&] {
    return Step{.words = "breakout strength against a shear along the edge",
                .result = lb_in("V_cb_par", strength.along),
                .formula = "k_par * A_Vc / A_Vco * psi_ec * psi_c * psi_h * V_b",
                .given = {lb_in("k_par", model.parallel_shear.value), lb_in("A_Vc", f.A_Vc),
                          lb_in("A_Vco", f.A_Vco), lb_in("psi_ec", f.psi_ec), lb_in("psi_c", psi_c.value),
                          lb_in("psi_h", f.psi_h), lb_in("V_b", V_b)},
                .clause = "ACI 318-19 17.7.2.1(c)",
                .sources = {psi_c.source, model.parallel_shear.source}};
  });
  return strength;
}

}  // namespace firstpick::resistances
