// A piece taken as a ring: a level circle of one rectangular section, under the vertical and level parts of its legs, the
// load even all round.
//
// Kernel   demands/ring_girder.hpp. Depth counted: at most the arc between two picks that carry over
//          "cracking.line_slenderness", as deep as a line may be: a wall that is deeper is no beam.
// Range    middle radius at least "cracking.line_slenderness" walls; picks in the top, at the middle of the wall to a quarter
//          of it: they twist the ring by what they stand off.
// Not assessed: parts or grip of the form that lie to one side; legs that pull the ring aside.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "checks/piece_bending.hpp"
#include "checks/round_and_box.hpp"
#include "demands/ring_girder.hpp"
#include "units/print.hpp"

namespace firstpick::checks {

namespace {

constexpr double beside_the_middle = 0.25;  // of the wall
constexpr double even_about_axis_within = 0.02;        // of the radius: parts and grip about the axis

std::optional<NotAssessed> uneven(const BendingLoads& loads, const RingShape& shape) {
  for (std::size_t i = 1; i < loads.set.loads.size(); ++i) {
    const Position off = loads.set.loads[i].at - shape.middle;
    if (!(std::hypot(in(m, off.x), in(m, off.y)) <= even_about_axis_within * in(m, shape.outside)))
      return NotAssessed{"a part or the grip of the form lies to one side of the ring", name_own_check};
  }
  return {};
}

Outcome<demands::Ring> loaded(const StageFacts& facts, const RingShape& shape, const Situation& situation) {
  demands::Ring ring;
  ring.radius = 0.5 * (shape.outside + shape.inside);
  ring.wall = shape.outside - shape.inside;
  ring.depth = shape.depth;
  ring.poisson = facts.rules.cracking.poisson.value.value();
  std::vector<double> angles;
  for (std::size_t leg = 0; leg < situation.legs.size(); ++leg) {
    const auto insert = std::ranges::find(facts.plan.inserts, facts.rigging->legs.at(leg).to, &plan::Insert::id);
    if (insert == facts.plan.inserts.end()) continue;
    const ForceVector& force = situation.legs[leg].on_insert;
    if (norm(force) == Force{}) continue;
    const Position off = insert->at - shape.middle;
    const double x = in(m, off.x), y = in(m, off.y), r = std::hypot(x, y);
    if (!(std::abs(r - in(m, ring.radius)) <= beside_the_middle * in(m, ring.wall)))
      return NotAssessed{fmt::format("{} does not pull at the middle of the ring's wall", insert->id), name_own_check};
    const double c = x / r, s = y / r;
    demands::RingForce at{.at = std::atan2(y, x) * radian, .up = force.z, .inward = -c * force.x - s * force.y,
                          .around = -s * force.x + c * force.y, .above_middle = insert->at.z - shape.middle.z};
    at.outside_middle = r * m - ring.radius;
    ring.forces.push_back(at);
    angles.push_back(std::atan2(y, x));
  }
  if (ring.forces.empty()) return NotAssessed{"nothing carries the ring", {}};
  std::ranges::sort(angles);
  double arc = angles.front() + 2.0 * M_PI - angles.back();
  for (std::size_t i = 1; i < angles.size(); ++i) arc = std::min(arc, angles[i] - angles[i - 1]);
  if (angles.size() == 1) arc = 2.0 * M_PI;
  ring.depth_counted = std::min(shape.depth, Length{arc / facts.rules.cracking.line_slenderness.value.value() * ring.radius});
  return ring;
}

}  // namespace

Outcome<BendingTension> ring_tension(const StageFacts& facts) {
  const auto shape = ring_shape(facts.body);
  if (!shape) return NotAssessed{"the piece is not a round ring of one section", name_own_check};
  if (!is_slender(*shape, facts.rules.cracking))
    return NotAssessed{fmt::format("the wall of the ring is thicker than 1/{:.3g} of its radius",
                                   facts.rules.cracking.line_slenderness.value.value()), name_own_check};
  BendingTension worst;
  const UnitSystem units = facts.plan.piece.units;
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
    const auto loads = bending_loads(facts, situation);
    if (const auto* missing = std::get_if<NotAssessed>(&loads)) return *missing;
    if (auto refused = uneven(std::get<BendingLoads>(loads), *shape)) return *std::move(refused);
    const auto ring = loaded(facts, *shape, std::get<BendingLoads>(loads).situation);
    if (const auto* missing = std::get_if<NotAssessed>(&ring)) return *missing;
    const auto state = demands::ring_state(std::get<demands::Ring>(ring));
    if (const auto* missing = std::get_if<NotAssessed>(&state)) return *missing;
    const demands::RingSection& section = std::get<demands::RingState>(state).most_tension();
    if (!worst.where.empty() && !(section.tension > worst.tension)) continue;
    worst = {section.tension,
             fmt::format("wall of the ring, {} round from +x", firstpick::print(section.at, units)),
             situation.name, abs(section.bending), situation.some_legs_only};
  }
  if (worst.where.empty()) return NotAssessed{"no situation loads the piece", {}};
  return worst;
}

}  // namespace firstpick::checks
