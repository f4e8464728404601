// The zones of a stepped panel from the faces of its real solid.
//
//   flush    one level face whose outline, with its openings, is that of the panel; it looks up or down
//   zones    the level faces that look the other way: each with the thickness from it to the flush face
//   whole    sum of zone areas = area of the flush face, sum of area x thickness = volume, every other face
//            upright
//
// A zone is as wide as thick at least, by 2 area / length of its outline: straight normals are no good
// description of a high, narrow rib, whose twist the plate would also take for too stiff. And of no more than
// `step_ratio` times the least thickness.
//
// Limits   step_ratio: "cracking.step_ratio" of the rule set, a choice.

#include "checks/stepped_panel.hpp"

#include <algorithm>
#include <cmath>

namespace firstpick::checks {

namespace {

constexpr double zone_level_within = 1e-3;   // of the normal of a level face, and of an upright one
constexpr double zone_area_within = 1e-6;    // of zones together against the flush face
constexpr double zone_volume_within = 2e-3;  // of area x thickness against the volume

bool looks(const piece::Face& face, double up) {
  return face.planar && !face.rings.empty() && up * face.normal.z >= 1.0 - zone_level_within;
}

Area area_in(const std::vector<plan::PlanarPoint>& ring) {
  Area doubled{};
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const plan::PlanarPoint &a = ring[i], &b = ring[(i + 1) % ring.size()];
    doubled += a.x * b.y - b.x * a.y;
  }
  return 0.5 * abs(doubled);
}

Length length_around(const std::vector<plan::PlanarPoint>& ring) {
  Length sum{};
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const plan::PlanarPoint &a = ring[i], &b = ring[(i + 1) % ring.size()];
    sum += root((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
  }
  return sum;
}

struct ZoneSide {
  double x, y, to_x, to_y;  // metres
};

double apart_m(const ZoneSide& s, double x, double y) {  // of a point from a side
  const double dx = s.to_x - s.x, dy = s.to_y - s.y, square = dx * dx + dy * dy;
  const double t = square > 0.0 ? std::clamp(((x - s.x) * dx + (y - s.y) * dy) / square, 0.0, 1.0) : 0.0;
  return std::hypot(x - s.x - t * dx, y - s.y - t * dy);
}

// The least width between two sides of a zone that run against each other: a mean says nothing of a narrow neck.
Length narrowest(const demands::PanelZone& zone) {
  std::vector<ZoneSide> sides;
  const auto add = [&](const std::vector<plan::PlanarPoint>& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const plan::PlanarPoint &a = ring[i], &b = ring[(i + 1) % ring.size()];
      sides.push_back({in(m, a.x), in(m, a.y), in(m, b.x), in(m, b.y)});
    }
  };
  add(zone.outer);
  for (const auto& hole : zone.holes) add(hole);
  double least = INFINITY;
  for (std::size_t i = 0; i < sides.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      const ZoneSide &a = sides[i], &b = sides[j];
      const double ax = a.to_x - a.x, ay = a.to_y - a.y, bx = b.to_x - b.x, by = b.to_y - b.y;
      if (!(ax * bx + ay * by < -0.5 * std::hypot(ax, ay) * std::hypot(bx, by))) continue;
      least = std::min({least, apart_m(a, b.x, b.y), apart_m(a, b.to_x, b.to_y), apart_m(b, a.x, a.y),
                        apart_m(b, a.to_x, a.to_y)});
    }
  return least * m;
}

std::vector<plan::PlanarPoint> seen_in(const PanelFace& axes, const std::vector<Position>& ring) {
  std::vector<plan::PlanarPoint> points;
  for (const Position& p : ring) points.push_back(axes.at(p));
  return points;
}

// The flush face towards `up`, and the zones behind it.
std::optional<SteppedFace> with_flush_face(const piece::Body& body, double up) {
  const piece::Face* flush = nullptr;
  std::vector<const piece::Face*> others;
  for (const piece::Face& face : body.faces) {
    if (looks(face, up)) {
      if (flush) return {};  // two faces on this side: steps here, or a gap
      flush = &face;
    } else if (looks(face, -up)) {
      others.push_back(&face);
    } else if (!(std::abs(face.normal.z) <= zone_level_within)) {
      return {};
    }
  }
  if (!flush || others.size() < 2) return {};
  SteppedFace made{.face = {flush->rings.front().front(), {1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, {}, {}, {}}};
  made.face.middle = 0.5 * (body.highest.z + body.lowest.z);
  made.face.thickness = body.highest.z - body.lowest.z;
  made.face.outline.outer = seen_in(made.face, flush->rings.front());
  for (std::size_t i = 1; i < flush->rings.size(); ++i)
    made.face.outline.holes.push_back(seen_in(made.face, flush->rings[i]));
  const Length at = flush->rings.front().front().z;
  for (const piece::Face* other : others) {
    const Length there = other->rings.front().front().z;
    demands::PanelZone zone{.outer = seen_in(made.face, other->rings.front()),
                            .holes = {},
                            .top = std::max(at, there) - made.face.middle,
                            .bottom = std::min(at, there) - made.face.middle};
    Area area = area_in(zone.outer);
    Length around = length_around(zone.outer);
    for (std::size_t i = 1; i < other->rings.size(); ++i) {
      zone.holes.push_back(seen_in(made.face, other->rings[i]));
      area -= area_in(zone.holes.back());
      around += length_around(zone.holes.back());
    }
    const Length thickness = zone.top - zone.bottom;
    if (!(thickness > Length{}) || !(2.0 * area >= around * thickness) ||
        !(narrowest(zone) >= thickness))
      return {};
    made.thinnest = made.zones.empty() ? thickness : std::min(made.thinnest, thickness);
    made.thickest = std::max(made.thickest, thickness);
    made.covered += area;
    made.volume += area * thickness;
    made.zones.push_back(std::move(zone));
  }
  const Area whole = area_of(made.face.outline);
  if (!(abs(made.covered - whole) <= zone_area_within * whole) ||
      !(abs(made.volume - body.volume) <= zone_volume_within * body.volume))
    return {};
  return made;
}

}  // namespace

std::optional<SteppedFace> stepped_face(const plan::Plan&, const piece::Body& body,
                                        const tables::CrackingModel& limits) {
  if (body.sites.empty()) return {};
  for (const piece::InsertSite& site : body.sites)
    if (!site.planar ||
        (std::abs(site.normal.z) > zone_level_within && std::abs(site.normal.z) < 1.0 - zone_level_within))
      return {};
  auto made = with_flush_face(body, 1.0);
  if (!made) made = with_flush_face(body, -1.0);
  if (!made || !(made->thickest <= limits.step_ratio.value * made->thinnest)) return {};
  return made;
}

}  // namespace firstpick::checks
