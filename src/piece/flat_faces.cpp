#include "piece/flat_faces.hpp"

#include <algorithm>
#include <cmath>

#include "piece/shape.hpp"

namespace firstpick::piece {

namespace {

constexpr double near_m = 2e-7;  // twice what the kernel takes for one place

}  // namespace

std::optional<FlatFaces> FlatFaces::of(const std::vector<Face>& faces) {
  FlatFaces all;
  for (const Face& face : faces) {
    if (!face.planar || face.rings.empty()) return {};
    Polygon polygon{{face.normal.x, face.normal.y, face.normal.z}, {}, {}};
    for (const auto& ring : face.rings) {
      std::vector<gp_XYZ> corners;
      for (const Position& p : ring)
        corners.push_back(point_m(p).XYZ()), polygon.around.Add(gp_Pnt(corners.back()));
      polygon.rings.push_back(std::move(corners));
    }
    polygon.around.Enlarge(near_m);
    all.polygons_.push_back(std::move(polygon));
  }
  return all;
}

std::optional<std::vector<double>> FlatFaces::crossings(const gp_Pnt& point, const gp_Dir& along) const {
  std::vector<double> all;
  for (const Polygon& polygon : polygons_) {
    const double across = polygon.normal * along.XYZ();
    const double off = polygon.normal * (polygon.rings.front().front() - point.XYZ());
    if (std::abs(across) < 1e-6) {
      if (std::abs(off) < near_m) return {};
      continue;
    }
    const gp_XYZ at = point.XYZ() + along.XYZ() * (off / across);
    if (polygon.around.IsOut(gp_Pnt(at))) continue;
    const auto inside = is_inside(polygon, at);
    if (!inside) return {};
    if (*inside) all.push_back(off / across);
  }
  return all;
}

std::vector<double> FlatFaces::plane_crossings(const gp_Pnt& point, const gp_Dir& along, double from_m, double to_m) const {
  std::vector<double> all;
  for (const Polygon& polygon : polygons_) {
    const double across = polygon.normal * along.XYZ();
    if (std::abs(across) < 1e-6) continue;
    const double at_m = polygon.normal * (polygon.rings.front().front() - point.XYZ()) / across;
    if (at_m >= from_m && at_m <= to_m) all.push_back(at_m);
  }
  std::ranges::sort(all);
  return all;
}

bool FlatFaces::may_be_within(std::size_t face, const gp_Pnt& point, double within_m) const {
  const Polygon& polygon = polygons_[face];
  if (!(std::abs(polygon.normal * (polygon.rings.front().front() - point.XYZ())) <= within_m)) return false;
  Bnd_Box around(point, point);
  around.Enlarge(within_m);
  return !polygon.around.IsOut(around);
}

std::optional<gp_Pnt> FlatFaces::foot(std::size_t face, const gp_Pnt& point) const {
  const Polygon& polygon = polygons_[face];
  const gp_XYZ at = point.XYZ() + polygon.normal * (polygon.normal * (polygon.rings.front().front() - point.XYZ()));
  if (polygon.around.IsOut(gp_Pnt(at)) || !is_inside(polygon, at).value_or(false)) return {};
  return gp_Pnt(at);
}

// By the angle that the sides of a ring are seen under: all round inside, none outside. Nothing: on a side.
std::optional<bool> FlatFaces::is_inside(const Polygon& polygon, const gp_XYZ& at) {
  bool inside = false;  // in an odd number of rings: the outline, and no opening
  for (const auto& ring : polygon.rings) {
    double turned = 0.0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const gp_XYZ a = ring[i] - at, b = ring[(i + 1) % ring.size()] - at, side = b - a;
      const double length2 = side.SquareModulus();
      const double along = length2 > 0.0 ? std::clamp(-(a * side) / length2, 0.0, 1.0) : 0.0;
      if ((a + side * along).Modulus() < near_m) return {};
      turned += std::atan2(polygon.normal * (a ^ b), a * b);
    }
    inside = inside != (std::abs(turned) > M_PI);
  }
  return inside;
}

}  // namespace firstpick::piece
