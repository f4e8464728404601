// A piece taken as a box: a barrel right through it, hung from two lines of inserts in its top slab; the frame of its
// cross-section, even along the barrel.
//
//   tension   6 M/t^2 + N/t      top slab, walls, bottom slab
//
// Kernel   demands/box_frame.hpp. What the legs carry is spread along the barrel; at picks over "cracking.pick_strip"
//          thicknesses of the top slab for each, no more than its share of the barrel: the top slab's moments are raised
//          by length / (picks of the line x strip).
// Grip     and form parts go three ways, the worst counts: spread as the weight is; all on the bottom slab; all on the
//          top slab.
// Range    spans at least "cracking.line_slenderness" thicknesses of each member; picks in the top face, in two lines
//          even about the middle (2 % of the width) that carry alike (5 % of the load), load centre in the middle (2 %).
// Not assessed: any other; fillets and openings, whose piece is not told from its solid.

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "checks/piece_bending.hpp"
#include "checks/round_and_box.hpp"
#include "demands/box_frame.hpp"
#include "units/print.hpp"

namespace firstpick::checks {

namespace {

constexpr double even_about = 0.02, carry_alike = 0.05;

struct Lines {  // of picks
  Length pick{};           // from the outside of the box
  Force up{}, thrust{};    // of one line, the larger
  Length above_middle{};
  std::size_t picks = 0;   // of the line with fewer
};

Outcome<Lines> lines_of(const StageFacts& facts, const BoxShape& shape, const Situation& situation) {
  const bool y = shape.barrel == plan::Axis::y;
  const auto across = [&](const auto& v) { return y ? v.x : v.y; };
  std::array<Force, 2> up{}, inward{};
  std::array<Length, 2> nearest{shape.width, shape.width}, farthest{};
  std::array<std::size_t, 2> count{};
  Lines lines;
  for (std::size_t leg = 0; leg < situation.legs.size(); ++leg) {
    const auto insert = std::ranges::find(facts.plan.inserts, facts.rigging->legs.at(leg).to, &plan::Insert::id);
    if (insert == facts.plan.inserts.end()) continue;
    const ForceVector& force = situation.legs[leg].on_insert;
    if (norm(force) == Force{}) continue;
    const Position off = insert->at - shape.middle;
    if (!(abs(off.z - 0.5 * shape.depth) <= 1.0 * mm))
      return NotAssessed{fmt::format("{} does not sit in the top face of the box", insert->id), name_own_check};
    const std::size_t side = across(off) > Length{} ? 1 : 0;
    const double sign = side == 1 ? -1.0 : 1.0;
    const Length from_outside = 0.5 * shape.width - abs(across(off));
    up[side] += force.z, inward[side] += sign * across(force);
    nearest[side] = std::min(nearest[side], from_outside);
    farthest[side] = std::max(farthest[side], from_outside);
    ++count[side];
  }
  const Force all = up[0] + up[1];
  if (!(all > Force{}) || count[0] == 0 || count[1] == 0 || !(abs(up[0] - up[1]) <= carry_alike * all) ||
      !(std::max(farthest[0], farthest[1]) - std::min(nearest[0], nearest[1]) <= even_about * shape.width))
    return NotAssessed{"the picks are not in two lines along the barrel, even about its middle", name_own_check};
  lines.pick = std::max(farthest[0], farthest[1]);
  lines.up = std::max(up[0], up[1]);
  const Force both = inward[0] + inward[1];
  lines.thrust = is_finite(both) ? std::max({inward[0], inward[1], Force{}}) : both;
  lines.above_middle = 0.5 * shape.top;
  lines.picks = std::min(count[0], count[1]);
  return lines;
}

struct Found {
  Stress tension{};
  const char* where = "";
  PlateMoment moment{};
};

Found most_tension(const demands::BoxMoments& m, const BoxShape& shape, double raised) {
  Found most;
  const auto look = [&](PlateMoment moment, LineLoad pull, Length t, const char* where) {
    const Stress tension = 6.0 * abs(moment) / (t * t) + pull / t;
    // What is no number stays, whatever comes after it.
    if (is_finite(most.tension) && !(tension <= most.tension)) most = {tension, where, abs(moment)};
  };
  look(raised * m.top_middle, {}, shape.top, "middle of the top slab");
  look(raised * m.top_pick, {}, shape.top, "top slab at the picks");
  look(raised * m.top_corner, {}, shape.top, "top slab at the walls");
  look(m.top_corner, m.wall_top, shape.side, "head of the walls");
  look(m.bottom_corner, m.wall_bottom, shape.side, "foot of the walls");
  look(m.bottom_corner, {}, shape.bottom, "bottom slab at the walls");
  look(m.bottom_middle, {}, shape.bottom, "middle of the bottom slab");
  return most;
}

}  // namespace

Outcome<BendingTension> box_tension(const StageFacts& facts) {
  const auto shape = box_shape(facts.body);
  if (!shape) return NotAssessed{"the piece is not a box of even walls and slabs with a barrel right through", name_own_check};
  demands::BoxFrame frame{.width = shape->width - shape->side,
                          .height = shape->depth - 0.5 * (shape->top + shape->bottom),
                          .top = shape->top, .bottom = shape->bottom, .side = shape->side};
  const Length B = frame.width, H = frame.height;
  if (!is_slender(*shape, facts.rules.cracking))
    return NotAssessed{fmt::format("a slab or wall of the box is thicker than 1/{:.3g} of its span",
                                   facts.rules.cracking.line_slenderness.value.value()), name_own_check};
  const Area around = B * (frame.top + frame.bottom) + 2.0 * H * frame.side;
  BendingTension worst;
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
    const auto loads = bending_loads(facts, situation);
    if (const auto* missing = std::get_if<NotAssessed>(&loads)) return *missing;
    const auto& set = std::get<BendingLoads>(loads).set;
    Force others{};
    for (std::size_t i = 1; i < set.loads.size(); ++i) {
      const Position off = set.loads[i].at - shape->middle;
      if (!(std::max(abs(off.x), abs(off.y)) <= even_about * std::min(shape->width, shape->length)))
        return NotAssessed{"a part or the grip of the form lies to one side of the box", name_own_check};
      others += set.loads[i].force;
    }
    const auto found = lines_of(facts, *shape, std::get<BendingLoads>(loads).situation);
    if (const auto* missing = std::get_if<NotAssessed>(&found)) return *missing;
    const auto& lines = std::get<Lines>(found);

    // Twice the heavier line; what is not grip or parts is weight, along the middles of the members.
    const Force total = 2.0 * lines.up, weight = total - others;
    const Length strip = std::min(facts.rules.cracking.pick_strip.value * shape->top,
                                  Length{shape->length / static_cast<double>(lines.picks)});
    const double spread = (shape->length / (static_cast<double>(lines.picks) * strip)).value();
    const double raised = std::max(spread, 1.0);  // in this order: what is no number stays
    frame.pick = std::max(Length{}, lines.pick - 0.5 * shape->side);
    frame.thrust = lines.thrust * lines.above_middle / shape->length;
    struct Way {
      double spread, bottom, top;
    };
    for (const Way& way : {Way{1.0, 0.0, 0.0}, Way{0.0, 1.0, 0.0}, Way{0.0, 0.0, 1.0}}) {
      const auto even = (weight + way.spread * others) / (around * shape->length);  // per volume
      const Stress slab = others / (B * shape->length);
      frame.top_load = even * frame.top + way.top * slab;
      frame.bottom_load = even * frame.bottom + way.bottom * slab;
      frame.side_load = even * frame.side;
      const auto moments = demands::box_moments(frame);
      if (const auto* missing = std::get_if<NotAssessed>(&moments)) return *missing;
      const Found most = most_tension(std::get<demands::BoxMoments>(moments), *shape, raised);
      if (!worst.where.empty() && !(most.tension > worst.tension)) continue;
      worst = {most.tension, most.where, situation.name, most.moment * m, situation.some_legs_only};
    }
  }
  if (worst.where.empty()) return NotAssessed{"no situation loads the piece", {}};
  return worst;
}

}  // namespace firstpick::checks
