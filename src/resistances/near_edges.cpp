// The depth to calculate with where edges in three or four directions cut the breakout body.
//
//   h_ef = max(c_a,max / 1.5, s_max / 3)        c_a,max: the largest of the edge distances under 1.5 h_ef
//
// Source   ACI 318-19 17.6.2.1.2; EN 1992-4:2018 7.2.1.4 has the same. It raises the strength against not applying it, and with it a farther edge
//          may lower the strength.
// Range    edges nearer than 1.5 h_ef in three or four of the directions; never more than the real h_ef.

#include "resistances/near_edges.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "resistances/mm_n_terms.hpp"

namespace firstpick::resistances {

Length depth_near_edges(Length h_ef, const GroupLayout& layout, const tables::HeadedInsertModel& model,
                        Trace& trace) {
  const Length reach = model.cone_extent.value * h_ef;
  int near = 0;
  Length c_amax{};
  for (const Length& c : layout.edges.c) {
    if (!(c < reach)) continue;
    ++near;
    c_amax = std::max(c_amax, c);
  }
  if (near < 3) return h_ef;
  const Length depth = std::min(
      h_ef, std::max(c_amax / model.cone_extent.value, layout.s_max / (2.0 * model.cone_extent.value)));
  trace.add([&] {
    return Step{
        .words = fmt::format("edges in {} directions cut the breakout body: depth to calculate with", near),
        .result = term_of(model, "h_ef_c", depth),
        .formula = "min(h_ef, max(c_amax / k_h, s_max / (2 * k_h)))",
        .given = {term_of(model, "h_ef", h_ef), term_of(model, "c_amax", c_amax),
                  term_of(model, "k_h", model.cone_extent.value), term_of(model, "s_max", layout.s_max)},
        .clause = model.en ? "EN 1992-4 7.2.1.4" : "ACI 318-19 17.6.2.1.2",
        .sources = {model.cone_extent.source}};
  });
  return depth;
}

}  // namespace firstpick::resistances
