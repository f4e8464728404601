#include "demands/beam_line.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "demands/beam_pieces.hpp"

namespace firstpick::demands {

namespace {

constexpr double balanced_within = 1e-6;  // of the loads, and of loads x length

BeamSection section_at(const BeamLine& beam, const BeamPiece& piece, Length into) {
  const BeamStep& step = beam.steps[piece.step];
  const Cut cut = piece.cut_at(into);
  BeamSection section{.at = piece.from + into, .step = piece.step, .axial = cut.axial, .shear = cut.shear,
                      .moment = cut.moment, .top_stress = {}, .bottom_stress = {}, .shear_stress = {}};
  if (step.prestress) {
    section.axial -= step.prestress->force;
    section.moment -= step.prestress->force * (step.centroid - step.prestress->height);
  }
  section.shear_stress = step.shear_area > Area{} ? Stress{abs(cut.shear) / step.shear_area}
                                                  : Stress::from_value(std::numeric_limits<double>::quiet_NaN());
  section.top_stress =
      section.axial / step.area - section.moment * (step.top - step.centroid) / step.second_moment;
  section.bottom_stress =
      section.axial / step.area + section.moment * (step.centroid - step.bottom) / step.second_moment;
  return section;
}

template <class Value>
const BeamSection& most(const std::vector<BeamSection>& sections, Value value) {
  return *std::ranges::max_element(sections, {}, value);
}

}  // namespace

const BeamSection& BeamState::most_sagging() const {
  return most(sections, [](const BeamSection& s) { return s.moment.value(); });
}
const BeamSection& BeamState::most_hogging() const {
  return most(sections, [](const BeamSection& s) { return -s.moment.value(); });
}
const BeamSection& BeamState::most_top_tension() const {
  return most(sections, [](const BeamSection& s) { return s.top_stress.value(); });
}
const BeamSection& BeamState::most_bottom_tension() const {
  return most(sections, [](const BeamSection& s) { return s.bottom_stress.value(); });
}

Outcome<BeamState> beam_state(const BeamLine& beam) {
  if (auto refused = beam_refusal(beam)) return *std::move(refused);
  const std::vector<BeamPiece> pieces = beam_pieces(beam, {});
  const BeamMeasure measure = beam_measure(beam);
  const BeamPiece& last = pieces.back();
  const Cut end = with_forces_at_end(beam, last);
  if (!(abs(end.shear) <= balanced_within * measure.load && abs(end.axial) <= balanced_within * measure.load &&
        abs(end.moment) <= balanced_within * measure.load * measure.length))
    return NotAssessed{"the forces on the piece do not balance along its length", {}};

  BeamState state;
  for (const BeamPiece& piece : pieces) {
    const Length length = piece.to - piece.from;
    state.sections.push_back(section_at(beam, piece, Length{}));
    if (piece.load != LineLoad{})  // where the shear is zero the moment is extreme
      if (const Length turn = piece.start.shear / piece.load; turn > Length{} && turn < length)
        state.sections.push_back(section_at(beam, piece, turn));
    state.sections.push_back(section_at(beam, piece, length));
  }
  for (const BeamSection& section : state.sections)
    if (!is_finite(section.moment) || !is_finite(section.top_stress) || !is_finite(section.bottom_stress))
      return NotAssessed{"a moment or stress of the piece is not a usable number", {}};
  return state;
}

}  // namespace firstpick::demands
