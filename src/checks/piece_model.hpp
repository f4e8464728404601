// How the bending of the piece is computed: as the plan says, or derived from its shape.
#pragma once

#include <string>

#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "tables/rule_set.hpp"
#include "units/print.hpp"

namespace firstpick::checks {

// A block of which more is known: its solid is a round ring, or a box with a barrel right through (round_and_box.hpp), thin
// enough to be computed as one.
enum class Known { no, ring, box };

struct ModelChoice {
  plan::PieceModel model = plan::PieceModel::block;
  Known known = Known::no;               // of a block
  bool stated = false;                   // by the plan
  bool fits = true;                      // false: a stated line that is too wide, a stated block that is a line or panel
  plan::Axis axis = plan::Axis::x;       // of a line: level, the longer way
  bool flat = false;                     // one thickness (panel_face.hpp): may be computed as a panel
  bool stepped = false;                  // several (stepped_panel.hpp): the same
};

// May the bending of this piece go unchecked, because it is small and stocky?
struct Stockiness {
  Length size{};            // greater level side
  Length mean_thickness{};  // 2 volume / surface: that of a wall or slab
  double slenderness = 0.0; // size over mean thickness
  bool is_stocky = false;   // both within the limits of the rule set
};
Stockiness stockiness(const piece::Body& body, const tables::CrackingModel& limits);

ModelChoice piece_model(const plan::Plan& plan, const piece::Body& body, const tables::CrackingModel& limits);

// "bending of the piece: computed as a panel, derived from its shape".
std::string told(const ModelChoice& choice, const piece::Body& body, const tables::CrackingModel& limits,
                 UnitSystem units);
std::string told(const Stockiness& stocky, const tables::CrackingModel& limits, UnitSystem units);

}  // namespace firstpick::checks
