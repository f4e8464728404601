// Shear breaks the edge of the concrete off: one insert against a shear in any direction of its face.
//
//   the least R of its four edges, all of them at once (R: shear_parts.cpp)
//
// Source   ACI 318-19 17.7.2.1.
// Inputs   c_a1, c_a2 in the axes of the insert's site; h_a: concrete behind the insert.

#include "resistances/edge_breakout.hpp"

#include <array>
#include <cstddef>

#include <fmt/format.h>

#include "resistances/shear_breakout.hpp"
#include "resistances/shear_parts.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

Outcome<Resistance<Force>> edge_breakout(const HeadedInsert& insert, const Direction& shear, Stress f_c,
                                         const tables::HeadedInsertModel& model, Trace& trace) {
  if (!is_described_for_shear(insert, f_c)) return not_described_for_shear(insert);
  const piece::InsertSite& site = *insert.site;
  if (!has_direction(shear, site))
    return NotAssessed{fmt::format("the shear on insert {} has no direction in its face", insert.id), {}};

  const std::array<Direction, 4> directions{site.u, -1.0 * site.u, site.v, -1.0 * site.v};
  Trace silent;
  std::array<Force, 4> R{};
  std::size_t governing = 4;
  for (std::size_t i = 0; i < 4; ++i) {
    const ShearParts parts = parts_of(shear, directions[i], i < 2 ? site.v : site.u);
    if (!limits(parts)) continue;
    R[i] = against_resultant(parts, shear_breakout(edge_of(insert, i), f_c, model, silent));
    if (!is_usable(R[i])) return not_described_for_shear(insert);
    if (governing == 4 || R[i] < R[governing]) governing = i;
  }
  if (governing == 4) return not_described_for_shear(insert);

  if (trace.is_recording()) {
    const EdgeStrength strength = shear_breakout(edge_of(insert, governing), f_c, model, trace);
    record_resultant("insert " + insert.id, directions[governing],
                     parts_of(shear, directions[governing], governing < 2 ? site.v : site.u), strength,
                     R[governing], trace);
  }
  return Resistance<Force>{R[governing]};
}

}  // namespace firstpick::resistances
