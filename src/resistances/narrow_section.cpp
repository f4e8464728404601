// The edge distance to calculate with in a section that is narrow and thin.
//
//   c_a1 = max(c_a2,max / 1.5, h_a / 1.5, s_max / 3)
//
// Source   ACI 318-19 17.7.2.1.2; EN 1992-4:2018 7.2.2.5 has the same.
// Range    both c_a2 and h_a under 1.5 c_a1; never more than the real c_a1.

#include "resistances/narrow_section.hpp"

#include <algorithm>

#include "resistances/mm_n_terms.hpp"

namespace firstpick::resistances {

Length edge_distance_in_section(const ShearEdge& edge, const tables::HeadedInsertModel& model, Trace& trace) {
  const Length reach = model.shear_extent.value * edge.c_a1;
  const Length c_a2 = std::max(edge.c_a2[0], edge.c_a2[1]);
  if (!(c_a2 < reach && edge.h_a < reach)) return edge.c_a1;
  const Length reduced =
      std::min(edge.c_a1,
               std::max({Length{c_a2 / model.shear_extent.value}, Length{edge.h_a / model.shear_extent.value},
                         Length{edge.s_max / (2.0 * model.shear_extent.value)}}));
  trace.add([&] {
    return Step{
        .words = "narrow and thin section: edge distance to calculate with",
        .result = term_of(model, "c_a1_c", reduced),
        .formula = "min(c_a1, max(c_a2max / k_h, h_a / k_h, s_max / (2 * k_h)))",
        .given = {term_of(model, "c_a1", edge.c_a1), term_of(model, "c_a2max", c_a2),
                  term_of(model, "k_h", model.shear_extent.value), term_of(model, "h_a", edge.h_a),
                  term_of(model, "s_max", edge.s_max)},
        .clause = model.en ? "EN 1992-4 7.2.2.5" : "ACI 318-19 17.7.2.1.2",
        .sources = {model.shear_extent.source}};
  });
  return reduced;
}

}  // namespace firstpick::resistances
