// How the bending of the piece is computed: as the plan says, or derived from its shape.
#pragma once

#include <string>

#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "tables/rule_set.hpp"

namespace firstpick::checks {

struct ModelChoice {
  plan::PieceModel model = plan::PieceModel::block;
  bool stated = false;                   // by the plan
  plan::Axis axis = plan::Axis::x;       // of a line: level, the longer way
  bool flat = false;                     // one thickness, inserts in one level face: may be computed as a panel
};

ModelChoice piece_model(const plan::Plan& plan, const piece::Body& body, const tables::CrackingModel& limits);

// "bending of the piece: computed as a panel, derived from its shape".
std::string told(const ModelChoice& choice);

}  // namespace firstpick::checks
