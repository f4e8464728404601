#include "demands/plate_membrane.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

#include "demands/node_ordering.hpp"
#include "demands/panel_equations.hpp"
#include "demands/plate_six_corners.hpp"

namespace firstpick::demands {

namespace {

using Matrix = Eigen::SparseMatrix<double>;

using MembraneStrains = Eigen::Matrix<double, 3, 12>;  // of each freedom: strain x, y, shear

MembraneStrains membrane_strains(const SixStrains& rows) {
  return Eigen::Map<const Eigen::Matrix<double, 3, 12, Eigen::RowMajor>>(rows.front().data());
}
Eigen::Matrix3d membrane_law(const PlaneLaw& rows) {
  return Eigen::Map<const Eigen::Matrix<double, 3, 3, Eigen::RowMajor>>(rows.front().data());
}

}  // namespace

struct MembraneSolution::Mesh : SixCorneredMesh {
  using SixCorneredMesh::SixCorneredMesh;
};

// Linear in each triangle: three places tell them all.
void MembraneSolution::find_corner_forces() {
  corner_forces_.resize(mesh_->triangles.size());
  for (std::size_t t = 0; t < mesh_->triangles.size(); ++t) {
    Eigen::Matrix<double, 12, 1> local;
    for (std::size_t i = 0; i < 12; ++i)
      local[static_cast<Eigen::Index>(i)] = freedoms_[static_cast<std::size_t>(mesh_->freedom(t, i))];
    const auto at = [&](double share_2, double share_3) {
      const Eigen::Vector3d found =
          membrane_law(mesh_->law) * (membrane_strains(mesh_->strains(t, share_2, share_3)) * local);
      return MembraneForces{found[0], found[1], found[2]};
    };
    corner_forces_[t] = {at(0.0, 0.0), at(1.0, 0.0), at(0.0, 1.0)};
  }
}

std::optional<MembraneForces> MembraneSolution::mean(const PlateMean& over) const { return over.of(corner_forces_); }

std::optional<MembraneForces> MembraneSolution::patch_forces(const PlatePoint& p, double radius) const {
  return mean(mesh_->grid.disc_mean(p, radius));
}

std::array<double, 2> MembraneSolution::displacement(int node) const {
  const auto first = static_cast<std::size_t>(2 * node);
  return {freedoms_.at(first), freedoms_.at(first + 1)};
}

struct MembraneSolver::Equations {
  struct ByNode {  // of Eigen's factors
    using PermutationType = Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int>;
    void operator()(const Matrix& whole, PermutationType& places) const {
      const auto order =
          node_order(static_cast<int>(whole.cols()), whole.outerIndexPtr(), whole.innerIndexPtr(), 2);
      places.resize(static_cast<Eigen::Index>(order.size()));
      std::copy(order.begin(), order.end(), places.indices().data());
    }
  };

  Matrix stiffness;
  std::array<int, 3> held{};
  Eigen::SimplicialLDLT<Matrix, Eigen::Lower, ByNode> factored;
  bool usable = false;
};

MembraneSolver::MembraneSolver(const PlateMesh& mesh, double poisson)
    : mesh_(std::make_shared<const MembraneSolution::Mesh>(mesh, poisson)), equations_(std::make_unique<Equations>()) {
  Equations& e = *equations_;
  std::vector<Eigen::Triplet<double>> entries;
  entries.reserve(144 * mesh_->triangles.size());
  for (std::size_t t = 0; t < mesh_->triangles.size(); ++t) {
    Eigen::Matrix<double, 12, 12> element = Eigen::Matrix<double, 12, 12>::Zero();
    for (const auto& [s, r] : {std::array{0.5, 0.0}, std::array{0.5, 0.5}, std::array{0.0, 0.5}}) {
      const MembraneStrains b = membrane_strains(mesh_->strains(t, s, r));
      element += mesh_->grid.elements[t].area_m2() / 3.0 * b.transpose() * membrane_law(mesh_->law) * b;
    }
    for (std::size_t i = 0; i < 12; ++i)
      for (std::size_t j = 0; j < 12; ++j)
        entries.emplace_back(mesh_->freedom(t, i), mesh_->freedom(t, j),
                             element(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)));
  }
  e.stiffness.resize(2 * mesh_->nodes, 2 * mesh_->nodes);
  e.stiffness.setFromTriplets(entries.begin(), entries.end());

  e.held = mesh_->holds();
  const auto is_held = [&](Eigen::Index f) { return f == e.held[0] || f == e.held[1] || f == e.held[2]; };
  Matrix reduced = e.stiffness;
  for (Eigen::Index column = 0; column < reduced.cols(); ++column)
    for (Matrix::InnerIterator entry(reduced, column); entry; ++entry)
      if (entry.row() != column && (is_held(column) || is_held(entry.row()))) entry.valueRef() = 0.0;
  e.factored.compute(reduced);
  const Eigen::VectorXd pivots = e.factored.vectorD();
  e.usable = gives_numbers(e.factored.info() == Eigen::Success,
                           {pivots.data(), static_cast<std::size_t>(pivots.size())});
}

MembraneSolver::~MembraneSolver() = default;

std::optional<MembraneSolution> MembraneSolver::solve(double body_x, double body_y,
                                                      const std::vector<MembraneNodeForce>& forces) const {
  const Equations& e = *equations_;
  if (!e.usable) return {};
  Eigen::VectorXd load = Eigen::VectorXd::Zero(e.stiffness.rows());
  for (std::size_t t = 0; t < mesh_->triangles.size(); ++t)
    for (std::size_t side = 3; side < 6; ++side) {  // an even load comes to the middles of the sides alone
      const int first = 2 * mesh_->triangles[t][side];
      const double third = mesh_->grid.elements[t].area_m2() / 3.0;
      load[first] += third * body_x, load[first + 1] += third * body_y;
    }
  for (const MembraneNodeForce& force : forces) load[2 * force.node] += force.x, load[2 * force.node + 1] += force.y;
  Eigen::VectorXd free = load;
  for (const int f : e.held) free[f] = 0.0;
  const Eigen::VectorXd freedoms = e.factored.solve(free);
  if (!freedoms.allFinite()) return {};
  const Eigen::VectorXd out = e.stiffness * freedoms - load;
  MembraneSolution solution;
  solution.mesh_ = mesh_;
  solution.freedoms_.assign(freedoms.begin(), freedoms.end());
  for (const int f : e.held) solution.held_ = std::max(solution.held_, std::abs(out[f]));
  solution.find_corner_forces();
  return solution;
}

const PlateGrid& MembraneSolver::grid() const { return mesh_->grid; }

}  // namespace firstpick::demands
