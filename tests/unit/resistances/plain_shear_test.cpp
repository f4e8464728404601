// Shear of plain concrete: 3/2 x 4/3 sqrt(f) psi by hand, and 0.8 x 0.7 x 0.3 f^(2/3) MPa.

#include "resistances/plain_shear.hpp"

#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

#include "support/assessed.hpp"
#include "support/hand_made_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

struct Made {
  plan::Concrete concrete;
  tables::RuleSet rules = hand_made_rules();
  tables::Tables tables = hand_made_tables();
  Made() {
    concrete.kind = "normalweight";
    tables.concretes.insert_or_assign("normalweight",
                                      tables::ConcreteKind{"normalweight", made_ratio("lambda_a", 1.0),
                                                           made("density_low", Density{2200.0 * kg_per_m3}),
                                                           made("density_high", Density{2600.0 * kg_per_m3})});
  }
  Outcome<Resistance<Stress>> of(Stress f) {
    Trace silent;
    return resistances::plain_shear(concrete, f, rules, tables, silent);
  }
};

}  // namespace

TEST_CASE("plain shear: 2 sqrt(f) in psi, the largest stress of a rectangle") {
  Made lift;
  CHECK(in(psi, assessed(lift.of(2500.0 * psi)).value) == Approx(100.0));
  lift.tables.concretes.at("normalweight").lambda_a.value = Ratio{0.75};
  CHECK(in(psi, assessed(lift.of(2500.0 * psi)).value) == Approx(75.0));
}

TEST_CASE("plain shear by EN 1992-1-1: 0.8 x 0.7 x 0.3 f^(2/3)") {
  Made lift;
  lift.rules.cracking.en = tables::En1992Tension{made_ratio("f_ctm", 0.3), made("strong", Stress{2.12 * MPa}),
                                                 made("from", Stress{50.0 * MPa}), made("over", Stress{8.0 * MPa}),
                                                 made_ratio("f_ctk", 0.7),
                                                 made_ratio("flexural", 1.6), made("length", Length{1.0 * m}),
                                                 made_ratio("plain", 0.8)};
  CHECK(in(MPa, assessed(lift.of(27.0 * MPa)).value) == Approx(0.8 * 0.7 * 0.3 * 9.0));
  CHECK(in(MPa, assessed(lift.of(62.0 * MPa)).value) == Approx(0.8 * 0.7 * 2.12 * std::log(8.0)));
  lift.tables.concretes.at("normalweight").lambda_a.value = Ratio{0.75};
  CHECK_FALSE(why_not(lift.of(27.0 * MPa)).empty());
}

TEST_CASE("plain shear: strength or concrete that is not usable") {
  Made lift;
  CHECK_FALSE(why_not(lift.of(Stress{})).empty());
  CHECK_FALSE(why_not(lift.of(std::numeric_limits<double>::quiet_NaN() * MPa)).empty());
  lift.concrete.kind = "unknown";
  CHECK_FALSE(why_not(lift.of(20.0 * MPa)).empty());
}
