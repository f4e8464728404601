#include "demands/plate_grid.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace firstpick::demands {

namespace {

constexpr double on_the_side = 1e-9;  // share of a corner, and metres, that still count as inside

// Points of a disc of radius 1, each of which stands for the same part of it.
std::vector<PlatePoint> points_of_disc() {
  constexpr int rings = 3;
  std::vector<PlatePoint> all;
  for (int ring = 0; ring < rings; ++ring) {
    const double r = (ring + 0.5) / rings;
    const int points = 6 * (2 * ring + 1);
    for (int i = 0; i < points; ++i) {
      const double turn = 2.0 * M_PI * (i + 0.5) / points;
      all.push_back({r * std::cos(turn), r * std::sin(turn)});
    }
  }
  return all;
}

}  // namespace

std::array<PlatePoint, 3> PlateGrid::corners(std::size_t triangle) const {
  const auto& t = mesh.triangles[triangle];
  const auto at = [&](int n) { return mesh.nodes[static_cast<std::size_t>(n)]; };
  return {at(t[0]), at(t[1]), at(t[2])};
}

int PlateGrid::freedom(std::size_t triangle, std::size_t local) const {
  return 3 * mesh.triangles[triangle][local / 3] + static_cast<int>(local % 3);
}

PlateGrid::PlateGrid(const PlateMesh& of, double rigidity_of, double poisson_of)
    : mesh(of), rigidity(rigidity_of), poisson(poisson_of), beyond_(neighbours(of)) {
  double high_x = -1e300, high_y = -1e300;
  for (const PlatePoint& p : mesh.nodes) {
    low_x_m_ = std::min(low_x_m_, p.x_m), high_x = std::max(high_x, p.x_m);
    low_y_m_ = std::min(low_y_m_, p.y_m), high_y = std::max(high_y, p.y_m);
  }
  const double width = high_x - low_x_m_, height = high_y - low_y_m_;
  bin_m_ = std::sqrt(width * height / static_cast<double>(mesh.triangles.size()));
  columns_ = static_cast<int>(width / bin_m_) + 1;
  rows_ = static_cast<int>(height / bin_m_) + 1;
  bins_.resize(static_cast<std::size_t>(columns_ * rows_));
  const auto bin = [&](double place, double low, int count) {
    return std::clamp(static_cast<int>(std::floor((place - low) / bin_m_)), 0, count - 1);
  };
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
    elements.emplace_back(corners(t));
    const auto [a, b, c] = corners(t);
    reaches_.push_back({a.x_m, a.y_m, b.x_m - a.x_m, b.y_m - a.y_m, c.x_m - a.x_m, c.y_m - a.y_m,
                        2.0 * elements[t].area_m2()});
    const int column_0 = bin(std::min({a.x_m, b.x_m, c.x_m}) - on_the_side, low_x_m_, columns_);
    const int column_1 = bin(std::max({a.x_m, b.x_m, c.x_m}) + on_the_side, low_x_m_, columns_);
    const int row_0 = bin(std::min({a.y_m, b.y_m, c.y_m}) - on_the_side, low_y_m_, rows_);
    const int row_1 = bin(std::max({a.y_m, b.y_m, c.y_m}) + on_the_side, low_y_m_, rows_);
    for (int row = row_0; row <= row_1; ++row)
      for (int column = column_0; column <= column_1; ++column)
        bins_[static_cast<std::size_t>(row * columns_ + column)].push_back(t);
  }
}

// Where a place lies as seen from a triangle, in areas: no division before it is known to lie within.
PlateGrid::Seen PlateGrid::seen(std::size_t triangle, const PlatePoint& p) const {
  const Reach& r = reaches_[triangle];
  const double x = p.x_m - r.x_m, y = p.y_m - r.y_m;
  return {x * r.to_3_y_m - r.to_3_x_m * y, r.to_2_x_m * y - x * r.to_2_y_m, r.doubled_m2};
}

bool PlateGrid::Seen::lies_within(double margin) const {
  const double most_out_m2 = margin * doubled_m2;
  return of_2_m2 >= -most_out_m2 && of_3_m2 >= -most_out_m2 && of_2_m2 + of_3_m2 <= doubled_m2 + most_out_m2;
}

std::optional<PlateGrid::Place> PlateGrid::find(const PlatePoint& p) const {
  const int column = static_cast<int>(std::floor((p.x_m - low_x_m_) / bin_m_));
  const int row = static_cast<int>(std::floor((p.y_m - low_y_m_) / bin_m_));
  if (column < 0 || row < 0 || column >= columns_ || row >= rows_) return {};
  for (const std::size_t t : bins_[static_cast<std::size_t>(row * columns_ + column)])
    if (const Seen at = seen(t, p); at.lies_within(on_the_side)) return Place{t, at.share_2(), at.share_3()};
  return {};
}

// The same, for a place near one that lies in this triangle: from there towards it, across one side after the other. Clear of
// the sides of a triangle no other holds it.
std::optional<PlateGrid::Place> PlateGrid::find(const PlatePoint& p, std::size_t near) const {
  constexpr int steps = 8;
  for (int step = 0; step < steps; ++step) {
    const Seen at = seen(near, p);
    if (at.lies_within(-on_the_side)) return Place{near, at.share_2(), at.share_3()};
    const double of_1_m2 = at.doubled_m2 - at.of_2_m2 - at.of_3_m2;
    const std::size_t out = of_1_m2 <= at.of_2_m2 ? (of_1_m2 <= at.of_3_m2 ? 0 : 2) : (at.of_2_m2 <= at.of_3_m2 ? 1 : 2);
    const int next = beyond_[near][out];
    if (next < 0) break;
    near = static_cast<std::size_t>(next);
  }
  return find(p);
}

// Of each triangle the one beyond the side that faces each corner; -1: none.
std::vector<std::array<int, 3>> PlateGrid::neighbours(const PlateMesh& mesh) {
  struct Side {
    int low, high, triangle;
    std::size_t facing;
  };
  std::vector<Side> sides;
  sides.reserve(3 * mesh.triangles.size());
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
    for (std::size_t corner = 0; corner < 3; ++corner) {
      const auto [low, high] = std::minmax(mesh.triangles[t][(corner + 1) % 3], mesh.triangles[t][(corner + 2) % 3]);
      sides.push_back({low, high, static_cast<int>(t), corner});
    }
  std::ranges::sort(sides, [](const Side& a, const Side& b) { return std::tie(a.low, a.high) < std::tie(b.low, b.high); });
  std::vector<std::array<int, 3>> beyond(mesh.triangles.size(), {-1, -1, -1});
  for (std::size_t i = 0; i + 1 < sides.size(); ++i) {
    const Side &a = sides[i], &b = sides[i + 1];
    if (a.low != b.low || a.high != b.high) continue;
    beyond[static_cast<std::size_t>(a.triangle)][a.facing] = b.triangle;
    beyond[static_cast<std::size_t>(b.triangle)][b.facing] = a.triangle;
  }
  return beyond;
}

std::optional<PlateMean::Three> PlateMean::of(const std::vector<std::array<Three, 3>>& corners_of_triangles) const {
  if (parts.empty()) return {};
  Three sum{};
  for (const Part& part : parts)
    for (std::size_t corner = 0; corner < 3; ++corner)
      for (std::size_t i = 0; i < 3; ++i)
        sum[i] += part.of_corner[corner] * corners_of_triangles[part.triangle][corner][i];
  return sum;
}

PlateMean PlateGrid::mean(const std::vector<PlatePoint>& places) const {
  PlateMean made;
  if (reaches_.empty()) return made;
  int count = 0;
  std::size_t last = 0;
  for (const PlatePoint& p : places) {
    const auto place = find(p, last);
    if (!place) continue;
    ++count;
    last = place->triangle;
    auto part = std::find_if(made.parts.begin(), made.parts.end(),
                             [&](const PlateMean::Part& each) { return each.triangle == place->triangle; });
    if (part == made.parts.end()) part = made.parts.insert(part, {place->triangle, {}});
    part->of_corner[0] += 1.0 - place->share_2 - place->share_3;
    part->of_corner[1] += place->share_2;
    part->of_corner[2] += place->share_3;
  }
  for (PlateMean::Part& part : made.parts)
    for (double& each : part.of_corner) each /= count;
  return made;
}

PlateMean PlateGrid::disc_mean(const PlatePoint& p, double radius_m) const {
  static const std::vector<PlatePoint> disc = points_of_disc();
  std::vector<PlatePoint> places;
  places.reserve(disc.size());
  for (const PlatePoint& off : disc) places.push_back({p.x_m + radius_m * off.x_m, p.y_m + radius_m * off.y_m});
  return mean(places);
}

PlateMean PlateGrid::line_mean(const PlatePoint& p, bool along_x, double length_m) const {
  constexpr int points = 400;
  std::vector<PlatePoint> places;
  places.reserve(points);
  for (int i = 0; i < points; ++i) {
    const double off = length_m * ((i + 0.5) / points - 0.5);
    places.push_back(along_x ? PlatePoint{p.x_m + off, p.y_m} : PlatePoint{p.x_m, p.y_m + off});
  }
  return mean(places);
}

}  // namespace firstpick::demands
