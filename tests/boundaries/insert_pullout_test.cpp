// Limits of insert-pullout: none inside; nothing but numbers above zero.

#include "resistances/pullout.hpp"
#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/no_number.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

TEST_CASE("insert-pullout: head area and strength must be numbers above zero") {
  const tables::HeadedInsertModel model = hand_made_headed_model();
  HeadedFace face = wide_face();
  const HeadedInsert sound = face.add("A", 0.0 * inch, 0.0 * inch);
  Trace trace;
  for (const double bad : not_above_zero) {
    CAPTURE(bad);
    HeadedInsert insert = sound;
    insert.A_brg = bad * in2;
    CHECK_FALSE(is_assessed(pullout(insert, 4000.0 * psi, model, trace)));
    CHECK_FALSE(is_assessed(pullout(sound, bad * psi, model, trace)));
  }
  HeadedInsert both_negative = sound;  // the product of two negative numbers is above zero
  both_negative.A_brg = -1.0 * in2;
  CHECK_FALSE(is_assessed(pullout(both_negative, -4000.0 * psi, model, trace)));
  CHECK(is_assessed(pullout(sound, 4000.0 * psi, model, trace)));
}
