#include "resistances/cracking_stress.hpp"

#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

#include "support/assessed.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

Outcome<Resistance<Stress>> stress_of(const std::string& kind, Stress strength, Length depth, const std::string& set) {
  plan::Concrete concrete;
  concrete.kind = kind;
  Trace silent;
  return resistances::cracking_stress(concrete, strength, depth, us_tables().rule_sets.at(set), us_tables(), silent);
}

}  // namespace

// ACI 318-19 19.2.3.1, f_r = 7.5 lambda sqrt(f_c) in psi: at 2500 psi 375 psi, less in lightweight concrete by its lambda
// of table 19.2.4.2: 0.85 sand-lightweight, 0.75 all-lightweight.
TEST_CASE("ACI: a piece of lightweight concrete cracks at less, by lambda") {
  CHECK(in(psi, assessed(stress_of("normalweight", 2500.0 * psi, 8.0 * inch, "us")).value) == Approx(375.0));
  for (const auto& [kind, entry] : us_tables().concretes) {
    CAPTURE(kind);
    const double lambda = entry.lambda_a.value.value();
    CHECK(in(psi, assessed(stress_of(kind, 2500.0 * psi, 8.0 * inch, "us")).value) == Approx(375.0 * lambda));
  }
}

// EN 1992-1-1 table 3.1 and (3.23): f_ctm = 0.30 f_ck^(2/3) = 0.30 x 27^(2/3) = 2.7 MPa; f_ctk,0.05 = 0.7 f_ctm = 1.89 MPa;
// times 1.6 - h / 1000 mm, not less than 1.
TEST_CASE("EN: by the depth of the piece, and never less than in pure tension") {
  for (const auto& [h_mm, factor] : {std::pair{200.0, 1.4}, {400.0, 1.2}, {600.0, 1.0}, {900.0, 1.0}}) {
    CAPTURE(h_mm);
    CHECK(in(MPa, assessed(stress_of("normalweight", 27.0 * MPa, h_mm * mm, "eu")).value) == Approx(1.89 * factor));
  }
}

// Above C50/60 f_ctm = 2.12 ln(1 + (f_ck + 8) / 10): at 62 MPa 2.12 ln 8 = 4.408 MPa. The power alone would give 4.700 MPa.
TEST_CASE("EN: stronger than C50/60, tension follows the logarithm, which asks for more strength than the power") {
  const auto at = [](double f_MPa) { return in(MPa, assessed(stress_of("normalweight", f_MPa * MPa, 900.0 * mm, "eu")).value); };
  CHECK(at(62.0) == Approx(0.7 * 2.12 * std::log(8.0)));
  CHECK(at(50.0) == Approx(0.7 * 0.3 * std::pow(50.0, 2.0 / 3.0)));
  const double just_above = std::nextafter(50.0, 51.0);
  CHECK(at(just_above) == Approx(0.7 * 2.12 * std::log(6.8)));
  CHECK(at(just_above) < at(50.0));
  for (const double f : {55.0, 60.0, 80.0, 90.0}) CHECK(at(f) < 0.7 * 0.3 * std::pow(f, 2.0 / 3.0));
}

TEST_CASE("no cracking stress for a strength, depth or concrete that is none") {
  const double inf = std::numeric_limits<double>::infinity(), nan = std::nan("");
  for (const std::string set : {"us", "eu"})
    for (const double f : {0.0, -1.0, inf, nan}) {
      CAPTURE(set, f);
      CHECK_FALSE(why_not(stress_of("normalweight", f * MPa, 0.2 * m, set)).empty());
    }
  for (const double h : {0.0, -1.0, inf, nan}) {
    CAPTURE(h);
    CHECK(why_not(stress_of("normalweight", 20.0 * MPa, h * m, "eu")) == "the depth of the piece is not a usable number");
  }
  CHECK(why_not(stress_of("no such kind", 20.0 * MPa, 0.2 * m, "us")) == "the kind of concrete is not in the tables");
  for (const auto& [kind, entry] : us_tables().concretes)
    if (entry.lambda_a.value.value() != 1.0) {
      CAPTURE(kind);
      CHECK_FALSE(why_not(stress_of(kind, 20.0 * MPa, 0.2 * m, "eu")).empty());  // the formulas are for normal concrete
    }
}
