// Weight of the concrete: the most that the plan's own numbers allow.
//
//   m_max = V rho (1 + t)      W_max = m_max g      W = max(W_max, W_stated)
//
// Source   Newton's second law; g is the standard gravity, exact by definition (CGPM 1901).
// V        volume of the solid, openings taken out.
// rho, t   density and its tolerance, of the plan. There is no default tolerance: zero would lower the load.
// W_stated the weight on the drawing. The heavier of the two is used whatever their difference; whether they
//          differ too much to be the same piece is the check stated-weight.
// The tolerance holds for all of the concrete alike, so the centre of gravity stays where geometry puts it.

#include "loads/weight.hpp"

#include <algorithm>

namespace firstpick::loads {

namespace {

Outcome<Force> upper_bound(const plan::Concrete& concrete, Volume volume, Trace& trace) {
  if (!concrete.density_tolerance)
    return NotAssessed{"the density has no tolerance, so the weight has no upper bound",
                       "write density_tolerance in [concrete], in the form \"3 %\""};
  const Ratio tolerance = *concrete.density_tolerance;
  if (!(volume > Volume{}) || !is_finite(volume))
    return NotAssessed{"the volume of the piece is not a usable number", "check the solids of the piece"};
  if (!(concrete.density > Density{}) || !is_finite(concrete.density))
    return NotAssessed{"the density is not a usable number", "write density in [concrete], above zero"};
  if (!(tolerance >= Ratio{}) || !is_finite(tolerance))
    return NotAssessed{"the tolerance of the density is not a usable number",
                       "write density_tolerance in [concrete], zero or more"};

  const Mass mass = volume * concrete.density * (1.0 + tolerance);
  const Force weight = mass * standard_gravity;
  trace.add([&] {
    return Step{.words = "mass of the concrete, upper bound",
                .result = {"m_max", in(kg, mass), "kg"},
                .formula = "V * rho * (1 + t)",
                .given = {{"V", in(m3, volume), "m3"},
                          {"rho", in(kg_per_m3, concrete.density), "kg/m3"},
                          {"t", tolerance.value(), "1"}},
                .clause = "geometry"};
  });
  trace.add([&] {
    return Step{.words = "weight of the concrete, upper bound",
                .result = {"W_max", in(newton, weight), "N"},
                .formula = "m_max * g",
                .given = {{"m_max", in(kg, mass), "kg"}, {"g", standard_gravity.value(), "m/s2"}},
                .clause = "standard gravity, CGPM 1901"};
  });
  return weight;
}

}  // namespace

Force nominal_weight(const plan::Plan& plan, const piece::Body& body) {
  return body.volume * plan.concrete.density * standard_gravity;
}

Outcome<Force> weight(const plan::Plan& plan, const piece::Body& body, Trace& trace) {
  const Outcome<Force> bound = upper_bound(plan.concrete, body.volume, trace);
  if (!is_assessed(bound)) return bound;
  const Force computed = std::get<Force>(bound);
  if (!is_finite(computed)) return NotAssessed{"the weight of the piece is not a usable number", {}};
  if (!plan.piece.stated_weight) {
    trace.add([&] {
      return Step{.words = "weight used; the plan states none",
                  .result = {"W", in(kN, computed), "kN"},
                  .formula = "W_max",
                  .given = {{"W_max", in(kN, computed), "kN"}},
                  .clause = "firstpick, stage-load"};
    });
    return computed;
  }

  const Force stated = *plan.piece.stated_weight;
  if (!(stated > Force{}) || !is_finite(stated))
    return NotAssessed{"the stated weight is not a usable number",
                       "write stated_weight in [piece], above zero"};
  const Force used = stated > computed ? stated : computed;
  trace.add([&] {
    return Step{.words = "weight used: the heavier of geometry's upper bound and the stated weight",
                .result = {"W", in(kN, used), "kN"},
                .formula = "max(W_max, W_stated)",
                .given = {{"W_max", in(kN, computed), "kN"}, {"W_stated", in(kN, stated), "kN"}},
                .clause = "firstpick, stage-load"};
  });
  return used;
}

Outcome<Force> least_weight(const plan::Plan& plan, const piece::Body& body) {
  if (!plan.concrete.density_tolerance)
    return NotAssessed{"the density has no tolerance, so the weight has no lower bound",
                       "write density_tolerance in [concrete], in the form \"3 %\""};
  const Force least = (1.0 - plan.concrete.density_tolerance->value()) * nominal_weight(plan, body);
  return plan.piece.stated_weight ? std::min(least, *plan.piece.stated_weight) : least;
}

}  // namespace firstpick::loads
