// Reach: two legs meet at a hook only if they are together longer than the distance between their inserts,
//   L1 + L2 > |a1 - a2|   (triangle inequality); for an equalised rope over a sheave, its whole length.

#include "demands/hanging_refusal.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "demands/rope_equilibrium.hpp"

namespace firstpick::demands {

namespace {

constexpr double same_place_within = 1e-6;  // of the length of the legs

bool is_finite(const Position& p) {
  return std::isfinite(p.x.value()) && std::isfinite(p.y.value()) && std::isfinite(p.z.value());
}

std::optional<NotAssessed> refuse_legs(const std::vector<HungLeg>& legs) {
  if (legs.empty()) return NotAssessed{"the rigging has no legs", "list the legs of this rigging"};
  if (legs.size() > most_ropes)
    return NotAssessed{
        fmt::format("the rigging has {} legs, more than the {} that are computed", legs.size(), most_ropes),
        "split the rigging"};
  for (const HungLeg& leg : legs) {
    if (!is_finite(leg.at))
      return NotAssessed{fmt::format("the place of insert {} is not a finite number", leg.to),
                         "give its place"};
    if (!(leg.length > Length{}) || !isfinite(leg.length))
      return NotAssessed{fmt::format("the length of the leg to {} is not a finite length above zero", leg.to),
                         "give the length from hook bearing to insert bearing"};
    if (!(leg.axial_stiffness > Force{}))
      return NotAssessed{fmt::format("the axial stiffness of the leg to {} is not above zero", leg.to),
                         "give E A of one leg, or leave it to the rule set"};
  }
  return {};
}

std::optional<NotAssessed> refuse_carriers(const HungPiece& piece) {
  if (piece.carriers.size() > most_carriers)
    return NotAssessed{fmt::format("the rigging has {} beams and sheaves, more than the {} that are computed",
                                   piece.carriers.size(), most_carriers),
                       "split the rigging"};
  for (std::size_t k = 0; k < piece.carriers.size(); ++k) {
    const Carrier& carrier = piece.carriers[k];
    if (!is_finite(carrier.centre) || !isfinite(carrier.weight) || !(carrier.weight >= Force{}))
      return NotAssessed{fmt::format("weight and centre of gravity of {} are not known", carrier.id),
                         "give both"};
    const bool hangs = std::ranges::any_of(piece.legs, [&](const HungLeg& leg) { return leg.to_carrier == k; });
    const bool carries =
        std::ranges::any_of(piece.legs, [&](const HungLeg& leg) { return leg.from_carrier == k; });
    if (!hangs || !carries)
      return NotAssessed{fmt::format("{} {}", carrier.id, hangs ? "carries nothing" : "hangs on nothing"),
                         "a leg to it and a leg from it"};
  }
  for (const HungLeg& leg : piece.legs)
    if (std::max(leg.from_carrier.value_or(0), leg.to_carrier.value_or(0)) >= most_carriers ||
        (leg.from_carrier && *leg.from_carrier >= piece.carriers.size()) ||
        (leg.to_carrier && *leg.to_carrier >= piece.carriers.size()) ||
        (leg.from_carrier && leg.from_carrier == leg.to_carrier) || !is_finite(leg.from_at))
      return NotAssessed{fmt::format("the leg to {} does not end on two bodies of this rigging", leg.to),
                         "name where it hangs and what hangs on it"};
  return {};
}

std::optional<NotAssessed> refuse_loads(const HungPiece& piece) {
  Force total{};
  for (const loads::AppliedLoad& load : piece.loads) {
    if (!is_finite(load.at) || !isfinite(load.force) || !(load.force >= Force{}))
      return NotAssessed{"a load on the piece is not a finite force downwards at a known place",
                         "check density, attached weights and contact with the form"};
    total += load.force;
  }
  if (!(total > Force{}) || !isfinite(total))
    return NotAssessed{"the piece has no weight", "give its solids and the density of its concrete"};
  return {};
}

std::optional<NotAssessed> refuse_groups(const HungPiece& piece) {
  std::vector<bool> taken(piece.legs.size(), false);
  for (const auto& group : piece.equalised)
    for (const std::size_t leg : group) {
      if (leg >= taken.size() || taken[leg])
        return NotAssessed{"a leg is equalised that does not exist, or twice",
                           "name each leg in one group at most"};
      taken[leg] = true;
    }
  return {};
}

std::optional<NotAssessed> refuse_reach(const HungPiece& piece) {
  const auto from_the_hook_to_the_piece = [&](std::size_t i) {
    const HungLeg& leg = piece.legs[i];
    return !leg.from_carrier && !leg.to_carrier && norm(leg.from_at) == Length{};
  };
  std::vector<Length> reach;  // of a leg from the hook: its length, or that of the rope it is part of
  for (const HungLeg& leg : piece.legs) reach.push_back(leg.length);
  std::vector<std::size_t> rope(piece.legs.size());
  for (std::size_t i = 0; i < rope.size(); ++i) rope[i] = i;
  for (const auto& group : piece.equalised) {
    Length whole{};
    for (const std::size_t leg : group) whole += piece.legs[leg].length;
    for (const std::size_t leg : group) {
      reach[leg] = whole;
      rope[leg] = group.front();
    }
  }
  for (std::size_t i = 0; i < rope.size(); ++i)
    for (std::size_t j = i + 1; j < rope.size(); ++j) {
      if (!from_the_hook_to_the_piece(i) || !from_the_hook_to_the_piece(j)) continue;
      const HungLeg &one = piece.legs[i], &other = piece.legs[j];
      const Length together = rope[i] == rope[j] ? reach[i] : reach[i] + reach[j];
      const Length apart = norm(one.at - other.at);
      if (!(apart > same_place_within * together))
        return NotAssessed{fmt::format("inserts {} and {} are at the same place", one.to, other.to),
                           "give each leg an insert of its own"};
      if (!(together > apart))
        return NotAssessed{
            fmt::format("the legs to {} and {} together are not longer than the distance between "
                        "their inserts: they cannot meet at one hook",
                        one.to, other.to),
            "longer legs, or a spreader"};
    }
  return {};
}

}  // namespace

std::optional<NotAssessed> hanging_refusal(const HungPiece& piece) {
  if (auto refused = refuse_legs(piece.legs)) return refused;
  if (auto refused = refuse_loads(piece)) return refused;
  if (auto refused = refuse_carriers(piece)) return refused;
  if (auto refused = refuse_groups(piece)) return refused;
  const double upright = norm(piece.upright);
  if (!(upright > 0.0) || !std::isfinite(upright))
    return NotAssessed{"the upright direction of the piece is not known",
                       "give the direction that is up at this lift"};
  return refuse_reach(piece);
}

}  // namespace firstpick::demands
