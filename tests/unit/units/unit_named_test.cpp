// Units of table entries: `value = 24, unit = "lbf / (psi^0.5 in^1.5)"`.

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <string_view>

#include "units/parse.hpp"

using namespace firstpick;

TEST_CASE("named units are the constants of quantity.hpp, bit for bit") {
  CHECK(unit_named<Length>("mm") == mm);
  CHECK(unit_named<Length>("in") == inch);
  CHECK(unit_named<Area>("in2") == in2);
  CHECK(unit_named<Volume>("ft3") == ft3);
  CHECK(unit_named<Density>("lb/ft3") == lb_per_ft3);
  CHECK(unit_named<Force>("lbf") == lbf);
  CHECK(unit_named<Force>("lb") == lbf);
  CHECK(unit_named<Force>("kip") == kip);
  CHECK(unit_named<Stress>("psi") == psi);
  CHECK(unit_named<Stress>("lbf/in2") == psi);
  CHECK(unit_named<Stress>("N/mm2") == MPa);
  CHECK(unit_named<Stress>("kN/m2") == kPa);
  CHECK(unit_named<Angle>("deg") == deg);
  CHECK(unit_named<Speed>("ft/min") == ft_per_min);
  CHECK(unit_named<Mass>("short ton") == short_ton);
}

TEST_CASE("coefficients of empirical formulas") {
  CHECK(unit_named<RootStress>("psi^0.5") == root(psi));
  CHECK(unit_named<RootStress>("MPa^0.5") == root(MPa));
  CHECK(unit_named<RootStress>("psi^(1/2)") == root(psi));
  const BreakoutCoefficient in_psi = lbf / (root(psi) * power<3, 2>(inch));
  const BreakoutCoefficient in_MPa = newton / (root(MPa) * power<3, 2>(mm));
  CHECK(unit_named<BreakoutCoefficient>("lbf / (psi^0.5 in^1.5)")->value() ==
        Approx(in_psi.value()).epsilon(1e-15));
  CHECK(unit_named<BreakoutCoefficient>("N / (MPa^0.5 mm^1.5)")->value() ==
        Approx(in_MPa.value()).epsilon(1e-15));
  CHECK(unit_named<BreakoutCoefficient>("N/(MPa^0.5 mm^(3/2))")->value() ==
        Approx(in_MPa.value()).epsilon(1e-15));
  const DeepBreakoutCoefficient deep = lbf / (root(psi) * power<5, 3>(inch));
  CHECK(unit_named<DeepBreakoutCoefficient>("lbf / (psi^0.5 in^(5/3))")->value() ==
        Approx(deep.value()).epsilon(1e-15));
}

TEST_CASE("24 lbf / (psi^0.5 in^1.5) gives in pounds what the formula gives in pounds") {
  const BreakoutCoefficient k_c = 24.0 * *unit_named<BreakoutCoefficient>("lbf / (psi^0.5 in^1.5)");
  const Force N_b = k_c * root(2500.0 * psi) * power<3, 2>(4.0 * inch);
  CHECK(in(lbf, N_b) == Approx(24.0 * 50.0 * 8.0).epsilon(1e-14));
}

TEST_CASE("the unit of a ratio, of a rate, of a time") {
  CHECK(unit_named<Ratio>("1") == Ratio{1.0});
  CHECK(unit_named<Ratio>("%") == Ratio{0.01});
  CHECK(unit_named<Ratio>("mm/mm") == Ratio{1.0});
  using Rate = decltype(1.0 / Duration{});
  CHECK(unit_named<Rate>("1/h")->value() == Approx(1.0 / 3600.0));
  CHECK(unit_named<Rate>("h^-1")->value() == Approx(1.0 / 3600.0));
  CHECK(unit_named<Duration>("d") == day);
  CHECK(unit_named<Inertia>("kg m2") == Inertia::from_value(1.0));
}

TEST_CASE("no unit, no value") {
  for (const std::string_view unit : {"", " ", "lb", "mm2", "parsec", "1", "mm ", " mm", "mm mm/mm/mm",
                                      "degC", "2", "3 mm", "mm)", "m^", "%", "1/m", "\u00b5m"}) {
    CAPTURE(unit);
    CHECK_FALSE(unit_named<Length>(unit).has_value());
  }
  CHECK_FALSE(unit_named<Ratio>("11").has_value());
  CHECK_FALSE(unit_named<Ratio>("1 mm").has_value());
  CHECK_FALSE(unit_named<Ratio>("").has_value());
  CHECK_FALSE(unit_named<Mass>("kN").has_value());
}

TEST_CASE("one degree on a scale is not a unit to multiply with") {
  using Difference = bu::quantity<bu::si::temperature>;
  CHECK(unit_named<Difference>("K").has_value());
  CHECK_FALSE(unit_named<Difference>("degC").has_value());
  CHECK(quantity_in<Temperature>(-10.0, "degC")->value() == Approx(263.15).epsilon(1e-14));
  CHECK(quantity_in<Temperature>(14.0, "degF")->value() == Approx(263.15).epsilon(1e-14));
  CHECK_FALSE(quantity_in<Temperature>(-300.0, "degC").has_value());
}

TEST_CASE("a number and its unit from a table") {
  CHECK(quantity_in<Stress>(17.5, "MPa") == 17.5 * MPa);
  CHECK(quantity_in<Ratio>(3.0, "%") == Ratio{0.03});
  CHECK(quantity_in<Length>(-4.0, "in") == -4.0 * inch);
  CHECK_FALSE(quantity_in<Stress>(17.5, "kip").has_value());
  CHECK_FALSE(quantity_in<Stress>(std::numeric_limits<double>::quiet_NaN(), "MPa").has_value());
  CHECK_FALSE(quantity_in<Stress>(std::numeric_limits<double>::infinity(), "MPa").has_value());
  CHECK_FALSE(quantity_in<Stress>(1e308, "MPa").has_value());
}
