// Strength against maturity of one mix: three curves, and their fit to tested specimens.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "plan/strength_file.hpp"
#include "record/diagnostic.hpp"
#include "record/outcome.hpp"
#include "units/quantity.hpp"

namespace firstpick::strength {

struct AgedStrength {
  Duration age{};     // equivalent age
  Stress strength{};
};

// The numbers of a curve, in days and MPa:
//   hyperbolic    S_u [MPa], k [1/d], t_0 [d]
//   exponential   S_u [MPa], tau [d], a [1]
//   logarithmic   a [MPa], b [MPa]
struct CurveFit {
  plan::StrengthCurve curve = plan::StrengthCurve::hyperbolic;
  std::vector<double> parameters;
  std::vector<std::vector<double>> covariance;  // of the parameters, in their units
  std::vector<Stress> residuals;                // measured less fitted, in the order of the data
  Stress deviation{};                           // standard deviation of the residuals, n - p degrees of freedom
  Duration youngest{}, oldest{};                // of the data: the fit says nothing outside
  bool converged = false;
};

// Strength at an equivalent age; never below zero.
Stress strength_on(const CurveFit& fit, Duration age);

// Standard error of that strength, from the covariance of the fit: sqrt(g' C g), g its derivatives by the numbers.
// Infinite where it cannot be computed.
Stress standard_error_on(const CurveFit& fit, Duration age);

// The equivalent age at which the curve reaches a strength. Not assessed: a strength that it never reaches.
Outcome<Duration> age_for(const CurveFit& fit, Stress strength);

// Least squares. Not assessed: fewer distinct ages than the curve's numbers and one more; an age or a strength
// that is not positive and finite; a solver that does not converge; a covariance that cannot be computed.
Outcome<CurveFit> least_squares(plan::StrengthCurve curve, const std::vector<AgedStrength>& data);

// Why the numbers of a fit cannot be those of concrete; empty where they can: an end strength, a time scale or
// an exponent not above zero, a start of hardening before the pour, strength that falls with age.
std::string non_physical(const CurveFit& fit);

// A file of ages and strengths: `age [h],strength [psi]`, any time and stress unit.
std::variant<std::vector<AgedStrength>, std::vector<Diagnostic>> read_aged_strengths(const std::string& file,
                                                                                     std::string_view text);

std::string_view equation_of(plan::StrengthCurve curve);          // "S_u k (t - t_0) / (1 + k (t - t_0))"
std::vector<std::string_view> parameter_names(plan::StrengthCurve curve);
std::vector<std::string_view> parameter_units(plan::StrengthCurve curve);

}  // namespace firstpick::strength
