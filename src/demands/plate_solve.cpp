#include "demands/plate_solve.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

#include "demands/plate_element.hpp"

namespace firstpick::demands {

namespace {

constexpr double on_the_side = 1e-9;  // share of a corner that still counts as inside

std::array<PlatePoint, 3> corners(const PlateMesh& mesh, std::size_t triangle) {
  const auto& t = mesh.triangles[triangle];
  const auto at = [&](int n) { return mesh.nodes[static_cast<std::size_t>(n)]; };
  return {at(t[0]), at(t[1]), at(t[2])};
}

int freedom(const std::array<int, 3>& triangle, int local) {
  return 3 * triangle[static_cast<std::size_t>(local / 3)] + local % 3;
}

void add(PlateMoments& sum, const PlateMoments& here) {
  for (std::size_t i = 0; i < 3; ++i) sum[i] += here[i];
}
PlateMoments mean(const PlateMoments& sum, int count) { return {sum[0] / count, sum[1] / count, sum[2] / count}; }

}  // namespace

void PlateSolution::fill_bins() {
  double high_x = -1e300, high_y = -1e300;
  bins_.low_x_m = bins_.low_y_m = 1e300;
  for (const PlatePoint& p : mesh_.nodes) {
    bins_.low_x_m = std::min(bins_.low_x_m, p.x_m), high_x = std::max(high_x, p.x_m);
    bins_.low_y_m = std::min(bins_.low_y_m, p.y_m), high_y = std::max(high_y, p.y_m);
  }
  const double area = (high_x - bins_.low_x_m) * (high_y - bins_.low_y_m);
  bins_.size_m = std::sqrt(area / static_cast<double>(mesh_.triangles.size()));
  bins_.columns = static_cast<int>((high_x - bins_.low_x_m) / bins_.size_m) + 1;
  bins_.rows = static_cast<int>((high_y - bins_.low_y_m) / bins_.size_m) + 1;
  bins_.triangles.assign(static_cast<std::size_t>(bins_.columns * bins_.rows), {});
  const auto bin = [&](double place, double low, int most) {
    return std::clamp(static_cast<int>((place - low) / bins_.size_m), 0, most - 1);
  };
  for (std::size_t t = 0; t < mesh_.triangles.size(); ++t) {
    const auto [a, b, c] = corners(mesh_, t);
    const double slack = 1e-9;
    const int column_0 = bin(std::min({a.x_m, b.x_m, c.x_m}) - slack, bins_.low_x_m, bins_.columns);
    const int column_1 = bin(std::max({a.x_m, b.x_m, c.x_m}) + slack, bins_.low_x_m, bins_.columns);
    const int row_0 = bin(std::min({a.y_m, b.y_m, c.y_m}) - slack, bins_.low_y_m, bins_.rows);
    const int row_1 = bin(std::max({a.y_m, b.y_m, c.y_m}) + slack, bins_.low_y_m, bins_.rows);
    for (int row = row_0; row <= row_1; ++row)
      for (int column = column_0; column <= column_1; ++column)
        bins_.triangles[static_cast<std::size_t>(row * bins_.columns + column)].push_back(static_cast<int>(t));
  }
}

std::optional<PlateMoments> PlateSolution::moments(const PlatePoint& p) const {
  const int column = static_cast<int>(std::floor((p.x_m - bins_.low_x_m) / bins_.size_m));
  const int row = static_cast<int>(std::floor((p.y_m - bins_.low_y_m) / bins_.size_m));
  if (column < 0 || row < 0 || column >= bins_.columns || row >= bins_.rows) return {};
  for (const int t : bins_.triangles[static_cast<std::size_t>(row * bins_.columns + column)]) {
    const auto triangle = static_cast<std::size_t>(t);
    const auto [a, b, c] = corners(mesh_, triangle);
    const double doubled = 2.0 * elements_->at(triangle).area_m2();
    const double s = ((p.x_m - a.x_m) * (c.y_m - a.y_m) - (c.x_m - a.x_m) * (p.y_m - a.y_m)) / doubled;
    const double u = ((b.x_m - a.x_m) * (p.y_m - a.y_m) - (p.x_m - a.x_m) * (b.y_m - a.y_m)) / doubled;
    if (s < -on_the_side || u < -on_the_side || s + u > 1.0 + on_the_side) continue;
    ElementVector local{};
    for (int i = 0; i < 9; ++i)
      local[static_cast<std::size_t>(i)] = freedoms_[static_cast<std::size_t>(freedom(mesh_.triangles[triangle], i))];
    return elements_->at(triangle).moments(s, u, local, rigidity_, poisson_);
  }
  return {};
}

std::optional<PlateMoments> PlateSolution::patch_moments(const PlatePoint& p, double radius_m) const {
  // Rings of equal area, six points on the innermost: each point stands for the same part of the disc.
  constexpr int rings = 3;
  PlateMoments sum{};
  int count = 0;
  for (int ring = 0; ring < rings; ++ring) {
    const double r = radius_m * (ring + 0.5) / rings;
    const int points = 6 * (2 * ring + 1);
    for (int i = 0; i < points; ++i) {
      const double turn = 2.0 * M_PI * (i + 0.5) / points;
      if (const auto here = moments({p.x_m + r * std::cos(turn), p.y_m + r * std::sin(turn)})) {
        add(sum, *here);
        ++count;
      }
    }
  }
  if (count == 0) return {};
  return mean(sum, count);
}

std::optional<PlateMoments> PlateSolution::strip_moments(const PlatePoint& p, bool along_x, double length_m) const {
  constexpr int points = 400;
  PlateMoments sum{};
  int count = 0;
  for (int i = 0; i < points; ++i) {
    const double off = length_m * ((i + 0.5) / points - 0.5);
    const auto here = moments(along_x ? PlatePoint{p.x_m + off, p.y_m} : PlatePoint{p.x_m, p.y_m + off});
    if (!here) continue;
    add(sum, *here);
    ++count;
  }
  if (count == 0) return {};
  return mean(sum, count);
}

std::optional<PlateSolution> solve_plate(const PlateMesh& mesh, const PlateProblem& problem) {
  PlateSolution solution;
  solution.mesh_ = mesh;
  solution.rigidity_ = problem.rigidity;
  solution.poisson_ = problem.poisson;
  solution.fill_bins();
  const auto size = static_cast<Eigen::Index>(3 * mesh.nodes.size());
  Eigen::VectorXd load = Eigen::VectorXd::Zero(size);
  std::vector<PlateElement> elements;
  std::vector<Eigen::Triplet<double>> entries;
  entries.reserve(81 * mesh.triangles.size());
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
    elements.emplace_back(corners(mesh, t));
    const PlateElement& element = elements.back();
    const ElementMatrix stiffness = element.stiffness(problem.rigidity, problem.poisson);
    for (int i = 0; i < 9; ++i)
      for (int j = 0; j < 9; ++j)
        entries.emplace_back(freedom(mesh.triangles[t], i), freedom(mesh.triangles[t], j),
                             stiffness[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)]);
    for (const int node : mesh.triangles[t]) load[3 * node] += problem.pressure * element.area_m2() / 3.0;
  }
  for (const PlateNodeLoad& each : problem.loads) load[each.freedom] += each.value;
  Eigen::SparseMatrix<double> stiffness(size, size);
  stiffness.setFromTriplets(entries.begin(), entries.end());

  // Held freedoms: their rows and columns keep the diagonal alone, and their load is zero.
  std::vector<bool> held(static_cast<std::size_t>(size), false);
  for (const int each : problem.held) held[static_cast<std::size_t>(each)] = true;
  Eigen::SparseMatrix<double> reduced = stiffness;
  Eigen::VectorXd right = load;
  for (Eigen::Index column = 0; column < size; ++column) {
    const bool column_held = held[static_cast<std::size_t>(column)];
    if (column_held) right[column] = 0.0;
    for (Eigen::SparseMatrix<double>::InnerIterator entry(reduced, column); entry; ++entry)
      if (entry.row() != column && (column_held || held[static_cast<std::size_t>(entry.row())])) entry.valueRef() = 0.0;
  }
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> solver(reduced);
  if (solver.info() != Eigen::Success || !(solver.vectorD().minCoeff() > 1e-13 * solver.vectorD().maxCoeff())) return {};
  const Eigen::VectorXd freedoms = solver.solve(right);
  if (!freedoms.allFinite()) return {};
  const Eigen::VectorXd reactions = load - stiffness * freedoms;
  solution.elements_ = std::make_shared<const std::vector<PlateElement>>(std::move(elements));
  solution.freedoms_.assign(freedoms.begin(), freedoms.end());
  solution.reactions_.assign(reactions.begin(), reactions.end());
  return solution;
}

}  // namespace firstpick::demands
