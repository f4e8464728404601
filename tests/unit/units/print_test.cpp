// Quantities as a precast shop reads them.

#include "units/print.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <string>

using namespace firstpick;

namespace {
constexpr auto us = UnitSystem::us;
constexpr auto si = UnitSystem::si;
constexpr auto nearest = Rounding::nearest;
constexpr auto up = Rounding::up;
constexpr auto down = Rounding::down;
}  // namespace

TEST_CASE("lengths in us as on a tape") {
  CHECK(print(100.5 * inch, us) == "8 ft 4 1/2 in");
  CHECK(print(100.0 * inch, us) == "8 ft 4 in");
  CHECK(print(8.0 * ft, us) == "8 ft 0 in");
  CHECK(print(96.5 * inch, us) == "8 ft 0 1/2 in");
  CHECK(print(4.5 * inch, us) == "4 1/2 in");
  CHECK(print(0.75 * inch, us) == "3/4 in");
  CHECK(print(0.0625 * inch, us) == "1/16 in");
  CHECK(print(12.0 * inch, us) == "1 ft 0 in");
  CHECK(print(11.99 * inch, us) == "1 ft 0 in");
  CHECK(print(1.0 * inch, us) == "1 in");
  CHECK(print(Length{}, us) == "0 in");
  CHECK(print(-4.5 * inch, us) == "-4 1/2 in");
  CHECK(print(-100.0 * inch, us) == "-8 ft 4 in");
  CHECK(print(2.1 * m, us) == "6 ft 10 11/16 in");  // 82.677 in, 82 11/16 = 82.6875
}

TEST_CASE("a length below an inch that is not on the tape keeps its decimals") {
  CHECK(print(0.3 * mm, us) == "0.0118 in");
  CHECK(print(0.02 * inch, us) == "0.0200 in");
  CHECK(print(19.0 * mm, us) == "0.748 in");
}

TEST_CASE("lengths in us round against the lift to the next sixteenth") {
  const Length a_little_more = 100.01 * inch;
  CHECK(print(a_little_more, us, nearest) == "8 ft 4 in");
  CHECK(print(a_little_more, us, up) == "8 ft 4 1/16 in");
  CHECK(print(a_little_more, us, down) == "8 ft 4 in");
  CHECK(print(-1.0 * a_little_more, us, up) == "-8 ft 4 1/16 in");
  CHECK(print(100.0 * inch, us, up) == "8 ft 4 in");
  CHECK(print(100.0 * inch, us, down) == "8 ft 4 in");
}

TEST_CASE("lengths in si in millimetres, from 10 m in metres") {
  CHECK(print(2.1 * m, si) == "2100 mm");
  CHECK(print(100.0 * inch, si) == "2540 mm");
  CHECK(print(0.75 * inch, si) == "19.1 mm");
  CHECK(print(20.0 * mm, si) == "20 mm");
  CHECK(print(0.305 * mm, si) == "0.305 mm");
  CHECK(print(9999.0 * mm, si) == "9999 mm");
  CHECK(print(10.0 * m, si) == "10.000 m");
  CHECK(print(12.3456 * m, si) == "12.346 m");
  CHECK(print(12.3451 * m, si, up) == "12.346 m");
  CHECK(print(12.3459 * m, si, down) == "12.345 m");
  CHECK(print(Length{}, si) == "0 mm");
  CHECK(print(-2.1 * m, si) == "-2100 mm");
}

TEST_CASE("forces and weights alike") {
  CHECK(print(350.0 * lbf, us) == "350 lb");
  CHECK(print(9876.0 * lbf, us) == "9876 lb");
  CHECK(print(9999.0 * lbf, us) == "9999 lb");
  CHECK(print(10.0 * kip, us) == "10.0 kip");
  CHECK(print(19.2 * kip, us) == "19.2 kip");
  CHECK(print(123.4 * kip, us) == "123 kip");
  CHECK(print(12.5 * lbf, us) == "12.5 lb");
  CHECK(print(0.5 * lbf, us) == "0.500 lb");
  CHECK(print(85.4 * kN, si) == "85.4 kN");
  CHECK(print(3.25 * kN, si) == "3.25 kN");
  CHECK(print(350.0 * newton, si) == "350 N");
  CHECK(print(1234.5 * kN, si) == "1235 kN");
  CHECK(print(Force{}, us) == "0 lb");
  CHECK(print(-3.25 * kN, si) == "-3.25 kN");
}

TEST_CASE("a demand is rounded up, a resistance down") {
  CHECK(print(19.21 * kip, us, up) == "19.3 kip");
  CHECK(print(19.29 * kip, us, down) == "19.2 kip");
  CHECK(print(19.21 * kip, us, nearest) == "19.2 kip");
  CHECK(print(-19.21 * kip, us, up) == "-19.3 kip");
  CHECK(print(-19.29 * kip, us, down) == "-19.2 kip");
  CHECK(print(9999.2 * lbf, us, up) == "10000 lb");
  CHECK(print(99.96 * kN, si, up) == "100 kN");
  CHECK(print(99.96 * kN, si, down) == "99.9 kN");
  CHECK(print(17.94 * MPa, si, up) == "18.0 MPa");
}

TEST_CASE("what is at printing precision already does not move, whatever the noise") {
  for (const Rounding rounding : {nearest, up, down}) {
    CHECK(print((0.1 + 0.2) * kN * 10.0, si, rounding) == "3.00 kN");
    CHECK(print(19.2 * kip, us, rounding) == "19.2 kip");
    CHECK(print(19.2 * kip * (1.0 + 1e-13), us, rounding) == "19.2 kip");
    CHECK(print(19.2 * kip * (1.0 - 1e-13), us, rounding) == "19.2 kip");
    CHECK(print(10.0 * kip * (1.0 - 1e-13), us, rounding) == "10.0 kip");
    CHECK(print(3.0 * Ratio{0.01}, us, rounding) == "3 %");
    CHECK(print(100.0 * inch * (1.0 + 1e-13), us, rounding) == "8 ft 4 in");
    CHECK(print(Temperature::from_value(293.15), si, rounding) == "20 degC");
    CHECK(print(Temperature::from_value(293.15), us, rounding) == "68 degF");
    CHECK(print(60.0 * deg, us, rounding) == "60.0 deg");
    CHECK(print(14.5 * hour, us, rounding) == "14 h 30 min");
  }
}

TEST_CASE("stresses: the unit goes with the size") {
  CHECK(print(2500.0 * psi, us) == "2500 psi");
  CHECK(print(10000.0 * psi, us) == "10000 psi");
  CHECK(print(60.0 * ksi, us) == "60.0 ksi");
  CHECK(print(20.0 * psf, us) == "20.0 psf");
  CHECK(print(1.0 * psi, us) == "1.00 psi");
  CHECK(print(17.5 * MPa, si) == "17.5 MPa");
  CHECK(print(2.0 * MPa, si) == "2.00 MPa");
  CHECK(print(420.0 * MPa, si) == "420 MPa");
  CHECK(print(20.0 * psf, si) == "0.958 kPa");
  CHECK(print(0.1 * MPa, si) == "0.100 MPa");
}

TEST_CASE("areas, volumes, masses, densities") {
  CHECK(print(0.91 * in2, us) == "0.910 in2");
  CHECK(print(324.0 * in2, us) == "324 in2");
  CHECK(print(48.0 * ft2, us) == "48.0 ft2");
  CHECK(print(587.0 * mm2, si) == "587 mm2");
  CHECK(print(202500.0 * mm2, si) == "202500 mm2");
  CHECK(print(4.46 * m2, si) == "4.46 m2");
  CHECK(print(128.0 * ft3, us) == "128 ft3");
  CHECK(print(3.62 * m3, si) == "3.62 m3");
  CHECK(print(19200.0 * lb_mass, us) == "19200 lb");
  CHECK(print(8709.0 * kg, si) == "8709 kg");
  CHECK(print(12.4 * tonne, si) == "12.4 t");
  CHECK(print(150.0 * lb_per_ft3, us) == "150 lb/ft3");
  CHECK(print(150.0 * lb_per_ft3, si) == "2403 kg/m3");
}

TEST_CASE("moments, stiffnesses, speeds, accelerations, angles, ratios") {
  CHECK(print(3.2 * kip * ft, us) == "3.20 kip ft");
  CHECK(print(350.0 * lbf * ft, us) == "350 lb ft");
  CHECK(print(4.34 * kN * m, si) == "4.34 kN m");
  CHECK(print(50.0 * newton * m, si) == "50.0 N m");
  CHECK(print(12.0 * (kip / inch), us) == "12.0 kip/in");
  CHECK(print(12.0 * (lbf / inch), us) == "12.0 lb/in");
  CHECK(print(2.1 * (kN / mm), si) == "2.10 kN/mm");
  CHECK(print(210.0 * (newton / mm), si) == "210 N/mm");
  CHECK(print(24.0 * ft_per_min, us) == "24.0 ft/min");
  CHECK(print(0.2 * m_per_s, si) == "0.200 m/s");
  CHECK(print(standard_gravity, si) == "9.81 m/s2");
  CHECK(print(standard_gravity, us) == "32.2 ft/s2");
  CHECK(print(60.0 * deg, us) == "60.0 deg");
  CHECK(print(59.96 * deg, us, down) == "59.9 deg");
  CHECK(print(-0.01 * deg, si) == "0.0 deg");
  CHECK(print(Ratio{0.03}, us) == "3 %");
  CHECK(print(Ratio{0.005}, us) == "0.5 %");
  CHECK(print(Ratio{0.12345}, us) == "12.3 %");
  CHECK(print(Ratio{1.0}, us) == "100 %");
}

TEST_CASE("durations") {
  CHECK(print(14.0 * hour, us) == "14 h");
  CHECK(print(14.5 * hour, si) == "14 h 30 min");
  CHECK(print(30.0 * minute, us) == "30 min");
  CHECK(print(150.0 * second, us) == "2 min 30 s");
  CHECK(print(12.3 * second, us) == "12.3 s");
  CHECK(print(30.0 * second, us) == "30 s");
  CHECK(print(47.5 * hour, us) == "47 h 30 min");
  CHECK(print(47.9999 * hour, us) == "48 h");
  CHECK(print(28.0 * day, us) == "28 d");
  CHECK(print(3.0 * day + 4.0 * hour, us) == "3 d 4 h");
  CHECK(print(14.501 * hour, us, up) == "14 h 31 min");
  CHECK(print(14.509 * hour, us, down) == "14 h 30 min");
  CHECK(print(3599.7 * second, us) == "1 h");
  CHECK(print(Duration{}, us) == "0 s");
  CHECK(print(-14.5 * hour, us) == "-14 h 30 min");
}

TEST_CASE("temperatures") {
  CHECK(print(Temperature::from_value(293.15), si) == "20 degC");
  CHECK(print(Temperature::from_value(293.15), us) == "68 degF");
  CHECK(print(Temperature::from_value(263.15), si) == "-10 degC");
  CHECK(print(Temperature::from_value(300.0), si) == "26.9 degC");  // 26.85 is a little above
  CHECK(print(Temperature::from_value(0.0), si) == "0 K");
}

TEST_CASE("what is not finite is words, in every overload") {
  const auto says_so = [](auto one) {
    using Q = decltype(one);
    const double infinity = std::numeric_limits<double>::infinity();
    for (const double bad : {std::numeric_limits<double>::quiet_NaN(), infinity, -infinity})
      for (const UnitSystem system : {us, si})
        for (const Rounding rounding : {nearest, up, down})
          CHECK(print(Q::from_value(bad), system, rounding) == "not a number");
  };
  says_so(Length{});
  says_so(Area{});
  says_so(Volume{});
  says_so(Mass{});
  says_so(Density{});
  says_so(Force{});
  says_so(Stress{});
  says_so(Moment{});
  says_so(Angle{});
  says_so(Duration{});
  says_so(Speed{});
  says_so(Acceleration{});
  says_so(Temperature{});
  says_so(Ratio{});
  says_so(Stiffness{});
}

TEST_CASE("numbers for columns come in the unit that print would take") {
  CHECK(in_print_unit(19.2 * kip, us).value == Approx(19.2).epsilon(1e-14));
  CHECK(in_print_unit(19.2 * kip, us).unit == "kip");
  CHECK(in_print_unit(100.5 * inch, us).value == Approx(100.5).epsilon(1e-14));
  CHECK(in_print_unit(100.5 * inch, us).unit == "in");
  CHECK(in_print_unit(2.1 * m, si).unit == "mm");
  CHECK(in_print_unit(Temperature::from_value(293.15), us).value == Approx(68.0));
  CHECK(in_print_unit(Ratio{0.03}, si).value == Approx(3.0));
  CHECK(in_print_unit(14.5 * hour, si).value == Approx(14.5));
}

TEST_CASE("two values that differ do not read alike") {
  CHECK(print_apart(19.96 * MPa, 20.0 * MPa, si) == "19.96 MPa");
  CHECK(print_apart(19.2 * MPa, 20.0 * MPa, si) == "19.2 MPa");
  CHECK(print_apart(20.0 * MPa, 20.0 * MPa, si) == "20.0 MPa");
  CHECK(print_apart(5.99 * inch, 6.0 * inch, us) == "5.990 in");
  CHECK(print_apart(6.0 * inch, 5.99 * inch, us) == "6.000 in");
  CHECK(print_apart(100.01 * inch, 100.0 * inch, us) == "100.01 in");
  const Stress one_step_below = Stress::from_value(std::nextafter(20e6, 0.0));
  CHECK(print_apart(one_step_below, 20.0 * MPa, si) != print(20.0 * MPa, si));
  CHECK(print_apart(one_step_below, 20.0 * MPa, si) == "19.999999999999996 MPa");
}
