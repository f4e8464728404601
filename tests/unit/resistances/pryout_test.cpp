#include "resistances/pryout.hpp"

#include <cmath>
#include <limits>

#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {
const tables::HeadedInsertModel model = hand_made_headed_model();
const Outcome<Resistance<Force>> N_cb = Resistance<Force>{10.0 * kip};
}  // namespace

TEST_CASE("pryout is once or twice the breakout strength, by the depth") {
  Trace trace;
  for (const auto& [h_ef_in, factor] : {std::pair{2.0, 1.0}, {2.4, 1.0}, {2.5, 2.0}, {6.0, 2.0}}) {
    CAPTURE(h_ef_in);
    HeadedFace face = wide_face();
    face.add("A", 0.0 * inch, 0.0 * inch, h_ef_in * inch);
    CHECK(in(kip, assessed(pryout(face.group(), N_cb, model, trace)).value) == Approx(10.0 * factor));
  }
}

TEST_CASE("the shallowest insert of a group decides, wherever it stands in it") {
  for (const auto& [first, second] : {std::pair{6.0, 2.0}, {2.0, 6.0}}) {
    CAPTURE(first, second);
    HeadedFace face = wide_face();
    face.add("A", 0.0 * inch, 0.0 * inch, first * inch);
    face.add("B", 9.0 * inch, 0.0 * inch, second * inch);
    Trace trace;
    CHECK(in(kip, assessed(pryout(face.group(), N_cb, model, trace)).value) == Approx(10.0));
  }
}

TEST_CASE("without a breakout strength there is no pryout strength, for the same reason") {
  HeadedFace face = wide_face();
  face.add("A", 0.0 * inch, 0.0 * inch);
  Trace trace;
  CHECK(why_not(pryout(face.group(), NotAssessed{"because", "do"}, model, trace)) == "because");
  CHECK(remedy_for(pryout(face.group(), NotAssessed{"because", "do"}, model, trace)) == "do");
  CHECK_FALSE(is_assessed(pryout(Group{}, N_cb, model, trace)));
}

TEST_CASE("the step names one insert with (a) of its clause, a group with (b)") {
  HeadedFace face = wide_face();
  face.add("A", 0.0 * inch, 0.0 * inch);
  Trace one = Trace::recording(), two = Trace::recording();
  assessed(pryout(face.group(), N_cb, model, one));
  face.add("B", 9.0 * inch, 0.0 * inch);
  assessed(pryout(face.group(), N_cb, model, two));
  CHECK(step_named(one, "V_cp").words == "pryout strength of 1 insert, with A");
  CHECK(step_named(one, "V_cp").clause == "ACI 318-19 17.7.3.1(a)");
  CHECK(step_named(two, "V_cp").words == "pryout strength of 2 inserts, with A");
  CHECK(step_named(two, "V_cp").clause == "ACI 318-19 17.7.3.1(b)");
}

TEST_CASE("a depth that is none, or a strength past every number, gives no pry-out strength") {
  Trace trace;
  for (const double bad : {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
    HeadedFace face = wide_face();
    face.add("A", 0.0 * inch, 0.0 * inch);
    face.inserts[0].h_ef = bad * inch;
    CHECK_FALSE(is_assessed(pryout(face.group(), N_cb, model, trace)));
  }
  HeadedFace face = wide_face();
  face.add("A", 0.0 * inch, 0.0 * inch);
  CHECK_FALSE(is_assessed(pryout(face.group(), Resistance<Force>{1.7e308 * newton}, model, trace)));
}
