// What a finding carries from the comparison behind it, and how its figures are told.

#include <catch2/catch.hpp>

#include <limits>

#include "checks/finding.hpp"

using namespace firstpick;
using namespace firstpick::checks;

TEST_CASE("a compared finding carries demand, nominal, factor, capacity and utilization") {
  const Finding finding = compared<Force>("sling-overload", "A1", Demand<Force>{12.0 * kN},
                                          Resistance<Force>{40.0 * kN}, 4.0, "clause 1");
  CHECK(finding.rule == "sling-overload");
  CHECK(finding.subject == "A1");
  CHECK(finding.result == Result::fail);
  CHECK(si_number(finding.demand.value()) == Approx(12.0));
  CHECK(si_number(finding.nominal.value()) == Approx(40.0));
  CHECK(finding.factor.value() == 4.0);
  CHECK(si_number(finding.capacity.value()) == Approx(10.0));
  CHECK(finding.utilization.value() == Approx(1.2));
  CHECK(finding.limit.value() == 1.0);
  CHECK(finding.clause == "clause 1");
}

TEST_CASE("a side that is not assessed leaves its figures empty and tells why") {
  const NotAssessed gap{"the tag is not in the plan", "write the tag"};
  const Finding finding = compared<Force>("sling-overload", "A1", Demand<Force>{12.0 * kN}, gap, 4.0, "clause 1");
  CHECK(finding.result == Result::missing);
  CHECK(finding.demand.has_value());
  CHECK_FALSE(finding.nominal.has_value());
  CHECK_FALSE(finding.capacity.has_value());
  CHECK_FALSE(finding.utilization.has_value());
  CHECK(finding.text == gap.why);
  CHECK(finding.remedy == gap.remedy);
}

TEST_CASE("a factor that is no factor makes a finding missing") {
  const Finding finding = compared<Force>("insert-rating", "A1", Demand<Force>{1.0 * kN}, Resistance<Force>{40.0 * kN},
                                          std::numeric_limits<double>::quiet_NaN(), "");
  CHECK(finding.result == Result::missing);
  CHECK_FALSE(finding.text.empty());
}

TEST_CASE("a finding is missing until somebody says otherwise") {
  CHECK(Finding{}.result == Result::missing);
  CHECK(Comparison{}.result == Result::missing);
}

TEST_CASE("each figure has its SI unit and number") {
  CHECK(si_unit(Figure{Force{1.0 * kN}}) == "kN");
  CHECK(si_unit(Figure{Stress{1.0 * MPa}}) == "MPa");
  CHECK(si_unit(Figure{Angle{1.0 * deg}}) == "deg");
  CHECK(si_unit(Figure{Length{1.0 * m}}) == "m");
  CHECK(si_unit(Figure{Duration{1.0 * hour}}) == "h");
  CHECK(si_unit(Figure{Ratio{1.0}}) == "1");
  CHECK(si_number(Figure{Force{12.5 * kN}}) == Approx(12.5));
  CHECK(si_number(Figure{Stress{20.0 * MPa}}) == Approx(20.0));
  CHECK(si_number(Figure{Angle{60.0 * deg}}) == Approx(60.0));
  CHECK(si_number(Figure{Length{152.4 * mm}}) == Approx(0.1524));
  CHECK(si_number(Figure{Duration{90.0 * minute}}) == Approx(1.5));
  CHECK(si_number(Figure{Ratio{0.25}}) == Approx(0.25));
}

TEST_CASE("a demand is printed up and a capacity down") {
  CHECK(print(Figure{Force{12.341 * kN}}, UnitSystem::si, Rounding::up) == "12.4 kN");
  CHECK(print(Figure{Force{12.399 * kN}}, UnitSystem::si, Rounding::down) == "12.3 kN");
}

TEST_CASE("results have their words") {
  CHECK(word_for(Result::pass) == "pass");
  CHECK(word_for(Result::note) == "note");
  CHECK(word_for(Result::missing) == "missing");
  CHECK(word_for(Result::fail) == "fail");
}
