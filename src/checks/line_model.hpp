// A piece taken as a line: sections of its real solid, what pulls down along it, the legs with thrust and
// eccentricity.
#pragma once

#include <vector>

#include "checks/piece_bending.hpp"
#include "demands/beam_line.hpp"

namespace firstpick::checks {

struct LineModel {
  plan::Axis axis = plan::Axis::x;
  std::vector<demands::BeamStep> steps{};   // without loads
  std::vector<Volume> volumes{};            // of each
  std::vector<piece::Stretch> stretches{};  // of which each is a part
};

// Not assessed: sections in several parts or lopsided by more than 5 %, a line that rises more than 45
// degrees within a stretch or 10 degrees over the piece.
Outcome<LineModel> line_model(const StageFacts& facts, const ModelChoice& model);

// A line of strands or bars from its end at the lesser x (or y), and its place at one; before and behind it, as
// it would run on.
std::vector<Position> rising_along(std::vector<Position> line, plan::Axis axis);
Position place_on(const std::vector<Position>& rising, plan::Axis axis, Length at);

// Steps end at these places, too.
void cut_at(LineModel& line, const std::vector<Length>& places);

// Under every situation of the stage, cut at these places; computed once for a stage.
Outcome<LinesUnderLoad> lines_under_load(const StageFacts& facts, const ModelChoice& model,
                                         const std::vector<Length>& places);

// The line under one situation, in balance. Not assessed: grip of the form at one end only, loads that are
// not what the legs carry.
// Upright: with the upright parts of the legs alone.
enum class Legs { as_they_hang, upright };
Outcome<demands::BeamLine> loaded_line(const StageFacts& facts, const BendingLoads& loads, const LineModel& line,
                                       Legs legs = Legs::as_they_hang);

}  // namespace firstpick::checks
