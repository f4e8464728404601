// What acts on a panel in all, and its first moments about zero: whether it balances.
#pragma once

#include "demands/panel_bending.hpp"
#include "demands/panel_flat.hpp"

namespace firstpick::demands {

// Shares of the load, and of load x size, within which the forces on a panel must balance.
constexpr double panel_loads_within = 1e-4, panel_turning_within = 2e-3;

// Newton and metre; the area's by its rings.
struct PanelSums {
  double down = 0.0, about_x = 0.0, about_y = 0.0, size = 0.0, level = 0.0;
  double along_x = 0.0, along_y = 0.0;  // with the pull of the weight
};

// `along_counts`: forces along the panel are part of its size.
PanelSums panel_sums(const PanelLoad& load, const FlatPanel& flat, bool along_counts);

}  // namespace firstpick::demands
