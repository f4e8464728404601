// A piece taken as a line: sections of its real solid, what pulls down along it, the legs with thrust and eccentricity.
//
//   weight              spread as the volume is; attached parts at their points; grip of the form spread over the length,
//                       linear, so that its centroid is kept
//   stress              demands/beam_line.hpp, with the least section of each short stretch
//   slope               where the centroid line rises by an angle in a stretch, area and second moment x cos^2 of it: the
//                       cut across the axis is longer than the section across the line
//
// Not assessed: sections in several parts or lopsided by more than 5 %, a line that rises more than 45 degrees within a
// stretch or 10 degrees over the piece, grip of the form at one end only.

#include <algorithm>

#include <fmt/format.h>

#include "checks/line_model.hpp"

namespace firstpick::checks {

namespace {

Outcome<demands::BeamState> state_under(const StageFacts& facts, const LineModel& line, const Situation& situation,
                                        Legs legs) {
  const auto loads = bending_loads(facts, situation);
  if (const auto* missing = std::get_if<NotAssessed>(&loads)) return *missing;
  const auto beam = loaded_line(facts, std::get<BendingLoads>(loads), line, legs);
  if (const auto* missing = std::get_if<NotAssessed>(&beam)) return *missing;
  return demands::beam_state(std::get<demands::BeamLine>(beam));
}

Outcome<BendingTension> line_tension_with(const StageFacts& facts, const ModelChoice& model, Legs legs) {
  const auto line = line_model(facts, model);
  if (const auto* missing = std::get_if<NotAssessed>(&line)) return *missing;

  BendingTension worst;
  const UnitSystem units = facts.plan.piece.units;
  const char* const axis = model.axis == plan::Axis::x ? "x" : "y";
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
    const auto state = state_under(facts, std::get<LineModel>(line), situation, legs);
    if (const auto* missing = std::get_if<NotAssessed>(&state)) return *missing;
    const auto& bent = std::get<demands::BeamState>(state);
    const auto look = [&](const demands::BeamSection& section, Stress tension, const char* face) {
      if (!(tension > worst.tension) && !worst.where.empty()) return;
      worst = {std::max(tension, Stress{}),
               fmt::format("{} of the piece, at {} = {}", face, axis, firstpick::print(section.at, units)),
               situation.name, abs(section.moment), situation.some_legs_only};
    };
    look(bent.most_top_tension(), bent.most_top_tension().top_stress, "top");
    look(bent.most_bottom_tension(), bent.most_bottom_tension().bottom_stress, "bottom");
  }
  if (worst.where.empty()) return NotAssessed{"no situation loads the piece", {}};
  return worst;
}

}  // namespace

Outcome<demands::BeamState> line_state(const StageFacts& facts, const ModelChoice& model, const Situation& situation) {
  const auto line = line_model(facts, model);
  if (const auto* missing = std::get_if<NotAssessed>(&line)) return *missing;
  return state_under(facts, std::get<LineModel>(line), situation, Legs::as_they_hang);
}

Outcome<LineShear> line_shear(const StageFacts& facts, const ModelChoice& model) {
  const auto line = line_model(facts, model);
  if (const auto* missing = std::get_if<NotAssessed>(&line)) return *missing;
  LineShear worst;
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
    const auto state = state_under(facts, std::get<LineModel>(line), situation, Legs::as_they_hang);
    if (const auto* missing = std::get_if<NotAssessed>(&state)) return *missing;
    for (const demands::BeamSection& section : std::get<demands::BeamState>(state).sections) {
      if (!is_finite(section.shear_stress))
        return NotAssessed{"the widths of the piece over its height could not be measured", std::string(own_bending_check)};
      if (!worst.where.empty() && !(section.shear_stress > (1.0 + 1e-9) * worst.stress)) continue;
      worst = {section.shear_stress, abs(section.shear), std::get<LineModel>(line).steps.at(section.step).shear_area,
               fmt::format("{} = {}", model.axis == plan::Axis::x ? "x" : "y",
                           firstpick::print(section.at, facts.plan.piece.units)),
               situation.name, situation.some_legs_only};
    }
  }
  if (worst.where.empty()) return NotAssessed{"no situation loads the piece", {}};
  return worst;
}

Outcome<BendingTension> line_tension(const StageFacts& facts, const ModelChoice& model) {
  return line_tension_with(facts, model, Legs::as_they_hang);
}

Outcome<BendingTension> line_tension_upright(const StageFacts& facts, const ModelChoice& model) {
  return line_tension_with(facts, model, Legs::upright);
}

}  // namespace firstpick::checks
