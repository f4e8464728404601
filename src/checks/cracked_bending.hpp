// A line that may crack, with bars that carry it: what its bars and its concrete are asked for.
#pragma once

#include <string>

#include "checks/finding.hpp"
#include "checks/piece_bending.hpp"
#include "demands/cracked_section.hpp"

namespace firstpick::checks {

struct CrackedPlace {
  std::string where, situation;
  bool some_legs_only = false;
};

struct CrackedBending {
  Stress bar{},
      yield_strength{};  // of the layer that uses most of its yield strength; zero where nothing pulls
  CrackedPlace bar_at;
  std::string layer;
  Stress concrete{};  // largest compression
  CrackedPlace concrete_at;
  Length crack{};  // widest
  CrackedPlace crack_at;
  BendingTension bare;  // largest tension where no bars lie on the side that is pulled; no place: nowhere
  // Of the place of `bar`, for the steps.
  demands::CrackedSection section;
  demands::CrackedStress stress;
  Force axial{};
  Moment moment{};
  std::size_t in_layer = 0;
};

// What the plan leaves out of its bars, or gets wrong: outside the piece.
std::optional<NotAssessed> unusable_bars(const StageFacts& facts);

// `strength`: of the concrete at the lift. Not assessed: a bar without area, yield strength, line or spacing;
// bars to one side; a section that is no level rectangle where bars are needed; lightweight concrete; what
// line_model does not assess.
Outcome<CrackedBending> cracked_bending(const StageFacts& facts, const ModelChoice& model, Ratio raise,
                                        Stress strength, Trace& trace);

// What piece-cracking has to say of a piece that may crack: its bars, its concrete, the places without bars,
// its cracks.
std::vector<Finding> cracked_findings(const StageFacts& facts, const ModelChoice& model, Trace& trace);

}  // namespace firstpick::checks
