// Breakout bodies: the squares whose areas the calculation of the stage found, of each insert those of the largest group it
// was in. Tension: panel_estimate.hpp and line_tension.cpp in the situation that governs, raised as piece-cracking raises it.

#include "checks/stage_figures.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <variant>

#include "checks/bending_multiplier.hpp"
#include "checks/needed_strength.hpp"
#include "checks/panel_plate.hpp"
#include "checks/stage_facts.hpp"
#include "resistances/clipped_area.hpp"

namespace firstpick::checks {

namespace {

constexpr double level_normal = 0.999;
constexpr int most_cells = 44;  // along the longer side of a panel

// Axes in which a face is drawn, seen from outside.
struct FaceView {
  Direction right, up;
  plan::PlanarPoint seen(const Position& p) const { return {dot(right, p), dot(up, p)}; }
};

FaceView view_of_face(const Direction& normal) {
  if (normal.z > level_normal) return {{1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}};
  if (normal.z < -level_normal) return {{1.0, 0.0, 0.0}, {0.0, -1.0, 0.0}};
  const double level = std::hypot(normal.x, normal.y);
  const Direction right{-normal.y / level, normal.x / level, 0.0};
  return {right, cross(normal, right)};
}

std::string side_in_words(const Direction& n) {
  if (n.z > level_normal) return "top as cast, seen from above";
  if (n.z < -level_normal) return "bottom as cast, seen from below";
  for (const auto& [along, axis] : {std::pair{n.x, "x"}, {n.y, "y"}})
    if (std::abs(along) > level_normal)
      return std::string("side towards ") + (along > 0.0 ? "+" : "-") + axis + ", seen from outside, z up";
  return "sloping or slanting side, seen from outside";
}

piece::Outline drawn_outline(const piece::Outline& outline, const piece::InsertSite& site, const Position& at,
                     const FaceView& view) {
  const auto ring = [&](const std::vector<plan::PlanarPoint>& points) {
    std::vector<plan::PlanarPoint> seen;
    for (const auto& p : points) seen.push_back(view.seen(at + site.u * p.x + site.v * p.y));
    return seen;
  };
  piece::Outline made{ring(outline.outer), {}};
  for (const auto& hole : outline.holes) made.holes.push_back(ring(hole));
  return made;
}

std::vector<BreakoutFace> breakout_faces(const StageFacts& facts) {
  const auto found = facts.anchorage.areas.found();
  const auto largest_of = [&](const piece::InsertSite* site) -> const resistances::ProjectedAreas::Found* {
    const resistances::ProjectedAreas::Found* largest = nullptr;
    for (const auto& each : found)
      if (std::ranges::find(each.inserts, site) != each.inserts.end() &&
          (!largest || each.inserts.size() > largest->inserts.size()))
        largest = &each;
    return largest;
  };
  std::map<std::size_t, BreakoutFace> faces;
  for (std::size_t i = 0; i < facts.body.sites.size(); ++i) {
    const piece::InsertSite& site = facts.body.sites[i];
    const auto* area = site.planar ? largest_of(&site) : nullptr;
    if (!area) continue;
    const Position& at = facts.plan.inserts[i].at;
    const FaceView view = view_of_face(site.normal);
    BreakoutFace& face = faces[site.face];
    if (face.bodies.empty()) {
      face.side = side_in_words(site.normal);
      face.outline = drawn_outline(site.outline, site, at, view);
    }
    const resistances::Square square{.centre = {}, .half_side = area->half_side};
    std::vector<std::vector<plan::PlanarPoint>> reached;
    for (auto& part : resistances::reached_parts(site.outline, square))
      reached.push_back(drawn_outline({std::move(part), {}}, site, at, view).outer);
    face.bodies.push_back({site.insert, view.seen(at), area->half_side,
                           drawn_outline(resistances::covered_part(site.outline, square), site, at, view),
                           std::move(reached)});
    std::string names;
    for (const piece::InsertSite* each : area->inserts) names += (names.empty() ? "" : ", ") + each->insert;
    if (std::ranges::find(face.areas, names, &std::pair<std::string, Area>::first) == face.areas.end())
      face.areas.emplace_back(std::move(names), area->area);
  }
  std::vector<BreakoutFace> all;
  for (auto& [index, face] : faces) all.push_back(std::move(face));
  return all;
}

// Of statics that were assessed. Null: the report is of another calculation.
const Situation* situation_named(const StageFacts& facts, const std::string& name) {
  const auto& situations = std::get<std::vector<Situation>>(facts.gear_situations);
  const auto found = std::ranges::find(situations, name, &Situation::name);
  return found == situations.end() ? nullptr : &*found;
}

std::optional<TensionLine> line_picture(const StageFacts& facts, const ModelChoice& model, const std::string& name,
                                   Ratio raise) {
  const Situation* const situation = situation_named(facts, name);
  if (!situation) return {};
  const auto state = line_state(facts, model, *situation);
  if (!is_assessed(state)) return {};
  TensionLine line{.axis = model.axis == plan::Axis::x ? "x" : "y", .sections = {}};
  for (const demands::BeamSection& section : std::get<demands::BeamState>(state).sections)
    line.sections.push_back({section.at, raise * section.bottom_stress, raise * section.top_stress});
  return line;
}

// The panel with its one load.
std::optional<demands::Panel> level_panel_in(const StageFacts& facts, const PanelFace& face, const std::string& name) {
  const Situation* const situation = situation_named(facts, name);
  if (!situation) return {};
  demands::Panel panel = plate_of(facts, face);
  panel.loads = {panel_load(facts, std::get<BendingLoads>(bending_loads(facts, *situation)), face)};
  return panel;
}

std::optional<TensionMap> map_picture(const StageFacts& facts, const std::string& situation, Ratio raise) {
  const auto face = panel_face(facts.plan, facts.body);
  if (!face) return {};
  const auto loaded = is_turned(facts) ? turned_panel_in(facts, *face, situation) : level_panel_in(facts, *face, situation);
  if (!loaded) return {};
  const demands::Panel& panel = *loaded;
  const demands::PanelLoad& load = panel.loads.front();
  const auto estimate = demands::PanelEstimate::of(panel);
  if (!estimate) return {};

  TensionMap map;
  const auto in_xy = [&](const std::vector<plan::PlanarPoint>& ring) {
    std::vector<plan::PlanarPoint> points;
    for (const auto& p : ring) points.push_back({face->in_piece(p).x, face->in_piece(p).y});
    return points;
  };
  map.outline.outer = in_xy(face->outline.outer);
  for (const auto& hole : face->outline.holes) map.outline.holes.push_back(in_xy(hole));
  for (const demands::PanelForce& force : load.forces)
    if (force.is_pick) map.picks.push_back({face->in_piece(force.at).x, face->in_piece(force.at).y});

  const Position low = facts.body.lowest, size = facts.body.highest - low;
  map.side = std::max(size.x, size.y) / static_cast<double>(most_cells);
  const int columns = static_cast<int>(std::ceil((size.x / map.side).value() - 1e-9)),
            rows = static_cast<int>(std::ceil((size.y / map.side).value() - 1e-9));
  std::vector<plan::PlanarPoint> middles, places;
  for (int row = 0; row < rows; ++row)
    for (int column = 0; column < columns; ++column) {
      const plan::PlanarPoint p{low.x + (column + 0.5) * map.side, low.y + (row + 0.5) * map.side};
      const bool at_pick = std::ranges::any_of(map.picks, [&](const plan::PlanarPoint& pick) {
        return std::hypot(in(m, pick.x - p.x), in(m, pick.y - p.y)) < in(m, panel.patch);
      });
      if (at_pick) continue;
      middles.push_back(p);
      places.push_back(face->at({p.x, p.y, face->origin.z}));
    }
  const auto read = estimate->moments(load, places);
  if (!is_assessed(read)) return {};
  const auto& moments = std::get<0>(read);
  const auto tension = [&](PlateMoment moment) { return raise * (6.0 * moment / (face->thickness * face->thickness)); };
  for (std::size_t i = 0; i < middles.size(); ++i)
    if (moments[i]) map.cells.push_back({middles[i], tension(moments[i]->most), tension(-moments[i]->least)});
  return map;
}

std::optional<TensionPicture> tension_picture(const StageFacts& facts, const StageReport& stage) {
  // The stress that would be drawn is that of the loads: not of strands, nor of concrete that has cracked.
  if (!facts.plan.piece.strands.empty() || facts.plan.piece.may_crack) return {};
  const auto cracking = std::ranges::find(stage.findings, std::string_view("piece-cracking"), &Finding::rule);
  if (cracking == stage.findings.end() || cracking->situation.empty() || bending_gap(facts)) return {};
  Trace silent;
  const auto raise = bending_raise(facts, silent);
  if (!is_assessed(raise)) return {};

  TensionPicture picture{.situation = cracking->situation, .turned = is_turned(facts), .allowed = {}, .map = {}, .line = {}};
  if (cracking->capacity)
    if (const auto* allowed = std::get_if<Stress>(&*cracking->capacity)) picture.allowed = *allowed;
  const ModelChoice model = piece_model(facts.plan, facts.body, facts.rules.cracking);
  if (model.model == plan::PieceModel::line && !picture.turned)
    picture.line = line_picture(facts, model, picture.situation, std::get<Ratio>(raise));
  if (model.model == plan::PieceModel::panel) picture.map = map_picture(facts, picture.situation, std::get<Ratio>(raise));
  if (!picture.line && !picture.map) return {};
  return picture;
}

std::vector<TurnAt> pulls_of_turn(const StageFacts& facts) {
  const auto* sweep = facts.turning ? std::get_if<TurnSweep>(&*facts.turning) : nullptr;
  std::vector<TurnAt> turn;
  if (sweep)
    for (const demands::TurnPose& pose : sweep->poses)
      turn.push_back({pose.angle, pose.slack ? Force{} : pose.main_pull, pose.tail_pull, pose.edge.upward});
  return turn;
}

}  // namespace

std::vector<StageFigures> stage_figures(const plan::Plan& plan, const piece::Body& body, const Report& report,
                                        const tables::RuleSet& rules, const tables::Tables& tables) {
  std::vector<StageFigures> all;
  Trace silent;
  for (std::size_t i = 0; i < plan.stages.size() && i < report.stages.size(); ++i) {
    const Anchorage anchored = anchorage(plan, body, rules, tables, silent);  // areas of this stage alone
    const StageFacts facts = stage_facts(plan, plan.stages[i], body, anchored, rules, tables, silent);
    // The areas are the same at any strength, and found, into `anchored`, only where there is one.
    if (!is_assessed(facts.formula_strength)) with_strength(facts, rules.minimum_strength.value);
    all.push_back({breakout_faces(facts), tension_picture(facts, report.stages[i]), pulls_of_turn(facts)});
  }
  return all;
}

}  // namespace firstpick::checks
