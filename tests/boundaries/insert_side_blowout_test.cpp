// Limits of insert-side-blowout: h_ef = 2.5 c_a1, c_a2 = c_a1, c_a2 = 3 c_a1, s = 6 c_a1.

#include "resistances/side_blowout.hpp"
#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/no_number.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

const tables::HeadedInsertModel model = hand_made_headed_model();
const Stress f_c = 4000.0 * psi;

HeadedInsert with_edges(HeadedFace& face, Length c_a1, Length c_a2, Length h_ef) {
  HeadedInsert insert = face.add("A", 0.0 * inch, 0.0 * inch, h_ef);
  const Length far = 900.0 * inch;
  insert.edges = {{c_a1, far, c_a2, far}, std::min(c_a1, c_a2)};
  return insert;
}
std::optional<double> newtons(const HeadedInsert& insert) {
  Trace trace;
  const auto strength = assessed(side_blowout(insert, f_c, model, trace));
  if (!strength) return {};
  return strength->value.value();
}

}  // namespace

TEST_CASE("insert-side-blowout: occurs above h_ef = 2.5 c_a1 only") {
  HeadedFace face = wide_face();
  const Length c_a1 = 0.1 * m, limit = 2.5 * c_a1, far = 900.0 * inch;
  CHECK_FALSE(newtons(with_edges(face, c_a1, far, limit)).has_value());
  CHECK_FALSE(newtons(with_edges(face, c_a1, far, one_step_below(limit))).has_value());
  CHECK(newtons(with_edges(face, c_a1, far, one_step_above(limit))).has_value());
}

TEST_CASE(
    "insert-side-blowout: the corner factor ends at c_a2 = 3 c_a1 without a jump, and starts at one half") {
  HeadedFace face = wide_face();
  const Length c_a1 = 0.1 * m, h_ef = 0.5 * m;
  const double whole = newtons(with_edges(face, c_a1, 900.0 * inch, h_ef)).value();
  const Length three = 3.0 * c_a1;
  CHECK(newtons(with_edges(face, c_a1, three, h_ef)).value() == whole);
  CHECK(newtons(with_edges(face, c_a1, one_step_above(three), h_ef)).value() == whole);
  CHECK(newtons(with_edges(face, c_a1, one_step_below(three), h_ef)).value() == Approx(whole).epsilon(1e-9));
  CHECK(newtons(with_edges(face, c_a1, c_a1, h_ef)).value() == Approx(0.5 * whole));
  CHECK(newtons(with_edges(face, c_a1, one_step_above(c_a1), h_ef)).value() == Approx(0.5 * whole));
}

TEST_CASE("insert-side-blowout: neighbours at 6 c_a1 are no longer a row") {
  for (const auto& [spacing_in, rows] : {std::pair{17.99, 1U}, {18.01, 0U}}) {
    CAPTURE(spacing_in);
    HeadedFace face(rectangle(-5e3 * inch, -3.0 * inch, 1e4 * inch, 1e4 * inch));
    face.add("A", 0.0 * inch, 0.0 * inch, 9.0 * inch);
    face.add("B", spacing_in * inch, 0.0 * inch, 9.0 * inch);
    CHECK(blowout_rows(face.outcomes(), model).size() == rows);
  }
}

TEST_CASE("insert-side-blowout: every input must be a number above zero") {
  HeadedFace face = wide_face();
  const HeadedInsert sound = with_edges(face, 3.0 * inch, 5.0 * inch, 9.0 * inch);
  Trace trace;
  for (const double bad : not_above_zero) {
    CAPTURE(bad);
    CHECK_FALSE(is_assessed(side_blowout(sound, bad * psi, model, trace)));
    for (const auto& spoil : {+[](HeadedInsert&i, double b) { i.h_ef = b * inch; },
                              +[](HeadedInsert&i, double b) { i.A_brg = b * in2; },
                              +[](HeadedInsert&i, double b) { i.lambda_a = b; },
                              +[](HeadedInsert&i, double b) { i.edges.c[0] = b * inch; },
                              +[](HeadedInsert&i, double b) { i.edges.c[1] = b * inch; },
                              +[](HeadedInsert&i, double b) { i.edges.c[2] = b * inch; },
                              +[](HeadedInsert&i, double b) { i.edges.c[3] = b * inch; }}) {
      HeadedInsert insert = sound;
      spoil(insert, bad);
      CHECK_FALSE(is_assessed(side_blowout(insert, f_c, model, trace)));
    }
  }
  CHECK(is_assessed(side_blowout(sound, f_c, model, trace)));
}

TEST_CASE("insert-side-blowout: a row needs the same, of every insert") {
  HeadedFace face(rectangle(-5e3 * inch, -3.0 * inch, 1e4 * inch, 1e4 * inch));
  face.add("A", 0.0 * inch, 0.0 * inch, 9.0 * inch);
  const HeadedInsert sound = face.add("B", 9.0 * inch, 0.0 * inch, 9.0 * inch);
  const Direction down{0.0, -1.0, 0.0};
  Trace trace;
  for (const double bad : not_above_zero) {
    CAPTURE(bad);
    face.inserts[1].A_brg = bad * in2;
    CHECK_FALSE(is_assessed(side_blowout(face.group(), down, f_c, model, trace)));
    face.inserts[1] = sound;
    face.inserts[1].h_ef = bad * inch;
    CHECK_FALSE(is_assessed(side_blowout(face.group(), down, f_c, model, trace)));
    face.inserts[1] = sound;
    CHECK_FALSE(is_assessed(side_blowout(face.group(), down, bad * psi, model, trace)));
  }
  CHECK_FALSE(is_assessed(side_blowout(Group{}, down, f_c, model, trace)));
  CHECK(is_assessed(side_blowout(face.group(), down, f_c, model, trace)));
}
