#include "demands/imbalance.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace firstpick::demands {

namespace {

// Length that the rope over these legs is off, over its size; a NaN is kept.
template <class Indices>
double length_error(const HungPiece& piece, const Hanging& hanging, const Indices& legs, Length size) {
  Length length{}, unstretched{}, stretch{};
  bool taut = false;
  for (const std::size_t i : legs) {
    const HungLeg& leg = piece.legs[i];
    length += norm(hanging.hook - leg.at);
    unstretched += leg.length;
    stretch += leg.length * (hanging.legs[i].tension / leg.axial_stiffness);
    taut = taut || hanging.legs[i].tension > Force{};
  }
  const double error = (length - unstretched - stretch) / size;
  return taut ? std::abs(error) : error < 0.0 ? 0.0 : error;
}

// What is not a number is the worst.
double worse(double a, double b) { return std::isnan(a) || b <= a ? a : b; }

}  // namespace

LoadCentre load_centre(const HungPiece& piece) {
  LoadCentre centre;
  for (const loads::AppliedLoad& load : piece.loads) centre.total += load.force;
  for (const loads::AppliedLoad& load : piece.loads) {
    const double share = load.force / centre.total;
    centre.at = centre.at + share * load.at;
  }
  for (const HungLeg& leg : piece.legs)
    centre.size = std::max({centre.size, leg.length, norm(leg.at - centre.at)});
  return centre;
}

Imbalance imbalance(const HungPiece& piece, const Hanging& hanging) {
  const LoadCentre centre = load_centre(piece);
  Imbalance found;
  ForceVector force;
  Vector<Moment> moment;
  for (std::size_t i = 0; i < piece.legs.size(); ++i) {
    const ForceVector& pull = hanging.legs[i].on_insert;
    force = force + pull;
    moment = moment + cross(piece.legs[i].at - centre.at, pull);
    found.a_leg_pushes = found.a_leg_pushes || !(hanging.legs[i].tension >= Force{});
  }
  for (const loads::AppliedLoad& load : piece.loads) {
    const ForceVector weight = hanging.up * load.force;
    force = force - weight;
    moment = moment - cross(load.at - centre.at, weight);
  }
  found.force = norm(force) / centre.total;
  found.moment = norm(moment) / (centre.total * centre.size);

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
