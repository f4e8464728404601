// The ends of what a quantity can be: the largest and smallest double, zero, and one step beyond a limit of
// the written form.

#include <catch2/catch.hpp>

#include <cmath>
#include <string>
#include <string_view>

#include "unit/units/reading.hpp"
#include "units/parse.hpp"
#include "units/print.hpp"

using namespace firstpick;
using firstpick::tests::fault_in;
using firstpick::tests::read_as;

TEST_CASE("the largest double is read, a step more is not") {
  CHECK(read_as<Length>("1.7976931348623157e308 m").value() == 1.7976931348623157e308);
  CHECK(fault_in<Length>("1.8e308 m").at == 0);
  CHECK(fault_in<Length>("1e309 m").at == 0);
  CHECK(fault_in<Length>("1e306 km").what == "the quantity is too large or too small");
  CHECK(read_as<Length>("1e305 km").value() == Approx(1e308));
  CHECK(fault_in<Ratio>("1e309").at == 0);
}

TEST_CASE("what is written as more than zero never becomes zero") {
  CHECK(read_as<Length>("1e-307 m").value() == 1e-307);
  CHECK_THAT(fault_in<Length>("1e-310 m").what, Catch::Contains("too large or too small"));
  CHECK_THAT(fault_in<Length>("1e-400 m").what, Catch::Contains("too large or too small"));
  CHECK_THAT(fault_in<Length>("1e-307 mm").what, Catch::Contains("too large or too small"));
  CHECK_THAT(fault_in<Ratio>("1e-310").what, Catch::Contains("too large or too small"));
  CHECK_THAT(fault_in<Ratio>("1e-307 %").what, Catch::Contains("too large or too small"));
  CHECK(read_as<Length>("0e0 m").value() == 0.0);
  CHECK(read_as<Length>("0.000 m").value() == 0.0);
}

TEST_CASE("a unit whose own size overflows is a fault and no infinite quantity") {
  CHECK(fault_in<Length>("1 km^6/(km^6)").what == "given: a ratio, needed: a length");
  std::string huge = "1 m";
  for (int n = 0; n < 60; ++n) huge += " GPa^6/Pa^6";
  CHECK(fault_in<Length>(huge).at <= huge.size());
  std::string product = "km^6";
  for (int n = 0; n < 30; ++n) product += " km^6";
  const std::string cancels = "1 m " + product + "/(" + product + ")";
  CHECK(fault_in<Length>(cancels).what == "the unit is too large or too small");
}

TEST_CASE("inches after feet: below 12, at 12, above") {
  CHECK(read_as<Length>("8 ft 11.999999 in").value() == Approx(107.999999 * 0.0254));
  CHECK(read_as<Length>("8 ft 11 15/16 in").value() == Approx(107.9375 * 0.0254));
  CHECK(fault_in<Length>("8 ft 12 in").at == 5);
  CHECK(fault_in<Length>("8 ft 12.000001 in").at == 5);
  CHECK(fault_in<Duration>("1 h 60 min").at == 4);
  CHECK(read_as<Duration>("1 h 59.9 min").value() == Approx(7194.0));
}

TEST_CASE("the fraction of a mixed number: below one, one, above") {
  CHECK(read_as<Length>("1 15/16 in").value() == Approx(1.9375 * 0.0254));
  CHECK(fault_in<Length>("1 16/16 in").at == 2);
  CHECK(fault_in<Length>("1 17/16 in").at == 2);
  CHECK(read_as<Length>("16/16 in") == 1.0 * inch);
  CHECK(read_as<Length>("0/16 in") == Length{});
  CHECK(fault_in<Length>("0/0 in").at == 2);
}

TEST_CASE("absolute zero") {
  CHECK(read_as<Temperature>("-273.15 degC").value() == 0.0);
  CHECK(fault_in<Temperature>("-273.16 degC").at == 0);
  CHECK(read_as<Temperature>("-459.67 degF").value() == Approx(0.0).margin(1e-12));
  CHECK(fault_in<Temperature>("-459.68 degF").at == 0);
}

TEST_CASE("long texts are read or refused, not choked on") {
  const std::string digits(10000, '1');
  CHECK(fault_in<Length>(digits + " m").at == 0);
  CHECK(read_as<Length>("0." + digits + " m").value() == Approx(1.0 / 9.0));
  CHECK(read_as<Length>(std::string(10000, ' ') + "1 m") == m);
  const std::string letters(10000, 'k');
  const QuantityFault fault = fault_in<Length>("1 " + letters);
  CHECK(fault.at == 2);
  CHECK(fault.what.size() < 100);
}

TEST_CASE("units of print change where they say they do") {
  const auto print_us = [](auto q) { return print(q, UnitSystem::us); };
  const auto print_si = [](auto q) { return print(q, UnitSystem::si); };
  CHECK(print_us(9.999 * kip) == "9999 lb");
  CHECK(print_us(10.0 * kip) == "10.0 kip");
  CHECK(print_us(10.001 * kip) == "10.0 kip");
  CHECK(print_si(0.999 * kN) == "999 N");
  CHECK(print_si(1.0 * kN) == "1.00 kN");
  CHECK(print_si(9.999 * m) == "9999 mm");
  CHECK(print_si(10.0 * m) == "10.000 m");
  CHECK(print_us(0.999 * psi) == "144 psf");
  CHECK(print_us(1.0 * psi) == "1.00 psi");
  CHECK(print_si(59.9 * second) == "59.9 s");
  CHECK(print_si(60.0 * second) == "1 min");
  CHECK(print_si(3599.0 * second) == "59 min 59 s");
  CHECK(print_si(3600.0 * second) == "1 h");
}

TEST_CASE("printing the largest and smallest doubles") {
  const double largest = 1.7976931348623157e308;
  for (const double value : {largest, -largest, 5e-324, -5e-324, 1e300, 1e-300}) {
    CAPTURE(value);
    CHECK_FALSE(print(Length::from_value(value), UnitSystem::si, Rounding::up).empty());
    CHECK_FALSE(print(Duration::from_value(value), UnitSystem::us).empty());
    CHECK_FALSE(print(Stress::from_value(value), UnitSystem::us).empty());
  }
  // More feet than a double holds: words, not digits of something else.
  CHECK(print(Length::from_value(largest), UnitSystem::us) == "not a number");
}
