#include "demands/plate_mesh.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <map>
#include <set>
#include <utility>

#include <boost/polygon/voronoi.hpp>

namespace firstpick::demands {

namespace {

constexpr double grid_m = 1e-7;          // of the whole numbers that the Voronoi diagram is built on
constexpr double focus_share = 1.0 / 10;  // size at a focus point, of the size far away
constexpr double growth = 0.35;          // of the size, for each length away from a focus point or short side
constexpr double clear_of_boundary = 0.6, clear_of_points = 0.75;  // of the size wanted
constexpr int smoothings = 4, halvings = 8;
constexpr double least_angle_rad = 2.0 * M_PI / 180.0;
constexpr std::size_t most_points = 60000;

struct Side {
  int from, to;
};

struct SizeField {
  struct Point {
    PlatePoint at;
    double size_m;
  };
  double far_m;
  std::vector<Point> points;

  double at(const PlatePoint& p) const {
    double size = far_m;
    for (const Point& each : points) size = std::min(size, each.size_m + growth * distance_m(p, each.at));
    return size;
  }
};

bool turns_inward(const PlatePoint& before, const PlatePoint& at, const PlatePoint& behind, bool left_is_inside) {
  const double turn = (at.x_m - before.x_m) * (behind.y_m - at.y_m) - (at.y_m - before.y_m) * (behind.x_m - at.x_m);
  return left_is_inside ? turn < 0.0 : turn > 0.0;
}

double signed_area(const PlateRing& ring) {
  double sum = 0.0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const PlatePoint &a = ring[i], &b = ring[(i + 1) % ring.size()];
    sum += a.x_m * b.y_m - b.x_m * a.y_m;
  }
  return sum;
}

SizeField size_field(const PlateShape& shape, const std::vector<PlatePoint>& focus, double size_m) {
  SizeField field{size_m, {}};
  for (const PlatePoint& p : focus) field.points.push_back({p, focus_share * size_m});
  const auto look = [&](const PlateRing& ring, bool hole) {
    const bool counter_clockwise = signed_area(ring) > 0.0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const PlatePoint &a = ring[i], &b = ring[(i + 1) % ring.size()], &c = ring[(i + 2) % ring.size()];
      const double length = distance_m(a, b);
      if (length < size_m) field.points.push_back({{0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)}, length});
      if (turns_inward(a, b, c, counter_clockwise != hole)) field.points.push_back({b, focus_share * size_m});
    }
  };
  look(shape.outer, false);
  for (const PlateRing& hole : shape.holes) look(hole, true);
  return field;
}

// The points so far; `fixed` ones are on the boundary or focus points and are not moved.
struct Cloud {
  std::vector<PlatePoint> points;
  std::vector<Side> sides;  // of the boundary
  std::size_t fixed = 0;

  int add(const PlatePoint& p) {
    for (std::size_t i = 0; i < points.size(); ++i)
      if (distance_m(points[i], p) < 2.0 * grid_m) return static_cast<int>(i);
    points.push_back(p);
    return static_cast<int>(points.size()) - 1;
  }
};

void split(Cloud& cloud, const SizeField& field, const PlatePoint& a, const PlatePoint& b, const PlateRing& on_it) {
  // Focus points on a side are corners of it.
  std::vector<std::pair<double, PlatePoint>> stops = {{0.0, a}, {1.0, b}};
  for (const PlatePoint& p : on_it) stops.push_back({distance_m(a, p) / distance_m(a, b), p});
  std::ranges::sort(stops, {}, &std::pair<double, PlatePoint>::first);
  for (std::size_t s = 0; s + 1 < stops.size(); ++s) {
    const PlatePoint from = stops[s].second, to = stops[s + 1].second;
    const double length = distance_m(from, to);
    if (length < 2.0 * grid_m) continue;
    // As many parts as the integral of 1/size, spaced by it.
    constexpr int samples = 64;
    std::vector<double> sum(samples + 1, 0.0);
    for (int i = 0; i < samples; ++i) {
      const double t = (i + 0.5) / samples;
      const PlatePoint p{from.x_m + t * (to.x_m - from.x_m), from.y_m + t * (to.y_m - from.y_m)};
      sum[static_cast<std::size_t>(i) + 1] = sum[static_cast<std::size_t>(i)] + length / samples / field.at(p);
    }
    const int parts = std::max(1, static_cast<int>(std::ceil(sum.back() - 1e-9)));
    int before = cloud.add(from);
    for (int part = 1; part <= parts; ++part) {
      double t = 1.0;
      if (part < parts) {
        const double wanted = sum.back() * part / parts;
        const auto above = std::ranges::lower_bound(sum, wanted);
        const auto i = static_cast<double>(above - sum.begin());
        t = (i - (*above - wanted) / (*above - *(above - 1))) / samples;
      }
      const int now = cloud.add({from.x_m + t * (to.x_m - from.x_m), from.y_m + t * (to.y_m - from.y_m)});
      if (now != before) cloud.sides.push_back({before, now});
      before = now;
    }
  }
}

void add_boundary(Cloud& cloud, const SizeField& field, const PlateShape& shape, const PlateRing& focus) {
  PlateRing stops = focus;
  for (const auto& seam : shape.seams) stops.insert(stops.end(), seam.begin(), seam.end());
  const auto side = [&](const PlatePoint& a, const PlatePoint& b) {
    PlateRing on_it;
    for (const PlatePoint& p : stops)
      if (distance_m(p, a, b) < 10.0 * grid_m) on_it.push_back(p);
    split(cloud, field, a, b, on_it);
  };
  const auto ring = [&](const PlateRing& r) {
    for (std::size_t i = 0; i < r.size(); ++i) side(r[i], r[(i + 1) % r.size()]);
  };
  ring(shape.outer);
  for (const PlateRing& hole : shape.holes) ring(hole);
  for (const auto& seam : shape.seams) side(seam[0], seam[1]);
}

double seam_distance_m(const PlateShape& shape, const PlatePoint& p) {
  double least = std::numeric_limits<double>::infinity();
  for (const auto& seam : shape.seams) least = std::min(least, distance_m(p, seam[0], seam[1]));
  return least;
}

// Points by the square cell they lie in: is one of them nearer than so far?
class Cells {
 public:
  Cells(double low_x_m, double low_y_m, double high_x_m, double high_y_m, double cell_m)
      : low_x_m_(low_x_m), low_y_m_(low_y_m), cell_m_(cell_m), columns_(cell_of(high_x_m - low_x_m) + 1),
        rows_(cell_of(high_y_m - low_y_m) + 1), cells_(static_cast<std::size_t>(columns_ * rows_)) {}

  void add(const PlatePoint& p) { cell(column(p.x_m), row(p.y_m)).push_back(p); }
  bool holds_nearer(const PlatePoint& p, double reach_m) const {
    for (int r = row(p.y_m - reach_m); r <= row(p.y_m + reach_m); ++r)
      for (int c = column(p.x_m - reach_m); c <= column(p.x_m + reach_m); ++c)
        for (const PlatePoint& q : cells_[static_cast<std::size_t>(r * columns_ + c)])
          if (distance_m(p, q) < reach_m) return true;
    return false;
  }

 private:
  int cell_of(double off_m) const { return static_cast<int>(std::floor(off_m / cell_m_)); }
  int column(double x_m) const { return std::clamp(cell_of(x_m - low_x_m_), 0, columns_ - 1); }
  int row(double y_m) const { return std::clamp(cell_of(y_m - low_y_m_), 0, rows_ - 1); }
  std::vector<PlatePoint>& cell(int c, int r) { return cells_[static_cast<std::size_t>(r * columns_ + c)]; }

  double low_x_m_, low_y_m_, cell_m_;
  int columns_, rows_;
  std::vector<std::vector<PlatePoint>> cells_;
};

// The columns of a row of a grid, from -columns to columns, whose points may be wanted finer than `size_m`: no other point
// need be looked at.
std::vector<bool> finer_columns(const SizeField& field, double y_m, double first_x_m, double pitch_m, int columns,
                                double size_m) {
  std::vector<bool> wanted(static_cast<std::size_t>(2 * columns + 1), false);
  for (const SizeField::Point& each : field.points) {
    const double reach = (size_m - each.size_m) / growth, off = y_m - each.at.y_m;
    if (!(reach > std::abs(off))) continue;
    const double half = std::sqrt(reach * reach - off * off);
    const auto index = [&](double x_m) {
      return std::clamp(std::floor((x_m - first_x_m) / pitch_m), -1.0, 2.0 * columns + 1.0);
    };
    const int from = std::max(0, static_cast<int>(index(each.at.x_m - half)));
    const int to = std::min(2 * columns, static_cast<int>(index(each.at.x_m + half)) + 1);
    for (int i = from; i <= to; ++i) wanted[static_cast<std::size_t>(i)] = true;
  }
  return wanted;
}

// Points of triangular grids, the finest first, each where its grid is the one wanted.
void add_inside(Cloud& cloud, const SizeField& field, const PlateShape& shape) {
  double low_x = 1e300, low_y = 1e300, high_x = -1e300, high_y = -1e300;
  for (const PlatePoint& p : shape.outer) {
    low_x = std::min(low_x, p.x_m), high_x = std::max(high_x, p.x_m);
    low_y = std::min(low_y, p.y_m), high_y = std::max(high_y, p.y_m);
  }
  double finest = field.far_m;
  for (const auto& point : field.points) finest = std::min(finest, point.size_m);
  int levels = 0;
  while (field.far_m / std::pow(2.0, levels) > finest) ++levels;
  const double middle_x = 0.5 * (low_x + high_x), middle_y = 0.5 * (low_y + high_y);
  Cells taken(low_x, low_y, high_x, high_y, 0.25 * field.far_m);
  for (const PlatePoint& p : cloud.points) taken.add(p);
  for (int level = levels; level >= 0; --level) {
    const double pitch = field.far_m / std::pow(2.0, level), row_height = pitch * std::sqrt(0.75);
    const int rows = static_cast<int>(0.5 * (high_y - low_y) / row_height) + 1;
    const int columns = static_cast<int>(0.5 * (high_x - low_x) / pitch) + 1;
    for (int row = -rows; row <= rows; ++row) {
      const double y = middle_y + row * row_height, shift = row % 2 != 0 ? 0.5 : 0.0;
      std::vector<bool> wanted;
      if (level > 0) wanted = finer_columns(field, y, middle_x + (shift - columns) * pitch, pitch, columns, 1.5 * pitch);
      for (int column = -columns; column <= columns; ++column) {
        if (level > 0 && !wanted[static_cast<std::size_t>(column + columns)]) continue;
        const PlatePoint p{middle_x + (column + shift) * pitch, y};
        const double size = field.at(p);
        if (level > 0 ? size >= 1.5 * pitch : size < 0.75 * pitch) continue;
        if (!is_inside(shape, p) || boundary_distance_m(shape, p) < clear_of_boundary * size) continue;
        if (seam_distance_m(shape, p) < clear_of_boundary * size) continue;
        if (taken.holds_nearer(p, clear_of_points * size)) continue;
        cloud.points.push_back(p);
        taken.add(p);
        if (cloud.points.size() > most_points) return;
      }
    }
  }
}

using Triangles = std::vector<std::array<int, 3>>;

Triangles delaunay(const std::vector<PlatePoint>& points, const PlateShape& shape) {
  using Whole = boost::polygon::point_data<std::int32_t>;
  std::vector<Whole> sites;
  for (const PlatePoint& p : points)
    sites.emplace_back(static_cast<std::int32_t>(std::lround(p.x_m / grid_m)),
                       static_cast<std::int32_t>(std::lround(p.y_m / grid_m)));
  boost::polygon::voronoi_diagram<double> diagram;
  boost::polygon::construct_voronoi(sites.begin(), sites.end(), &diagram);
  Triangles triangles;
  for (const auto& vertex : diagram.vertices()) {
    std::vector<int> around;
    const auto* edge = vertex.incident_edge();
    do {
      around.push_back(static_cast<int>(edge->cell()->source_index()));
      edge = edge->rot_next();
    } while (edge != vertex.incident_edge());
    for (std::size_t i = 1; i + 1 < around.size(); ++i) {  // more than three where points lie on one circle
      const std::array<int, 3> corner = {around[0], around[i], around[i + 1]};
      const auto at = [&](int k) { return points[static_cast<std::size_t>(corner[static_cast<std::size_t>(k)])]; };
      const PlatePoint a = at(0), b = at(1), c = at(2);
      const double doubled = (b.x_m - a.x_m) * (c.y_m - a.y_m) - (c.x_m - a.x_m) * (b.y_m - a.y_m);
      const double longest = std::max({distance_m(a, b), distance_m(b, c), distance_m(c, a)});
      // The cells stand counter-clockwise about it. Not so: three points on a straight boundary.
      if (!(doubled > 10.0 * grid_m * longest)) continue;
      if (!is_inside(shape, {(a.x_m + b.x_m + c.x_m) / 3.0, (a.y_m + b.y_m + c.y_m) / 3.0})) continue;
      triangles.push_back(corner);
    }
  }
  return triangles;
}

// Each free point to the middle of its neighbours.
void smooth(Cloud& cloud, const Triangles& triangles) {
  std::vector<PlatePoint> sum(cloud.points.size());
  std::vector<int> count(cloud.points.size(), 0);
  for (const auto& corners : triangles)
    for (std::size_t i = 0; i < 3; ++i)
      for (std::size_t j = 0; j < 3; ++j) {
        if (i == j) continue;
        const auto to = static_cast<std::size_t>(corners[i]), from = static_cast<std::size_t>(corners[j]);
        sum[to].x_m += cloud.points[from].x_m;
        sum[to].y_m += cloud.points[from].y_m;
        ++count[to];
      }
  for (std::size_t i = cloud.fixed; i < cloud.points.size(); ++i)
    if (count[i] > 0) cloud.points[i] = {sum[i].x_m / count[i], sum[i].y_m / count[i]};
}

std::pair<int, int> ordered(int a, int b) { return {std::min(a, b), std::max(a, b)}; }

// Halves every boundary side that is not a side of a triangle. True: there was one.
bool halve_lost_sides(Cloud& cloud, const Triangles& triangles) {
  std::set<std::pair<int, int>> present;
  for (const auto& t : triangles)
    for (std::size_t i = 0; i < 3; ++i) present.insert(ordered(t[i], t[(i + 1) % 3]));
  std::vector<Side> sides;
  std::vector<PlatePoint> middles;
  for (const Side& side : cloud.sides) {
    if (present.contains(ordered(side.from, side.to))) {
      sides.push_back(side);
      continue;
    }
    const PlatePoint a = cloud.points[static_cast<std::size_t>(side.from)];
    const PlatePoint b = cloud.points[static_cast<std::size_t>(side.to)];
    const int middle = static_cast<int>(cloud.fixed + middles.size());
    middles.push_back({0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)});
    sides.push_back({side.from, middle});
    sides.push_back({middle, side.to});
  }
  if (middles.empty()) return false;
  cloud.points.insert(cloud.points.begin() + static_cast<std::ptrdiff_t>(cloud.fixed), middles.begin(), middles.end());
  cloud.fixed += middles.size();
  cloud.sides = std::move(sides);
  return true;
}

double triangle_least_angle(const PlatePoint& a, const PlatePoint& b, const PlatePoint& c) {
  const auto angle = [](const PlatePoint& at, const PlatePoint& p, const PlatePoint& q) {
    const double px = p.x_m - at.x_m, py = p.y_m - at.y_m, qx = q.x_m - at.x_m, qy = q.y_m - at.y_m;
    return std::abs(std::atan2(px * qy - py * qx, px * qx + py * qy));
  };
  return std::min({angle(a, b, c), angle(b, c, a), angle(c, a, b)});
}

// Points that no triangle holds are dropped; the rest is checked.
std::optional<PlateMesh> checked(const Cloud& cloud, const Triangles& triangles, const PlateShape& shape,
                                 const std::vector<int>& focus_points) {
  PlateMesh mesh;
  std::vector<int> node(cloud.points.size(), -1);
  double area = 0.0;
  mesh.least_angle_rad = M_PI;
  for (const auto& corners : triangles) {
    std::array<int, 3> made{};
    for (std::size_t i = 0; i < 3; ++i) {
      int& number = node[static_cast<std::size_t>(corners[i])];
      if (number < 0) {
        number = static_cast<int>(mesh.nodes.size());
        mesh.nodes.push_back(cloud.points[static_cast<std::size_t>(corners[i])]);
      }
      made[i] = number;
    }
    mesh.triangles.push_back(made);
    const auto at = [&](std::size_t i) { return mesh.nodes[static_cast<std::size_t>(made[i])]; };
    area += area_m2(PlateRing{at(0), at(1), at(2)});
    mesh.least_angle_rad = std::min(mesh.least_angle_rad, triangle_least_angle(at(0), at(1), at(2)));
  }
  for (const int point : focus_points) mesh.focus_nodes.push_back(node[static_cast<std::size_t>(point)]);
  if (!(std::abs(area - area_m2(shape)) <= 1e-6 * area_m2(shape)) || !(mesh.least_angle_rad >= least_angle_rad) ||
      std::ranges::any_of(mesh.focus_nodes, [](int n) { return n < 0; }))
    return {};
  return mesh;
}

}  // namespace

std::optional<PlateMesh> plate_mesh(const PlateShape& shape, const std::vector<PlatePoint>& focus, double size_m) {
  const SizeField field = size_field(shape, focus, size_m);
  Cloud cloud;
  std::vector<int> focus_points;
  for (const PlatePoint& p : focus) focus_points.push_back(cloud.add(p));
  add_boundary(cloud, field, shape, focus);
  cloud.fixed = cloud.points.size();
  add_inside(cloud, field, shape);
  if (cloud.points.size() > most_points) return {};
  for (int i = 0; i < smoothings; i += 2) {  // points move so little that neighbours are told anew at every second turn
    const Triangles triangles = delaunay(cloud.points, shape);
    smooth(cloud, triangles);
    smooth(cloud, triangles);
  }
  for (int i = 0; i <= halvings; ++i) {
    const Triangles triangles = delaunay(cloud.points, shape);
    if (!halve_lost_sides(cloud, triangles)) return checked(cloud, triangles, shape, focus_points);
  }
  return {};
}

}  // namespace firstpick::demands
