// The only place where a demand meets a resistance, and the only comparison in the verdict.
#pragma once

#include <cmath>
#include <optional>
#include <string>

#include "record/outcome.hpp"
#include "units/quantity.hpp"

namespace firstpick::checks {

enum class Result { pass, note, missing, fail };  // worse to the right; missing is HOLD

struct Comparison {
  Result result = Result::missing;
  std::optional<double> utilization;  // demand over resistance
  std::string why;                    // set when missing
  std::string remedy;
};

// pass: demand <= resistance, no tolerance. Missing: either side not assessed, not finite, negative, a zero resistance,
// or a utilization that is not a number. Rounding is for printing only.
template <class Q>
Comparison compare(const Outcome<Demand<Q>>& demand, const Outcome<Resistance<Q>>& resistance) {
  if (const auto* missing = std::get_if<NotAssessed>(&demand))
    return {Result::missing, {}, missing->why, missing->remedy};
  if (const auto* missing = std::get_if<NotAssessed>(&resistance))
    return {Result::missing, {}, missing->why, missing->remedy};

  const Q d = std::get<Demand<Q>>(demand).value;
  const Q r = std::get<Resistance<Q>>(resistance).value;
  const double utilization = d / r;
  if (!(r > Q{}) || !(d >= Q{}) || !is_finite(r) || !std::isfinite(utilization))
    return {Result::missing, {}, "the demand or the capacity is not a usable number", {}};
  return {utilization <= 1.0 ? Result::pass : Result::fail, utilization, {}, {}};
}

// What is left of a nominal strength behind its safety factor.
template <class Q>
Outcome<Resistance<Q>> behind_factor(const Outcome<Resistance<Q>>& nominal, double factor) {
  if (const auto* missing = std::get_if<NotAssessed>(&nominal)) return *missing;
  if (!(factor >= 1.0) || !std::isfinite(factor))
    return NotAssessed{"the safety factor is not a usable number", {}};
  return Resistance<Q>{std::get<Resistance<Q>>(nominal).value / factor};
}

}  // namespace firstpick::checks
