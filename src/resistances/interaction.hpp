#pragma once

#include <optional>

#include "record/trace.hpp"
#include "tables/rule_set.hpp"
#include "units/quantity.hpp"

namespace firstpick::resistances {

// Utilization of an insert in tension and shear at once (ACI 318-19 17.8), from the largest utilization of
// each. Not a number or negative on either side gives not a number.
Ratio interaction_utilization(Ratio tension, Ratio shear, const tables::HeadedInsertModel& model,
                              Trace& trace);

// The largest uses of an insert in one situation, by what fails.
struct Uses {
  Ratio steel_tension{}, concrete_tension{}, steel_shear{}, concrete_shear{};
  // Bars hold the tension alone, and the rule set has an exponent of its own for that (EN 1992-4 table 7.3).
  std::optional<Sourced<Ratio>> power_of_bars{};
};

// The same by the model of the rule set: ACI 318 takes the larger of steel and concrete on each side, EN 1992-4 looks at
// steel and concrete apart.
Ratio interaction_utilization(const Uses& uses, const tables::HeadedInsertModel& model, Trace& trace);

}  // namespace firstpick::resistances
