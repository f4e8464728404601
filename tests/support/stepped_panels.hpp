// A panel of two thicknesses, for tests that give it their own loads.
#pragma once

#include "demands/stepped_panel_bending.hpp"

namespace firstpick::tests {

// 2 m x 1 m, its left half 0.1 m thick and its right half 0.2 m, flush above; no loads yet.
inline demands::SteppedPanel panel_of_two_halves() {
  const auto box = [](double x0_m, double x1_m) {
    return std::vector<plan::PlanarPoint>{{x0_m * m, 0.0 * m}, {x1_m * m, 0.0 * m}, {x1_m * m, 1.0 * m}, {x0_m * m, 1.0 * m}};
  };
  return {.outer = box(0.0, 2.0),
          .holes = {},
          .zones = {{box(0.0, 1.0), {}, 0.0 * m, -0.1 * m}, {box(1.0, 2.0), {}, 0.0 * m, -0.2 * m}},
          .poisson = Ratio::from_value(0.2),
          .loads = {},
          .patch = 0.2 * m,
          .strip = 1.5 * m};
}

}  // namespace firstpick::tests
