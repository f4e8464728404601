// Code curves of strength against age: for planning only, with what measured concretes did beside them.
#pragma once

#include <optional>
#include <vector>

#include "record/outcome.hpp"
#include "record/source.hpp"
#include "tables/tables.hpp"
#include "units/quantity.hpp"

namespace firstpick::strength {

// Strength at an age over that of 28 days; 0 at age 0.
Ratio share_of_28_days(const tables::GrowthCurve& curve, Duration age);

// The age of a share. Not assessed: a share that is not above zero, or that the curve never reaches.
Outcome<Duration> age_for_share(const tables::GrowthCurve& curve, Ratio share);

// Earliest ages, at 20 degC, at which a strength may be there. A prediction: nothing here carries a lift.
struct PredictedAge {
  Duration by_curve{};
  // If the concrete grows like the slowest twentieth, the middle and the fastest of what was measured at the
  // band's age. Empty where such a concrete never gets there on this curve.
  std::optional<Duration> slow, middle, fast;
  Duration band_age{};
  bool below_band = false;     // the age lies before the youngest in the data
  std::vector<Source> sources;
};

// Not assessed: a strength or a 28-day strength that is not above zero; a share that the curve never reaches;
// tables without a band.
Outcome<PredictedAge> predicted_age(const tables::GrowthCurve& curve, Stress strength, Stress at_28_days,
                                    const std::vector<tables::GrowthBand>& bands);

}  // namespace firstpick::strength
