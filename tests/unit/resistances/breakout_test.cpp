#include "resistances/breakout.hpp"

#include <cmath>
#include <limits>
#include <string>

#include "resistances/basic_breakout.hpp"
#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/step_named.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

const tables::HeadedInsertModel model = hand_made_headed_model();
const Stress f_c = 4000.0 * psi;

Outcome<Resistance<Force>> outcome_of(const HeadedFace& face, Eccentricity e = Eccentricity::none(),
                                      Stress f = f_c) {
  ProjectedAreas areas;
  Trace trace;
  return breakout(face.group(), areas, e, f, model, trace);
}
double lb(const HeadedFace& face, Eccentricity e = Eccentricity::none(), Stress f = f_c) {
  return in(lbf, assessed(outcome_of(face, e, f)).value);
}
double N_b_lb(double h_ef_in, double f_c_psi = 4000.0) {
  return 24.0 * std::sqrt(f_c_psi) * std::pow(h_ef_in, 1.5);
}

HeadedFace pair_at(double spacing_in, double h_ef_in = 6.0) {
  HeadedFace face = wide_face();
  face.add("A", 0.0 * inch, 0.0 * inch, h_ef_in * inch);
  face.add("B", spacing_in * inch, 0.0 * inch, h_ef_in * inch);
  return face;
}

// One insert with its edges at these distances: +x, -x, +y, -y.
HeadedFace edges_at(double right, double left, double up, double down, double h_ef_in = 6.0) {
  HeadedFace face(rectangle(-left * inch, -down * inch, (left + right) * inch, (up + down) * inch));
  face.add("A", 0.0 * inch, 0.0 * inch, h_ef_in * inch);
  return face;
}

}  // namespace

TEST_CASE("a single insert far from edges has the basic strength") {
  CHECK(lb(edges_at(900, 900, 900, 900)) == Approx(N_b_lb(6.0)));
}

TEST_CASE("strength goes with the root of f_c, lambda_a and the factor for uncracked concrete") {
  HeadedFace face = edges_at(900, 900, 900, 900);
  CHECK(lb(face, Eccentricity::none(), 2250.0 * psi) == Approx(0.75 * N_b_lb(6.0)));
  face.inserts[0].lambda_a = 0.75;
  CHECK(lb(face) == Approx(0.75 * N_b_lb(6.0)));
  face.inserts[0].cracked = false;
  CHECK(lb(face) == Approx(0.75 * 1.25 * N_b_lb(6.0)));
}

TEST_CASE("two edges: area and the factor of the nearer one") {
  // (4 + 9)(5 + 9) / 324, 0.7 + 0.3 x 4 / 9
  CHECK(lb(edges_at(4, 900, 5, 900)) == Approx(13.0 * 14.0 / 324.0 * (0.7 + 0.3 * 4.0 / 9.0) * N_b_lb(6.0)));
}

TEST_CASE("three near edges: depth from the farthest of them") {
  // edges 4, 5, 6 < 9; h' = 6 / 1.5 = 4, reach 6: (4 + 6)(5 + 6) / 144
  const double expected = 10.0 * 11.0 / 144.0 * (0.7 + 0.3 * 4.0 / 6.0) * N_b_lb(4.0);
  CHECK(lb(edges_at(4, 900, 5, 6)) == Approx(expected));
}

TEST_CASE("four near edges: a thin strip counts through its width, not its length") {
  // wall 8 in wide, insert in the middle, ends at 8 in: c_a,max 8, h' = 5.333, reach 8: 8 x 16 / 256
  const double h = 8.0 / 1.5;
  CHECK(lb(edges_at(4, 4, 8, 8)) == Approx(8.0 * 16.0 / 256.0 * (0.7 + 0.3 * 4.0 / 8.0) * N_b_lb(h)));
}

TEST_CASE("two near edges on both sides do not shorten the depth") {
  CHECK(lb(edges_at(4, 4, 900, 900)) == Approx(8.0 * 18.0 / 324.0 * (0.7 + 0.3 * 4.0 / 9.0) * N_b_lb(6.0)));
}

TEST_CASE("in a group the spacing keeps the depth up: s_max / 3") {
  // edges 4 all round, spacing 15 along x: h' = max(4 / 1.5, 15 / 3) = 5
  HeadedFace face(rectangle(-4.0 * inch, -4.0 * inch, 23.0 * inch, 8.0 * inch));
  face.add("A", 0.0 * inch, 0.0 * inch);
  face.add("B", 15.0 * inch, 0.0 * inch);
  CHECK(lb(face) == Approx(23.0 * 8.0 / (9.0 * 25.0) * (0.7 + 0.3 * 4.0 / 7.5) * N_b_lb(5.0)));
}

TEST_CASE("the depth to calculate with is never more than the real one") {
  HeadedFace face(rectangle(-4.0 * inch, -4.0 * inch, 38.0 * inch, 8.0 * inch));
  face.add("A", 0.0 * inch, 0.0 * inch);
  face.add("B", 30.0 * inch, 0.0 * inch);  // s_max / 3 = 10 > 6
  const double each = 13.0 * 8.0;          // (4 + 9) x 8, the two do not meet
  CHECK(lb(face) == Approx(2.0 * each / 324.0 * (0.7 + 0.3 * 4.0 / 9.0) * N_b_lb(6.0)));
}

TEST_CASE("an opening and a cut corner take their area away, and an opening what lies behind it") {
  HeadedFace window(rectangle(-500.0 * inch, -500.0 * inch, 1000.0 * inch, 1000.0 * inch), 1e3 * inch,
                    {opening(5.0 * inch, -3.0 * inch, 20.0 * inch, 6.0 * inch)});
  window.add("A", 0.0 * inch, 0.0 * inch);
  // And what lies behind it: 6 in wide at 5 in, seen from A 10.8 in at the end of the square.
  CHECK(lb(window) == Approx((324.0 - 4.0 * (6.0 + 10.8) / 2.0) / 324.0 * (0.7 + 0.3 * 5.0 / 9.0) * N_b_lb(6.0)));

  HeadedFace cut({{-500.0 * inch, -500.0 * inch},
                  {500.0 * inch, -500.0 * inch},
                  {500.0 * inch, -488.0 * inch},
                  {12.0 * inch, 0.0 * inch},
                  {0.0 * inch, 12.0 * inch},
                  {-500.0 * inch, 12.0 * inch}});
  cut.add("A", 0.0 * inch, 0.0 * inch);
  const double c = 12.0 / std::sqrt(2.0);  // to the cut; it takes the corner of the square, 6 x 6 / 2
  CHECK(lb(cut) == Approx((324.0 - 18.0) / 324.0 * (0.7 + 0.3 * c / 9.0) * N_b_lb(6.0)));
}

TEST_CASE("inserts far from each other have the strength of so many singles") {
  CHECK(lb(pair_at(18.0)) == Approx(2.0 * N_b_lb(6.0)));
  CHECK(lb(pair_at(500.0)) == Approx(2.0 * N_b_lb(6.0)));
  CHECK(lb(pair_at(9.0)) == Approx(1.5 * N_b_lb(6.0)));
}

TEST_CASE("a group gains with its spacing, and never passes its singles") {
  double before = N_b_lb(6.0);
  for (int s = 3; s <= 30; ++s) {
    CAPTURE(s);
    const double now = lb(pair_at(s));
    CHECK(now >= before * (1.0 - 1e-12));
    CHECK(now <= 2.0 * N_b_lb(6.0) * (1.0 + 1e-12));
    before = now;
  }
}

TEST_CASE("a resultant beside the centroid lowers the strength, on both axes and whatever its sign") {
  const HeadedFace face = pair_at(9.0);
  const double centred = lb(face);
  CHECK(lb(face, Eccentricity(3.0 * inch, 0.0 * inch)) == Approx(centred / (1.0 + 3.0 / 9.0)));
  CHECK(lb(face, Eccentricity(-3.0 * inch, 0.0 * inch)) == Approx(centred / (1.0 + 3.0 / 9.0)));
  CHECK(lb(face, Eccentricity(3.0 * inch, 4.5 * inch)) ==
        Approx(centred / (1.0 + 3.0 / 9.0) / (1.0 + 4.5 / 9.0)));
}

TEST_CASE("two inserts of which one carries all have the strength of one") {
  CHECK(lb(pair_at(9.0), Eccentricity(4.5 * inch, 0.0 * inch)) == Approx(N_b_lb(6.0)));
}

TEST_CASE("in the range of the 5/3 power the lesser form is used") {
  const auto basic = [](double h_ef_in) {
    Trace trace;
    return in(lbf, basic_breakout(h_ef_in * inch, 1.0, f_c, model, trace));
  };
  const auto deep = [](double h_ef_in) { return 16.0 * std::sqrt(4000.0) * std::pow(h_ef_in, 5.0 / 3.0); };
  CHECK(basic(10.9) == Approx(N_b_lb(10.9)));
  CHECK(basic(11.0) == Approx(deep(11.0)));
  CHECK(basic(11.3) == Approx(deep(11.3)));
  CHECK(basic(11.5) == Approx(N_b_lb(11.5)));
  CHECK(basic(25.0) == Approx(N_b_lb(25.0)));
  CHECK(basic(30.0) == Approx(N_b_lb(30.0)));
}

TEST_CASE("unequal embedments in one group are not assessed") {
  HeadedFace face = pair_at(9.0);
  face.inserts[1].h_ef = 5.0 * inch;
  CHECK(why_not(outcome_of(face)) == "inserts A and B break out together but differ in embedment");
}

TEST_CASE("inserts nearer than four diameters are not assessed") {
  CHECK(why_not(outcome_of(pair_at(2.9))) == "inserts of the group of A are nearer than 4 shank diameters");
  CHECK(is_assessed(outcome_of(pair_at(3.0))));
}

TEST_CASE("no insert is no strength") { CHECK_FALSE(is_assessed(outcome_of(wide_face()))); }

TEST_CASE("the trace has the area with a formula where it is a rectangle, without where it is cut") {
  Trace trace = Trace::recording();
  ProjectedAreas areas;
  const HeadedFace face = edges_at(4, 900, 5, 900);
  assessed(breakout(face.group(), areas, Eccentricity::none(), f_c, model, trace));
  CHECK(step_named(trace, "A_Nc").formula == "(min(c_1, r) + min(c_2, r)) * (min(c_3, r) + min(c_4, r))");
  CHECK(step_named(trace, "A_Nc").result.number == Approx(182.0));
  CHECK(step_named(trace, "N_cb").clause == "ACI 318-19 17.6.2.1(a)");

  const HeadedFace two = pair_at(9.0);
  ProjectedAreas other;
  assessed(breakout(two.group(), other, Eccentricity::none(), f_c, model, trace));
  CHECK(step_named(trace, "A_Nc").formula.empty());
  CHECK(step_named(trace, "N_cb").clause == "ACI 318-19 17.6.2.1(b)");
  CHECK(step_named(trace, "N_cb").words == "breakout strength of inserts A, B in tension");
}

TEST_CASE(
    "without depth, shank, factor of the concrete, strength or place of the resultant there is no number") {
  for (const double bad : {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
    CAPTURE(bad);
    const auto why = [&](auto change, Stress strength, const Eccentricity& e) {
      HeadedFace face = wide_face();
      face.add("A", 0.0 * inch, 0.0 * inch);
      change(face.inserts[0]);
      ProjectedAreas areas;
      Trace trace;
      return why_not(breakout(face.group(), areas, e, strength, model, trace));
    };
    const std::string not_described = "insert A is not described by numbers above zero";
    CHECK(why([&](HeadedInsert& insert) { insert.h_ef = bad * inch; }, f_c, Eccentricity::none()) ==
          not_described);
    CHECK(why([&](HeadedInsert& insert) { insert.d_a = bad * inch; }, f_c, Eccentricity::none()) ==
          not_described);
    CHECK(why([&](HeadedInsert& insert) { insert.lambda_a = bad; }, f_c, Eccentricity::none()) ==
          not_described);
    CHECK(why([](HeadedInsert&) {}, bad * psi, Eccentricity::none()) ==
          "the concrete strength is not a number above zero");
    if (std::isfinite(bad)) continue;
    const std::string no_place = "the place of the resultant of the group is not a number";
    CHECK(why([](HeadedInsert&) {}, f_c, Eccentricity(bad * inch, Length{})) == no_place);
    CHECK(why([](HeadedInsert&) {}, f_c, Eccentricity(Length{}, bad * inch)) == no_place);
  }
  HeadedFace face = wide_face();
  face.add("A", 0.0 * inch, 0.0 * inch);
  ProjectedAreas areas;
  Trace trace;
  CHECK(why_not(breakout(face.group(), areas, Eccentricity(1e300 * m, 1e300 * m), f_c, model, trace)) ==
        "the breakout strength about insert A is not a number above zero");
  face.sites[0].outline.outer.clear();  // its layout is known by its distances, its area is not
  ProjectedAreas none;
  CHECK(why_not(breakout(face.group(), none, Eccentricity::none(), f_c, model, trace)) ==
        "the breakout area about insert A cannot be found on its face");
  CHECK(why_not(breakout(face.group(), none, Eccentricity::none(), f_c, us_rules().headed, trace)) ==
        "the breakout area about insert A cannot be found on its face");
  ProjectedAreas none_of_en;
  CHECK(why_not(breakout(face.group(), none_of_en, Eccentricity::none(), f_c, eu_rules().headed, trace)) ==
        "the breakout area about insert A cannot be found on its face");
}
