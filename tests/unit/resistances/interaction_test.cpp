#include "resistances/interaction.hpp"

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
