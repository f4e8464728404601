// Sections of the piece: the solid cut by planes across one of its axes.
//
// Each section has axes through its centroid: `across` and `up`. Across x: y and z; across y: x and z; across z: x and y.
// Source of the formulas: integrals over the cut face by the geometry kernel; principal axes
//
//   I_1,2 = (I_a + I_u)/2 +- sqrt(((I_a - I_u)/2)^2 + I_au^2)
//   shear stress = V Q / (I b)      b: widths of the concrete, added up over the width; from 80 levels
#pragma once

#include <memory>
#include <vector>

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "units/beam_quantities.hpp"
#include "units/vector.hpp"

namespace firstpick::piece {

struct Section {
  Length at{};
  Area area{};
  Position centroid;
  SecondMoment about_across{};  // integral of up^2: bending in the upright plane
  SecondMoment about_up{};      // integral of across^2
  SecondMoment product{};       // integral of across x up
  SecondMoment largest{}, smallest{};  // about the principal axes
  Angle principal_turn{};       // from `across` to the axis of the largest, towards `up`
  Length lowest{}, highest{};   // coordinates of the extreme fibres along `up`
  Length nearest{}, farthest{}; // along `across`
  int parts = 0;                // areas that do not touch each other here
  Area shear_area{};            // I b / Q at its least: an upright shear force over it is the largest shear stress
};

// The solid of a plan, ready to be cut. Made of the plan's solids again, because the geometry kernel does not show in Body;
// only a piece whose bending is checked pays for it.
class SolidToCut {
 public:
  struct Kernel;
  static Outcome<SolidToCut> of(const plan::Plan& plan);
  const Kernel& kernel() const { return *kernel_; }

 private:
  std::shared_ptr<const Kernel> kernel_;
};

// Coordinates along the axis where the section changes its shape: every corner of the solid, every place where a round
// edge or face turns back, and both ends; in order, each once.
Outcome<std::vector<Length>> section_stations(const SolidToCut& solid, plan::Axis axis);

// The solid cut there. Not assessed: the plane misses the solid, or the kernel gives no usable area.
Outcome<Section> section_at(const SolidToCut& solid, plan::Axis axis, Length at);

// A stretch of the piece between two cuts.
struct Stretch {
  Section start, middle, end;  // cut just inside the stretch, and half way
  Length from{}, to{};
  bool prismatic = false;      // the three are alike
};

// The whole piece from end to end. Between two stations one stretch where the piece is prismatic; else as many as
// `slices` of the whole length ask for.
Outcome<std::vector<Stretch>> stretches(const SolidToCut& solid, plan::Axis axis, int slices);

}  // namespace firstpick::piece
