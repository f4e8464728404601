#include "demands/imbalance.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace firstpick::demands {

namespace {

constexpr double at_rest_within = 1e-9;  // of the total load, of load x size, of the size

// Length that the rope over these legs is off, over its size; a NaN is kept.
template <class Indices>
double length_error(const HungPiece& piece, const Hanging& hanging, const Indices& legs, Length size) {
  Length length{}, unstretched{}, stretch{};
  bool taut = false;
  for (const std::size_t i : legs) {
    const HungLeg& leg = piece.legs[i];
    length += norm(hanging.spans[i][0] - hanging.spans[i][1]);
    unstretched += leg.length;
    stretch += leg.length * (hanging.legs[i].tension / leg.axial_stiffness);
    taut = taut || hanging.legs[i].tension > Force{};
  }
  const double error = (length - unstretched - stretch) / size;
  return taut ? std::abs(error) : error < 0.0 ? 0.0 : error;
}

// What is not a number is the worst.
double worse(double a, double b) { return std::isnan(a) || b <= a ? a : b; }

// All that acts on one body.
struct Sum {
  Position centre;  // its load centre, in piece axes
  ForceVector force{};
  Vector<Moment> moment{};

  void add(const Position& at, const ForceVector& pull) {
    force = force + pull;
    moment = moment + cross(at - centre, pull);
  }
};

// The piece, then the carriers.
std::vector<Sum> sums_of(const HungPiece& piece, const Hanging& hanging, const LoadCentre& centre) {
  std::vector<Sum> sums{{.centre = centre.at}};
  for (std::size_t k = 0; k < piece.carriers.size(); ++k) {
    const Carrier& carrier = piece.carriers[k];
    const CarrierPose& pose = hanging.carriers[k];
    const Position at = pose.origin + pose.axes[0] * carrier.centre.x + pose.axes[1] * carrier.centre.y +
                        pose.axes[2] * carrier.centre.z;
    sums.push_back({.centre = at});
    sums.back().add(at, hanging.up * -carrier.weight);
  }
  for (const loads::AppliedLoad& load : piece.loads) sums[0].add(load.at, hanging.up * -load.force);
  for (std::size_t i = 0; i < piece.legs.size(); ++i) {
    const HungLeg& leg = piece.legs[i];
    const ForceVector& pull = hanging.legs[i].on_insert;
    sums[leg.to_carrier ? 1 + *leg.to_carrier : 0].add(hanging.spans[i][1], pull);
    if (leg.from_carrier) sums[1 + *leg.from_carrier].add(hanging.spans[i][0], -1.0 * pull);
  }
  return sums;
}

}  // namespace

LoadCentre load_centre(const HungPiece& piece) {
  LoadCentre centre;
  for (const loads::AppliedLoad& load : piece.loads) centre.total += load.force;
  for (const loads::AppliedLoad& load : piece.loads) {
    const double share = load.force / centre.total;
    centre.at = centre.at + share * load.at;
  }
  for (const HungLeg& leg : piece.legs) {
    const Position& middle = leg.to_carrier ? piece.carriers[*leg.to_carrier].centre : centre.at;
    centre.size = std::max({centre.size, leg.length, norm(leg.at - middle)});
  }
  return centre;
}

bool is_balanced(const Imbalance& left) {
  return left.force <= at_rest_within && left.moment <= at_rest_within && left.length <= at_rest_within &&
         !left.a_leg_pushes;
}

Imbalance imbalance(const HungPiece& piece, const Hanging& hanging) {
  const LoadCentre centre = load_centre(piece);
  Imbalance found;
  for (const LegForce& leg : hanging.legs) found.a_leg_pushes = found.a_leg_pushes || !(leg.tension >= Force{});
  for (const Sum& sum : sums_of(piece, hanging, centre)) {
    found.force = worse(found.force, norm(sum.force) / centre.total);
    found.moment = worse(found.moment, norm(sum.moment) / (centre.total * centre.size));
  }

  std::vector<bool> in_group(piece.legs.size(), false);
  for (const auto& group : piece.equalised) {
    for (const std::size_t i : group) in_group[i] = true;
    found.length = worse(found.length, length_error(piece, hanging, group, centre.size));
  }
  for (std::size_t i = 0; i < piece.legs.size(); ++i)
    if (!in_group[i])
      found.length = worse(found.length, length_error(piece, hanging, std::array{i}, centre.size));
  return found;
}

}  // namespace firstpick::demands
