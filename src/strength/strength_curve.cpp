// Strength against equivalent age, three forms.
//
//   hyperbolic    S = S_u k (t - t_0) / (1 + k (t - t_0))      t > t_0, else 0
//   exponential   S = S_u exp(-(tau / t)^a)
//   logarithmic   S = a + b log10(t)                           not below 0
//
// Source   hyperbolic: Carino (NISTIR 4819 names it; the equation is from memory). Exponential, logarithmic
//          (Plowman): quoted, as forms of ASTM C1074. t in days, S in MPa.
// Range    the ages of the fitted specimens: youngest to oldest. What lies outside is the caller's to refuse.

#include <cmath>

#include "strength/strength_curve.hpp"

namespace firstpick::strength {

namespace {

using plan::StrengthCurve;

constexpr std::size_t first = 0, second = 1, third = 2;

}  // namespace

Stress strength_on(const CurveFit& fit, Duration age) {
  const double t_d = in(day, age);
  if (!(t_d > 0.0) || fit.parameters.size() < 2) return Stress{};
  const auto& p = fit.parameters;
  double S_MPa = 0.0;
  switch (fit.curve) {
    case StrengthCurve::hyperbolic: {
      const double since_d = t_d - p[third];
      S_MPa = since_d > 0.0 ? p[first] * p[second] * since_d / (1.0 + p[second] * since_d) : 0.0;
      break;
    }
    case StrengthCurve::exponential: S_MPa = p[first] * std::exp(-std::pow(p[second] / t_d, p[third])); break;
    case StrengthCurve::logarithmic: S_MPa = p[first] + p[second] * std::log10(t_d); break;
  }
  return S_MPa > 0.0 ? S_MPa * MPa : Stress{};
}

Outcome<Duration> age_for(const CurveFit& fit, Stress strength) {
  const double S_MPa = in(MPa, strength);
  const auto& p = fit.parameters;
  if (!(S_MPa > 0.0) || !std::isfinite(S_MPa) || p.size() < 2)
    return NotAssessed{"the strength is not a usable number", {}};
  if (fit.curve != StrengthCurve::logarithmic && !(S_MPa < p[first]))
    return NotAssessed{"the calibration curve never reaches this strength", {}};
  double t_d = 0.0;
  switch (fit.curve) {
    case StrengthCurve::hyperbolic: t_d = p[third] + S_MPa / (p[second] * (p[first] - S_MPa)); break;
    case StrengthCurve::exponential: t_d = p[second] / std::pow(std::log(p[first] / S_MPa), 1.0 / p[third]); break;
    case StrengthCurve::logarithmic: t_d = std::pow(10.0, (S_MPa - p[first]) / p[second]); break;
  }
  if (!(t_d > 0.0) || !std::isfinite(t_d)) return NotAssessed{"the age for this strength could not be computed", {}};
  return t_d * day;
}

std::string non_physical(const CurveFit& fit) {
  for (const double p : fit.parameters)
    if (!std::isfinite(p)) return "a number of the fitted curve is not finite";
  const auto& p = fit.parameters;
  if (fit.curve == StrengthCurve::logarithmic)
    return p[second] > 0.0 ? "" : "the fitted strength falls with age";
  if (!(p[first] > 0.0)) return "the fitted end strength is not above zero";
  if (!(p[second] > 0.0)) return "the fitted time scale is not above zero";
  if (fit.curve == StrengthCurve::hyperbolic && p[third] < 0.0)
    return "the fitted start of hardening lies before the pour";
  if (fit.curve == StrengthCurve::exponential && !(p[third] > 0.0)) return "the fitted exponent is not above zero";
  return "";
}

std::string_view equation_of(StrengthCurve curve) {
  switch (curve) {
    case StrengthCurve::hyperbolic: return "S_u k (t - t_0) / (1 + k (t - t_0))";
    case StrengthCurve::exponential: return "S_u exp(-(tau / t)^a)";
    case StrengthCurve::logarithmic: return "a + b log10(t)";
  }
  return "";
}

std::vector<std::string_view> parameter_names(StrengthCurve curve) {
  switch (curve) {
    case StrengthCurve::hyperbolic: return {"S_u", "k", "t_0"};
    case StrengthCurve::exponential: return {"S_u", "tau", "a"};
    case StrengthCurve::logarithmic: return {"a", "b"};
  }
  return {};
}

std::vector<std::string_view> parameter_units(StrengthCurve curve) {
  switch (curve) {
    case StrengthCurve::hyperbolic: return {"MPa", "1/d", "d"};
    case StrengthCurve::exponential: return {"MPa", "d", "1"};
    case StrengthCurve::logarithmic: return {"MPa", "MPa"};
  }
  return {};
}

}  // namespace firstpick::strength
