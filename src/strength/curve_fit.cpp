// Fit of a strength curve to tested specimens, by least squares (Levenberg-Marquardt of Eigen).
//
//   sum (S_i - S(t_i))^2 -> min        s^2 = sum r_i^2 / (n - p)        cov = s^2 (J' J)^-1
//   standard error of S(t): sqrt(g' cov g)        g = dS(t)/dp
//
// Source   the method of least squares. t in days, S in MPa; start values from the data.
// Range    more distinct ages than numbers of the curve: else the fit goes through noise, and s has no meaning.

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include <Eigen/LU>
#include <unsupported/Eigen/NonLinearOptimization>
#include <unsupported/Eigen/NumericalDiff>

#include <fmt/format.h>

#include "strength/strength_curve.hpp"

namespace firstpick::strength {

namespace {

using plan::StrengthCurve;

// The curve without the limits of strength_on, so that a solver may step through odd numbers.
double curve_MPa(StrengthCurve curve, const Eigen::VectorXd& p, double t_d) {
  switch (curve) {
    case StrengthCurve::hyperbolic: return p[0] * p[1] * (t_d - p[2]) / (1.0 + p[1] * (t_d - p[2]));
    case StrengthCurve::exponential: return p[0] * std::exp(-std::pow(std::abs(p[1]) / t_d, p[2]));
    case StrengthCurve::logarithmic: return p[0] + p[1] * std::log10(t_d);
  }
  return 0.0;
}

struct Residuals {
  using Scalar = double;
  using InputType = Eigen::VectorXd;
  using ValueType = Eigen::VectorXd;
  using JacobianType = Eigen::MatrixXd;
  enum { InputsAtCompileTime = Eigen::Dynamic, ValuesAtCompileTime = Eigen::Dynamic };

  StrengthCurve curve;
  std::vector<double> t_d, S_MPa;
  int parameters;

  int inputs() const { return parameters; }
  int values() const { return static_cast<int>(t_d.size()); }
  int operator()(const Eigen::VectorXd& p, Eigen::VectorXd& r) const {
    for (std::size_t i = 0; i < t_d.size(); ++i)
      r[static_cast<Eigen::Index>(i)] = S_MPa[i] - curve_MPa(curve, p, t_d[i]);
    return 0;
  }
};

Eigen::VectorXd start_of(const Residuals& data) {
  const double highest = *std::ranges::max_element(data.S_MPa);
  std::vector<double> ages = data.t_d;
  std::ranges::sort(ages);
  const double middle = ages[ages.size() / 2];
  Eigen::VectorXd p(data.parameters);
  switch (data.curve) {
    case StrengthCurve::hyperbolic: p << 1.1 * highest, 1.0 / middle, 0.0; break;
    case StrengthCurve::exponential: p << 1.2 * highest, ages.front(), 0.6; break;
    case StrengthCurve::logarithmic: p << 0.0, highest; break;
  }
  return p;
}

// On the whole: the sign of the slope of a straight line.
bool rises(const Residuals& data) {
  const double n = static_cast<double>(data.t_d.size());
  double t_mean = 0.0, S_mean = 0.0, product = 0.0;
  for (std::size_t i = 0; i < data.t_d.size(); ++i) t_mean += data.t_d[i] / n, S_mean += data.S_MPa[i] / n;
  for (std::size_t i = 0; i < data.t_d.size(); ++i) product += (data.t_d[i] - t_mean) * (data.S_MPa[i] - S_mean);
  return product > 0.0;
}

NotAssessed no_fit(std::string why) {
  return {"the calibration cannot be fitted: " + std::move(why), "test more ages of this mix"};
}

// Filled from a solution; not assessed where the covariance has no meaning.
Outcome<CurveFit> fit_at(const Residuals& residuals, const Eigen::VectorXd& p) {
  const int n = residuals.values(), parameters = residuals.inputs();
  Eigen::VectorXd r(n);
  Eigen::MatrixXd J(n, parameters);
  residuals(p, r);
  Eigen::NumericalDiff<Residuals, Eigen::Central> derivatives(residuals);
  derivatives.df(p, J);
  const Eigen::FullPivLU<Eigen::MatrixXd> normal(J.transpose() * J);
  const double s_MPa = std::sqrt(r.squaredNorm() / (n - parameters));
  if (!p.allFinite() || !r.allFinite() || !std::isfinite(s_MPa)) return no_fit("its numbers are not finite");
  if (!normal.isInvertible()) return no_fit("the ages do not tell its numbers apart");
  const Eigen::MatrixXd covariance = s_MPa * s_MPa * normal.inverse();

  CurveFit fit{.curve = residuals.curve, .deviation = s_MPa * MPa, .converged = true};
  for (int i = 0; i < parameters; ++i) {
    fit.parameters.push_back(p[i]);
    fit.covariance.emplace_back();
    for (int j = 0; j < parameters; ++j) fit.covariance.back().push_back(covariance(i, j));
  }
  for (int i = 0; i < n; ++i) fit.residuals.push_back(r[i] * MPa);
  fit.youngest = *std::ranges::min_element(residuals.t_d) * day;
  fit.oldest = *std::ranges::max_element(residuals.t_d) * day;
  return fit;
}

}  // namespace

Stress standard_error_on(const CurveFit& fit, Duration age) {
  const Stress unknown = std::numeric_limits<double>::infinity() * MPa;
  const auto count = static_cast<Eigen::Index>(fit.parameters.size());
  const double t_d = in(day, age);
  if (!(t_d > 0.0) || fit.covariance.size() != fit.parameters.size()) return unknown;
  Eigen::VectorXd p(count), g(count);
  Eigen::MatrixXd C(count, count);
  for (Eigen::Index i = 0; i < count; ++i) {
    p[i] = fit.parameters[static_cast<std::size_t>(i)];
    for (Eigen::Index j = 0; j < count; ++j)
      C(i, j) = fit.covariance[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)];
  }
  for (Eigen::Index i = 0; i < count; ++i) {
    const double step = 1e-6 * std::max(std::abs(p[i]), 1e-3);
    Eigen::VectorXd above = p, below = p;
    above[i] += step;
    below[i] -= step;
    g[i] = (curve_MPa(fit.curve, above, t_d) - curve_MPa(fit.curve, below, t_d)) / (2.0 * step);
  }
  const double variance_MPa2 = g.dot(C * g);
  return std::isfinite(variance_MPa2) && variance_MPa2 >= 0.0 ? std::sqrt(variance_MPa2) * MPa : unknown;
}

Outcome<CurveFit> least_squares(StrengthCurve curve, const std::vector<AgedStrength>& data) {
  Residuals residuals{.curve = curve, .parameters = static_cast<int>(parameter_names(curve).size())};
  for (const AgedStrength& each : data) {
    if (!(each.age > Duration{}) || !is_finite(each.age) || !(each.strength > Stress{}) || !is_finite(each.strength))
      return no_fit("an age or a strength is not above zero");
    residuals.t_d.push_back(in(day, each.age));
    residuals.S_MPa.push_back(in(MPa, each.strength));
  }
  const std::set<double> ages(residuals.t_d.begin(), residuals.t_d.end());
  if (ages.size() < static_cast<std::size_t>(residuals.parameters) + 1)
    return no_fit(fmt::format("{} ages, and this curve needs {}", ages.size(), residuals.parameters + 1));

  if (curve != StrengthCurve::logarithmic && !rises(residuals))
    return NotAssessed{"the calibration cannot be fitted: its strengths do not rise with age",
                       "correct the file: ages and strengths of one mix"};
  Eigen::VectorXd p = start_of(residuals);
  Eigen::NumericalDiff<Residuals, Eigen::Central> derivatives(residuals);
  Eigen::LevenbergMarquardt<Eigen::NumericalDiff<Residuals, Eigen::Central>> solver(derivatives);
  solver.parameters.maxfev = 20000;
  solver.parameters.ftol = solver.parameters.xtol = 1e-14;
  const auto status = solver.minimize(p);
  using Status = Eigen::LevenbergMarquardtSpace::Status;
  const bool converged = status == Status::RelativeReductionTooSmall || status == Status::RelativeErrorTooSmall ||
                         status == Status::RelativeErrorAndReductionTooSmall || status == Status::CosinusTooSmall ||
                         status == Status::FtolTooSmall || status == Status::XtolTooSmall ||
                         status == Status::GtolTooSmall;
  if (!converged) return no_fit("the least squares did not converge");
  if (curve == StrengthCurve::exponential) p[1] = std::abs(p[1]);
  return fit_at(residuals, p);
}

}  // namespace firstpick::strength
