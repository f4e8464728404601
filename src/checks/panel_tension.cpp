// A piece taken as a panel: a thin plate on the outline of the face its inserts sit in, under weight and grip of the form as
// a pressure, its legs with thrust and eccentricity.
//
//   tension = 6 M/t^2        M per width, t the thickness
//
// Kernel   demands/panel_bending.hpp; widths from the rule set ("cracking.patch", "cracking.pick_strip").
// Not assessed: more than one thickness, inserts in several faces, grip of the form that is not even over the panel.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "checks/named.hpp"
#include "checks/panel_plate.hpp"

namespace firstpick::checks {

namespace {

constexpr double even_within = 0.02;  // distance of the grip's centre from the panel's, over the size

std::optional<NotAssessed> uneven_grip(const StageFacts& facts, const BendingLoads& loads) {
  const Length size = std::max(facts.body.highest.x - facts.body.lowest.x, facts.body.highest.y - facts.body.lowest.y);
  for (std::size_t i = 1 + loads.attached; i < loads.set.loads.size(); ++i) {
    const Position off = loads.set.loads[i].at - facts.body.centroid;
    if (!(abs(off.x) <= even_within * size && abs(off.y) <= even_within * size))
      return NotAssessed{"the form does not grip the panel evenly: its bending by that is not computed",
                         "[piece] bending_check: name the engineer's own check of its bending"};
  }
  return {};
}

}  // namespace

demands::PanelLoad panel_load(const StageFacts& facts, const BendingLoads& loads, const PanelFace& face) {
  demands::PanelLoad panel;
  ForceVector pull;
  for (std::size_t leg = 0; leg < loads.situation.legs.size(); ++leg) {
    const ForceVector& force = loads.situation.legs[leg].on_insert;
    const auto insert = std::ranges::find(facts.plan.inserts, facts.rigging->legs.at(leg).to, &plan::Insert::id);
    if (insert == facts.plan.inserts.end()) continue;  // the leg to a beam or a sheave
    pull = pull + force;
    panel.forces.push_back({face.at(insert->at), force.z, dot(face.u, force), dot(face.v, force),
                            insert->at.z - face.middle, norm(force) != Force{}});
  }
  const double up_z = pull.z / norm(pull);
  Force parts{};
  for (std::size_t i = 1; i <= loads.attached; ++i) {
    const Force force = up_z * loads.set.loads[i].force;
    panel.forces.push_back({face.at(loads.set.loads[i].at), -force, {}, {}, {}, false});
    parts += force;
  }
  // Over the area of the outline as divided: round edges are chords, and all of the load must be carried.
  panel.pressure = (pull.z - parts) / area_of(face.outline);
  return panel;
}

demands::Panel plate_of(const StageFacts& facts, const PanelFace& face) {
  demands::Panel panel;
  panel.outer = face.outline.outer;
  panel.holes = face.outline.holes;
  panel.poisson = facts.rules.cracking.poisson.value;
  panel.patch = facts.rules.cracking.patch.value * face.thickness;
  panel.strip = facts.rules.cracking.pick_strip.value * face.thickness;
  for (const plan::Rigging& rigging : facts.plan.riggings)
    for (const plan::Leg& leg : rigging.legs)
      if (const plan::Insert* insert = named(facts.plan.inserts, leg.to))
        panel.meshed_at.push_back(face.at(insert->at));
  return panel;
}

void look_at(BendingTension& worst, const demands::PanelBending& bending, const PanelFace& face,
             const Situation& situation, UnitSystem units, const char* as_cast) {
  const auto look = [&](const demands::PanelMoment& moment, const char* side) {
    const Stress tension = 6.0 * moment.moment / (face.thickness * face.thickness);
    if (!worst.where.empty() && !is_finite(worst.tension)) return;  // what is no number stays
    constexpr double more = 1.0 + 1e-9;                             // of equals the first is named, whatever their last bits
    if (!worst.where.empty() && tension <= more * worst.tension) {
      worst.tension = std::max(worst.tension, tension);
      return;
    }
    const Position at = face.in_piece(moment.at);
    worst = {tension,
             fmt::format("{} of the panel{}, near x = {}, y = {}", side, as_cast, firstpick::print(at.x, units),
                         firstpick::print(at.y, units)),
             situation.name, moment.moment * m, situation.some_legs_only};
  };
  look(bending.bottom_tension, "bottom");
  look(bending.top_tension, "top");
}

Outcome<BendingTension> panel_tension(const StageFacts& facts, const ModelChoice& model) {
  BendingReuse* const reuse = facts.bending->reuse.get();
  const bool known = reuse && reuse->panel_face;
  const auto face = known ? reuse->panel_face : panel_face(facts.plan, facts.body);
  if (!face) return model.stepped ? stepped_panel_tension(facts) : no_panel();
  demands::Panel panel = plate_of(facts, *face);
  const auto& situations = std::get<std::vector<Situation>>(facts.gear_situations);
  for (const Situation& situation : situations) {
    const auto loads = bending_loads(facts, situation);
    if (const auto* missing = std::get_if<NotAssessed>(&loads)) return *missing;
    if (auto refused = uneven_grip(facts, std::get<BendingLoads>(loads))) return *std::move(refused);
    panel.loads.push_back(panel_load(facts, std::get<BendingLoads>(loads), *face));
  }
  if (reuse && !known) reuse->panel_face = face, reuse->panel = demands::PanelEstimate::of(panel);
  const auto bent = reuse && reuse->panel ? reuse->panel->bending(panel.loads) : demands::panel_bending(panel);
  if (const auto* missing = std::get_if<NotAssessed>(&bent)) return *missing;

  BendingTension worst;
  for (std::size_t i = 0; i < situations.size(); ++i)
    look_at(worst, std::get<std::vector<demands::PanelBending>>(bent).at(i), *face, situations[i],
            facts.plan.piece.units, "");
  if (worst.where.empty()) return NotAssessed{"no situation loads the piece", {}};
  return worst;
}

}  // namespace firstpick::checks
