// Factors of one-sided lower bounds of small samples.
//
//   known      k = z_(1-p) sqrt(1 + 1/n)                z: quantile of the normal distribution
//   unknown    k = t_(1-p; n-1) sqrt(1 + 1/n)           t: quantile of Student's distribution
//   tolerance  k = t'_(gamma; n-1; z_(1-p) sqrt(n)) / sqrt(n)      t': non-central t
//
// Source   known, unknown: EN 1990 annex D, table D1 (quoted); the formulas give its numbers to its rounding.
//          tolerance: the exact one-sided tolerance factor of statistics, as the NIST handbook describes it.
// Range    normal distribution. EN 1990 table D1 has no value below three results where the variation is not
//          known: neither has this.

#include "strength/lower_bound.hpp"

#include <cmath>

#include <boost/math/distributions/non_central_t.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>

namespace firstpick::strength {

namespace {

NotAssessed unusable(const char* what) { return {what, "choose usable values in the rule set"}; }

bool is_share(Ratio p) { return p > Ratio{} && p < Ratio::from_value(0.5); }

double normal_quantile_above(Ratio p) { return -boost::math::quantile(boost::math::normal(), p.value()); }

Outcome<double> finite(double k) {
  if (!std::isfinite(k)) return NotAssessed{"the factor of the lower bound could not be computed", {}};
  return k;
}

}  // namespace

Outcome<double> fractile_factor_known(std::size_t n, Ratio p) {
  if (n == 0) return NotAssessed{"there are no results", {}};
  if (!is_share(p)) return unusable("the fractile is not above 0 and below 50 %");
  return finite(normal_quantile_above(p) * std::sqrt(1.0 + 1.0 / static_cast<double>(n)));
}

Outcome<double> fractile_factor_unknown(std::size_t n, Ratio p) {
  if (n < 3)
    return NotAssessed{"a fractile with unknown variation needs three results", "test more specimens of this pour"};
  if (!is_share(p)) return unusable("the fractile is not above 0 and below 50 %");
  const auto number = static_cast<double>(n);
  const boost::math::students_t distribution(number - 1.0);
  return finite(-boost::math::quantile(distribution, p.value()) * std::sqrt(1.0 + 1.0 / number));
}

Outcome<double> tolerance_factor(std::size_t n, Ratio p, Ratio gamma) {
  if (n < 2)
    return NotAssessed{"a tolerance bound needs two results", "test more specimens of this pour"};
  if (!is_share(p)) return unusable("the fractile is not above 0 and below 50 %");
  if (!(gamma >= Ratio::from_value(0.5)) || !(gamma < Ratio::from_value(1.0)))
    return unusable("the confidence is not from 50 % to below 100 %");
  const auto number = static_cast<double>(n);
  const boost::math::non_central_t distribution(number - 1.0, normal_quantile_above(p) * std::sqrt(number));
  return finite(boost::math::quantile(distribution, gamma.value()) / std::sqrt(number));
}

}  // namespace firstpick::strength
