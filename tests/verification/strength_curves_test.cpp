// Strength against maturity: forms quoted from ASTM C1074 and NISTIR 4819. Mixes A and B are two of the open data
// set of I-Cheng Yeh (1998), ages in days, strengths in MPa as printed there; the fits and the values on log W
// were computed with another program. Tolerance: half a unit of the last printed digit.
//
// Computed src/strength

#include "strength/strength_curve.hpp"
#include "support/assessed.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using plan::StrengthCurve;

namespace {

std::vector<strength::AgedStrength> mix(const std::vector<double>& strengths_MPa) {
  const std::vector<double> ages_d = {1, 3, 7, 14, 28};
  std::vector<strength::AgedStrength> data;
  for (std::size_t i = 0; i < ages_d.size(); ++i) data.push_back({ages_d[i] * day, strengths_MPa[i] * MPa});
  return data;
}
const auto mix_A = mix({12.64, 26.06, 33.21, 36.94, 44.09});
const auto mix_B = mix({6.27, 14.70, 23.22, 27.92, 31.35});

struct Printed {
  const std::vector<strength::AgedStrength>& data;
  StrengthCurve curve;
  std::vector<double> parameters, half_digits;
  double SSE, s;
  std::vector<double> fitted_MPa;
};

strength::CurveFit curve(StrengthCurve form, std::vector<double> parameters) {
  return {.curve = form, .parameters = std::move(parameters), .covariance = {}, .residuals = {}};
}

}  // namespace

TEST_CASE("least squares on mixes A and B, computed") {
  const std::vector<Printed> rows = {
      {mix_A, StrengthCurve::hyperbolic, {46.4517, 0.37498, -0.04123}, {5e-5, 5e-6, 5e-6}, 9.3085, 2.157,
       {13.044, 24.749, 33.691, 39.038, 42.418}},
      {mix_A, StrengthCurve::exponential, {54.1052, 1.88196, 0.54515}, {5e-5, 5e-6, 5e-6}, 5.9095, 1.719,
       {13.189, 24.913, 33.191, 38.708, 43.010}},
      {mix_A, StrengthCurve::logarithmic, {14.19034, 20.93939}, {5e-6, 5e-6}, 9.4106, 1.771,
       {14.190, 24.181, 31.886, 38.190, 44.493}},
      {mix_B, StrengthCurve::hyperbolic, {35.8058, 0.25869, 0.19595}, {5e-5, 5e-6, 5e-6}, 0.2954, 0.384,
       {6.165, 15.053, 22.833, 27.973, 31.435}},
      {mix_B, StrengthCurve::exponential, {40.0623, 2.80906, 0.62413}, {5e-5, 5e-6, 5e-6}, 0.8013, 0.633,
       {5.961, 15.343, 22.756, 27.756, 31.574}},
      {mix_B, StrengthCurve::logarithmic, {6.66758, 17.90882}, {5e-6, 5e-6}, 4.4823, 1.222,
       {6.668, 15.212, 21.802, 27.193, 32.584}}};
  for (const Printed& row : rows) {
    const strength::CurveFit fit = assessed(strength::least_squares(row.curve, row.data));
    CAPTURE(strength::equation_of(row.curve));
    for (std::size_t i = 0; i < row.parameters.size(); ++i) {
      CAPTURE(i);
      CHECK(fit.parameters[i] == Approx(row.parameters[i]).margin(2.0 * row.half_digits[i]).epsilon(0.0));
    }
    double squares = 0.0;
    for (std::size_t i = 0; i < row.data.size(); ++i) {
      squares += in(MPa, fit.residuals[i]) * in(MPa, fit.residuals[i]);
      CHECK(in(MPa, row.data[i].strength - fit.residuals[i]) == Approx(row.fitted_MPa[i]).margin(0.00051));
    }
    CHECK(squares == Approx(row.SSE).margin(0.00005));
    CHECK(in(MPa, fit.deviation) == Approx(row.s).margin(0.0005));
  }
}

TEST_CASE("the start of hardening of mix A by the hyperbola lies before the pour: no concrete") {
  CHECK(strength::non_physical(assessed(strength::least_squares(StrengthCurve::hyperbolic, mix_A))) ==
        "the fitted start of hardening lies before the pour");
  CHECK(strength::non_physical(assessed(strength::least_squares(StrengthCurve::hyperbolic, mix_B))).empty());
}

TEST_CASE("strength on logs W and C, computed") {
  const auto hyperbola = curve(StrengthCurve::hyperbolic, {50.0, 0.6, 0.20});
  const auto exponential = curve(StrengthCurve::exponential, {50.0, 30.0 / 24.0, 0.8});
  CHECK(in(MPa, strength::strength_on(hyperbola, 2.601331 * day)) == Approx(29.5149).margin(0.00005));
  CHECK(in(MPa, strength::strength_on(exponential, 2.601331 * day)) == Approx(28.6640).margin(0.00005));
  CHECK(in(MPa, strength::strength_on(hyperbola, 0.469606 * day)) == Approx(6.96199).margin(0.00005));
  CHECK(in(MPa, strength::strength_on(exponential, 0.469606 * day)) == Approx(5.60439).margin(0.00005));
  // S = -30 + 14 log10(M) with M = 1205 degC h: the same curve in days of 24 x 30 degC h at 20 degC, datum -10.
  const auto logarithm = curve(StrengthCurve::logarithmic, {-30.0 + 14.0 * std::log10(720.0), 14.0});
  CHECK(in(MPa, strength::strength_on(logarithm, 1205.0 / 720.0 * day)) == Approx(13.1338).margin(0.00005));
}

TEST_CASE("the age of a strength, computed") {
  const auto hyperbola = curve(StrengthCurve::hyperbolic, {50.0, 0.6, 0.20});
  const auto exponential = curve(StrengthCurve::exponential, {50.0, 30.0 / 24.0, 0.8});
  struct Row {
    double S_MPa, hyperbola_h, exponential_h;
  };
  for (const Row& row : {Row{10, 14.8000, 16.5493}, Row{15, 21.9429, 23.7876}, Row{20, 31.4667, 33.4641},
                         Row{30, 64.8000, 69.4673}}) {
    CAPTURE(row.S_MPa);
    CHECK(in(hour, assessed(strength::age_for(hyperbola, row.S_MPa * MPa))) == Approx(row.hyperbola_h).margin(0.00005));
    CHECK(in(hour, assessed(strength::age_for(exponential, row.S_MPa * MPa))) ==
          Approx(row.exponential_h).margin(0.00005));
  }
}
