// A panel while it is turned and after it: the plate of panel_tension.cpp in any attitude.
//
//   across the panel   pressure W up.n / A;  each leg its part along n, its part along the panel by its height over
//                      mid-depth
//   along the panel    W (up.u, up.v) / A against legs and edge: mean tension over a disc, on top of bending
//   tension            6 M/t^2 + n/t
//
// up       the vertical, at both ends of the sweep and at angles of it that lie `between` from each other at most. The load
//          goes nearly with their cosine and sine, which between two of them exceed the larger end by 1/cos(between / 2) at
//          most: all tensions are raised by that
// Edge     the ground carries its reaction spread along the edge (demands/panel_supports.hpp), at the lower corner: the
//          part of it along the panel bends the panel too
// Table    where the crane takes the panel off a table it is taken as leaning on its edge: no face of the table carries it
// Slack    past its balance on the edge a panel without a hook falls: no bending that it had not at lesser angles
// Hung     after the turn, or once off a table: as the legs hold it, every sharing
//
// Source   statics; kernel and widths as in panel_tension.cpp.
// Grip     of the form, in a turn that brings the panel out of it: as the turn starts, even over the panel
// Not assessed: any other model; uneven grip of the form; an edge that is not loaded all along; slack all the way.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "checks/panel_plate.hpp"
#include "units/print.hpp"

namespace firstpick::checks {

namespace {

constexpr Angle between = 9.0 * deg;

struct Turned {
  demands::Panel panel;
  std::vector<Situation> situations;
};

constexpr double even_grip_within = 0.02;  // distance of the grip's centre from the panel's, over the size

// Even grip bends the panel as so much more weight does.
std::optional<NotAssessed> grip(const StageFacts& facts, const loads::LoadSet& set) {
  const std::size_t attached = facts.plan.form ? facts.plan.form->attached.size() : 0;
  const Length size = std::max(facts.body.highest.x - facts.body.lowest.x, facts.body.highest.y - facts.body.lowest.y);
  for (std::size_t i = 1 + attached; i < set.loads.size(); ++i) {
    const Position off = set.loads[i].at - facts.body.centroid;
    if (!(abs(off.x) <= even_grip_within * size && abs(off.y) <= even_grip_within * size))
      return NotAssessed{"the form does not grip the panel evenly: its bending by that, as it is turned, is not computed",
                         "[piece] bending_check: name the engineer's own check of its bending"};
  }
  return {};
}

void add(Turned& turned, const StageFacts& facts, const PanelFace& face, const loads::LoadSet& set,
         const Direction& up, const Situation& situation, const demands::EdgeReaction* edge) {
  demands::PanelLoad load;
  ForceVector pull;
  const auto force_at = [&](const Position& at, const ForceVector& force, bool is_pick) {
    pull = pull + force;
    return demands::PanelForce{face.at(at), force.z, dot(face.u, force), dot(face.v, force), at.z - face.middle, is_pick};
  };
  for (std::size_t leg = 0; leg < situation.legs.size(); ++leg) {
    const ForceVector& force = situation.legs[leg].on_insert;
    const auto insert = std::ranges::find(facts.plan.inserts, facts.rigging->legs.at(leg).to, &plan::Insert::id);
    if (insert == facts.plan.inserts.end()) continue;
    load.forces.push_back(force_at(insert->at, force, norm(force) != Force{}));
  }
  if (edge && edge->upward > Force{}) load.edge = force_at(edge->at, up * edge->upward, false);
  const std::size_t attached = facts.plan.form ? facts.plan.form->attached.size() : 0;
  for (std::size_t i = 1; i <= attached; ++i)
    load.forces.push_back(force_at(set.loads[i].at, up * -set.loads[i].force, false));
  // What is left of the pull is the weight, over the area of the outline as divided.
  const Area area = area_of(face.outline);
  load.pressure = pull.z / area;
  load.pull_along_x = -dot(face.u, pull) / area;
  load.pull_along_y = -dot(face.v, pull) / area;
  turned.panel.loads.push_back(std::move(load));
  turned.situations.push_back(situation);
}

std::optional<NotAssessed> add_hung(Turned& turned, const StageFacts& facts, const PanelFace& face) {
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
    if (situation.turning) continue;
    const auto loads = bending_loads(facts, situation);
    if (const auto* gap = std::get_if<NotAssessed>(&loads)) return *gap;
    const loads::LoadSet& set = std::get<BendingLoads>(loads).set;
    if (auto refused = grip(facts, set)) return refused;
    ForceVector pull;
    for (std::size_t leg = 0; leg < situation.legs.size(); ++leg)
      if (std::ranges::find(facts.plan.inserts, facts.rigging->legs.at(leg).to, &plan::Insert::id) !=
          facts.plan.inserts.end())
        pull = pull + situation.legs[leg].on_insert;
    const Force total = norm(pull);
    const Direction up{pull.x / total, pull.y / total, pull.z / total};
    add(turned, facts, face, set, up, situation, nullptr);
  }
  return {};
}

// Angles of the sweep, from its first to its last, at most `between` apart where the sweep has them.
std::vector<Angle> angles_of(const TurnSweep& sweep) {
  std::vector<Angle> angles;
  for (std::size_t i = 0; i < sweep.poses.size(); ++i) {
    const Angle here = sweep.poses[i].angle;
    const bool last = i + 1 == sweep.poses.size();
    if (angles.empty() || last || sweep.poses[i + 1].angle - angles.back() > between) angles.push_back(here);
  }
  return angles;
}

std::optional<NotAssessed> add_turning(Turned& turned, const StageFacts& facts, const PanelFace& face) {
  const auto& turning = facts.turning.value();
  if (const auto* gap = std::get_if<NotAssessed>(&turning)) return *gap;
  const std::vector<Angle> angles = angles_of(std::get<TurnSweep>(turning));
  const auto range = range_of(facts.stage);
  if (const auto* gap = std::get_if<NotAssessed>(&range)) return *gap;
  const Angle start = start_of(facts.stage, std::get<TurnRange>(range));
  const bool on_edge = facts.stage.turn->method != plan::TurnMethod::two_hooks;
  if (on_edge) turned.panel.edge = {face.at((*facts.stage.turn->about)[0]), face.at((*facts.stage.turn->about)[1])};
  for (const loads::LoadSet& set : std::get<loads::StageLoad>(facts.load).gear_loads) {
    if (auto refused = grip(facts, set)) return refused;
    auto piece = turned_piece(facts.plan, facts.stage, facts.body, set);
    if (const auto* gap = std::get_if<NotAssessed>(&piece)) return *gap;
    auto& on = std::get<demands::TurnedPiece>(piece);
    if (on.method == plan::TurnMethod::table) on.method = plan::TurnMethod::edge;
    const bool gripped = set.name.starts_with(loads::breaking_free);
    for (const Angle& angle : gripped ? std::vector{start} : angles) {
      const auto found = pose_at(on, angle);
      if (const auto* gap = std::get_if<NotAssessed>(&found)) return *gap;
      const auto& pose = std::get<demands::TurnPose>(found);
      if (pose.slack) continue;
      for (const demands::Sharing& sharing : pose.sharings) {
        std::string name = fmt::format("turned to {}", print(pose.angle, facts.plan.piece.units));
        if (gripped) name += ", breaking free";
        if (!sharing.name.empty()) name += ", " + sharing.name;
        add(turned, facts, face, set, pose.up, {std::move(name), sharing.legs, !sharing.name.empty(), true},
            on_edge ? &pose.edge : nullptr);
      }
    }
  }
  return {};
}

Outcome<Turned> turned_of(const StageFacts& facts, const PanelFace& face) {
  Turned turned{plate_of(facts, face), {}};
  turned.panel.in_plane = true;
  turned.panel.thickness = face.thickness;
  if (facts.stage.kind == plan::StageKind::turn)
    if (auto refused = add_turning(turned, facts, face)) return *std::move(refused);
  if (auto refused = add_hung(turned, facts, face)) return *std::move(refused);
  if (turned.situations.empty()) return NotAssessed{"no situation loads the piece", {}};
  return turned;
}

}  // namespace

std::optional<demands::Panel> turned_panel_in(const StageFacts& facts, const PanelFace& face, const std::string& situation) {
  const auto made = turned_of(facts, face);
  if (!is_assessed(made)) return {};
  const Turned& turned = std::get<Turned>(made);
  const auto named = std::ranges::find(turned.situations, situation, &Situation::name);
  if (named == turned.situations.end()) return {};
  demands::Panel panel = turned.panel;
  panel.loads = {turned.panel.loads.at(static_cast<std::size_t>(named - turned.situations.begin()))};
  return panel;
}

Outcome<BendingTension> turned_panel_tension(const StageFacts& facts) {
  const auto face = panel_face(facts.plan, facts.body);
  if (!face) return no_panel();
  const auto made = turned_of(facts, *face);
  if (const auto* gap = std::get_if<NotAssessed>(&made)) return *gap;
  const Turned& turned = std::get<Turned>(made);
  const auto bent = demands::panel_bending(turned.panel);
  if (const auto* missing = std::get_if<NotAssessed>(&bent)) return *missing;

  BendingTension worst;
  for (std::size_t i = 0; i < turned.situations.size(); ++i)
    look_at(worst, std::get<std::vector<demands::PanelBending>>(bent).at(i), *face, turned.situations[i],
            facts.plan.piece.units, " as cast");
  worst.tension = worst.tension / std::cos(0.5 * between.value());
  worst.moment = worst.moment / std::cos(0.5 * between.value());
  return worst;
}

}  // namespace firstpick::checks
