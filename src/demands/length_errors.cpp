// L0 (1 + tolerance) or L0 (1 - tolerance) for every rope, all combinations: the elastic answer to each.
//
// The legs of one rope are long or short together, as only their sum counts. Legs above beams and sheaves are
// uncertain like the others.
// Source: enumeration; the statics are those of hang().

#include "demands/length_errors.hpp"

#include <fmt/format.h>

#include "demands/hung_ropes.hpp"

namespace firstpick::demands {

Outcome<std::vector<Sharing>> length_errors(const HungPiece& piece, Ratio tolerance) {
  const double share = tolerance.value();
  if (!(share >= 0.0) || !(share < 1.0)) return NotAssessed{"the tolerance of the leg lengths is not a share", {}};
  const auto ropes = ropes_of(piece);
  if (ropes.size() > most_uncertain_legs)
    return NotAssessed{fmt::format("errors of length are computed for up to {} ropes; this rigging has {}",
                                   most_uncertain_legs, ropes.size()),
                       "leave out length_tolerance, and the rule set's sharing stands alone"};
  std::vector<Sharing> found;
  const unsigned all = (1U << ropes.size()) - 1U;
  for (unsigned is_short = 1; share > 0.0 && is_short < all; ++is_short) {
    HungPiece uneven = piece;
    std::string names;
    for (std::size_t r = 0; r < ropes.size(); ++r) {
      const bool shorter = (is_short >> r & 1U) != 0U;
      for (const std::size_t leg : ropes[r]) {
        uneven.legs[leg].length *= shorter ? 1.0 - share : 1.0 + share;
        if (shorter) names += (names.empty() ? "" : ", ") + piece.legs[leg].to;
      }
    }
    const auto hanging = hang(uneven);
    if (const auto* gap = std::get_if<NotAssessed>(&hanging))
      return NotAssessed{fmt::format("with the leg to {} short: {}", names, gap->why), gap->remedy};
    found.push_back({"short: " + names, std::get<Hanging>(hanging).legs});
  }
  return found;
}

}  // namespace firstpick::demands
