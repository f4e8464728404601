#include "demands/beam_pieces.hpp"

#include <algorithm>
#include <cmath>

namespace firstpick::demands {

namespace {

constexpr double joined_within = 1e-9;  // of the length: steps that meet, places that are one

void add(Cut& cut, const BeamForce& force, Length centroid) {
  cut.axial -= force.along;
  cut.shear += force.up;
  cut.moment += force.along * (force.height - centroid);
}

bool usable(const BeamStep& step) {
  return is_finite(step.from) && is_finite(step.to) && step.to > step.from && is_finite(step.area) &&
         step.area > Area{} && is_finite(step.second_moment) && step.second_moment > SecondMoment{} &&
         is_finite(step.load) && is_finite(step.bottom) && is_finite(step.centroid) && is_finite(step.top) &&
         step.bottom < step.centroid && step.centroid < step.top &&
         (!step.prestress || (is_finite(step.prestress->force) && is_finite(step.prestress->height)));
}

}  // namespace

Cut BeamPiece::cut_at(Length into) const {
  return {start.axial, start.shear - load * into, start.moment + start.shear * into - 0.5 * load * into * into};
}

std::vector<BeamPiece> beam_pieces(const BeamLine& beam, const std::vector<Length>& besides) {
  const Length length = beam_measure(beam).length;
  const Length same = joined_within * length;
  std::vector<Length> places = besides;
  for (const BeamStep& step : beam.steps) places.push_back(step.to);
  for (const BeamForce& force : beam.forces) places.push_back(force.at);
  std::ranges::sort(places);

  std::vector<BeamForce> forces = beam.forces;
  std::ranges::stable_sort(forces, {}, &BeamForce::at);
  std::size_t next_force = 0;

  std::vector<BeamPiece> pieces;
  Cut cut;
  for (std::size_t s = 0; s < beam.steps.size(); ++s) {
    const BeamStep& step = beam.steps[s];
    if (s > 0) cut.moment += cut.axial * (step.centroid - beam.steps[s - 1].centroid);
    Length from = step.from;
    const auto take_forces = [&] {
      for (; next_force < forces.size() && forces[next_force].at <= from + same; ++next_force)
        add(cut, forces[next_force], step.centroid);
    };
    take_forces();
    const auto add_piece = [&](Length to) {
      pieces.push_back({from, to, s, step.load, cut});
      cut = pieces.back().cut_at(to - from);
      from = to;
    };
    for (const Length& place : places) {
      if (place <= from + same || place >= step.to - same) continue;
      add_piece(place);
      take_forces();
    }
    add_piece(step.to);
  }
  return pieces;
}

Cut with_forces_at_end(const BeamLine& beam, const BeamPiece& last) {
  const Length same = joined_within * beam_measure(beam).length;
  Cut cut = last.cut_at(last.to - last.from);
  for (const BeamForce& force : beam.forces)  // the line is cut at each: none stands inside the last piece
    if (force.at > last.from + same) add(cut, force, beam.steps[last.step].centroid);
  return cut;
}

BeamMeasure beam_measure(const BeamLine& beam) {
  BeamMeasure measure;
  if (beam.steps.empty()) return measure;
  measure.length = beam.steps.back().to - beam.steps.front().from;
  for (const BeamStep& step : beam.steps) measure.load += abs(step.load) * (step.to - step.from);
  for (const BeamForce& force : beam.forces) measure.load += abs(force.up) + abs(force.along);
  return measure;
}

std::optional<NotAssessed> beam_refusal(const BeamLine& beam) {
  if (beam.steps.empty()) return NotAssessed{"the piece has no section along its length", {}};
  const Length length = beam_measure(beam).length;
  const Length same = joined_within * length;
  for (std::size_t s = 0; s < beam.steps.size(); ++s) {
    if (!usable(beam.steps[s])) return NotAssessed{"a section of the piece has no usable stiffness or load", {}};
    if (s > 0 && !(abs(beam.steps[s].from - beam.steps[s - 1].to) <= same))
      return NotAssessed{"the sections of the piece leave a gap or overlap", {}};
  }
  const Length first = beam.steps.front().from - same, last = beam.steps.back().to + same;
  for (const BeamForce& force : beam.forces) {
    if (!is_finite(force.at) || !is_finite(force.height) || !is_finite(force.along) || !is_finite(force.up))
      return NotAssessed{"a force on the piece is not a usable number", {}};
    if (!(force.at >= first && force.at <= last))
      return NotAssessed{"a force acts beyond the ends of the piece", {}};
  }
  return {};
}

}  // namespace firstpick::demands
