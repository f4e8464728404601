// Curved faces are taken as 36 x 36 flat pieces with the area of the surface there, and 1 % more: where the wind grazes
// them the pieces of a round face show up to 0.3 % less than it does. Openings in them count as concrete.
// The largest sum over all level directions is found exactly: the sums are the extent of a zonogon, whose corners come
// from turning round one vector after the other in the order of their angles.

#include "piece/side_area.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <BRepAdaptor_Surface.hxx>
#include <BRepTools.hxx>
#include <Standard_Failure.hxx>
#include <gp_Vec.hxx>

#include "piece/shape.hpp"

namespace firstpick::piece {

namespace {

// A flat piece of the surface: its area times its normal, on two level axes; and where it is.
struct Facet {
  double along_u_m2 = 0.0, along_v_m2 = 0.0;
  Position at;
};

struct Level {
  Direction u, v, up;
};

Level level_axes(const Direction& up) {
  const Direction aside = std::abs(up.x) < 0.5 ? Direction{1.0, 0.0, 0.0} : Direction{0.0, 1.0, 0.0};
  Direction u = cross(aside, up);
  u = (1.0 / norm(u)) * u;
  return {u, cross(up, u), up};
}

void add(std::vector<Facet>& facets, const Level& level, const Direction& area_m2, const Position& at) {
  facets.push_back({dot(level.u, area_m2), dot(level.v, area_m2), at});
}

constexpr int cells = 36;          // each way, of a curved face
constexpr double of_curves = 1.01;  // on areas and distances, for what the cells miss

void add_curved(std::vector<Facet>& facets, std::vector<Position>& points, const Level& level, const TopoDS_Face& face) {
  double u_from, u_to, v_from, v_to;
  BRepTools::UVBounds(face, u_from, u_to, v_from, v_to);
  const BRepAdaptor_Surface surface(face, false);
  const double du = (u_to - u_from) / cells, dv = (v_to - v_from) / cells;
  const double factor = of_curves * du * dv;
  for (int i = 0; i < cells; ++i)
    for (int j = 0; j < cells; ++j) {
      gp_Pnt point;
      gp_Vec along_u, along_v;
      surface.D1(u_from + (i + 0.5) * du, v_from + (j + 0.5) * dv, point, along_u, along_v);
      const gp_Vec area = along_u.Crossed(along_v) * factor;
      add(facets, level, {area.X(), area.Y(), area.Z()}, position(point));
    }
  for (int i = 0; i <= cells; ++i)
    for (int j = 0; j <= cells; ++j) points.push_back(position(surface.Value(u_from + i * du, v_from + j * dv)));
}

// Turned so that it points to the left half: |v . d| does not know the difference.
std::array<double, 3> half_turned(const Facet& facet) {
  const bool turn = facet.along_v_m2 < 0.0 || (facet.along_v_m2 == 0.0 && facet.along_u_m2 < 0.0);
  const double u = turn ? -facet.along_u_m2 : facet.along_u_m2, v = turn ? -facet.along_v_m2 : facet.along_v_m2;
  return {std::atan2(v, u), u, v};
}

// The direction of the wind to which the facets show most, and that sum.
SideArea most_shown(const std::vector<Facet>& facets) {
  std::vector<std::array<double, 3>> vectors;
  for (const Facet& facet : facets) vectors.push_back(half_turned(facet));
  std::ranges::sort(vectors);
  double u = 0.0, v = 0.0;
  for (const auto& each : vectors) u += each[1], v += each[2];
  double best_u = u, best_v = v;
  for (const auto& each : vectors) {
    u -= 2.0 * each[1];
    v -= 2.0 * each[2];
    if (std::hypot(u, v) > std::hypot(best_u, best_v)) best_u = u, best_v = v;
  }
  const double length = std::hypot(best_u, best_v);
  SideArea shown{0.5 * length * m2, {}};
  if (!(length > 0.0)) return shown;
  double total_m2 = 0.0;
  Vector<double> sum{};  // m3
  for (const Facet& facet : facets) {
    const double shows_m2 = std::abs(facet.along_u_m2 * best_u + facet.along_v_m2 * best_v) / length;
    total_m2 += shows_m2;
    sum = sum + Vector<double>{shows_m2 * in(m, facet.at.x), shows_m2 * in(m, facet.at.y), shows_m2 * in(m, facet.at.z)};
  }
  shown.centre = {sum.x / total_m2 * m, sum.y / total_m2 * m, sum.z / total_m2 * m};
  return shown;
}

// Height times the largest level distance. Only the points farthest out in some direction can be ends of that.
Area hull_area(const std::vector<Position>& points, const Level& level) {
  constexpr int directions = 360;
  Length low = Length::from_value(INFINITY), high = Length::from_value(-INFINITY);
  std::vector<std::array<double, 2>> flat_m;
  for (const Position& p : points) {
    const Length z = dot(level.up, p);
    low = std::min(low, z);
    high = std::max(high, z);
    flat_m.push_back({in(m, Length{dot(level.u, p)}), in(m, Length{dot(level.v, p)})});
  }
  // Of the width in some direction, at most half a step off the largest distance, which is then at most this much more.
  double widest_m = 0.0;
  for (int i = 0; i < directions; ++i) {
    const double angle = M_PI * i / directions;
    double least = INFINITY, most = -INFINITY;
    for (const auto& p : flat_m) {
      const double along = p[0] * std::cos(angle) + p[1] * std::sin(angle);
      least = std::min(least, along);
      most = std::max(most, along);
    }
    widest_m = std::max(widest_m, most - least);
  }
  if (flat_m.size() <= 200) {  // few enough to be exact
    widest_m = 0.0;
    for (const auto& a : flat_m)
      for (const auto& b : flat_m) widest_m = std::max(widest_m, std::hypot(a[0] - b[0], a[1] - b[1]));
  } else {
    widest_m /= std::cos(0.5 * M_PI / directions);
  }
  return (high - low) * (widest_m * m);
}

}  // namespace

Outcome<SideArea> side_area(const Body& body, const Direction& up) {
  const NotAssessed unknown{"the side area of the piece is not known: a curved face could not be measured",
                            "leave out wind_speed, and wait for still air"};
  const Level level = level_axes((1.0 / norm(up)) * up);
  std::vector<Facet> facets;
  std::vector<Position> points;
  bool plain = true, curved = false;
  try {
    for (std::size_t i = 0; i < body.faces.size(); ++i) {
      const Face& face = body.faces[i];
      if (face.planar) {
        add(facets, level, in(m2, face.area) * face.normal, face.centroid);
        for (const auto& ring : face.rings) points.insert(points.end(), ring.begin(), ring.end());
        continue;
      }
      if (!body.assembly || body.assembly->faces.size() != body.faces.size()) return unknown;
      const TopoDS_Face& surface = body.assembly->faces[i].face;
      add_curved(facets, points, level, surface);
      curved = true;
      plain = plain && is_plain(surface);
    }
  } catch (const Standard_Failure&) {
    return unknown;
  }
  SideArea shown = most_shown(facets);
  if (plain && !points.empty()) shown.area = std::min(shown.area, (curved ? of_curves : 1.0) * hull_area(points, level));
  if (!is_finite(shown.area) || !(shown.area > Area{})) return unknown;
  return shown;
}

}  // namespace firstpick::piece
