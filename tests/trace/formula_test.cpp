// The evaluator of the trace test itself: what it does not catch, nobody catches.

#include <catch2/catch.hpp>

#include <cmath>

#include "support/formula.hpp"

using namespace firstpick::tests;

TEST_CASE("formula: numbers, signs and the order of operations") {
  CHECK(value_of("2", {}) == 2.0);
  CHECK(value_of("1 + 2 * 3", {}) == 7.0);
  CHECK(value_of("(1 + 2) * 3", {}) == 9.0);
  CHECK(value_of("10 - 4 - 3", {}) == 3.0);
  CHECK(value_of("24 / 4 / 2", {}) == 3.0);
  CHECK(value_of("-2^2", {}) == -4.0);
  CHECK(value_of("(-2)^2", {}) == 4.0);
  CHECK(value_of("2^3^2", {}) == 512.0);
  CHECK(value_of("2^-1", {}) == 0.5);
  CHECK(value_of("3 * -2", {}) == -6.0);
  CHECK(value_of("8^(5 / 3)", {}) == Approx(32.0).epsilon(1e-14));
  CHECK(value_of("1.5e2", {}) == 150.0);
}

TEST_CASE("formula: functions") {
  CHECK(value_of("sqrt(16)", {}) == 4.0);
  CHECK(value_of("min(3, 1, 2) + max(3, 1)", {}) == 4.0);
  CHECK(value_of("sin(pi / 6)", {}) == Approx(0.5));
  CHECK(value_of("cos(0) + tan(0) + abs(-2)", {}) == 3.0);
}

TEST_CASE("formula: symbols with digits, underscores, primes and spelled Greek") {
  CHECK(value_of("k_c * psi_ed' + A_Nc2", {{"k_c", 2.0}, {"psi_ed'", 3.0}, {"A_Nc2", 1.0}}) == 7.0);
  CHECK(symbols_of("k_c * sqrt(f_c) * h_ef^1.5 + k_c + pi") == std::vector<std::string>{"k_c", "f_c", "h_ef"});
}

TEST_CASE("formula: what is no formula is refused") {
  for (const char* text : {"", "1 +", "(1", "1)", "2 3", "a", "sqrt()", "sqrt(1, 2)", "min(1)", "wurzel(2)", "1 ++", "k_c f_c",
                           "= 3", "3 %", "1..2"}) {
    CAPTURE(text);
    CHECK_THROWS_AS(value_of(text, {}), std::invalid_argument);
  }
}

TEST_CASE("formula: a symbol without a number is refused, not taken as zero") {
  CHECK_THROWS_AS(value_of("k_c * f_c", {{"k_c", 2.0}}), std::invalid_argument);
}
