// Where the moments of a bent panel, and the forces along it, are read: over discs away from the picks, over strips at them.
// The places are the same on every mesh; what of a mesh they lie on is found once and serves every load.
#pragma once

#include <array>
#include <vector>

#include "demands/panel_bending.hpp"
#include "demands/panel_flat.hpp"
#include "demands/plate_grid.hpp"
#include "demands/plate_membrane.hpp"
#include "demands/plate_solve.hpp"

namespace firstpick::demands {

struct PanelMost {
  double value = 0.0;  // N m per m
  PlatePoint at;
  void look(double moment, const PlatePoint& p);  // keeps the larger; what is not a number is larger than any
};

struct PanelFound {
  PanelMost bottom, top;
};

// Where moments or forces of a mesh are read: for every load the same means.
struct PanelReadings {
  std::vector<PlateMean> discs;  // about the places of reading
  // Across x, then y, on both sides of each focus: the moment of the thrust jumps at a pick. Empty where forces are read.
  static constexpr std::array<double, 4> beside{-1.0, -0.25, 0.25, 1.0};  // of the radius
  std::vector<std::array<std::array<PlateMean, 4>, 2>> strips;
};

PanelReadings moment_readings(const Panel& panel, const FlatPanel& flat, const PlateGrid& grid);
PanelReadings force_readings(const Panel& panel, const FlatPanel& flat,
                             const PlateGrid& grid);  // discs alone

// Largest principal moments of both signs.
PanelFound read_moments(const Panel& panel, const PanelLoad& load, const FlatPanel& flat,
                        const PanelReadings& readings, const PlateSolution& solution);

// Largest principal force along the panel, never negative, N per m.
PanelMost read_membrane(const Panel& panel, const PanelLoad& load, const FlatPanel& flat,
                        const PanelReadings& readings, const MembraneSolution& solution);

}  // namespace firstpick::demands
