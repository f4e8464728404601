// Strength evidence made for tests: three field-cured 4x8 in cylinders, tested 14 h 40 min after the pour.
#pragma once

#include "plan/plan.hpp"

namespace firstpick::tests {

constexpr long long cast_second = 1772469000;                            // 2026-03-02 16:30
constexpr long long tested_second = cast_second + 14 * 3600 + 40 * 60;   // 2026-03-03 07:10

inline plan::Concrete concrete_with_evidence() {
  plan::Evidence evidence;
  evidence.specimen = plan::Specimen{plan::SpecimenShape::cylinder, 4.0 * inch, 8.0 * inch};
  evidence.cure = plan::Cure::field;
  evidence.cast = plan::Timestamp{cast_second, false, "2026-03-02 16:30"};
  evidence.tested = plan::Timestamp{tested_second, false, "2026-03-03 07:10"};
  evidence.results = {2610.0 * psi, 2550.0 * psi, 2700.0 * psi};
  plan::Concrete concrete;
  concrete.form_stripping_strength = 2500.0 * psi;
  concrete.lifting_strength = 3000.0 * psi;
  concrete.transportation_strength = 4000.0 * psi;
  concrete.evidence = evidence;
  return concrete;
}

}  // namespace firstpick::tests
