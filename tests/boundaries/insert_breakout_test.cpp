// Limits of insert-breakout: 1.5 h_ef to an edge, three edges, 11 and 25 in of depth, 4 d_a between inserts.

#include "resistances/basic_breakout.hpp"
#include "resistances/breakout.hpp"
#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/no_number.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

const tables::HeadedInsertModel model = hand_made_headed_model();
const Stress f_c = 4000.0 * psi;

Outcome<Resistance<Force>> outcome_of(Group group, Stress f = f_c, Eccentricity e = Eccentricity::none()) {
  ProjectedAreas areas;
  Trace trace;
  return breakout(group, areas, e, f, model, trace);
}
double newtons(Group group) { return assessed(outcome_of(group)).value.value(); }

// Edge distances as given, on a face that is wide: only the factors see them.
double newtons_with_edges(const std::array<Length, 4>& c) {
  HeadedFace face = wide_face();
  HeadedInsert& insert = face.add("A", 0.0 * inch, 0.0 * inch);
  insert.edges = {c, *std::min_element(c.begin(), c.end())};
  return newtons(face.group());
}

Approx next_to(double number) { return Approx(number).epsilon(1e-9); }

}  // namespace

TEST_CASE("insert-breakout: an edge at 1.5 h_ef, one step nearer and one step farther") {
  const Length far = 900.0 * inch, at = 1.5 * (6.0 * inch);
  const double without = newtons_with_edges({far, far, far, far});
  CHECK(newtons_with_edges({at, far, far, far}) == without);
  CHECK(newtons_with_edges({one_step_above(at), far, far, far}) == without);
  CHECK(newtons_with_edges({one_step_below(at), far, far, far}) == next_to(without));
  CHECK(newtons_with_edges({0.99 * at, far, far, far}) < without);
}

TEST_CASE(
    "insert-breakout: the third edge at 1.5 h_ef changes nothing yet, and nothing jumps one step nearer") {
  const Length far = 900.0 * inch, at = 1.5 * (6.0 * inch), near = 4.0 * inch;
  const double two = newtons_with_edges({near, near, far, far});
  CHECK(newtons_with_edges({near, near, at, far}) == two);
  CHECK(newtons_with_edges({near, near, one_step_above(at), far}) == two);
  CHECK(newtons_with_edges({near, near, one_step_below(at), far}) == next_to(two));
}

TEST_CASE("insert-breakout: the 5/3 power is allowed from 11 to 25 in, ends included") {
  const auto basic = [](Length h_ef) {
    Trace trace;
    return basic_breakout(h_ef, 1.0, f_c, model, trace).value();
  };
  const auto root_form = [](Length h_ef) { return basic_breakout_root(h_ef, 1.0, f_c, model).value(); };
  const auto deep_form = [](Length h_ef) { return basic_breakout_deep(h_ef, 1.0, f_c, model).value(); };
  const Length from = 11.0 * inch, to = 25.0 * inch;
  CHECK(basic(from) == deep_form(from));
  CHECK(basic(one_step_above(from)) == deep_form(one_step_above(from)));
  CHECK(basic(one_step_below(from)) == root_form(one_step_below(from)));
  for (const Length& h_ef : {one_step_below(to), to, one_step_above(to)})
    CHECK(basic(h_ef) == root_form(h_ef));
}

TEST_CASE("insert-breakout: spacing of 4 d_a, and less by more than rounding") {
  for (const auto& [spacing, allowed] : {std::pair{Length{3.0 * inch}, true},
                                         {one_step_above(Length{3.0 * inch}), true},
                                         {one_step_below(Length{3.0 * inch}), true},
                                         {Length{(1.0 - 1e-8) * 3.0 * inch}, false},
                                         {Length{1.0 * inch}, false},
                                         {Length{}, false}}) {
    CAPTURE(in(inch, spacing));
    HeadedFace face = wide_face();
    face.add("A", 0.0 * inch, 0.0 * inch);
    face.add("B", spacing, 0.0 * inch);
    CHECK(is_assessed(outcome_of(face.group())) == allowed);
  }
}

TEST_CASE("insert-breakout: embedments of a group may differ by rounding only") {
  HeadedFace face = wide_face();
  face.add("A", 0.0 * inch, 0.0 * inch);
  face.add("B", 9.0 * inch, 0.0 * inch);
  face.inserts[1].h_ef = one_step_above(face.inserts[0].h_ef);
  CHECK(is_assessed(outcome_of(face.group())));
  face.inserts[1].h_ef = (1.0 + 1e-8) * face.inserts[0].h_ef;
  CHECK_FALSE(is_assessed(outcome_of(face.group())));
  face.inserts[1].h_ef = (1.0 - 1e-8) * face.inserts[0].h_ef;
  CHECK_FALSE(is_assessed(outcome_of(face.group())));
}

TEST_CASE("insert-breakout: groups end at 3 h_ef, where the bodies touch and no longer overlap") {
  const Length limit = 1.5 * Length{Length{6.0 * inch} + Length{6.0 * inch}};
  for (const auto& [spacing, together] :
       {std::pair{one_step_below(limit), true}, {limit, false}, {one_step_above(limit), false}}) {
    CAPTURE(in(inch, spacing), together);
    HeadedFace face = wide_face();
    face.add("A", 0.0 * inch, 0.0 * inch);
    face.add("B", spacing, 0.0 * inch);
    CHECK((breakout_groups(face.outcomes(), model).size() == 1) == together);
  }
}

TEST_CASE("insert-breakout: every input must be a number above zero") {
  for (const double bad : not_above_zero) {
    CAPTURE(bad);
    HeadedFace face = wide_face();
    const HeadedInsert sound = face.add("A", 0.0 * inch, 0.0 * inch);
    CHECK_FALSE(is_assessed(outcome_of(face.group(), bad * psi)));
    face.inserts[0].h_ef = bad * inch;
    CHECK_FALSE(is_assessed(outcome_of(face.group())));
    face.inserts[0] = sound;
    face.inserts[0].d_a = bad * inch;
    CHECK_FALSE(is_assessed(outcome_of(face.group())));
    face.inserts[0] = sound;
    face.inserts[0].lambda_a = bad;
    CHECK_FALSE(is_assessed(outcome_of(face.group())));
    face.inserts[0] = sound;
    CHECK(is_assessed(outcome_of(face.group())));
  }
}

TEST_CASE("insert-breakout: an eccentricity must be a number, zero is one") {
  HeadedFace face = wide_face();
  face.add("A", 0.0 * inch, 0.0 * inch);
  face.add("B", 9.0 * inch, 0.0 * inch);
  const double nan = std::numeric_limits<double>::quiet_NaN(), inf = std::numeric_limits<double>::infinity();
  CHECK(is_assessed(outcome_of(face.group(), f_c, Eccentricity(0.0 * inch, -0.0 * inch))));
  for (const double bad : {nan, inf, -inf}) {
    CHECK_FALSE(is_assessed(outcome_of(face.group(), f_c, Eccentricity(bad * inch, 0.0 * inch))));
    CHECK_FALSE(is_assessed(outcome_of(face.group(), f_c, Eccentricity(0.0 * inch, bad * inch))));
  }
}

TEST_CASE("insert-breakout: a place that is no number is not assessed") {
  for (const double bad :
       {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    HeadedFace face = wide_face();
    face.add("A", 0.0 * inch, 0.0 * inch);
    face.add("B", 9.0 * inch, 0.0 * inch);
    face.inserts[1].at.x = bad * inch;
    CHECK_FALSE(is_assessed(outcome_of(face.group())));
  }
}
