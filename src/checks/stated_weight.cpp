// The weight on the drawing and the weight of the solid tell the same piece.
//
//   |W_stated - W_geometry| <= limit * W_geometry
//
// W_geometry  volume of the solid times nominal density; attached form parts are not in it.
// Limit       "weight_disagreement" of the rule set. Apart by more: HOLD, one of the two describes another piece.
// Absent      HOLD: nothing catches a wrong solid then.
// Density     below the least of its kind of concrete (tables/concretes.toml): HOLD, for every load is that much too small;
//             above the largest a note.

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

  const UnitSystem units = piece.units;
  const auto kind = facts.tables.concretes.find(facts.plan.concrete.kind);
  const Density density = facts.plan.concrete.density;
  if (kind == facts.tables.concretes.end())
    return {missing(id, piece.mark, "the kind of concrete is not in the tables", "[concrete] kind = \"...\"")};
  const auto& least = kind->second.density_low;
  if (!(density >= least.value))
    return {missing(id, piece.mark,
                    fmt::format("the density, {}, is less than any {} concrete has, {}", print(density, units, Rounding::down),
                                facts.plan.concrete.kind, print(least.value, units, Rounding::up)),
                    "the density of the mix as measured, or the kind of concrete that has it")};

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
  if (finding.result == Result::pass && density > kind->second.density_high.value) {
    finding.result = Result::note;
    finding.text = fmt::format("the density, {}, is more than {} concrete has, {}", print(density, units),
                               facts.plan.concrete.kind, print(kind->second.density_high.value, units));
  }
  return {finding};
}

}  // namespace firstpick::checks
