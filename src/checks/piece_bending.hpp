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
#include "piece/insert_wall.hpp"
#include "piece/section.hpp"
#include "record/outcome.hpp"

namespace firstpick::checks {

// What stands in for a bending that the program cannot compute.
inline constexpr std::string_view own_bending_check =
    "[piece] bending_check: name the engineer's own check of its bending";

struct BendingTension {
  Stress tension{};        // largest anywhere, never negative
  std::string where;       // "top of the piece, at x = 2.485 m"
  std::string situation;
  Moment moment{};         // of a line: at that section; of a panel: of a strip one metre wide
  bool some_legs_only = false;
};

// Loads of one situation: what pulls down besides the weight, and what the legs do.
struct BendingLoads {
  loads::LoadSet set;          // its first load is the weight, then the attached parts, then the grip of the form
  std::size_t attached = 0;    // number of attached parts
  Situation situation;
};

// What stays the same while the picks of one piece move: kept by who judges many layouts of it. A panel is then estimated
// (demands/panel_estimate.hpp): never for a verdict.
struct BendingReuse {
  std::optional<Outcome<std::vector<piece::Stretch>>> stretches;  // of a line
  std::optional<PanelFace> panel_face;                            // of a panel: the frame of its first layout
  std::shared_ptr<const demands::PanelEstimate> panel;
};

// The piece as a line under the loads of one situation, cut where strands or bars ask for it.
struct LineUnderLoad {
  demands::BeamLine beam;
  std::string set, situation;    // "hanging", "hanging, legs A1 and A3 only"
  Ratio lighter_raise{};         // by lighter_set_raise, not in the loads of the beam
  bool some_legs_only = false;
};
struct LinesUnderLoad {
  std::vector<LineUnderLoad> lines;
  std::vector<piece::Stretch> stretches;  // one for each step of the beams
};

// The largest shear stress of a piece taken as a line.
struct LineShear {
  Stress stress{};
  Force shear{};           // there
  Area shear_area{};       // shear over it is the largest shear stress of the section
  std::string where;       // "x = 2.485 m"
  std::string situation;
  bool some_legs_only = false;
};

// What the pull of one insert brings to the wall or slab it sits in.
struct WallTension {
  Stress tension{};
  Length thickness{};
  std::string what;  // "round wall it sits in", ...
  std::string situation;
  bool in_face = false, round = false;
};

struct BendingMemo {
  std::optional<Outcome<BendingTension>> tension;
  std::optional<Outcome<LineShear>> shear;
  std::optional<Outcome<LinesUnderLoad>> lines;  // of a piece with strands, or with bars that count
  // Of the inserts, in the plan's order.
  std::vector<std::optional<Outcome<std::optional<WallTension>>>> walls;
  std::shared_ptr<BendingReuse> reuse;  // null: nothing is kept, and a panel is computed to its stated accuracy
};

// By the model, hung or turned; once computed, the same for every rule. A block that is neither ring nor box is not assessed.
const Outcome<BendingTension>& bending_tension(const StageFacts& facts, const ModelChoice& model);

Outcome<BendingTension> line_tension(const StageFacts& facts, const ModelChoice& model);
Outcome<LineShear> line_shear(const StageFacts& facts, const ModelChoice& model);
Outcome<demands::BeamState> line_state(const StageFacts& facts, const ModelChoice& model, const Situation& situation);
// The same picks with the same shares, their legs hung upright from a beam: what that would mend. Never for a verdict.
Outcome<BendingTension> line_tension_upright(const StageFacts& facts, const ModelChoice& model);
Outcome<BendingTension> panel_tension(const StageFacts& facts, const ModelChoice& model);
Outcome<BendingTension> stepped_panel_tension(const StageFacts& facts);
Outcome<BendingTension> ring_tension(const StageFacts& facts);
Outcome<BendingTension> box_tension(const StageFacts& facts);
Outcome<BendingTension> turned_panel_tension(const StageFacts& facts);  // while it is turned, and after

// No place of a line of strands or bars is outside the box around the piece, or is no number.
bool is_in_box_around(const piece::Body& body, const std::vector<Position>& line);

// Why no bending is computed in this stage; whether the piece is turned in it, or was before.
std::optional<NotAssessed> bending_gap(const StageFacts& facts);
bool is_turned(const StageFacts& facts);

// The cracking stress at the strength of this lift, and in the trace its factor. Depth: of what bends, the piece unless told.
Outcome<Resistance<Stress>> cracking_stress_of(const StageFacts& facts, Trace& trace);
Outcome<Resistance<Stress>> cracking_stress_of(const StageFacts& facts, Trace& trace, Length depth);
std::string_view cracking_clause(const StageFacts& facts);

// Of a situation, by the name of its load set; the loads are those that legs carry. `bending_loads` raises those of a set
// lighter than the heaviest by lighter_set_raise (bending_multiplier.hpp), but of a piece that is turned or was.
Outcome<BendingLoads> loads_as_they_are(const StageFacts& facts, const Situation& situation);
Outcome<BendingLoads> bending_loads(const StageFacts& facts, const Situation& situation);

}  // namespace firstpick::checks
