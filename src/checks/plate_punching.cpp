// The plate on the far face does not punch through the concrete.
//
//   F <= 2.66 lambda sqrt(f_c) b_o h / n      F: the whole pull, along the bolt (checks/plate_pull.hpp)
//
// Source   ACI 318-19 14.5.5.1, plain concrete, from memory (docs/rules/plate-punching.md). No bar is counted.
// Absent   washer: HOLD. An edge nearer than the body that punches out, a curved face, a pull across the bolt: HOLD.

#include "checks/plate_pull.hpp"
#include "checks/rule.hpp"
#include "resistances/through_bolt.hpp"

namespace firstpick::checks {

std::vector<Finding> plate_punching(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "plate-punching";
  return for_each_plate(facts, id, trace, [&](std::size_t i) {
    Outcome<Resistance<Force>> nominal = NotAssessed{};
    if (const auto* gap = std::get_if<NotAssessed>(&facts.formula_strength)) nominal = *gap;
    else
      nominal = resistances::plate_punching(facts.plan.inserts[i], facts.body.sites.at(i), facts.plan.concrete,
                                            std::get<Stress>(facts.formula_strength), facts.tables, trace);
    return plate_against(id, facts, i, nominal, "the plate punches through",
                         "a larger plate, thicker concrete, or more strength before lifting", trace);
  });
}

}  // namespace firstpick::checks
