#include "resistances/steel_shear.hpp"
#include "resistances/steel_tension.hpp"

#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {
const tables::HeadedInsertModel model = hand_made_headed_model();
}

TEST_CASE("steel in tension is area times credited strength") {
  HeadedFace face = wide_face();
  const HeadedInsert& insert = face.add("A", 0.0 * inch, 0.0 * inch);  // 0.334 in2, 58 ksi
  Trace trace = Trace::recording();
  CHECK(in(kip, assessed(steel_tension(insert, trace)).value) == Approx(0.334 * 58.0));
  CHECK(step_named(trace, "N_sa").clause == "ACI 318-19 17.6.1.2");
}

TEST_CASE("steel in shear: a bolt has six tenths of a welded stud") {
  HeadedFace face = wide_face();
  HeadedInsert& insert = face.add("A", 0.0 * inch, 0.0 * inch);
  Trace trace = Trace::recording();
  CHECK(in(kip, assessed(steel_shear(insert, model, trace)).value) == Approx(0.6 * 0.334 * 58.0));
  CHECK(source_ids(step_named(trace, "V_sa")) == std::vector<std::string>{"hand-made.shear_bolt"});
  insert.stud = true;
  CHECK(in(kip, assessed(steel_shear(insert, model, trace)).value) == Approx(0.334 * 58.0));
  CHECK(source_ids(step_named(trace, "V_sa")) == std::vector<std::string>{"hand-made.shear_stud"});
}

TEST_CASE("a trace that does not record stays empty") {
  HeadedFace face = wide_face();
  const HeadedInsert& insert = face.add("A", 0.0 * inch, 0.0 * inch);
  Trace trace;
  assessed(steel_tension(insert, trace));
  CHECK(trace.steps().empty());
}
