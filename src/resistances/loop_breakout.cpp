// A body of concrete breaks out with a loop of bar.
//
//   N_cb of one insert as deep as the loop, breakout.cpp
//
// Source   ACI 318-19 17.6.2, which is written for headed inserts and hooked bolts: taken for bar loops as a borrowed model.
//          No source read gives the cone of a loop.
// Range    one loop alone: who asks makes sure that no other insert shares its concrete.

#include "resistances/loop_breakout.hpp"

#include <fmt/format.h>

#include "resistances/edge_distance.hpp"
#include "resistances/embedment.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

Outcome<Resistance<Force>> loop_breakout(const plan::Insert& insert, const piece::InsertSite& site,
                                         const plan::Concrete& concrete, Stress f_c, const tables::RuleSet& rules,
                                         const tables::Tables& tables, ProjectedAreas& areas, Trace& trace) {
  if (!insert.embedment || !insert.loop || !insert.loop->diameter)
    return NotAssessed{fmt::format("depth and diameter of loop {} are not both in the plan", insert.id),
                       "[[insert]] embedment = \"...\", loop = { diameter = \"...\" }"};
  if (!concrete.cracked)
    return NotAssessed{fmt::format("the plan does not say whether the concrete at loop {} is cracked", insert.id),
                       "[concrete] cracked = true; false only where analysis shows no cracking at the loop"};
  const auto kind = tables.concretes.find(concrete.kind);
  if (kind == tables.concretes.end())
    return NotAssessed{fmt::format("the concrete '{}' is not in tables/concretes.toml", concrete.kind),
                       "[concrete] kind = a key of tables/concretes.toml"};
  if (!site.planar)
    return NotAssessed{fmt::format("loop {} sits in a curved face; the formulas are for a flat face", insert.id), {}};
  if (!is_usable(*insert.embedment) || !(*insert.embedment < site.thickness))
    return NotAssessed{fmt::format("loop {} does not end inside the concrete: see loop-depth", insert.id),
                       "a shorter loop, or another place"};
  if (auto gap = not_whole_below(site)) return *std::move(gap);
  const auto edges = edge_distances(site, site.u, site.v);
  if (const auto* gap = std::get_if<NotAssessed>(&edges)) return *gap;
  const HeadedInsert alone{.id = insert.id,
                           .h_ef = *insert.embedment,
                           .d_a = *insert.loop->diameter,
                           .A_brg = {},
                           .A_se = {},
                           .f_uta = {},
                           .stud = false,
                           .cracked = *concrete.cracked,
                           .lambda_a = kind->second.lambda_a.value,
                           .site = &site,
                           .at = insert.at,
                           .edges = std::get<EdgeDistances>(edges)};
  const HeadedInsert* const group[] = {&alone};
  return breakout(group, areas, Eccentricity::none(), f_c, rules.headed, trace);
}

}  // namespace firstpick::resistances
