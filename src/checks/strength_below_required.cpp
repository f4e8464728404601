// The strength shown is at least the strength that the drawing requires for this stage, and the rule set's minimum.
//
// Source   strength/required_strength.cpp.

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> strength_below_required(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "strength-below-required";
  const plan::Piece& piece = facts.plan.piece;
  Outcome<Demand<Stress>> needed = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.required_strength)) needed = *gap;
  else needed = Demand<Stress>{std::get<Stress>(facts.required_strength)};
  Outcome<Resistance<Stress>> shown = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.usable_strength)) shown = *gap;
  else shown = Resistance<Stress>{std::get<Stress>(facts.usable_strength)};

  // The rule set's minimum where it is what is asked, else what the plan has from the drawing.
  const auto* asked = std::get_if<Demand<Stress>>(&needed);
  const bool of_the_plan = asked && asked->value > facts.rules.minimum_strength.value;
  Finding finding = compared<Stress>(id, piece.mark, needed, shown, 1.0,
                                     of_the_plan ? "required on the drawing, in the plan"
                                                 : facts.rules.minimum_strength.source.title);
  if (finding.result == Result::fail) {
    const Stress required = std::get<Stress>(facts.required_strength);
    const Stress usable = std::get<Stress>(facts.usable_strength);
    finding.text = fmt::format("needs {}, has {}", firstpick::print(required, piece.units, Rounding::up),
                               firstpick::print(usable, piece.units, Rounding::down));
    finding.remedy = fmt::format("wait and test again: at least {} before this stage",
                                 firstpick::print(required, piece.units, Rounding::up));
  }
  return {finding};
}

}  // namespace firstpick::checks
