// Conversion factors as printed in:
//   A. Thompson, B. N. Taylor, Guide for the Use of the International System of Units (SI),
//   NIST Special Publication 811, 2008 edition, Appendix B.8 "Factors for units listed alphabetically".
// Its factors have seven figures; those it prints in bold are exact. The figures here were written down from
// memory of that table, so each stands beside the exact definition it follows from (international yard and
// pound, 1959: 1 in = 25.4 mm, 1 lb = 0.45359237 kg; standard gravity 9.80665 m/s2), and both are asserted.
// Tolerance: half a unit of the seventh figure; for exact ones the rounding of a double.
//
// Outside  src/units

#include <catch2/catch.hpp>

#include <string_view>

#include "units/parse.hpp"

using namespace firstpick;

namespace {

constexpr double lb_kg = 0.45359237;
constexpr double g = 9.80665;
constexpr double in_m = 0.0254;
constexpr double ft_m = 12.0 * in_m;

struct Factor {
  std::string_view one_of;
  double printed;          // to SI units without prefix
  double half_last_digit;  // of the printed figures; 0 where the source marks the factor as exact
  double definition;
};

template <class Q, std::size_t count>
void agree(const Factor (&factors)[count]) {
  for (const Factor& f : factors) {
    CAPTURE(f.one_of);
    const auto read = parse<Q>(f.one_of);
    REQUIRE(std::holds_alternative<Q>(read));
    const double si = std::get<Q>(read).value();
    CHECK(si == Approx(f.printed).epsilon(1e-15).margin(f.half_last_digit));
    CHECK(si == Approx(f.definition).epsilon(1e-14).margin(0.0));
  }
}

}  // namespace

TEST_CASE("NIST SP 811, App. B.8: lengths") {
  const Factor factors[] = {
      {"1 in", 2.54e-2, 0.0, in_m},
      {"1 ft", 3.048e-1, 0.0, ft_m},
      {"1 yd", 9.144e-1, 0.0, 3.0 * ft_m},
  };
  agree<Length>(factors);
}

TEST_CASE("NIST SP 811, App. B.8: areas and volumes") {
  const Factor areas[] = {
      {"1 in2", 6.4516e-4, 0.0, in_m * in_m},
      {"1 ft2", 9.290304e-2, 0.0, ft_m * ft_m},
  };
  agree<Area>(areas);
  const Factor volumes[] = {
      {"1 in3", 1.638706e-5, 0.5e-11, in_m * in_m * in_m},
      {"1 ft3", 2.831685e-2, 0.5e-8, ft_m * ft_m * ft_m},
      {"1 yd3", 7.645549e-1, 0.5e-7, 27.0 * ft_m * ft_m * ft_m},
      {"1 L", 1.0e-3, 0.0, 1e-3},
  };
  agree<Volume>(volumes);
}

TEST_CASE("NIST SP 811, App. B.8: masses and densities") {
  const Factor masses[] = {
      {"1 lb", 4.535924e-1, 0.5e-7, lb_kg},
      {"1 short ton", 9.071847e2, 0.5e-4, 2000.0 * lb_kg},
      {"1 long ton", 1.016047e3, 0.5e-3, 2240.0 * lb_kg},
      {"1 t", 1.0e3, 0.0, 1000.0},
  };
  agree<Mass>(masses);
  const Factor densities[] = {{"1 lb/ft3", 1.601846e1, 0.5e-5, lb_kg / (ft_m * ft_m * ft_m)}};
  agree<Density>(densities);
}

TEST_CASE("NIST SP 811, App. B.8: forces") {
  const Factor factors[] = {
      {"1 lbf", 4.448222, 0.5e-6, lb_kg * g},
      {"1 kip", 4.448222e3, 0.5e-3, 1000.0 * lb_kg * g},
      {"1 kgf", 9.80665, 0.0, g},
  };
  agree<Force>(factors);
}

TEST_CASE("NIST SP 811, App. B.8: stresses and pressures") {
  const Factor factors[] = {
      {"1 psi", 6.894757e3, 0.5e-3, lb_kg * g / (in_m * in_m)},
      {"1 ksi", 6.894757e6, 0.5, 1000.0 * lb_kg * g / (in_m * in_m)},
      {"1 psf", 4.788026e1, 0.5e-5, lb_kg * g / (ft_m * ft_m)},
      {"1 kgf/cm2", 9.80665e4, 0.0, g * 1e4},
  };
  agree<Stress>(factors);
}

TEST_CASE("NIST SP 811, App. B.8: moments and forces per length") {
  const Factor moments[] = {
      {"1 lbf ft", 1.355818, 0.5e-6, lb_kg * g * ft_m},
      {"1 lbf in", 1.129848e-1, 0.5e-7, lb_kg * g * in_m},
  };
  agree<Moment>(moments);
  const Factor forces_per_length[] = {
      {"1 lbf/ft", 1.459390e1, 0.5e-5, lb_kg * g / ft_m},
      {"1 lbf/in", 1.751268e2, 0.5e-4, lb_kg * g / in_m},
  };
  agree<Stiffness>(forces_per_length);
}

TEST_CASE("NIST SP 811, App. B.8: speeds, accelerations, angles, times") {
  const Factor speeds[] = {
      {"1 ft/min", 5.08e-3, 0.0, ft_m / 60.0},
      {"1 mph", 4.4704e-1, 0.0, 5280.0 * ft_m / 3600.0},
      {"1 km/h", 2.777778e-1, 0.5e-7, 1.0 / 3.6},
  };
  agree<Speed>(speeds);
  const Factor accelerations[] = {{"1 ft/s2", 3.048e-1, 0.0, ft_m}};
  agree<Acceleration>(accelerations);
  const Factor angles[] = {{"1 deg", 1.745329e-2, 0.5e-8, 3.14159265358979323846 / 180.0}};
  agree<Angle>(angles);
  const Factor times[] = {
      {"1 d", 8.64e4, 0.0, 86400.0},
      {"1 h", 3.6e3, 0.0, 3600.0},
      {"1 min", 6.0e1, 0.0, 60.0},
  };
  agree<Duration>(times);
}

TEST_CASE("NIST SP 811, App. B.8: temperatures, T/K = t/degC + 273.15 and T/K = (t/degF + 459.67)/1.8") {
  const auto kelvin = [](std::string_view text) {
    return std::get<Temperature>(parse<Temperature>(text)).value();
  };
  CHECK(kelvin("0 degC") == 273.15);
  CHECK(kelvin("20 degC") == Approx(293.15).epsilon(1e-15));
  CHECK(kelvin("0 degF") == Approx(459.67 / 1.8).epsilon(1e-15));
  CHECK(kelvin("212 degF") == Approx(373.15).epsilon(1e-15));
}
