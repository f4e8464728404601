// Example 1 of a public set of worked examples to ACI 318 Appendix D: one cast-in bolt F1554 Gr 36, 1 in,
// heavy hex head, h_ef 8 in, f'c 6,000 psi, cracked, away from edges. Inputs quoted at second hand. The
// printed results could not be seen: the expected numbers are our own arithmetic from these inputs
// (COMPUTED), evidence of regression only. Tolerance: half a pound.
//
// Computed us insert-steel-tension, us insert-breakout, us insert-pullout

#include <catch2/catch.hpp>

#include "resistances/breakout.hpp"
#include "resistances/pullout.hpp"
#include "resistances/steel_tension.hpp"
#include "support/assessed.hpp"
#include "support/headed_face.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

HeadedFace one_bolt() {
  HeadedFace face = wide_face();
  HeadedInsert& bolt = face.add("bolt", 0.0 * inch, 0.0 * inch, 8.0 * inch);
  bolt.d_a = 1.0 * inch;
  bolt.A_se = 0.606 * in2;
  bolt.A_brg = 1.50 * in2;
  return face;
}
const Stress f_c = 6000.0 * psi;

}  // namespace

TEST_CASE("example 1, computed: steel strength") {
  const HeadedFace face = one_bolt();
  Trace trace;
  CHECK(in(lbf, assessed(steel_tension(face.inserts[0], trace)).value) ==
        Approx(35148.0).margin(0.5).epsilon(0.0));
}

TEST_CASE("example 1, computed: breakout strength") {
  const HeadedFace face = one_bolt();
  ProjectedAreas areas;
  Trace trace;
  const auto N_cb =
      assessed(breakout(face.group(), areas, Eccentricity::none(), f_c, us_rules().headed, trace));
  CHECK(in(lbf, N_cb.value) == Approx(42065.0).margin(0.5).epsilon(0.0));
}

TEST_CASE("example 1, computed: pullout strength") {
  const HeadedFace face = one_bolt();
  Trace trace;
  const auto N_pn = assessed(pullout(face.inserts[0], f_c, us_rules().headed, trace));
  CHECK(in(lbf, N_pn.value) == Approx(72000.0).margin(0.5).epsilon(0.0));
}
