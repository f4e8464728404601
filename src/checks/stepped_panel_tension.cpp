// A panel with ribs, thick edges or recesses: the plate of its zones (stepped_panel.hpp) under its weight
// where it is, grip of the form as an even pressure, its legs with thrust at the height of the inserts.
//
//   tension of a face: demands/stepped_panel_bending.hpp; widths by the least thickness (cracking.patch,
//   cracking.pick_strip)
//
// Not assessed: grip of the form that is not even over the panel; loads that do not balance.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "checks/piece_bending.hpp"
#include "checks/stepped_panel.hpp"

namespace firstpick::checks {

namespace {

constexpr double stepped_grip_within =
    0.02;  // distance of the grip's centre from that of the outline, over the size

// Of a ring, negative where it is written clockwise: twice its area in m2, and what that does about the axes.
struct RingSums {
  double doubled = 0.0, about_x = 0.0, about_y = 0.0;
};
RingSums ring_sums(const std::vector<plan::PlanarPoint>& ring) {
  RingSums sums;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const plan::PlanarPoint &a = ring[i], &b = ring[(i + 1) % ring.size()];
    const double cross = (a.x * b.y - b.x * a.y).value();
    sums.doubled += cross;
    sums.about_x += in(m, Length{a.x + b.x}) * cross / 3.0;
    sums.about_y += in(m, Length{a.y + b.y}) * cross / 3.0;
  }
  return sums;
}

// Centre of the flush face with its openings, whichever way round each is written.
plan::PlanarPoint centre_of(const piece::Outline& outline) {
  const RingSums outer = ring_sums(outline.outer);
  RingSums whole = outer;
  for (const auto& hole : outline.holes) {
    const RingSums opening = ring_sums(hole);
    const double sign = std::signbit(opening.doubled) == std::signbit(outer.doubled) ? -1.0 : 1.0;
    whole.doubled += sign * opening.doubled;
    whole.about_x += sign * opening.about_x, whole.about_y += sign * opening.about_y;
  }
  return {whole.about_x / whole.doubled * m, whole.about_y / whole.doubled * m};
}

Outcome<demands::SteppedLoad> stepped_load(const StageFacts& facts, const BendingLoads& loads,
                                           const SteppedFace& stepped) {
  demands::SteppedLoad load;
  const PanelFace& face = stepped.face;
  ForceVector pull;
  for (std::size_t leg = 0; leg < loads.situation.legs.size(); ++leg) {
    const ForceVector& force = loads.situation.legs[leg].on_insert;
    const auto insert =
        std::ranges::find(facts.plan.inserts, facts.rigging->legs.at(leg).to, &plan::Insert::id);
    if (insert == facts.plan.inserts.end()) continue;  // the leg to a beam or a sheave
    pull = pull + force;
    load.forces.push_back({face.at(insert->at), force.z, dot(face.u, force), dot(face.v, force),
                           insert->at.z - face.middle, norm(force) != Force{}});
  }
  const double up_z = pull.z / norm(pull);
  Force parts{};
  for (std::size_t i = 1; i <= loads.attached; ++i) {
    const Force force = up_z * loads.set.loads[i].force;
    load.forces.push_back({face.at(loads.set.loads[i].at), -force, {}, {}, {}, false});
    parts += force;
  }
  const plan::PlanarPoint middle = centre_of(face.outline);
  const Length size =
      std::max(facts.body.highest.x - facts.body.lowest.x, facts.body.highest.y - facts.body.lowest.y);
  Force grip{};
  for (std::size_t i = 1 + loads.attached; i < loads.set.loads.size(); ++i) {
    const plan::PlanarPoint at = face.at(loads.set.loads[i].at);
    if (!(abs(at.x - middle.x) <= stepped_grip_within * size &&
          abs(at.y - middle.y) <= stepped_grip_within * size))
      return NotAssessed{"the form does not grip the panel evenly: its bending by that is not computed",
                         std::string(own_bending_check)};
    grip += loads.set.loads[i].force;
  }
  const Force weight = loads.set.loads.front().force, down = pull.z - parts;
  for (const demands::PanelZone& zone : stepped.zones)
    load.pressure.push_back(down * (weight / (weight + grip)) / stepped.volume * (zone.top - zone.bottom) +
                            down * (grip / (weight + grip)) / stepped.covered);
  return load;
}

}  // namespace

Outcome<BendingTension> stepped_panel_tension(const StageFacts& facts) {
  const auto stepped = stepped_face(facts.plan, facts.body, facts.rules.cracking);
  if (!stepped) return NotAssessed{"the piece is no panel in steps", std::string(own_bending_check)};
  demands::SteppedPanel panel{.outer = stepped->face.outline.outer,
                              .holes = stepped->face.outline.holes,
                              .zones = stepped->zones,
                              .poisson = facts.rules.cracking.poisson.value,
                              .loads = {},
                              .patch = facts.rules.cracking.patch.value * stepped->thinnest,
                              .strip = facts.rules.cracking.pick_strip.value * stepped->thinnest};
  const auto& situations = std::get<std::vector<Situation>>(facts.gear_situations);
  for (const Situation& situation : situations) {
    const auto loads = bending_loads(facts, situation);
    if (const auto* missing = std::get_if<NotAssessed>(&loads)) return *missing;
    auto load = stepped_load(facts, std::get<BendingLoads>(loads), *stepped);
    if (const auto* missing = std::get_if<NotAssessed>(&load)) return *missing;
    panel.loads.push_back(std::get<demands::SteppedLoad>(std::move(load)));
  }
  const auto bent = demands::stepped_panel_bending(panel);
  if (const auto* missing = std::get_if<NotAssessed>(&bent)) return *missing;
  const auto& all = std::get<std::vector<demands::SteppedBending>>(bent);
  BendingTension worst;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const auto look = [&](const demands::FaceTension& face, const char* side) {
      if (!(face.tension > worst.tension) && !worst.where.empty()) return;
      const Position at = stepped->face.in_piece(face.at);
      const UnitSystem units = facts.plan.piece.units;
      worst = {face.tension,
               fmt::format("{} of the panel, near x = {}, y = {}", side, firstpick::print(at.x, units),
                           firstpick::print(at.y, units)),
               situations[i].name, Moment{}, situations[i].some_legs_only};
    };
    look(all[i].bottom, "bottom");
    look(all[i].top, "top");
  }
  if (worst.where.empty()) return NotAssessed{"no situation loads the piece", {}};
  return worst;
}

}  // namespace firstpick::checks
