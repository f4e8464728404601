// Limits of insert-pryout: h_ef = 2.5 in.

#include "resistances/pryout.hpp"
#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/no_number.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {
const tables::HeadedInsertModel model = hand_made_headed_model();
}

TEST_CASE("insert-pryout: the factor is 2 from 2.5 in of depth") {
  Trace trace;
  for (const auto& [h_ef, factor] : {std::pair{one_step_below(Length{2.5 * inch}), 1.0},
                                     {Length{2.5 * inch}, 2.0},
                                     {one_step_above(Length{2.5 * inch}), 2.0}}) {
    CAPTURE(factor);
    HeadedFace face = wide_face();
    face.add("A", 0.0 * inch, 0.0 * inch, h_ef);
    CHECK(in(kip, assessed(pryout(face.group(), Resistance<Force>{1.0 * kip}, model, trace)).value) ==
          Approx(factor));
  }
}

TEST_CASE("insert-pryout: depth and breakout strength must be numbers above zero") {
  HeadedFace face = wide_face();
  face.add("A", 0.0 * inch, 0.0 * inch);
  Trace trace;
  for (const double bad : not_above_zero) {
    CAPTURE(bad);
    face.inserts[0].h_ef = 6.0 * inch;
    CHECK_FALSE(is_assessed(pryout(face.group(), Resistance<Force>{bad * kip}, model, trace)));
    face.inserts[0].h_ef = bad * inch;
    CHECK_FALSE(is_assessed(pryout(face.group(), Resistance<Force>{1.0 * kip}, model, trace)));
  }
}
