// The corners of what equilibrium allows in a tree: beams and sheaves between hooks and piece.
//
//   for every body   sum over ropes of t_r F_r,b = weight of b,   sum of t_r M_r,b = 0,   t_r >= 0
//
// F_r,b and M_r,b: what a unit of tension in rope r does to body b, over all its spans. The rows are brought
// to as many independent ones as there are; if that is the number of ropes, statics alone decides. Otherwise
// a corner has as many ropes slack as there are ropes too many; every choice of them is tried (the theorem of
// linear programming of basic_distributions.cpp).
//
// Source: statics; theorem of linear programming. Range: the geometry of the given hanging pose.

#include "demands/tree_distributions.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/Dense>
#include <fmt/format.h>

#include "demands/hung_ropes.hpp"
#include "demands/imbalance.hpp"
#include "demands/leg_force.hpp"
#include "demands/rope_system.hpp"

namespace firstpick::demands {

namespace {

constexpr double independent_above = 1e-7;  // of the largest: rows of equilibrium
constexpr double carries_above = 1e-9;      // of the total load
constexpr double balanced_within = 1e-6;     // of the load, of load x size: dropped rows may hold as much
constexpr double most_choices = 20000.5;  // whole numbers: half of one for rounding

using Ropes = std::vector<std::vector<std::size_t>>;  // legs of each rope

// Equilibrium of all bodies, forces over the total load, arms over the size.
struct Equilibrium {
  Eigen::MatrixXd pulls;  // rows: 6 of each body; columns: ropes
  Eigen::VectorXd loads;
};

Equilibrium equilibrium(const HungPiece& piece, const Hanging& hanging, const Ropes& ropes) {
  const LoadCentre centre = load_centre(piece);
  const auto rows = static_cast<Eigen::Index>(6 * (1 + piece.carriers.size()));
  Equilibrium of{Eigen::MatrixXd::Zero(rows, static_cast<Eigen::Index>(ropes.size())),
                 Eigen::VectorXd::Zero(rows)};
  const auto arm = [&](const Position& at) {
    const Position from = at - centre.at;
    return Point{from.x / centre.size, from.y / centre.size, from.z / centre.size};
  };
  const auto add = [](auto column, std::size_t body, const Point& at, const Point& pull) {
    const Point moment = cross(at, pull);
    const auto row = static_cast<Eigen::Index>(6 * body);
    column.template segment<3>(row) += Eigen::Vector3d(pull.x, pull.y, pull.z);
    column.template segment<3>(row + 3) += Eigen::Vector3d(moment.x, moment.y, moment.z);
  };
  for (std::size_t r = 0; r < ropes.size(); ++r)
    for (const std::size_t i : ropes[r]) {
      const HungLeg& leg = piece.legs[i];
      const auto& [from, to] = hanging.spans[i];
      const Direction u = towards_hook(to, from);
      const auto column = of.pulls.col(static_cast<Eigen::Index>(r));
      add(column, leg.to_carrier ? 1 + *leg.to_carrier : 0, arm(to), u);
      if (leg.from_carrier) add(column, 1 + *leg.from_carrier, arm(from), -1.0 * u);
    }
  for (const loads::AppliedLoad& load : piece.loads)
    add(of.loads.col(0), 0, arm(load.at), (load.force / centre.total).value() * hanging.up);
  for (std::size_t k = 0; k < piece.carriers.size(); ++k) {
    const Carrier& carrier = piece.carriers[k];
    const CarrierPose& pose = hanging.carriers[k];
    const Position at = pose.origin + pose.axes[0] * carrier.centre.x + pose.axes[1] * carrier.centre.y +
                        pose.axes[2] * carrier.centre.z;
    add(of.loads.col(0), 1 + k, arm(at), (carrier.weight / centre.total).value() * hanging.up);
  }
  return of;
}

double choices(std::size_t of, std::size_t slack) {
  double count = 1.0;
  for (std::size_t i = 0; i < slack; ++i)
    count *= static_cast<double>(of - i) / static_cast<double>(i + 1);
  return count;
}

std::string name_of(const std::vector<bool>& carries, const Ropes& ropes, const HungPiece& piece) {
  if (std::ranges::find(carries, false) == carries.end()) return "all legs";
  std::string slack;
  for (std::size_t r = 0; r < carries.size(); ++r)
    for (const std::size_t leg : ropes[r])
      if (!carries[r]) slack += (slack.empty() ? "" : ", ") + piece.legs[leg].to;
  return "slack to " + slack;
}

}  // namespace

Outcome<std::vector<Sharing>> tree_distributions(const HungPiece& piece, const Hanging& hanging) {
  if (hanging.legs.size() != piece.legs.size() || hanging.spans.size() != piece.legs.size() ||
      hanging.carriers.size() != piece.carriers.size())
    return NotAssessed{"the hanging pose is of another piece", "compute the pose of this rigging first"};
  const Ropes ropes = ropes_of(piece);
  const Equilibrium all = equilibrium(piece, hanging, ropes);
  const std::size_t count = ropes.size();
  if (count == 0 || !all.pulls.allFinite() || !all.loads.allFinite())
    return NotAssessed{"the hanging pose is not known in numbers", "check the legs for extreme numbers"};

  Eigen::ColPivHouseholderQR<Eigen::MatrixXd> rows(all.pulls);
  rows.setThreshold(independent_above);
  const auto rank = static_cast<std::size_t>(rows.rank());
  const auto rank_rows = static_cast<Eigen::Index>(rank);
  const Eigen::MatrixXd q = rows.householderQ();
  const Eigen::MatrixXd pulls = q.leftCols(rank_rows).transpose() * all.pulls;
  const Eigen::VectorXd loads = q.leftCols(rank_rows).transpose() * all.loads;

  const std::size_t slack = count - rank;
  if (choices(count, slack) > most_choices)
    return NotAssessed{"the rigging leaves more ways to share the load open than can be listed",
                       "fewer legs, or sheaves that equalise them"};

  std::vector<Sharing> found;
  std::vector<bool> is_slack(count, false);
  std::fill(is_slack.end() - static_cast<std::ptrdiff_t>(slack), is_slack.end(), true);
  std::vector<std::vector<bool>> known;
  do {
    Eigen::MatrixXd chosen(rank_rows, rank_rows);
    std::vector<std::size_t> taut;
    for (std::size_t r = 0; r < count; ++r)
      if (!is_slack[r]) {
        chosen.col(static_cast<Eigen::Index>(taut.size())) = pulls.col(static_cast<Eigen::Index>(r));
        taut.push_back(r);
      }
    Eigen::ColPivHouseholderQR<Eigen::MatrixXd> solver(chosen);
    solver.setThreshold(independent_above);
    if (!solver.isInvertible()) continue;
    const Eigen::VectorXd shares = solver.solve(loads);
    if (!(shares.minCoeff() >= -carries_above)) continue;
    // All equations, those too that the others make: a pose out of balance is carried by no set.
    Eigen::VectorXd left = all.loads;
    for (std::size_t i = 0; i < taut.size(); ++i)
      left -= shares(static_cast<Eigen::Index>(i)) * all.pulls.col(static_cast<Eigen::Index>(taut[i]));
    if (!(left.norm() <= balanced_within)) continue;

    std::vector<bool> carries(count, false);
    for (std::size_t i = 0; i < taut.size(); ++i)
      carries[taut[i]] = shares(static_cast<Eigen::Index>(i)) > carries_above;
    if (std::ranges::find(known, carries) != known.end()) continue;
    known.push_back(carries);

    Sharing sharing{name_of(carries, ropes, piece), hanging.legs};
    for (LegForce& leg : sharing.legs) leg = {Force{}, leg.angle_from_horizontal, {}};
    const Force total = load_centre(piece).total;
    for (std::size_t i = 0; i < taut.size(); ++i)
      for (const std::size_t leg : ropes[taut[i]])
        if (carries[taut[i]])
          sharing.legs[leg] = leg_force(hanging.spans[leg][1], shares(static_cast<Eigen::Index>(i)) * total,
                                        hanging.spans[leg][0], hanging.up);
    found.push_back(std::move(sharing));
  } while (std::next_permutation(is_slack.begin(), is_slack.end()));
  if (found.empty()) return NotAssessed{"no set of legs carries the load in this pose", "check the rigging"};
  return found;
}

}  // namespace firstpick::demands
