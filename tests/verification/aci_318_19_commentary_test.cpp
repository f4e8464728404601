// ACI 318-19, Fig. R17.6.2.1.2, inserts near three and more edges: h_ef 5.5 in, c_a,max 6 in, s 9 in. FROM
// MEMORY; only h'_ef = 4 in was seen, in a transcription. The rest is arithmetic on the figure as
// remembered.
//
// Outside  us insert-breakout

#include <catch2/catch.hpp>

#include "resistances/breakout.hpp"
#include "support/assessed.hpp"
#include "support/headed_face.hpp"
#include "support/step_named.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

TEST_CASE("Fig. R17.6.2.1.2, from memory: h'_ef = max(6 / 1.5, 9 / 3) = 4, A_Nc = (6 + 4)(5 + 9 + 6) = 200") {
  HeadedFace face(rectangle(-5.0 * inch, -6.0 * inch, 20.0 * inch, 10.0 * inch));
  face.add("A", 0.0 * inch, 0.0 * inch, 5.5 * inch);
  face.add("B", 9.0 * inch, 0.0 * inch, 5.5 * inch);
  ProjectedAreas areas;
  Trace trace = Trace::recording();
  assessed(breakout(face.group(), areas, Eccentricity::none(), 4000.0 * psi, us_rules().headed, trace));
  CHECK(step_named(trace, "h_ef_c").result.number == Approx(4.0).margin(1e-9));
  CHECK(step_named(trace, "A_Nc").result.number == Approx(200.0).margin(1e-6));
  CHECK(step_named(trace, "A_Nco").result.number == Approx(144.0).margin(1e-6));
}
