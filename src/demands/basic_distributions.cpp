// The corners of what equilibrium allows, all legs from one hook. Of trees: tree_distributions.cpp.
//
//   sum over ropes of t_r A_r = W up,   t_r >= 0
//
// A_r is the sum of the unit vectors insert -> hook over the legs of rope r.
// All legs meet at the hook and the load hangs plumb below it, so the moments about the hook balance by
// themselves and these three equations are all. The solutions form a convex polytope: an intersection of the
// linear equations with t >= 0, bounded because every A_r has an upward part (t_r <= W / A_r.up). A bounded
// polytope is the convex hull of its corners, and its corners are the solutions whose ropes with t_r > 0 have
// linearly independent A_r (at most three in space). The tension of a leg is linear over the polytope, so its
// largest value is at a corner. A corner is known by the ropes that carry in it; taking only sets in which
// every rope carries, each is found once.
//
// Source: statics; theorem of linear programming. Range: the ropes' directions of the given hanging pose.

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <span>
#include <utility>

#include <fmt/format.h>

#include "demands/hanging.hpp"
#include "demands/hung_ropes.hpp"
#include "demands/imbalance.hpp"
#include "demands/leg_force.hpp"
#include "demands/tree_distributions.hpp"

namespace firstpick::demands {

namespace {

constexpr double carries_above = 1e-9;  // of the total load; also what counts as another direction

using Column = Vector<double>;
using Set = std::span<const std::size_t>;  // ropes
using Shares = std::array<double, 3>;      // of the total load, in the order of the set

Shares solve_one(const Column& a, const Column& load) { return {dot(a, load) / dot(a, a)}; }

std::optional<Shares> solve_two(const Column& a, const Column& b, const Column& load) {
  const Column normal = cross(a, b);
  if (!(norm(normal) > carries_above * norm(a) * norm(b))) return {};
  const double square = dot(normal, normal);
  return Shares{dot(cross(load, b), normal) / square, dot(cross(a, load), normal) / square};
}

std::optional<Shares> solve_three(const Column& a, const Column& b, const Column& c, const Column& load) {
  const double volume = dot(a, cross(b, c));
  if (!(std::abs(volume) > carries_above * norm(a) * norm(b) * norm(c))) return {};
  return Shares{dot(load, cross(b, c)) / volume, dot(a, cross(load, c)) / volume,
                dot(a, cross(b, load)) / volume};
}

struct Ropes {
  std::vector<std::vector<std::size_t>> legs;  // of each rope
  std::vector<Column> columns;
};

std::string name_of(Set set, const Ropes& ropes, const std::vector<HungLeg>& legs) {
  if (set.size() == ropes.legs.size()) return "all legs";
  std::vector<std::size_t> carrying;
  for (const std::size_t rope : set)
    carrying.insert(carrying.end(), ropes.legs[rope].begin(), ropes.legs[rope].end());
  std::string name = carrying.size() == 1 ? "leg " : "legs ";
  for (std::size_t i = 0; i < carrying.size(); ++i) {
    if (i > 0) name += i + 1 == carrying.size() ? " and " : ", ";
    name += legs[carrying[i]].to;
  }
  return name + " only";
}

class Corners {
 public:
  Corners(const HungPiece& piece, const Hanging& hanging, Ropes ropes)
      : piece_(piece), hanging_(hanging), ropes_(std::move(ropes)), total_(load_centre(piece).total) {
    for (const Column& column : ropes_.columns) longest_ = std::max(longest_, norm(column));
  }

  void add(Set set, const std::optional<Shares>& shares) {
    if (!shares) return;
    Column left = hanging_.up;
    for (std::size_t i = 0; i < set.size(); ++i) {
      if (!((*shares)[i] > carries_above)) return;
      left = left - (*shares)[i] * ropes_.columns[set[i]];
    }
    if (!(norm(left) <= 2.0 * carries_above * longest_)) return;

    Sharing sharing{name_of(set, ropes_, piece_.legs), hanging_.legs};
    for (LegForce& leg : sharing.legs) leg = {Force{}, leg.angle_from_horizontal, {}};
    for (std::size_t i = 0; i < set.size(); ++i)
      for (const std::size_t leg : ropes_.legs[set[i]])
        sharing.legs[leg] = leg_force(piece_.legs[leg].at, (*shares)[i] * total_, hanging_.hook, hanging_.up);
    found_.push_back(std::move(sharing));
  }

  std::vector<Sharing> all() && {
    const std::vector<Column>& a = ropes_.columns;
    for (std::size_t i = 0; i < a.size(); ++i) {
      add(std::array{i}, solve_one(a[i], hanging_.up));
      for (std::size_t j = i + 1; j < a.size(); ++j) {
        add(std::array{i, j}, solve_two(a[i], a[j], hanging_.up));
        for (std::size_t k = j + 1; k < a.size(); ++k)
          add(std::array{i, j, k}, solve_three(a[i], a[j], a[k], hanging_.up));
      }
    }
    return std::move(found_);
  }

 private:
  const HungPiece& piece_;
  const Hanging& hanging_;
  Ropes ropes_;
  Force total_;
  double longest_ = 0.0;
  std::vector<Sharing> found_;
};

}  // namespace

Outcome<std::vector<Sharing>> basic_distributions(const HungPiece& piece, const Hanging& hanging) {
  if (is_tree(piece)) return tree_distributions(piece, hanging);
  if (hanging.legs.size() != piece.legs.size())
    return NotAssessed{"the hanging pose is of another piece", "compute the pose of this rigging first"};

  std::vector<Column> pull(piece.legs.size());
  for (std::size_t i = 0; i < pull.size(); ++i) {
    pull[i] = towards_hook(piece.legs[i].at, hanging.hook);
    if (!(dot(pull[i], hanging.up) > carries_above))
      return NotAssessed{
          fmt::format("the leg to {} does not pull upwards, so statics sets no limit to its tension",
                      piece.legs[i].to),
          "a longer leg"};
  }
  Ropes ropes{ropes_of(piece), {}};
  for (const auto& rope : ropes.legs) {
    Column column;
    for (const std::size_t leg : rope) column = column + pull[leg];
    ropes.columns.push_back(column);
  }

  std::vector<Sharing> found = Corners(piece, hanging, std::move(ropes)).all();
  if (found.empty()) return NotAssessed{"no set of legs carries the load in this pose", "check the rigging"};
  return found;
}

}  // namespace firstpick::demands
