// Beams as lines for tests: uniform ones on supports, and any number of stepped ones from a fixed seed.
#pragma once

#include <random>
#include <vector>

#include "demands/beam_line.hpp"
#include "support/assessed.hpp"

namespace firstpick::tests {

using demands::BeamForce;
using demands::BeamLine;
using demands::BeamSection;
using demands::BeamState;
using demands::BeamStep;

// A rectangle, its lowest fibre at height zero.
inline BeamStep rectangle_step(double from_m, double to_m, double width_m, double depth_m, double load_kN_per_m) {
  BeamStep step;
  step.from = from_m * m;
  step.to = to_m * m;
  step.area = width_m * depth_m * m2;
  step.second_moment = SecondMoment::from_value(width_m * depth_m * depth_m * depth_m / 12.0);
  step.bottom = 0.0 * m;
  step.centroid = 0.5 * depth_m * m;
  step.top = depth_m * m;
  step.load = load_kN_per_m * kN / m;
  return step;
}

// Length 1 m, 1 kN/m: moments are then multiples of w L^2.
inline BeamLine unit_beam() { return {{rectangle_step(0.0, 1.0, 0.1, 0.1, 1.0)}, {}}; }

inline BeamForce upward(Length at, Force force) { return {at, {}, {}, force}; }

inline BeamLine on_supports(BeamLine beam, const std::vector<double>& at_m) {
  std::vector<Length> supports;
  for (const double at : at_m) supports.push_back(at * m);
  const auto reactions = assessed(demands::support_reactions(beam, supports));
  for (std::size_t i = 0; i < supports.size(); ++i) beam.forces.push_back(upward(supports[i], reactions[i]));
  return beam;
}

inline double reaction_kN(const BeamLine& beam, std::size_t force) { return in(kN, beam.forces.at(force).up); }

inline BeamState state_of(const BeamLine& beam) { return assessed(demands::beam_state(beam)); }

inline double moment_kNm(const BeamSection& section) { return section.moment.value() / 1000.0; }

// At a place where a section stands; behind a force or step where there are two.
inline BeamSection section_behind(const BeamState& state, double at_m) {
  const BeamSection* found = nullptr;
  for (const BeamSection& section : state.sections)
    if (std::abs(in(m, section.at) - at_m) < 1e-9) found = &section;
  if (!found) FAIL("no section stands at " << at_m << " m");
  return *found;
}
inline BeamSection section_before(const BeamState& state, double at_m) {
  for (const BeamSection& section : state.sections)
    if (std::abs(in(m, section.at) - at_m) < 1e-9) return section;
  FAIL("no section stands at " << at_m << " m");
  return {};
}

class BeamDice {
 public:
  explicit BeamDice(unsigned seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11) * 0x1p-53;
  }
  // Steps of any section, their centroids in any height.
  BeamLine stepped() {
    BeamLine beam;
    double at_m = 0.0;
    const int steps = 1 + static_cast<int>(between(0.0, 5.0));
    for (int i = 0; i < steps; ++i) {
      const double to_m = at_m + between(0.3, 3.0), raised_m = between(-0.2, 0.2);
      beam.steps.push_back(
          rectangle_step(at_m, to_m, between(0.2, 1.0), between(0.1, 0.6), between(1.0, 9.0)));
      for (Length* height : {&beam.steps.back().bottom, &beam.steps.back().centroid, &beam.steps.back().top})
        *height += raised_m * m;
      at_m = to_m;
    }
    return beam;
  }
  std::vector<double> supports(const BeamLine& beam, int count) {
    const double length_m = in(m, beam.steps.back().to);
    std::vector<double> at_m;
    for (int i = 0; i < count; ++i) at_m.push_back(length_m * (i + between(0.1, 0.9)) / count);
    return at_m;
  }

 private:
  std::mt19937_64 engine_;
};

}  // namespace firstpick::tests
