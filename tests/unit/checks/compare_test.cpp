// The one comparison of the program: what passes, what fails, and what is no comparison at all.

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <random>

#include "checks/compare.hpp"

using namespace firstpick;
using namespace firstpick::checks;

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
const double not_a_number = std::numeric_limits<double>::quiet_NaN();

Comparison compared_kN(double demand_kN, double resistance_kN) {
  return compare<Force>(Demand<Force>{demand_kN * kN}, Resistance<Force>{resistance_kN * kN});
}

void check_missing(const Comparison& comparison) {
  CHECK(comparison.result == Result::missing);
  CHECK_FALSE(comparison.utilization.has_value());
  CHECK_FALSE(comparison.why.empty());
}

}  // namespace

TEST_CASE("a demand below the resistance passes, with its utilization") {
  const Comparison comparison = compared_kN(30.0, 40.0);
  CHECK(comparison.result == Result::pass);
  CHECK(comparison.utilization.value() == Approx(0.75).epsilon(1e-15));
  CHECK(comparison.why.empty());
}

TEST_CASE("a demand above the resistance fails") {
  CHECK(compared_kN(41.0, 40.0).result == Result::fail);
  CHECK(compared_kN(41.0, 40.0).utilization.value() > 1.0);
}

TEST_CASE("at the limit passes, one floating-point step over fails, one under passes") {
  std::mt19937_64 random(20260303);  // fixed seed: the same resistances on every run
  std::uniform_real_distribution<double> exponent(-12.0, 12.0);
  for (int i = 0; i < 2000; ++i) {
    const double limit_kN = std::pow(10.0, exponent(random));
    const Force limit = Force::from_value(limit_kN);
    const Force over = Force::from_value(std::nextafter(limit_kN, infinity));
    const Force under = Force::from_value(std::nextafter(limit_kN, 0.0));
    CAPTURE(limit_kN);
    REQUIRE(compare<Force>(Demand<Force>{limit}, Resistance<Force>{limit}).result == Result::pass);
    REQUIRE(compare<Force>(Demand<Force>{over}, Resistance<Force>{limit}).result == Result::fail);
    REQUIRE(compare<Force>(Demand<Force>{under}, Resistance<Force>{limit}).result == Result::pass);
  }
}

TEST_CASE("no demand passes: an insert that carries nothing") {
  CHECK(compared_kN(0.0, 40.0).result == Result::pass);
  CHECK(compared_kN(0.0, 40.0).utilization.value() == 0.0);
}

TEST_CASE("a resistance of zero is missing, even for no demand") {
  check_missing(compared_kN(1.0, 0.0));
  check_missing(compared_kN(0.0, 0.0));
  check_missing(compared_kN(0.0, -0.0));
}

TEST_CASE("a negative number on either side is missing") {
  check_missing(compared_kN(-1.0, 40.0));
  check_missing(compared_kN(1.0, -40.0));
  check_missing(compared_kN(-1.0, -40.0));
  check_missing(compared_kN(-std::numeric_limits<double>::denorm_min(), 40.0));
}

TEST_CASE("what is not a number is missing") {
  check_missing(compared_kN(not_a_number, 40.0));
  check_missing(compared_kN(30.0, not_a_number));
  check_missing(compared_kN(not_a_number, not_a_number));
}

TEST_CASE("what is not finite is missing: an unlimited resistance is nobody's resistance") {
  check_missing(compared_kN(infinity, 40.0));
  check_missing(compared_kN(30.0, infinity));
  check_missing(compared_kN(infinity, infinity));
  check_missing(compared_kN(-infinity, 40.0));
  check_missing(compared_kN(30.0, -infinity));
}

TEST_CASE("a utilization that overflows is missing, not a pass") {
  check_missing(compare<Ratio>(Demand<Ratio>{Ratio{1e300}}, Resistance<Ratio>{Ratio{1e-300}}));
}

TEST_CASE("a side that is not assessed is missing and hands on why and what to do") {
  const NotAssessed gap{"the tag is not in the plan", "write the tag"};
  const auto no_demand = compare<Force>(gap, Resistance<Force>{40.0 * kN});
  const auto no_resistance = compare<Force>(Demand<Force>{1.0 * kN}, gap);
  for (const Comparison& comparison : {no_demand, no_resistance}) {
    check_missing(comparison);
    CHECK(comparison.why == gap.why);
    CHECK(comparison.remedy == gap.remedy);
  }
}

TEST_CASE("neither side assessed: the demand's reason is told") {
  const auto comparison = compare<Force>(NotAssessed{"no demand", "a"}, NotAssessed{"no resistance", "b"});
  check_missing(comparison);
  CHECK(comparison.why == "no demand");
}

TEST_CASE("behind a factor a nominal strength is divided by it") {
  const auto behind = behind_factor<Force>(Resistance<Force>{40.0 * kN}, 4.0);
  REQUIRE(is_assessed(behind));
  CHECK(in(kN, std::get<Resistance<Force>>(behind).value) == Approx(10.0).epsilon(1e-15));
  CHECK(is_assessed(behind_factor<Force>(Resistance<Force>{40.0 * kN}, 1.0)));
}

TEST_CASE("a factor below 1, or none, leaves nothing to compare with") {
  for (const double factor : {std::nextafter(1.0, 0.0), 0.5, 0.0, -4.0, not_a_number, infinity, -infinity}) {
    CAPTURE(factor);
    const auto behind = behind_factor<Force>(Resistance<Force>{40.0 * kN}, factor);
    REQUIRE_FALSE(is_assessed(behind));
    CHECK_FALSE(std::get<NotAssessed>(behind).why.empty());
  }
}

TEST_CASE("a strength that is not assessed stays so behind its factor") {
  const auto behind = behind_factor<Force>(NotAssessed{"no strength", "test"}, 4.0);
  REQUIRE_FALSE(is_assessed(behind));
  CHECK(std::get<NotAssessed>(behind).why == "no strength");
  CHECK(std::get<NotAssessed>(behind).remedy == "test");
}
