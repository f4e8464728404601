#include "demands/plate_solve.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

#include "demands/node_ordering.hpp"
#include "demands/panel_equations.hpp"
#include "demands/plate_grid.hpp"

namespace firstpick::demands {

namespace {

using Matrix = Eigen::SparseMatrix<double>;

// The lower triangle: the whole is symmetric.
Matrix stiffness_of(const PlateGrid& grid) {
  std::vector<Eigen::Triplet<double>> entries;
  entries.reserve(45 * grid.elements.size());
  for (std::size_t t = 0; t < grid.elements.size(); ++t) {
    const ElementMatrix element = grid.elements[t].stiffness(grid.rigidity, grid.poisson);
    for (std::size_t i = 0; i < 9; ++i)
      for (std::size_t j = 0; j < 9; ++j)
        if (grid.freedom(t, i) >= grid.freedom(t, j))
          entries.emplace_back(grid.freedom(t, i), grid.freedom(t, j), element[i][j]);
  }
  const auto size = static_cast<Eigen::Index>(3 * grid.mesh.nodes.size());
  Matrix stiffness(size, size);
  stiffness.setFromTriplets(entries.begin(), entries.end());
  return stiffness;
}

}  // namespace

const PlateMesh& PlateSolution::mesh() const { return grid_->mesh; }

std::optional<PlateMoments> PlateSolution::moments(const PlatePoint& p) const {
  const auto place = grid_->find(p);
  if (!place) return {};
  const auto& [one, two, three] = corner_moments_[place->triangle];
  PlateMoments here;
  for (std::size_t i = 0; i < 3; ++i)
    here[i] = one[i] + place->share_2 * (two[i] - one[i]) + place->share_3 * (three[i] - one[i]);
  return here;
}

// Linear in each element.
void PlateSolution::find_corner_moments(const std::vector<CornerCurvatures>& of_triangles) {
  corner_moments_.resize(grid_->elements.size());
  for (std::size_t t = 0; t < grid_->elements.size(); ++t) {
    ElementVector local{};
    for (std::size_t i = 0; i < 9; ++i) local[i] = freedoms_[static_cast<std::size_t>(grid_->freedom(t, i))];
    for (std::size_t corner = 0; corner < 3; ++corner)
      corner_moments_[t][corner] =
          PlateElement::moments(of_triangles[t][corner], local, grid_->rigidity, grid_->poisson);
  }
}

std::optional<PlateMoments> PlateSolution::mean(const PlateMean& over) const { return over.of(corner_moments_); }

std::optional<PlateMoments> PlateSolution::patch_moments(const PlatePoint& p, double radius_m) const {
  return mean(grid_->disc_mean(p, radius_m));
}

std::optional<PlateMoments> PlateSolution::strip_moments(const PlatePoint& p, bool along_x, double length_m) const {
  return mean(grid_->line_mean(p, along_x, length_m));
}

struct PlateSolver::Equations {
  struct ByNode {  // of Eigen's factors
    using PermutationType = Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int>;
    void operator()(const Matrix& whole, PermutationType& places) const {
      const auto order =
          node_order(static_cast<int>(whole.cols()), whole.outerIndexPtr(), whole.innerIndexPtr(), 3);
      places.resize(static_cast<Eigen::Index>(order.size()));
      std::copy(order.begin(), order.end(), places.indices().data());
    }
  };

  Matrix stiffness;
  std::vector<bool> held;
  Eigen::SimplicialLDLT<Matrix, Eigen::Lower, ByNode> factored;
  bool usable = false;
};

PlateSolver::PlateSolver(const PlateMesh& mesh, const PlateProblem& problem)
    : grid_(std::make_shared<const PlateGrid>(mesh, problem.rigidity, problem.poisson)),
      equations_(std::make_unique<Equations>()) {
  corner_curvatures_.reserve(grid_->elements.size());
  for (const PlateElement& each : grid_->elements)
    corner_curvatures_.push_back({each.curvatures(0.0, 0.0), each.curvatures(1.0, 0.0), each.curvatures(0.0, 1.0)});
  Equations& e = *equations_;
  e.stiffness = stiffness_of(*grid_);
  e.held.assign(3 * mesh.nodes.size(), false);
  for (const int freedom : problem.held) e.held[static_cast<std::size_t>(freedom)] = true;
  // Rows and columns of held freedoms keep the diagonal alone.
  Matrix reduced = e.stiffness;
  for (Eigen::Index column = 0; column < reduced.cols(); ++column)
    for (Matrix::InnerIterator entry(reduced, column); entry; ++entry)
      if (entry.row() != column &&
          (e.held[static_cast<std::size_t>(column)] || e.held[static_cast<std::size_t>(entry.row())]))
        entry.valueRef() = 0.0;
  e.factored.compute(reduced);
  const Eigen::VectorXd pivots = e.factored.vectorD();
  e.usable = gives_numbers(e.factored.info() == Eigen::Success,
                           {pivots.data(), static_cast<std::size_t>(pivots.size())});
}

PlateSolver::~PlateSolver() = default;

const PlateGrid& PlateSolver::grid() const { return *grid_; }

std::optional<PlateSolution> PlateSolver::solve(double pressure, const std::vector<PlateNodeLoad>& loads) const {
  const Equations& e = *equations_;
  if (!e.usable) return {};
  Eigen::VectorXd load = Eigen::VectorXd::Zero(e.stiffness.rows());
  for (std::size_t t = 0; t < grid_->elements.size(); ++t)
    for (const int node : grid_->mesh.triangles[t]) load[3 * node] += pressure * grid_->elements[t].area_m2() / 3.0;
  for (const PlateNodeLoad& each : loads) load[each.freedom] += each.value;
  Eigen::VectorXd free = load;
  for (Eigen::Index i = 0; i < free.size(); ++i)
    if (e.held[static_cast<std::size_t>(i)]) free[i] = 0.0;
  const Eigen::VectorXd freedoms = e.factored.solve(free);
  if (!freedoms.allFinite()) return {};
  const Eigen::VectorXd reactions = load - e.stiffness.selfadjointView<Eigen::Lower>() * freedoms;
  PlateSolution solution;
  solution.grid_ = grid_;
  solution.freedoms_.assign(freedoms.begin(), freedoms.end());
  solution.reactions_.assign(reactions.begin(), reactions.end());
  solution.find_corner_moments(corner_curvatures_);
  return solution;
}

std::optional<std::array<PlateShare, 3>> PlateSolver::shares(const PlatePoint& p) const {
  const auto place = grid_->find(p);
  if (!place) return {};
  const auto& corners = grid_->mesh.triangles[place->triangle];
  return std::array<PlateShare, 3>{PlateShare{corners[0], 1.0 - place->share_2 - place->share_3},
                                   PlateShare{corners[1], place->share_2}, PlateShare{corners[2], place->share_3}};
}

std::optional<PlateSolution> solve_plate(const PlateMesh& mesh, const PlateProblem& problem) {
  return PlateSolver(mesh, problem).solve(problem.pressure, problem.loads);
}

}  // namespace firstpick::demands
