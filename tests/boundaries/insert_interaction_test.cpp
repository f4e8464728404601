// Limits of insert-interaction: a part of 0.2 counts as none. There the clause jumps, and so does the result.

#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

#include "resistances/interaction.hpp"
#include "support/hand_made_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

double together(double n, double v) {
  static const tables::HeadedInsertModel model = hand_made_headed_model();
  Trace trace;
  return interaction_utilization(n, v, model, trace).value();
}

}  // namespace

TEST_CASE("insert-interaction: shear of 0.2, one step below and above") {
  CHECK(together(0.98, 0.2) == 0.98);
  CHECK(together(0.98, std::nextafter(0.2, 0.0)) == 0.98);
  CHECK(together(0.98, std::nextafter(0.2, 1.0)) == Approx(1.18 / 1.2));
}

TEST_CASE("insert-interaction: tension of 0.2, one step below and above") {
  CHECK(together(0.2, 0.98) == 0.98);
  CHECK(together(std::nextafter(0.2, 0.0), 0.98) == 0.98);
  CHECK(together(std::nextafter(0.2, 1.0), 0.98) == Approx(1.18 / 1.2));
}

TEST_CASE("insert-interaction: just above 1.2 together is above 1") {
  CHECK(together(0.75, 0.25) <= 1.0);
  CHECK(together(0.95, 0.25) == Approx(1.0));
  CHECK(together(0.9500001, 0.25) > 1.0);
  CHECK(together(1.0000001, 0.1) > 1.0);
  CHECK(together(0.1, 1.0000001) > 1.0);
}

TEST_CASE("insert-interaction: not a number, infinite or negative gives not a number") {
  const double nan = std::numeric_limits<double>::quiet_NaN(), inf = std::numeric_limits<double>::infinity();
  for (const double bad : {nan, inf, -inf, -0.1, -1e-300}) {
    CAPTURE(bad);
    CHECK(std::isnan(together(bad, 0.5)));
    CHECK(std::isnan(together(0.5, bad)));
    CHECK(std::isnan(together(bad, bad)));
    CHECK(std::isnan(together(bad, 0.0)));
    CHECK(std::isnan(together(0.0, bad)));
  }
  CHECK(together(0.0, 0.0) == 0.0);
}
