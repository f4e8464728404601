// A worked page on the web, ACI 318 Appendix D, bolts in the corner of a slab. Low authority (a blog);
// quoted at second hand. Its edge distances are only in a figure, so that two steps of it can be used:
// pryout and interaction.
//
// Outside  us insert-pryout, us insert-interaction

#include <catch2/catch.hpp>

#include "resistances/interaction.hpp"
#include "resistances/pryout.hpp"
#include "support/assessed.hpp"
#include "support/headed_face.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

TEST_CASE("pryout of the group: k_cp 2, phi 0.70, from N_cbg 20,694.61 lb") {
  HeadedFace face = wide_face();
  face.add("1", 0.0 * inch, 0.0 * inch, 10.0 * inch);
  face.add("2", 6.0 * inch, 0.0 * inch, 10.0 * inch);
  Trace trace;
  const Outcome<Resistance<Force>> N_cbg = Resistance<Force>{20694.61 * lbf};
  const auto V_cpg = assessed(pryout(face.group(), N_cbg, us_rules().headed, trace));
  CHECK(0.70 * in(lbf, V_cpg.value) == Approx(28972.45).margin(0.005).epsilon(0.0));
}

// Known different: the page prints 1.181 for the sum; its own numbers give 1.1790.
TEST_CASE("interaction of 20,000 / 20,694.613 in tension and 2,300 / 10,821.297 in shear") {
  const Ratio n = 20000.0 / 20694.613, v = 2300.0 / 10821.297;
  Trace trace;
  const Ratio together = interaction_utilization(n, v, us_rules().headed, trace);
  CHECK(1.2 * together.value() == Approx(1.1790).margin(0.00005).epsilon(0.0));
  CHECK(together <= 1.0);  // the page: below 1.2, ok
}
