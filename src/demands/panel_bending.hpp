// A flat panel of one thickness while it hangs, level or turned: the moments that may crack it, to a stated accuracy.
//
// Thin plate of triangles (plate_element.hpp) on its true outline with openings. Each pick carries the force its leg gives,
// and the moment of that force's level part about mid-depth. The mesh is refined until the moments stand still; nobody
// sets it.
//
// Where moments are read: under a point force and at an inward corner the moment of a thin plate has no limit, so moments
// are means over a stated size. Farther than `patch` from a
// pick over a disc of diameter `patch`, what of it lies in the panel; at picks, an eighth and half of a patch to each side of them, over lines of length `strip` through the pick, across each axis of the panel, the rule of the handbook line method.
// Tension at the top (hogging) within half a strip of a pick is that of the strips.
//
// Turned (`in_plane`), the forces along the panel are computed as well, on the same triangles (plate_membrane.hpp). Their
// largest mean tension n over a disc, farther than `patch` from a pick, goes on top of both moments as n t/6: the moment that
// brings the same tension to a face. An edge on the ground carries its reaction spread linearly along it (panel_supports.hpp).
// Of more than `most_refined` such loads only the worst on the first mesh are refined; the others are carried on from there,
// raised as much as the worst of these.
//
// Source   elements and equations: plate_*.hpp; the strip: "cracking.pick_strip" of the rule set.
// Range    one thickness; pressure over the whole panel. Level, the axial compression by the thrust of inclined legs, which
//          would lower the tension, is left out.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "units/beam_quantities.hpp"
#include "units/vector.hpp"

namespace firstpick::demands {

struct PanelForce {           // at a place of the panel
  plan::PlanarPoint at;
  Force up{};
  Force along_x{}, along_y{};
  Length above_middle{};      // where the level part acts, over mid-depth
  bool is_pick = false;       // else a part that hangs on the panel, or a slack leg
};

struct PanelLoad {            // one way in which the panel is loaded
  Stress pressure{};          // down, over the whole panel
  std::vector<PanelForce> forces;
  std::optional<PanelForce> edge{};       // resultant of what Panel::edge gives
  Stress pull_along_x{}, pull_along_y{};  // of the weight of a turned panel: along it, force per area
};

struct Panel {
  std::vector<plan::PlanarPoint> outer;
  std::vector<std::vector<plan::PlanarPoint>> holes;
  Ratio poisson{};
  std::vector<PanelLoad> loads;
  Length patch{}, strip{};
  bool in_plane = false;                                  // turned: forces along the panel count
  Length thickness{};                                     // of a turned panel
  std::optional<std::array<plan::PlanarPoint, 2>> edge{};  // on the ground, from here to there
  std::vector<plan::PlanarPoint>
      meshed_at{};  // where other loads of the panel act: meshed alike, one mesh serves all
};

struct PanelMoment {
  PlateMoment moment{};       // per width, never negative: tension at the named face; of a turned panel with n t/6
  plan::PlanarPoint at{};
};

struct PanelBending {
  PanelMoment bottom_tension, top_tension;  // under one load: the largest anywhere, with the error put on them
  double error = 0.0;                       // put on them: what further refinement may still add, of the larger one
  int nodes = 0;
};

// The accuracy asked for: the last refinement changes neither moment by more than this share of the larger one.
constexpr double panel_accuracy = 0.02;
constexpr std::size_t most_refined = 4;

// One for each load; all are computed on the same mesh.
// Not assessed: no load, no pick, numbers that are not usable, forces that do not balance (1e-4 of the load, 2e-3 of load x
// size, which the level parts of a slight tilt may reach), an outline that cannot be divided,
// an edge that would lift at one end, no such accuracy with the finest mesh.
Outcome<std::vector<PanelBending>> panel_bending(const Panel& panel);

}  // namespace firstpick::demands
