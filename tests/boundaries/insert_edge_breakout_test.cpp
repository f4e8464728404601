// Limits of insert-edge-breakout: c_a2 and h_a at 1.5 c_a1, l_e at 8 d_a, rows at 3 c_a1, directions at
// right angles.

#include "resistances/basic_shear_breakout.hpp"
#include "resistances/basic_shear_breakout.hpp"
#include "resistances/edge_breakout.hpp"
#include "resistances/shear_breakout.hpp"
#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/no_number.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

const tables::HeadedInsertModel model = hand_made_headed_model();
const Stress f_c = 4000.0 * psi;
const Direction right{1.0, 0.0, 0.0};

ShearEdge edge_with(Length c_a2, Length h_a) {
  return {.c_a1 = 0.2 * m,
          .c_a2 = {c_a2, 9.0 * m},
          .s = Length{},
          .s_max = Length{},
          .eccentricity = Length{},
          .h_a = h_a,
          .h_ef = 0.15 * m,
          .d_a = 0.02 * m,
          .lambda_a = 1.0,
          .cracked = true};
}
EdgeStrength strength_of(const ShearEdge& edge) {
  Trace trace;
  return shear_breakout(edge, f_c, model, trace);
}
Approx next_to(Force force) { return Approx(force.value()).epsilon(1e-9); }

}  // namespace

TEST_CASE("insert-edge-breakout: a corner at 1.5 c_a1 and one step nearer and farther") {
  const Length far = 9.0 * m, at = 1.5 * Length{0.2 * m};
  const EdgeStrength without = strength_of(edge_with(far, far));
  for (const Length& c_a2 : {one_step_below(at), at, one_step_above(at)}) {
    CHECK(strength_of(edge_with(c_a2, far)).towards.value() == next_to(without.towards));
    CHECK(strength_of(edge_with(c_a2, far)).along.value() == next_to(without.along));
  }
  CHECK(strength_of(edge_with(0.99 * at, far)).towards < without.towards);
}

TEST_CASE("insert-edge-breakout: concrete of 1.5 c_a1 and one step thinner and thicker") {
  const Length far = 9.0 * m, at = 1.5 * Length{0.2 * m};
  const EdgeStrength deep = strength_of(edge_with(far, far));
  for (const Length& h_a : {one_step_below(at), at, one_step_above(at)})
    CHECK(strength_of(edge_with(far, h_a)).towards.value() == next_to(deep.towards));
  CHECK(strength_of(edge_with(far, 0.99 * at)).towards < deep.towards);
}

TEST_CASE("insert-edge-breakout: c_a1 is shortened where the section is narrow and thin, without a jump") {
  const Length at = 1.5 * Length{0.2 * m};
  const auto both_sides = [&](Length c_a2, Length h_a) {
    ShearEdge edge = edge_with(c_a2, h_a);
    edge.c_a2[1] = c_a2;
    return strength_of(edge).towards.value();
  };
  const double before = both_sides(at, 0.5 * at);
  CHECK(both_sides(one_step_below(at), 0.5 * at) == Approx(before).epsilon(1e-9));
  CHECK(both_sides(0.5 * at, one_step_below(at)) == Approx(both_sides(0.5 * at, at)).epsilon(1e-9));
}

TEST_CASE("insert-edge-breakout: l_e is h_ef up to 8 d_a") {
  const auto V_b = [](Length h_ef) {
    Trace trace;
    return basic_shear_breakout(0.2 * m, h_ef, 0.01 * m, 1.0, f_c, model, trace).value();
  };
  const Length at = 8.0 * Length{0.01 * m};
  CHECK(V_b(one_step_above(at)) == V_b(at));
  CHECK(V_b(2.0 * at) == V_b(at));
  CHECK(V_b(one_step_below(at)) == Approx(V_b(at)).epsilon(1e-9));
  CHECK(V_b(0.9 * at) < V_b(at));
}

TEST_CASE("insert-edge-breakout: neighbours at 3 c_a1 are no longer a row") {
  for (const auto& [spacing_in, together] : {std::pair{29.99, true}, {30.01, false}}) {
    CAPTURE(spacing_in);
    HeadedFace face(rectangle(-5e3 * inch, -10.0 * inch, 1e4 * inch, 1e4 * inch));
    face.add("A", 0.0 * inch, 0.0 * inch);
    face.add("B", spacing_in * inch, 0.0 * inch);
    const auto rows = shear_rows(face.outcomes(), model);
    const bool found =
        std::any_of(rows.begin(), rows.end(), [](const EdgeRow& row) { return row.towards.y < -0.5; });
    CHECK(found == together);
  }
}

TEST_CASE("insert-edge-breakout: straight along an edge, and one step to either side of it") {
  HeadedFace face(rectangle(-900.0 * inch, -900.0 * inch, 910.0 * inch, 1800.0 * inch));
  const HeadedInsert& insert = face.add("A", 0.0 * inch, 0.0 * inch);
  Trace trace;
  const auto newtons = [&](double x) {
    return assessed(edge_breakout(insert, Direction{x, 1.0, 0.0}, f_c, model, trace)).value.value();
  };
  CHECK(newtons(1e-16) == Approx(newtons(0.0)));
  CHECK(newtons(-1e-16) == Approx(newtons(0.0)));
  CHECK(newtons(0.01) < newtons(0.0));
}

TEST_CASE("insert-edge-breakout: straight away from an edge it does not limit, a little beside it does") {
  HeadedFace face(rectangle(-900.0 * inch, -900.0 * inch, 910.0 * inch, 1800.0 * inch));
  face.add("A", 0.0 * inch, 0.0 * inch);
  Trace trace;
  const auto away = [&](double y) {
    return assessed(edge_breakout(face.group(), right, Direction{-1.0, y, 0.0}, Length{}, f_c, model, trace));
  };
  CHECK_FALSE(away(0.0).has_value());
  CHECK_FALSE(away(1e-16).has_value());
  CHECK(away(1e-6).has_value());
  CHECK(away(-1e-6).has_value());
}

TEST_CASE("insert-edge-breakout: every input must be a number above zero") {
  HeadedFace face(rectangle(-900.0 * inch, -900.0 * inch, 910.0 * inch, 1800.0 * inch));
  const HeadedInsert sound = face.add("A", 0.0 * inch, 0.0 * inch);
  Trace trace;
  for (const double bad : not_above_zero) {
    CAPTURE(bad);
    CHECK_FALSE(is_assessed(edge_breakout(sound, right, bad * psi, model, trace)));
    CHECK_FALSE(is_assessed(edge_breakout(face.group(), right, right, Length{}, bad * psi, model, trace)));
    for (const auto& spoil : {+[](HeadedInsert&i, double b) { i.h_ef = b * inch; },
                              +[](HeadedInsert&i, double b) { i.d_a = b * inch; },
                              +[](HeadedInsert&i, double b) { i.lambda_a = b; },
                              +[](HeadedInsert&i, double b) { i.edges.c[0] = b * inch; },
                              +[](HeadedInsert&i, double b) { i.edges.c[3] = b * inch; }}) {
      face.inserts[0] = sound;
      spoil(face.inserts[0], bad);
      CHECK_FALSE(is_assessed(edge_breakout(face.inserts[0], right, f_c, model, trace)));
      CHECK_FALSE(is_assessed(edge_breakout(face.group(), right, right, Length{}, f_c, model, trace)));
    }
    face.inserts[0] = sound;
    face.sites[0].thickness = bad * inch;
    CHECK_FALSE(is_assessed(edge_breakout(sound, right, f_c, model, trace)));
    face.sites[0].thickness = 10.0 * inch;
  }
  CHECK(is_assessed(edge_breakout(sound, right, f_c, model, trace)));
}
