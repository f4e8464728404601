// Limits of insert-steel-tension and insert-steel-shear: none inside; nothing but numbers above zero.

#include "resistances/steel_shear.hpp"
#include "resistances/steel_tension.hpp"
#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/no_number.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

TEST_CASE("insert-steel: area and strength must be numbers above zero") {
  const tables::HeadedInsertModel model = hand_made_headed_model();
  HeadedFace face = wide_face();
  const HeadedInsert sound = face.add("A", 0.0 * inch, 0.0 * inch);
  Trace trace;
  for (const double bad : not_above_zero) {
    CAPTURE(bad);
    HeadedInsert insert = sound;
    insert.A_se = bad * in2;
    CHECK_FALSE(is_assessed(steel_tension(insert, trace)));
    CHECK_FALSE(is_assessed(steel_shear(insert, model, trace)));
    insert = sound;
    insert.f_uta = bad * ksi;
    CHECK_FALSE(is_assessed(steel_tension(insert, trace)));
    CHECK_FALSE(is_assessed(steel_shear(insert, model, trace)));
  }
  CHECK(is_assessed(steel_tension(sound, trace)));
  CHECK(is_assessed(steel_shear(sound, model, trace)));
}

TEST_CASE("insert-steel: a product that leaves the range of numbers is not assessed") {
  HeadedFace face = wide_face();
  HeadedInsert insert = face.add("A", 0.0 * inch, 0.0 * inch);
  Trace trace;
  insert.A_se = Area::from_value(1e300);
  insert.f_uta = Stress::from_value(1e300);
  CHECK_FALSE(is_assessed(steel_tension(insert, trace)));
  insert.A_se = Area::from_value(1e-300);
  insert.f_uta = Stress::from_value(1e-300);
  CHECK_FALSE(is_assessed(steel_tension(insert, trace)));
}
