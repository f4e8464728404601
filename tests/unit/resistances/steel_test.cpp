#include "resistances/steel_shear.hpp"
#include "resistances/steel_tension.hpp"

#include <cmath>
#include <limits>
#include <string>

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

TEST_CASE("without area or strength, or where their product is no number, steel has no strength") {
  const std::string why = "the steel of insert A is not described by numbers above zero";
  HeadedFace face = wide_face();
  HeadedInsert& insert = face.add("A", 0.0 * inch, 0.0 * inch);
  const HeadedInsert whole = insert;
  Trace trace;
  const auto check = [&] {
    CHECK(why_not(steel_tension(insert, trace)) == why);
    CHECK(why_not(steel_shear(insert, model, trace)) == why);
    insert = whole;
  };
  for (const double bad : {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
    insert.A_se = bad * in2;
    check();
    insert.f_uta = bad * ksi;
    check();
  }
  insert.A_se = 1e200 * m2, insert.f_uta = 1e200 * ksi;
  check();
}
