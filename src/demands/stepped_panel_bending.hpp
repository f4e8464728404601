// A flat panel of several thicknesses, one of its faces flush: the tension of its faces while it hangs level,
// to a stated accuracy. Ribs, thickened edges, recesses.
//
// The plate of panel_bending.hpp, with the layer of each zone off a common reference plane
// (stepped_plate.hpp): a rib works with its slab, and pulls along it. Sides of triangles lie on the steps.
// Picks are forces at points, with their level parts at their own heights.
//
// Where stresses are read: as panel_bending.hpp reads moments, over discs of diameter `patch` and at picks
// over lines of length `strip`, each mean over what lies in one zone alone. The error that refinement may
// still add goes on top.
//
// Range    straight normals: zones about as wide as thick at least, no high ribs (checks/stepped_panel.hpp
//          decides). The corner of a step is not a notch here.
#pragma once

#include <vector>

#include "demands/panel_bending.hpp"

namespace firstpick::demands {

struct PanelZone {
  std::vector<plan::PlanarPoint> outer;
  std::vector<std::vector<plan::PlanarPoint>> holes;
  Length top{}, bottom{};  // heights over the reference plane
};

struct SteppedLoad {
  std::vector<Stress> pressure;    // down, of each zone
  std::vector<PanelForce> forces;  // `above_middle`: over the reference plane
};

struct SteppedPanel {
  std::vector<plan::PlanarPoint> outer;
  std::vector<std::vector<plan::PlanarPoint>> holes;
  std::vector<PanelZone> zones;  // that cover it without overlap, corner to corner
  Ratio poisson{};
  std::vector<SteppedLoad> loads;
  Length patch{}, strip{};
};

struct FaceTension {
  Stress tension{};  // never negative, with the error put on it
  plan::PlanarPoint at{};
};

struct SteppedBending {
  FaceTension bottom, top;
  double error = 0.0;
  int nodes = 0;
};

// One for each load.
// Not assessed: no load, pick or zone, numbers that are not usable, zones that do not cover the panel, forces
// that do not balance, an outline that cannot be divided, no accuracy of 2 % with the finest mesh.
Outcome<std::vector<SteppedBending>> stepped_panel_bending(const SteppedPanel& panel);

}  // namespace firstpick::demands
