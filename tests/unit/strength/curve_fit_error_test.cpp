// The standard error of a fitted strength: of a straight line in log10(t) it is known in closed form.

#include <cmath>

#include "strength/strength_curve.hpp"
#include "support/assessed.hpp"

using namespace firstpick;
using namespace firstpick::tests;

TEST_CASE("the standard error of a straight line is that of linear regression") {
  const std::vector<double> ages_d = {0.25, 0.5, 1.0, 2.0, 4.0}, strengths_MPa = {8.2, 13.7, 20.4, 25.9, 32.1};
  std::vector<strength::AgedStrength> data;
  for (std::size_t i = 0; i < ages_d.size(); ++i) data.push_back({ages_d[i] * day, strengths_MPa[i] * MPa});
  const auto fit = assessed(strength::least_squares(plan::StrengthCurve::logarithmic, data));

  // x = log10(t): s^2 (1/n + (x - m)^2 / sum (x_i - m)^2)
  const double n = 5.0;
  double m = 0.0, spread = 0.0;
  for (const double t_d : ages_d) m += std::log10(t_d) / n;
  for (const double t_d : ages_d) spread += std::pow(std::log10(t_d) - m, 2);
  for (const double t_d : {0.25, 1.0, 3.0}) {
    CAPTURE(t_d);
    const double s_MPa = in(MPa, fit.deviation);
    const double expected_MPa = s_MPa * std::sqrt(1.0 / n + std::pow(std::log10(t_d) - m, 2) / spread);
    CHECK(in(MPa, strength::standard_error_on(fit, t_d * day)) == Approx(expected_MPa).epsilon(1e-6));
  }
}

TEST_CASE("without a covariance or an age the standard error is infinite: it passes no limit") {
  strength::CurveFit fit{.curve = plan::StrengthCurve::logarithmic, .parameters = {20.0, 20.0}};
  CHECK(std::isinf(in(MPa, strength::standard_error_on(fit, 1.0 * day))));
  fit.covariance = {{1.0, 0.0}, {0.0, 1.0}};
  CHECK(std::isfinite(in(MPa, strength::standard_error_on(fit, 1.0 * day))));
  CHECK(std::isinf(in(MPa, strength::standard_error_on(fit, Duration{}))));
  fit.covariance = {{std::nan(""), 0.0}, {0.0, 1.0}};
  CHECK(std::isinf(in(MPa, strength::standard_error_on(fit, 1.0 * day))));
}
