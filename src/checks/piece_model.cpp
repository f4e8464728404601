// Derived from the shape, the first that fits:
//
//   panel   all inserts in one level face; face area x thickness is the volume; its lesser side at least n_panel thicknesses
//   line    the longer level extent at least n_line times the other and the height
//   block   neither: bending is not computed, and the report says so
//
// Limits   n_panel, n_line: "cracking.*" of the rule set. A model that the plan states is taken as stated.

#include "checks/piece_model.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace firstpick::checks {

namespace {

constexpr double level_within = 1e-3;   // of the normal of a level face from straight up
constexpr double volume_within = 2e-3;  // of area x thickness against the volume

Area ring_area(const std::vector<plan::PlanarPoint>& ring) {
  Area doubled{};
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const plan::PlanarPoint &a = ring[i], &b = ring[(i + 1) % ring.size()];
    doubled += a.x * b.y - b.x * a.y;
  }
  return 0.5 * abs(doubled);
}

bool is_flat(const piece::Body& body) {
  if (body.sites.empty()) return false;
  const piece::InsertSite& first = body.sites.front();
  for (const piece::InsertSite& site : body.sites)
    if (!site.planar || site.face != first.face) return false;
  if (!(first.normal.z >= 1.0 - level_within)) return false;
  Area area = ring_area(first.outline.outer);
  for (const auto& hole : first.outline.holes) area -= ring_area(hole);
  const Length thickness = body.highest.z - body.lowest.z;
  return abs(area * thickness - body.volume) <= volume_within * body.volume;
}

}  // namespace

ModelChoice piece_model(const plan::Plan& plan, const piece::Body& body, const tables::CrackingModel& limits) {
  const Vector<Length> extent = body.highest - body.lowest;
  const Length longer = std::max(extent.x, extent.y), shorter = std::min(extent.x, extent.y);
  ModelChoice choice{.axis = extent.x >= extent.y ? plan::Axis::x : plan::Axis::y, .flat = is_flat(body)};
  if (plan.piece.model) {
    choice.model = *plan.piece.model;
    choice.stated = true;
    return choice;
  }
  const double n_panel = limits.panel_slenderness.value.value(), n_line = limits.line_slenderness.value.value();
  if (choice.flat && shorter >= n_panel * extent.z)
    choice.model = plan::PieceModel::panel;
  else if (longer >= n_line * shorter && longer >= n_line * extent.z)
    choice.model = plan::PieceModel::line;
  return choice;
}

std::string told(const ModelChoice& choice) {
  const std::string_view how = choice.stated ? "as the plan states" : "derived from its shape";
  switch (choice.model) {
    case plan::PieceModel::line: return fmt::format("bending of the piece: computed as a line, {}", how);
    case plan::PieceModel::panel: return fmt::format("bending of the piece: computed as a panel, {}", how);
    case plan::PieceModel::block: break;
  }
  return fmt::format("bending of the piece: not computed, it is a block, {}", how);
}

}  // namespace firstpick::checks
