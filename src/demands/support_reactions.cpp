#include <algorithm>
#include <array>
#include <cmath>

#include "demands/beam_pieces.hpp"
#include "demands/linear_equations.hpp"

namespace firstpick::demands {

namespace {

constexpr std::size_t most_supports = 16;

using Moments = std::vector<std::array<double, 3>>;  // N m at the start, middle and end of each piece

// The beam on its outer supports: what they take of its loads.
struct Outer {
  Force left{}, right{};
};
Outer outer_reactions(const BeamLine& beam, Length left, Length right) {
  const std::vector<BeamPiece> pieces = beam_pieces(beam, {});
  const Cut end = with_forces_at_end(beam, pieces.back());
  const Length at_end = pieces.back().to;
  Outer outer;  // their sum and their moment about the right end take what is left there
  outer.left = -(end.moment - end.shear * (at_end - right)) / (right - left);
  outer.right = -end.shear - outer.left;
  return outer;
}

BeamLine without_loads(BeamLine beam) {
  for (BeamStep& step : beam.steps) step.load = LineLoad{};
  beam.forces.clear();
  return beam;
}

Moments moments_on_outer(BeamLine beam, const std::vector<Length>& supports) {
  const Outer outer = outer_reactions(beam, supports.front(), supports.back());
  beam.forces.push_back({supports.front(), {}, {}, outer.left});
  beam.forces.push_back({supports.back(), {}, {}, outer.right});
  // Every beam here is cut at the same places, so that their moments can be multiplied piece by piece.
  Moments moments;
  for (const BeamPiece& piece : beam_pieces(beam, supports)) {
    const Length half = 0.5 * (piece.to - piece.from);
    moments.push_back({piece.cut_at(Length{}).moment.value(), piece.cut_at(half).moment.value(),
                       piece.cut_at(2.0 * half).moment.value()});
  }
  return moments;
}

}  // namespace

Outcome<std::vector<Force>> support_reactions(const BeamLine& beam, const std::vector<Length>& supports) {
  if (auto refused = beam_refusal(beam)) return *std::move(refused);
  std::vector<Length> places = supports;
  std::ranges::sort(places);
  if (places.size() < 2) return NotAssessed{"the piece needs two supports to stand on", {}};
  if (places.size() > most_supports) return NotAssessed{"more than 16 supports under one line", {}};
  const Length first = beam.steps.front().from, last = beam.steps.back().to;
  const Length least_gap = 1e-6 * (last - first);
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (!is_finite(places[i]) || !(places[i] >= first && places[i] <= last))
      return NotAssessed{"a support lies beyond the ends of the piece", {}};
    if (i > 0 && !(places[i] - places[i - 1] > least_gap)) return NotAssessed{"two supports at one place", {}};
  }

  // The unknown inner reactions, each with the moments of a unit force (1 N) there.
  BeamLine cut_alike = beam;
  for (BeamForce& force : cut_alike.forces) force.up = force.along = Force{};
  const std::vector<BeamForce> no_forces = cut_alike.forces;  // they only mark where to cut
  std::vector<Moments> unit;
  for (std::size_t j = 1; j + 1 < places.size(); ++j) {
    BeamLine one = without_loads(beam);
    one.forces = no_forces;
    one.forces.push_back({places[j], {}, {}, 1.0 * newton});
    unit.push_back(moments_on_outer(one, places));
  }
  const Moments loaded = moments_on_outer(beam, places);
  const std::vector<BeamPiece> pieces = beam_pieces(cut_alike, places);
  const auto integral = [&](const Moments& a, const Moments& b) {
    double sum = 0.0;
    for (std::size_t p = 0; p < pieces.size(); ++p) {
      const double length_m = in(m, pieces[p].to - pieces[p].from);
      const double second_moment_m4 = beam.steps[pieces[p].step].second_moment.value();
      sum += length_m / (6.0 * second_moment_m4) *
             (a[p][0] * b[p][0] + 4.0 * a[p][1] * b[p][1] + a[p][2] * b[p][2]);
    }
    return sum;
  };

  LinearEquations<most_supports> equations;
  equations.clear(unit.size());
  for (std::size_t j = 0; j < unit.size(); ++j) {
    for (std::size_t k = 0; k < unit.size(); ++k) equations(j, k) = integral(unit[j], unit[k]);
    equations.right(j) = -integral(loaded, unit[j]);
  }
  equations.solve();

  BeamLine with_inner = beam;
  std::vector<Force> in_order(places.size());
  for (std::size_t j = 0; j < unit.size(); ++j) {
    in_order[j + 1] = equations.right(j) * newton;
    with_inner.forces.push_back({places[j + 1], {}, {}, in_order[j + 1]});
  }
  const Outer outer = outer_reactions(with_inner, places.front(), places.back());
  in_order.front() = outer.left;
  in_order.back() = outer.right;

  std::vector<Force> reactions;
  for (const Length& support : supports) {
    const auto place = std::ranges::find(places, support);
    reactions.push_back(in_order[static_cast<std::size_t>(place - places.begin())]);
    if (!is_finite(reactions.back())) return NotAssessed{"the supports of the piece could not be solved", {}};
  }
  return reactions;
}

}  // namespace firstpick::demands
