// The weight on the drawing and the weight of the solid tell the same piece.
//
//   |W_stated - W_geometry| <= limit * W_geometry
//
// W_geometry  volume of the solid times nominal density; attached form parts are not in it.
// Limit       "weight_disagreement" of the rule set. Apart by more: HOLD, one of the two describes another piece.
// Absent      HOLD: nothing catches a wrong solid then.

#include <cmath>

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "loads/stage_load.hpp"

namespace firstpick::checks {

std::vector<Finding> stated_weight(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "stated-weight";
  const plan::Piece& piece = facts.plan.piece;
  const auto& limit = facts.rules.weight_disagreement;
  if (!piece.stated_weight)
    return {missing(id, piece.mark, "the drawing's weight is not in the plan", "[piece] stated_weight = \"...\"")};

  const Force stated = *piece.stated_weight;
  const Force geometry = loads::nominal_weight(facts.plan, facts.body);
  const Force apart{stated > geometry ? stated - geometry : geometry - stated};
  trace.add([&] {
    return Step{.words = "how far the drawing's weight may be from the weight of the solid",
                .result = {"W_apart", in(kN, Force{limit.value * geometry}), "kN"},
                .formula = "r * W_geometry",
                .given = {{"r", limit.value.value(), "1"}, {"W_geometry", in(kN, geometry), "kN"}},
                .clause = limit.source.locator,
                .sources = {limit.source}};
  });
  Finding finding = compared<Force>(id, piece.mark, Demand<Force>{apart},
                                    Resistance<Force>{limit.value * geometry}, 1.0, limit.source.title);
  if (finding.result == Result::fail) {
    finding.result = Result::missing;  // one of the two is wrong: which, nobody knows yet
    finding.text = fmt::format("the drawing says {}, the solid weighs {} at nominal density",
                               firstpick::print(stated, piece.units), firstpick::print(geometry, piece.units));
    finding.remedy = "find which is wrong: the solid, the density (voided or lightweight?) or the drawing's weight";
  }
  return {finding};
}

}  // namespace firstpick::checks
