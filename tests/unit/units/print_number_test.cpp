// Decimal digits and the direction they are rounded in.

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <string>

#include "units/decimal_text.hpp"
#include "units/print.hpp"

using namespace firstpick;

TEST_CASE("significant figures") {
  CHECK(print_number(19.2, 3) == "19.2");
  CHECK(print_number(19.24, 3) == "19.2");
  CHECK(print_number(19.26, 3) == "19.3");
  CHECK(print_number(0.031, 3) == "0.0310");
  CHECK(print_number(1234.0, 3) == "1230");
  CHECK(print_number(1235.0, 3) == "1240");
  CHECK(print_number(1234567.0, 3) == "1230000");
  CHECK(print_number(2.0, 1) == "2");
  CHECK(print_number(2.0, 3) == "2.00");
  CHECK(print_number(9.996, 3) == "10.0");
  CHECK(print_number(0.9996, 3) == "1.00");
  CHECK(print_number(0.0, 3) == "0");
  CHECK(print_number(-0.0, 3) == "0");
  CHECK(print_number(-19.26, 3) == "-19.3");
  CHECK(print_number(1.0 / 3.0, 15) == "0.333333333333333");
  CHECK(print_number(0.1, 17) == "0.10000000000000001");
}

TEST_CASE("figures outside 1 to 17 are brought inside") {
  CHECK(print_number(19.2, 0) == "20");
  CHECK(print_number(19.2, -5) == "20");
  CHECK(print_number(0.1, 100) == "0.10000000000000001");
}

TEST_CASE("up is away from zero, down is toward it") {
  CHECK(print_number(19.21, 3, Rounding::up) == "19.3");
  CHECK(print_number(19.29, 3, Rounding::down) == "19.2");
  CHECK(print_number(-19.21, 3, Rounding::up) == "-19.3");
  CHECK(print_number(-19.29, 3, Rounding::down) == "-19.2");
  CHECK(print_number(9.991, 3, Rounding::up) == "10.0");
  CHECK(print_number(1231.0, 3, Rounding::up) == "1240");
  CHECK(print_number(1e-300, 3, Rounding::up) == "1.00e-300");
}

TEST_CASE("noise below a relative 1e-9 does not move the last figure, more than that does") {
  CHECK(print_number(0.1 + 0.2, 3, Rounding::up) == "0.300");
  CHECK(print_number(0.3 * (1.0 + 0.9e-9), 3, Rounding::up) == "0.300");
  CHECK(print_number(0.3 * (1.0 + 1.1e-9), 3, Rounding::up) == "0.301");
  CHECK(print_number(0.3 * (1.0 - 0.9e-9), 3, Rounding::down) == "0.300");
  CHECK(print_number(0.3 * (1.0 - 1.1e-9), 3, Rounding::down) == "0.299");
  CHECK(print_number(0.7 * 3.0, 2, Rounding::down) == "2.1");  // 2.0999999999999996
}

TEST_CASE("very large and very small numbers take a power of ten") {
  CHECK(print_number(1.234e20, 3) == "1.23e20");
  CHECK(print_number(1.234e-9, 3) == "1.23e-9");
  CHECK(print_number(9.999e20, 3) == "1.00e21");
  CHECK(print_number(2e20, 1) == "2e20");
  CHECK(print_number(1.234e-6, 3) == "0.00000123");
  CHECK(print_number(std::numeric_limits<double>::max(), 3) == "1.80e308");
  CHECK(print_number(std::numeric_limits<double>::denorm_min(), 3) == "4.94e-324");
  CHECK(print_number(123456789012345.0, 3) == "123000000000000");
}

TEST_CASE("not finite is not a number") {
  CHECK(print_number(std::nan(""), 3) == "not a number");
  CHECK(print_number(HUGE_VAL, 3) == "not a number");
  CHECK(print_number(-HUGE_VAL, 3) == "not a number");
  CHECK(fixed_decimals(std::nan(""), 2, Rounding::nearest) == "not a number");
  CHECK(fixed_decimals(HUGE_VAL, 2, Rounding::up) == "not a number");
  CHECK(figures_or_whole(std::nan(""), 3, Rounding::nearest) == "not a number");
}

TEST_CASE("figures, but never fewer than the whole number") {
  CHECK(figures_or_whole(9876.4, 3, Rounding::nearest) == "9876");
  CHECK(figures_or_whole(9876.4, 3, Rounding::up) == "9877");
  CHECK(figures_or_whole(98.76, 3, Rounding::nearest) == "98.8");
  CHECK(figures_or_whole(999.96, 3, Rounding::nearest) == "1000");
  CHECK(figures_or_whole(0.0, 3, Rounding::nearest) == "0");
}

TEST_CASE("fixed decimals") {
  CHECK(fixed_decimals(0.004, 2, Rounding::nearest) == "0.00");
  CHECK(fixed_decimals(-0.004, 2, Rounding::nearest) == "0.00");
  CHECK(fixed_decimals(0.004, 2, Rounding::up) == "0.01");
  CHECK(fixed_decimals(12.345678, 3, Rounding::nearest) == "12.346");
  CHECK(fixed_decimals(59.0, 1, Rounding::nearest) == "59.0");
  CHECK(fixed_decimals(59.6, 0, Rounding::nearest) == "60");
  CHECK(fixed_decimals(1e20, 2, Rounding::nearest) == "1.00000000000000e20");
  CHECK(without_trailing_zeros("12.50") == "12.5");
  CHECK(without_trailing_zeros("12.00") == "12");
  CHECK(without_trailing_zeros("1200") == "1200");
  CHECK(without_trailing_zeros("1.00e20") == "1.00e20");
  CHECK(without_trailing_zeros("not a number") == "not a number");
}

TEST_CASE("utilization: two decimals, rounded up") {
  CHECK(print_utilization(0.0) == "0.00");
  CHECK(print_utilization(0.873) == "0.88");
  CHECK(print_utilization(0.87) == "0.87");
  CHECK(print_utilization(0.001) == "0.01");
  CHECK(print_utilization(0.29 + 0.58) == "0.87");  // 0.8699999999999999
  CHECK(print_utilization(1.2345) == "1.24");
  CHECK(print_utilization(12.0) == "12.00");
  CHECK(print_utilization(-0.5) == "-0.50");
  CHECK(print_utilization(1e6) == "1000000");
  CHECK(print_utilization(1e30) == "1.00e30");
}

TEST_CASE("utilization: a failure never reads 1.00, a pass never more") {
  CHECK(print_utilization(1.0) == "1.00");
  CHECK(print_utilization(0.9999) == "1.00");
  CHECK(print_utilization(std::nextafter(1.0, 0.0)) == "1.00");
  CHECK(print_utilization(1.004) == "1.004");
  CHECK(print_utilization(1.0041) == "1.005");
  CHECK(print_utilization(1.0000001) == "1.0000001");
  CHECK(print_utilization(1.0000001 + 1e-9) == "1.0000002");
  CHECK(print_utilization(1.0099) == "1.010");
  CHECK(print_utilization(1.01) == "1.01");
  CHECK(print_utilization(std::nextafter(1.0, 2.0)) == "1.0000000000000002");
}

TEST_CASE("utilization that is not finite is words") {
  CHECK(print_utilization(std::nan("")) == "not a number");
  CHECK(print_utilization(HUGE_VAL) == "not a number");
  CHECK(print_utilization(-HUGE_VAL) == "not a number");
}
