#include "checks/panel_face.hpp"

#include <algorithm>
#include <cmath>

namespace firstpick::checks {

namespace {

constexpr double level_within = 1e-3;   // of the normal of a level face from straight up, of an upright one from level
constexpr double volume_within = 2e-3;  // of area x thickness against the volume

Area ring_area(const std::vector<plan::PlanarPoint>& ring) {
  Area doubled{};
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const plan::PlanarPoint &a = ring[i], &b = ring[(i + 1) % ring.size()];
    doubled += a.x * b.y - b.x * a.y;
  }
  return 0.5 * doubled;
}

bool is_top(const piece::Face& face) { return face.planar && !face.rings.empty() && face.normal.z >= 1.0 - level_within; }

PanelFace as_drawn(const piece::Face& face) {
  PanelFace made{face.rings.front().front(), {1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, {}, {}, {}};
  for (std::size_t i = 0; i < face.rings.size(); ++i) {
    std::vector<plan::PlanarPoint> ring;
    for (const Position& p : face.rings[i]) ring.push_back(made.at(p));
    if ((ring_area(ring) > Area{}) != (i == 0)) std::ranges::reverse(ring);
    if (i == 0) made.outline.outer = std::move(ring);
    else made.outline.holes.push_back(std::move(ring));
  }
  return made;
}

// In the axes of the first insert in it, else in those of the piece.
PanelFace in_axes(const plan::Plan& plan, const piece::Body& body, std::size_t face) {
  for (std::size_t i = 0; i < body.sites.size() && i < plan.inserts.size(); ++i) {
    const piece::InsertSite& site = body.sites[i];
    if (site.planar && site.face == face) return {plan.inserts[i].at, site.u, site.v, site.outline, {}, {}};
  }
  return as_drawn(body.faces[face]);
}

bool sits_in_panel(const piece::InsertSite& site, std::size_t top) {
  return site.planar && (site.face == top || std::abs(site.normal.z) <= level_within ||
                         site.normal.z <= -1.0 + level_within);
}

}  // namespace

bool is_flush(const piece::Face& face, const piece::Body& body) {
  constexpr Length flush_within = 1e-6 * m;
  if (std::abs(face.normal.z) <= level_within) return true;  // a side of the panel, or of an opening right through
  if (!face.planar || std::abs(face.normal.z) < 1.0 - level_within) return false;
  const Length level = face.normal.z > 0.0 ? body.highest.z : body.lowest.z;
  return abs(face.centroid.z - level) <= flush_within;
}

Area area_of(const piece::Outline& outline) {
  Area area = abs(ring_area(outline.outer));
  for (const auto& hole : outline.holes) area -= abs(ring_area(hole));
  return area;
}

std::optional<PanelFace> panel_face(const plan::Plan& plan, const piece::Body& body) {
  if (body.sites.empty()) return {};
  std::optional<std::size_t> top;
  for (std::size_t f = 0; f < body.faces.size(); ++f)
    if (is_top(body.faces[f]) && (!top || body.faces[f].area > body.faces[*top].area)) top = f;
  // In a body made by hand the faces may be left out: the first insert tells.
  if (!top && body.sites.front().planar && body.sites.front().normal.z >= 1.0 - level_within) top = body.sites.front().face;
  if (!top || !std::ranges::all_of(body.sites, [&](const auto& site) { return sits_in_panel(site, *top); })) return {};
  // However little a groove or a joint takes away, the panel is weak there: nothing may lie between its two faces.
  if (!std::ranges::all_of(body.faces, [&](const piece::Face& face) { return is_flush(face, body); })) return {};
  PanelFace made = in_axes(plan, body, *top);
  made.thickness = body.highest.z - body.lowest.z;
  made.middle = 0.5 * (body.highest.z + body.lowest.z);
  if (!(abs(area_of(made.outline) * made.thickness - body.volume) <= volume_within * body.volume)) return {};
  return made;
}

}  // namespace firstpick::checks
