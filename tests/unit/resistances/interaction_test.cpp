#include "resistances/interaction.hpp"

#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

#include "support/hand_made_rules.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

const tables::HeadedInsertModel model = hand_made_headed_model();

double together(double n, double v) {
  Trace trace;
  return interaction_utilization(n, v, model, trace).value();
}

}  // namespace

TEST_CASE("both parts count together over 1.2, and a small one not at all") {
  CHECK(together(0.6, 0.6) == Approx(1.0));
  CHECK(together(0.9, 0.4) == Approx(1.3 / 1.2));
  CHECK(together(0.9, 0.1) == Approx(0.9));
  CHECK(together(0.1, 0.9) == Approx(0.9));
  CHECK(together(0.0, 0.0) == 0.0);
}

TEST_CASE("the trace says which of the three applied") {
  Trace trace = Trace::recording();
  interaction_utilization(0.9, 0.1, model, trace);
  CHECK(step_named(trace, "n_v").clause == "ACI 318-19 17.8.1");
  interaction_utilization(0.1, 0.9, model, trace);
  CHECK(step_named(trace, "n_v").clause == "ACI 318-19 17.8.2");
  interaction_utilization(0.9, 0.9, model, trace);
  CHECK(step_named(trace, "n_v").clause == "ACI 318-19 17.8.3");
}

TEST_CASE("of steel and concrete the larger use counts, and what is no number stays none") {
  Trace trace;
  const auto of = [&](double n_s, double n_c, double v_s, double v_c) {
    return interaction_utilization(
               Uses{.steel_tension = n_s, .concrete_tension = n_c, .steel_shear = v_s, .concrete_shear = v_c},
               model, trace)
        .value();
  };
  CHECK(of(0.9, 0.3, 0.1, 0.6) == Approx(1.5 / 1.2));
  CHECK(of(0.3, 0.9, 0.6, 0.1) == Approx(1.5 / 1.2));
  for (const double bad : {std::nan(""), std::numeric_limits<double>::infinity(), -0.1}) {
    CHECK(std::isnan(together(bad, 0.5)));
    CHECK(std::isnan(together(0.5, bad)));
    if (bad < 0.0) continue;
    CHECK(std::isnan(of(bad, 0.5, 0.5, 0.5)));
    CHECK(std::isnan(of(0.5, bad, 0.5, 0.5)));
    CHECK(std::isnan(of(0.5, 0.5, bad, 0.5)));
    CHECK(std::isnan(of(0.5, 0.5, 0.5, bad)));
  }
  CHECK(together(0.9, 0.2) == Approx(0.9));  // small up to 0.2
  CHECK(together(0.2, 0.9) == Approx(0.9));
  CHECK(together(0.9, 0.21) == Approx(1.11 / 1.2));
}
