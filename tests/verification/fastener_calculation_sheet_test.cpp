// A published calculation sheet of a fastening near an edge (second-hand), f_ck = 20, by the European guideline before
// EN 1992-4. Back-solved from its printed numbers: k1 = 7.2, the guideline's constant for cubes; h_ef 300 and 350 mm, edge
// at 50 mm, spacing 300 mm. So this checks the algebra of (7.2) and (7.3), not the constants of EN 1992-4.
// Not used: its eccentricity factor 0.75, which fits neither of its own s_cr.
//
// Outside  eu insert-breakout

#include <catch2/catch.hpp>

#include "resistances/breakout.hpp"
#include "resistances/en_1992_4.hpp"
#include "support/assessed.hpp"
#include "support/headed_face.hpp"
#include "support/step_named.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

TEST_CASE("N0 = 167.3129 kN and 210.8383 kN, A0_c,N = 810 000 and 1 102 500 mm2, A_c,N = 640 000 mm2") {
  tables::HeadedInsertModel model = eu_rules().headed;
  model.en->k1_cracked.value = 7.2 * newton / (root(MPa) * power<3, 2>(mm));
  Trace trace = Trace::recording();
  CHECK(in(kN, en_basic_cone(300.0 * mm, true, 20.0 * MPa, *model.en, trace)) ==
        Approx(167.3129).margin(0.00005).epsilon(0.0));
  CHECK(in(kN, en_basic_cone(350.0 * mm, true, 20.0 * MPa, *model.en, trace)) ==
        Approx(210.8383).margin(0.00005).epsilon(0.0));

  // Four inserts 300 x 300 in a corner with edges at 50: (c + s + 0.5 s_cr)^2 = (50 + 300 + 450)^2.
  HeadedFace face(rectangle(-50.0 * mm, -50.0 * mm, 1e5 * mm, 1e5 * mm));
  for (const double x : {0.0, 300.0})
    for (const double y : {0.0, 300.0}) face.add("A", x * mm, y * mm, 300.0 * mm);
  ProjectedAreas areas;
  assessed(breakout(face.group(), areas, Eccentricity::none(), 20.0 * MPa, model, trace));
  CHECK(step_named(trace, "A_cN").result.number == Approx(640000.0).margin(0.5).epsilon(0.0));
  CHECK(step_named(trace, "A0_cN").result.number == Approx(810000.0).margin(0.5).epsilon(0.0));

  HeadedFace deep = wide_face();
  deep.add("B", 0.0 * mm, 0.0 * mm, 350.0 * mm);
  assessed(breakout(deep.group(), areas, Eccentricity::none(), 20.0 * MPa, model, trace));
  CHECK(step_named(trace, "A0_cN").result.number == Approx(1102500.0).margin(0.5).epsilon(0.0));
}
