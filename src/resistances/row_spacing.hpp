// Spacing of a row of inserts along an edge.
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include "units/quantity.hpp"

namespace firstpick::resistances {

struct RowSpacing {
  Length between_outer;  // sum of the spacings of neighbours, each counted to `reach` at most
  Length largest;        // of neighbours
};

// `places` along the edge, one for each insert, at least one. Beyond `reach` two neighbours no longer share
// a body of concrete, and what lies between them is not part of either.
inline RowSpacing row_spacing(std::vector<Length> places, Length reach) {
  std::sort(places.begin(), places.end());
  RowSpacing spacing{Length{}, Length{}};
  for (std::size_t i = 1; i < places.size(); ++i) {
    const Length s = places[i] - places[i - 1];
    spacing.between_outer += std::min(s, reach);
    spacing.largest = std::max(spacing.largest, s);
  }
  return spacing;
}

}  // namespace firstpick::resistances
