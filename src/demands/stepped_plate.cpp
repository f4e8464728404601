#include "demands/stepped_plate.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

#include "demands/panel_equations.hpp"
#include "demands/panel_supports.hpp"
#include "demands/plate_six_corners.hpp"

namespace firstpick::demands {

namespace {

using SteppedMatrix = Eigen::SparseMatrix<double>;
using PlateStrains = Eigen::Matrix<double, 3, 9>;
using AlongStrains = Eigen::Matrix<double, 3, 12>;

AlongStrains strains_along(const SixStrains& rows) {
  return Eigen::Map<const Eigen::Matrix<double, 3, 12, Eigen::RowMajor>>(rows.front().data());
}
Eigen::Matrix3d law_of(const PlaneLaw& rows) {
  return Eigen::Map<const Eigen::Matrix<double, 3, 3, Eigen::RowMajor>>(rows.front().data());
}

constexpr double least_part_of_disc = 0.25;

// The mean of what lies in one zone, and of how much that is.
class ZoneMean {
 public:
  void add(const FaceStress& here) {
    for (std::size_t i = 0; i < 3; ++i) sum_[i] += here[i];
    ++in_zone_;
  }
  void add_outside() { ++others_; }
  std::optional<FaceStress> value(double least_part) const {
    if (in_zone_ == 0 || in_zone_ < least_part * (in_zone_ + others_)) return {};
    return FaceStress{sum_[0] / in_zone_, sum_[1] / in_zone_, sum_[2] / in_zone_};
  }

 private:
  FaceStress sum_{};
  int in_zone_ = 0, others_ = 0;
};

}  // namespace

struct SteppedSolution::Parts {
  SixCorneredMesh six;
  std::vector<std::size_t> zone;
  std::vector<PlateLayer> layers;

  int plate_freedoms() const { return 3 * static_cast<int>(six.grid.mesh.nodes.size()); }
  int freedom(std::size_t triangle,
              std::size_t local) const {  // nine of bending, then twelve along the plane
    return local < 9 ? six.grid.freedom(triangle, local)
                     : plate_freedoms() + six.freedom(triangle, local - 9);
  }
  PlateStrains bending(std::size_t triangle, double share_2, double share_3) const {
    const auto rows = six.grid.elements[triangle].curvatures(share_2, share_3);
    PlateStrains made;
    for (std::size_t i = 0; i < 3; ++i)
      for (std::size_t f = 0; f < 9; ++f)
        made(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(f)) = rows[i][f];
    return made;
  }
  // Strains at depth z below the reference plane, of all freedoms.
  Eigen::Matrix<double, 3, 21> at_depth(std::size_t triangle, double share_2, double share_3,
                                        double z_m) const {
    Eigen::Matrix<double, 3, 21> all;
    all.leftCols<9>() = z_m * bending(triangle, share_2, share_3);
    all.rightCols<12>() = strains_along(six.strains(triangle, share_2, share_3));
    return all;
  }
};

std::optional<std::size_t> SteppedSolution::zone(const PlatePoint& p) const {
  const auto place = parts_->six.grid.find(p);
  if (!place) return {};
  return parts_->zone[place->triangle];
}

std::optional<FaceStress> SteppedSolution::stress(const PlatePoint& p, PlateFace face) const {
  const auto place = parts_->six.grid.find(p);
  if (!place) return {};
  const PlateLayer& layer = parts_->layers[parts_->zone[place->triangle]];
  Eigen::Matrix<double, 21, 1> local;
  for (std::size_t i = 0; i < 21; ++i)
    local[static_cast<Eigen::Index>(i)] =
        freedoms_[static_cast<std::size_t>(parts_->freedom(place->triangle, i))];
  const Eigen::Vector3d found =
      law_of(parts_->six.law) * (parts_->at_depth(place->triangle, place->share_2, place->share_3,
                                          face == PlateFace::top ? layer.top_m : layer.bottom_m) *
                         local);
  return FaceStress{found[0], found[1], found[2]};
}

std::optional<FaceStress> SteppedSolution::patch_stress(const PlatePoint& p, double radius_m, std::size_t of,
                                                        PlateFace face) const {
  constexpr int rings = 3;  // of which each point stands for the same part of the disc
  ZoneMean mean;
  for (int ring = 0; ring < rings; ++ring) {
    const double r = radius_m * (ring + 0.5) / rings;
    const int points = 6 * (2 * ring + 1);
    for (int i = 0; i < points; ++i) {
      const double turn = 2.0 * M_PI * (i + 0.5) / points;
      const PlatePoint q{p.x_m + r * std::cos(turn), p.y_m + r * std::sin(turn)};
      const auto here = zone(q);
      if (!here) continue;
      if (*here == of)
        mean.add(*stress(q, face));
      else
        mean.add_outside();
    }
  }
  return mean.value(least_part_of_disc);
}

std::optional<FaceStress> SteppedSolution::strip_stress(const PlatePoint& p, bool along_x, double length_m,
                                                        std::size_t of, PlateFace face) const {
  constexpr int points = 400;
  ZoneMean mean;
  for (int i = 0; i < points; ++i) {
    const double off = length_m * ((i + 0.5) / points - 0.5);
    const PlatePoint q = along_x ? PlatePoint{p.x_m + off, p.y_m} : PlatePoint{p.x_m, p.y_m + off};
    if (zone(q) == of) mean.add(*stress(q, face));
  }
  return mean.value(0.0);
}

struct SteppedSolver::Equations {
  SteppedMatrix stiffness;
  std::vector<int> held;
  Eigen::SimplicialLDLT<SteppedMatrix> factored;
  bool usable = false;
};

SteppedSolver::SteppedSolver(const PlateMesh& mesh, double poisson, std::vector<std::size_t> zone,
                             std::vector<PlateLayer> layers)
    : parts_(std::make_shared<const SteppedSolution::Parts>(
          SteppedSolution::Parts{SixCorneredMesh(mesh, poisson), std::move(zone), std::move(layers)})),
      equations_(std::make_unique<Equations>()) {
  Equations& e = *equations_;
  const auto& grid = parts_->six.grid;
  std::vector<Eigen::Triplet<double>> entries;
  entries.reserve(231 * grid.elements.size());
  for (std::size_t t = 0; t < grid.elements.size(); ++t) {
    const PlateLayer& layer = parts_->layers[parts_->zone[t]];
    const double z1 = layer.top_m, z2 = layer.bottom_m;
    const double first = z2 - z1, second = 0.5 * (z2 * z2 - z1 * z1),
                 third = (z2 * z2 * z2 - z1 * z1 * z1) / 3.0;
    Eigen::Matrix<double, 21, 21> element = Eigen::Matrix<double, 21, 21>::Zero();
    for (const auto& [s, r] : {std::array{0.5, 0.0}, std::array{0.5, 0.5}, std::array{0.0, 0.5}}) {
      const PlateStrains b = parts_->bending(t, s, r);
      const AlongStrains a = strains_along(parts_->six.strains(t, s, r));
      const double part = grid.elements[t].area_m2() / 3.0;
      const Eigen::Matrix3d law = law_of(parts_->six.law);
      element.topLeftCorner<9, 9>() += part * third * b.transpose() * law * b;
      element.bottomRightCorner<12, 12>() += part * first * a.transpose() * law * a;
      element.bottomLeftCorner<12, 9>() += part * second * a.transpose() * law * b;
    }
    element.topRightCorner<9, 12>() = element.bottomLeftCorner<12, 9>().transpose();
    for (std::size_t i = 0; i < 21; ++i)
      for (std::size_t j = 0; j < 21; ++j)
        if (parts_->freedom(t, i) >= parts_->freedom(t, j))  // the lower triangle: the whole is symmetric
          entries.emplace_back(parts_->freedom(t, i), parts_->freedom(t, j),
                               element(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)));
  }
  const int size = parts_->plate_freedoms() + 2 * parts_->six.nodes;
  e.stiffness.resize(size, size);
  e.stiffness.setFromTriplets(entries.begin(), entries.end());

  e.held = holding_nodes(mesh);
  for (const int f : parts_->six.holds()) e.held.push_back(parts_->plate_freedoms() + f);
  const auto is_held = [&](Eigen::Index f) {
    return std::ranges::find(e.held, static_cast<int>(f)) != e.held.end();
  };
  SteppedMatrix reduced = e.stiffness;
  for (Eigen::Index column = 0; column < reduced.cols(); ++column) {
    const bool column_held = is_held(column);
    for (SteppedMatrix::InnerIterator entry(reduced, column); entry; ++entry)
      if (entry.row() != column && (column_held || is_held(entry.row()))) entry.valueRef() = 0.0;
  }
  e.factored.compute(reduced);
  const Eigen::VectorXd pivots = e.factored.vectorD();
  e.usable = gives_numbers(e.factored.info() == Eigen::Success,
                           {pivots.data(), static_cast<std::size_t>(pivots.size())});
}

SteppedSolver::~SteppedSolver() = default;

std::optional<SteppedSolution> SteppedSolver::solve(const std::vector<double>& pressure,
                                                    const std::vector<PlateNodeLoad>& loads,
                                                    const std::vector<MembraneNodeForce>& forces) const {
  const Equations& e = *equations_;
  if (!e.usable) return {};
  const auto& grid = parts_->six.grid;
  Eigen::VectorXd load = Eigen::VectorXd::Zero(e.stiffness.rows());
  for (std::size_t t = 0; t < grid.elements.size(); ++t)
    for (const int node : grid.mesh.triangles[t])
      load[3 * node] += pressure[parts_->zone[t]] * grid.elements[t].area_m2() / 3.0;
  for (const PlateNodeLoad& each : loads) load[each.freedom] += each.value;
  for (const MembraneNodeForce& force : forces) {
    const int first = parts_->plate_freedoms() + 2 * force.node;
    load[first] += force.x, load[first + 1] += force.y;
  }
  Eigen::VectorXd free = load;
  for (const int f : e.held) free[f] = 0.0;
  const Eigen::VectorXd freedoms = e.factored.solve(free);
  if (!freedoms.allFinite()) return {};
  const Eigen::VectorXd out = e.stiffness.selfadjointView<Eigen::Lower>() * freedoms - load;
  SteppedSolution solution;
  solution.parts_ = parts_;
  solution.freedoms_.assign(freedoms.begin(), freedoms.end());
  for (const int f : e.held) solution.held_ = std::max(solution.held_, std::abs(out[f]));
  return solution;
}

}  // namespace firstpick::demands
