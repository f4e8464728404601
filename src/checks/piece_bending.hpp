// The tension that bending brings to the faces of the piece, over every situation of one stage.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "checks/panel_face.hpp"
#include "checks/piece_model.hpp"
#include "checks/stage_facts.hpp"
#include "demands/beam_line.hpp"
#include "demands/panel_estimate.hpp"
#include "piece/section.hpp"
#include "record/outcome.hpp"

namespace firstpick::checks {

struct BendingTension {
  Stress tension{};        // largest anywhere, never negative
  std::string where;       // "top of the piece, at x = 2.485 m"
  std::string situation;
  Moment moment{};         // of a line: at that section; of a panel: of a strip one metre wide
  bool some_legs_only = false;
};

// Loads of one situation: what pulls down besides the weight, and what the legs do.
struct BendingLoads {
  const loads::LoadSet& set;   // its first load is the weight, then the attached parts, then the grip of the form
  std::size_t attached = 0;    // number of attached parts
  const Situation& situation;
};

// What stays the same while the picks of one piece move: kept by who judges many layouts of it. A panel is then estimated
// (demands/panel_estimate.hpp): never for a verdict.
struct BendingReuse {
  std::optional<Outcome<std::vector<piece::Stretch>>> stretches;  // of a line
  std::optional<PanelFace> panel_face;                            // of a panel: the frame of its first layout
  std::shared_ptr<const demands::PanelEstimate> panel;
};

struct BendingMemo {
  std::optional<Outcome<BendingTension>> tension;
  std::shared_ptr<BendingReuse> reuse;  // null: nothing is kept, and a panel is computed to its stated accuracy
};

Outcome<BendingTension> line_tension(const StageFacts& facts, const ModelChoice& model);
Outcome<demands::BeamState> line_state(const StageFacts& facts, const ModelChoice& model, const Situation& situation);
Outcome<BendingTension> panel_tension(const StageFacts& facts, const ModelChoice& model);
Outcome<BendingTension> ring_tension(const StageFacts& facts);
Outcome<BendingTension> box_tension(const StageFacts& facts);
Outcome<BendingTension> turned_panel_tension(const StageFacts& facts);  // while it is turned, and after

// Of a situation, by the name of its load set; the loads are those that legs carry.
Outcome<BendingLoads> bending_loads(const StageFacts& facts, const Situation& situation);

}  // namespace firstpick::checks
