// The concrete under the plate on the far face is not crushed.
//
//   F <= 0.85 f_c A_1 / n      F: the whole pull, along the bolt (checks/plate_pull.hpp)
//
// Source   ACI 318-19 22.8.3.2, from memory (docs/rules/plate-bearing.md).
// Absent   head_bearing_area: HOLD. A pull across the bolt: HOLD.

#include "checks/plate_pull.hpp"
#include "checks/rule.hpp"
#include "resistances/through_bolt.hpp"

namespace firstpick::checks {

std::vector<Finding> plate_bearing(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "plate-bearing";
  return for_each_plate(facts, id, trace, [&](std::size_t i) {
    Outcome<Resistance<Force>> nominal = NotAssessed{"the table of plates is not there", "tables/plates.toml"};
    if (const auto* gap = std::get_if<NotAssessed>(&facts.formula_strength)) nominal = *gap;
    else if (facts.tables.plates)
      nominal = resistances::plate_bearing(facts.plan.inserts[i], std::get<Stress>(facts.formula_strength),
                                           *facts.tables.plates, trace);
    return plate_against(id, facts, i, nominal, "the concrete under the plate is crushed",
                         "a larger plate, or more strength before lifting", trace);
  });
}

}  // namespace firstpick::checks
