// A piece with strands that is computed as a line: tension and compression of its faces.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "checks/finding.hpp"
#include "checks/piece_bending.hpp"
#include "demands/prestressed_line.hpp"

namespace firstpick::checks {

// Tension and compression of a line with strands, with the raise of its loads.
struct PrestressedBending {
  demands::FibreStress tension, compression;     // as they are: a tension below zero is a compression
  std::string tension_where, compression_where;  // "top of the piece, at x = 1.2 m"
  std::string tension_situation, compression_situation;
  bool some_legs_only = false;  // of the tension
};

// What the plan leaves out of its strands, or gets wrong: outside the piece, too short for their transfer.
std::optional<NotAssessed> unusable_strands(const StageFacts& facts);

// Not assessed: a strand without force, line or transfer length; no release strength; strands that lie to one
// side of the piece; a section that changes gradually; what line_model and prestressed_state do not assess.
Outcome<PrestressedBending> prestressed_bending(const StageFacts& facts, const ModelChoice& model,
                                                Ratio raise);
void tell_steps(const PrestressedBending& bent, const StageFacts& facts, Trace& trace);

// What piece-cracking has to say of a piece with strands: its tension, and its compression.
std::vector<Finding> prestressed_findings(const StageFacts& facts, const ModelChoice& model, Trace& trace);

}  // namespace firstpick::checks
