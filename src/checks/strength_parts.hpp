// The parts of a strength report, each told by its own rule of src/strength. None of them decides the answer.
#pragma once

#include "checks/evaluate_strength.hpp"

namespace firstpick::checks {

void tell_specimens(const StrengthQuestion& question, const tables::Tables& tables, StrengthReport& report);

// Also the strength that maturity may count for, or why none.
Outcome<Stress> tell_maturity(const StrengthQuestion& question, const tables::RuleSet& rules,
                              const tables::Tables& tables, StrengthReport& report);

// For the largest strength that is needed. After the lifts are judged.
void tell_prediction(const StrengthQuestion& question, const tables::Tables& tables, StrengthReport& report);

void tell_season(const StrengthQuestion& question, const tables::Tables& tables, StrengthReport& report);

}  // namespace firstpick::checks
