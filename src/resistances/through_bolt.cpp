// A bolt through the concrete, held by a square plate on the far face.
//
//   steel      R = A_se min(futa, 1.9 fya, 125 ksi)                      ACI 318-19 17.6.1.2; EN 1992-4 7.2.1.3: A_s f_uk
//   bearing    R = 0.85 f_c A_1                                          ACI 318-19 22.8.3.2, from memory
//   punching   R = 2.66 lambda sqrt(f_c) b_o h,  b_o = 4 (w + h)         ACI 318-19 14.5.5.1, plain concrete, from memory
//
// Inputs   w: side of the plate; h: thickness of the concrete at the bolt; A_1: its area on the concrete, hole taken out.
// Range    a flat face, the whole perimeter at h/2 from the plate inside its edges, openings included. The far face is
//          taken to have the edges of the near one.

#include "resistances/through_bolt.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "resistances/edge_distance.hpp"
#include "resistances/lb_in_terms.hpp"
#include "resistances/shank_area.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

Outcome<Resistance<Force>> through_bolt_steel(const plan::Insert& insert, const tables::RuleSet& rules,
                                              const tables::Tables& tables, Trace& trace) {
  if (!insert.shank || insert.steel.empty())
    return NotAssessed{fmt::format("diameter and steel of the bolt of insert {} are not both in the plan", insert.id),
                       "[[insert]] shank = \"...\", steel = \"...\""};
  if (!is_usable(*insert.shank)) return NotAssessed{fmt::format("the shank of insert {} is not a number above zero", insert.id), {}};
  const auto steel = tables.steels.find(insert.steel);
  if (steel == tables.steels.end())
    return NotAssessed{fmt::format("the steel '{}' of insert {} is not in tables/steels.toml", insert.steel, insert.id),
                       "[[insert]] steel = a key of tables/steels.toml"};
  const auto area = shank_area(insert, rules.headed, trace);
  if (const auto* gap = std::get_if<NotAssessed>(&area)) return *gap;
  const Area A_se = std::get<Area>(area);
  const auto& headed = rules.headed;
  const Sourced<Stress>&futa = steel->second.futa, &fya = steel->second.fya;
  const Force R =
      A_se * (headed.en ? futa.value
                        : std::min({futa.value, Stress{headed.futa_of_yield.value * fya.value}, headed.futa_cap.value}));
  if (!is_usable(R)) return NotAssessed{fmt::format("the steel of insert {} is not described by usable numbers", insert.id), {}};
  if (headed.en) trace.add([&] {
    return Step{.words = fmt::format("steel of the bolt of insert {}", insert.id),
                .result = {"R", in(kN, R), "kN"},
                .formula = "A_s * f_uk / 1000",
                .given = {{"A_s", in(mm2, A_se), "mm2"}, {"f_uk", in(MPa, futa.value), "MPa"}},
                .clause = "EN 1992-4 7.2.1.3",
                .sources = {futa.source}};
  });
  else trace.add([&] {
    return Step{.words = fmt::format("steel of the bolt of insert {}", insert.id),
                .result = lb_in("R", R),
                .formula = "A_se * min(futa, k_y * fya, cap)",
                .given = {lb_in("A_se", A_se), lb_in("futa", futa.value), lb_in("k_y", headed.futa_of_yield.value),
                          lb_in("fya", fya.value), lb_in("cap", headed.futa_cap.value)},
                .clause = "ACI 318-19 17.6.1.2",
                .sources = {futa.source, fya.source, headed.futa_of_yield.source, headed.futa_cap.source}};
  });
  return Resistance<Force>{R};
}

Outcome<Resistance<Force>> plate_bearing(const plan::Insert& insert, Stress f_c, const tables::PlateModel& model,
                                         Trace& trace) {
  if (!insert.head_bearing_area)
    return NotAssessed{fmt::format("the area of the plate of insert {} on the concrete is not in the plan", insert.id),
                       "[[insert]] head_bearing_area = \"...\", without the hole"};
  const Area A_1 = *insert.head_bearing_area;
  const Force R = model.bearing.value * f_c * A_1;
  if (!is_usable(A_1) || !is_usable(f_c) || !is_usable(R))
    return NotAssessed{fmt::format("the plate of insert {} is not described by numbers above zero", insert.id), {}};
  trace.add([&] {
    return Step{.words = fmt::format("bearing under the plate of insert {}", insert.id),
                .result = lb_in("R", R),
                .formula = "k_B * f_c * A_1",
                .given = {lb_in("k_B", model.bearing.value), lb_in("f_c", f_c), lb_in("A_1", A_1)},
                .clause = "ACI 318-19 22.8.3.2",
                .sources = {model.bearing.source}};
  });
  return Resistance<Force>{R};
}

Outcome<Resistance<Force>> plate_punching(const plan::Insert& insert, const piece::InsertSite& site,
                                          const plan::Concrete& concrete, Stress f_c, const tables::Tables& tables,
                                          Trace& trace) {
  if (!tables.plates) return NotAssessed{"the table of plates is not there", "tables/plates.toml"};
  if (!insert.washer)
    return NotAssessed{fmt::format("the side of the plate of insert {} is not in the plan", insert.id),
                       "[[insert]] washer = \"...\""};
  const auto kind = tables.concretes.find(concrete.kind);
  if (kind == tables.concretes.end())
    return NotAssessed{fmt::format("the concrete '{}' is not in tables/concretes.toml", concrete.kind),
                       "[concrete] kind = a key of tables/concretes.toml"};
  if (!site.planar)
    return NotAssessed{fmt::format("insert {} sits in a curved face; the formula is for a flat one", insert.id), {}};
  const Length w = *insert.washer, h = site.thickness;
  if (!is_usable(w) || !is_usable(h) || !is_usable(f_c))
    return NotAssessed{fmt::format("the plate of insert {} is not described by numbers above zero", insert.id), {}};
  const auto edges = edge_distances(site, site.u, site.v);
  if (const auto* gap = std::get_if<NotAssessed>(&edges)) return *gap;
  if (!(std::get<EdgeDistances>(edges).nearest >= M_SQRT1_2 * (w + h)))  // the corner of the perimeter, however it is turned
    return NotAssessed{fmt::format("an edge is nearer to insert {} than the body that punches out", insert.id),
                       "another place for it, or a design by the engineer"};
  const auto& k_p = tables.plates->punching;
  const auto& lambda = kind->second.lambda_a;
  const Length b_o = 4.0 * (w + h);
  const Force R = k_p.value * lambda.value * root(f_c) * b_o * h;
  if (!is_usable(R)) return NotAssessed{fmt::format("the punching of insert {} is not described by usable numbers", insert.id), {}};
  trace.add([&] {
    return Step{.words = fmt::format("perimeter around the plate of insert {}, half the thickness away", insert.id),
                .result = lb_in("b_o", b_o),
                .formula = "4 * (w + h)",
                .given = {lb_in("w", w), lb_in("h", h)},
                .clause = "ACI 318-19 22.6.4.1"};
  });
  trace.add([&] {
    return Step{.words = fmt::format("plain concrete punched through by the plate of insert {}", insert.id),
                .result = lb_in("R", R),
                .formula = "k_p * lambda * sqrt(f_c) * b_o * h",
                .given = {lb_in("k_p", k_p.value), lb_in("lambda", lambda.value), lb_in("f_c", f_c), lb_in("b_o", b_o),
                          lb_in("h", h)},
                .clause = "ACI 318-19 14.5.5.1",
                .sources = {k_p.source, lambda.source}};
  });
  return Resistance<Force>{R};
}

}  // namespace firstpick::resistances
