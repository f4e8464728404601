#include "resistances/pullout.hpp"

#include <cmath>
#include <limits>
#include <string>

#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

TEST_CASE("pullout goes with head area and strength itself, 1.4 times more uncracked") {
  const tables::HeadedInsertModel model = hand_made_headed_model();
  HeadedFace face = wide_face();
  HeadedInsert& insert = face.add("A", 0.0 * inch, 0.0 * inch);
  Trace trace = Trace::recording();
  CHECK(in(lbf, assessed(pullout(insert, 4000.0 * psi, model, trace)).value) == Approx(8.0 * 0.911 * 4000.0));
  CHECK(in(lbf, assessed(pullout(insert, 2000.0 * psi, model, trace)).value) == Approx(8.0 * 0.911 * 2000.0));
  insert.A_brg = 2.0 * 0.911 * in2;
  CHECK(in(lbf, assessed(pullout(insert, 2000.0 * psi, model, trace)).value) == Approx(8.0 * 0.911 * 4000.0));
  insert.cracked = false;
  CHECK(in(lbf, assessed(pullout(insert, 2000.0 * psi, model, trace)).value) ==
        Approx(1.4 * 8.0 * 0.911 * 4000.0));
  CHECK(source_ids(step_named(trace, "N_pn")) == std::vector<std::string>{"hand-made.psi_cP_uncracked"});
}

TEST_CASE("without head or strength, or where their product is no number, there is no pull-out strength") {
  const tables::HeadedInsertModel model = hand_made_headed_model();
  const std::string why = "the head of insert A or the concrete strength is not a number above zero";
  HeadedFace face = wide_face();
  HeadedInsert& insert = face.add("A", 0.0 * inch, 0.0 * inch);
  Trace trace;
  for (const double bad : {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
    insert.A_brg = 1.0 * in2;
    CHECK(why_not(pullout(insert, bad * psi, model, trace)) == why);
    insert.A_brg = bad * in2;
    CHECK(why_not(pullout(insert, 4000.0 * psi, model, trace)) == why);
  }
  insert.A_brg = 1e200 * m2;
  CHECK(why_not(pullout(insert, 1e200 * psi, model, trace)) == why);
}
