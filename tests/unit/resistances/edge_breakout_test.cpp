#include "resistances/edge_breakout.hpp"

#include <cmath>

#include "resistances/basic_shear_breakout.hpp"
#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

const tables::HeadedInsertModel model = hand_made_headed_model();
const Stress f_c = 4000.0 * psi;
const Direction right{1.0, 0.0, 0.0}, left{-1.0, 0.0, 0.0}, up{0.0, 1.0, 0.0}, down{0.0, -1.0, 0.0};

// 3/4 in bolt, h_ef 6 in: l_e = 6 in, 7 x 8^0.2 sqrt(0.75) = 9.19 > 9.
double V_b_lb(double c_a1_in) { return 9.0 * std::sqrt(4000.0) * std::pow(c_a1_in, 1.5); }

HeadedFace edges_at(double to_right, double to_left, double to_up, double to_down, double thick_in = 500.0) {
  HeadedFace face(
      rectangle(-to_left * inch, -to_down * inch, (to_left + to_right) * inch, (to_up + to_down) * inch),
      thick_in * inch);
  face.add("A", 0.0 * inch, 0.0 * inch);
  return face;
}

double lb(const HeadedFace& face, const Direction& shear) {
  Trace trace;
  return in(lbf, assessed(edge_breakout(face.inserts[0], shear, f_c, model, trace)).value);
}
std::optional<double> row_lb(const HeadedFace& face, const Direction& towards, const Direction& shear,
                             Length e = Length{}) {
  Trace trace;
  const auto strength = assessed(edge_breakout(face.group(), towards, shear, e, f_c, model, trace));
  if (!strength) return {};
  return in(lbf, strength->value);
}

}  // namespace

TEST_CASE("towards one edge in deep concrete far from corners: the basic strength") {
  CHECK(lb(edges_at(10, 900, 900, 900), right) == Approx(V_b_lb(10.0)));
}

TEST_CASE("a thin shank has the lesser form, with l_e of at most 8 diameters") {
  const auto V_b = [](double h_ef_in, double d_a_in) {
    Trace trace;
    return in(lbf, basic_shear_breakout(10.0 * inch, h_ef_in * inch, d_a_in * inch, 1.0, f_c, model, trace));
  };
  const double common = std::sqrt(4000.0) * std::pow(10.0, 1.5);
  CHECK(V_b(6.0, 0.5) == Approx(7.0 * std::pow(8.0, 0.2) * std::sqrt(0.5) * common));
  CHECK(V_b(3.0, 0.5) == Approx(7.0 * std::pow(6.0, 0.2) * std::sqrt(0.5) * common));
  CHECK(V_b(6.0, 1.0) == Approx(9.0 * common));
}

TEST_CASE("a corner beside: area and 0.7 + 0.3 c_a2 / (1.5 c_a1)") {
  // c_a1 10, c_a2 6: (6 + 15) x 15 / 450
  CHECK(lb(edges_at(10, 900, 6, 900), right) ==
        Approx(std::min(21.0 * 15.0 / 450.0 * (0.7 + 0.3 * 6.0 / 15.0) * V_b_lb(10.0),
                        // the upper edge at 6, shear along it: 2 x (9 + 9) x 9 / 162
                        2.0 * V_b_lb(6.0))));
}

TEST_CASE("concrete thinner than 1.5 c_a1: less area, and psi_h") {
  // 8 in thick: 30 x 8 / 450, sqrt(15 / 8)
  CHECK(lb(edges_at(10, 900, 900, 900, 8.0), right) ==
        Approx(30.0 * 8.0 / 450.0 * std::sqrt(15.0 / 8.0) * V_b_lb(10.0)));
}

TEST_CASE("narrow and thin: c_a1 = max(c_a2,max / 1.5, h_a / 1.5)") {
  // c_a1 20 > reach 30; c_a2 9 and 12, h_a 6: c' = max(8, 4) = 8, reach 12: (9 + 12) x 6 / 288, sqrt(12 / 6)
  const double expected = 21.0 * 6.0 / 288.0 * (0.7 + 0.3 * 9.0 / 12.0) * std::sqrt(2.0) * V_b_lb(8.0);
  CHECK(row_lb(edges_at(20, 900, 9, 12, 6.0), right, right).value() == Approx(expected));
}

TEST_CASE("along an edge: twice, without the factor of the corner") {
  CHECK(lb(edges_at(10, 900, 900, 900), up) == Approx(2.0 * V_b_lb(10.0)));
  CHECK(row_lb(edges_at(10, 900, 900, 900), right, down).value() == Approx(2.0 * V_b_lb(10.0)));
}

TEST_CASE("at an angle the two parts are taken together: never more than either alone allows") {
  const HeadedFace face = edges_at(10, 900, 900, 900);
  for (const double a : {10.0, 30.0, 45.0, 60.0, 80.0}) {
    CAPTURE(a);
    const double c = cosine(a * deg), s = sine(a * deg);
    const double R = lb(face, {c, s, 0.0});
    CHECK(R == Approx(1.0 / std::hypot(c / V_b_lb(10.0), s / (2.0 * V_b_lb(10.0)))));
    CHECK(R <= V_b_lb(10.0) / c * (1.0 + 1e-12));
    CHECK(R <= 2.0 * V_b_lb(10.0) / s * (1.0 + 1e-12));
    CHECK(lb(face, {c, -s, 0.0}) == Approx(R));
    CHECK(lb(face, {7.0 * c, 7.0 * s, 0.0}) == Approx(R));
  }
}

TEST_CASE("straight away from the near edge, the other edges decide") {
  const HeadedFace face = edges_at(10, 40, 900, 900);
  CHECK(lb(face, left) == Approx(V_b_lb(40.0)));
  CHECK_FALSE(row_lb(face, right, left).has_value());
  CHECK(row_lb(face, left, left).value() == Approx(V_b_lb(40.0)));
}

TEST_CASE("of the four edges the one that allows least decides, and the trace names it") {
  const HeadedFace face = edges_at(30, 900, 7, 900);
  Trace trace = Trace::recording();
  const double R = in(lbf, assessed(edge_breakout(face.inserts[0], right, f_c, model, trace)).value);
  CHECK(R == Approx(2.0 * V_b_lb(7.0)));
  CHECK(step_named(trace, "R").words ==
        "edge breakout strength of insert A against its shear, edge towards +y");
}

TEST_CASE("a row of two: the outer spacing widens the body, up to two singles") {
  for (const auto& [s, expected] :
       {std::pair{5.0, 35.0 / 30.0}, {20.0, 50.0 / 30.0}, {30.0, 2.0}, {55.0, 2.0}}) {
    CAPTURE(s);
    HeadedFace face = edges_at(10, 900, 900, 900);
    face.add("B", 0.0 * inch, s * inch);
    CHECK(row_lb(face, right, right).value() == Approx(expected * V_b_lb(10.0)));
  }
}

TEST_CASE("a row of which one insert takes all has the strength of one") {
  HeadedFace face = edges_at(10, 900, 900, 900);
  face.add("B", 0.0 * inch, 12.0 * inch);
  CHECK(row_lb(face, right, right, 6.0 * inch).value() == Approx(V_b_lb(10.0)));
  CHECK(row_lb(face, right, right, -6.0 * inch).value() == Approx(V_b_lb(10.0)));
}

TEST_CASE("an insert behind another adds nothing: all the shear is on the front") {
  HeadedFace face = edges_at(10, 900, 900, 900);
  face.add("B", -8.0 * inch, 0.0 * inch);
  CHECK(row_lb(face, right, right).value() == Approx(V_b_lb(10.0)));
}

TEST_CASE("a shear without direction, or of no number, is not assessed") {
  const HeadedFace face = edges_at(10, 900, 900, 900);
  Trace trace;
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (const Direction& bad : {Direction{0, 0, 0}, {0, 0, 1}, {nan, 0, 0}, {0, nan, 0}}) {
    CHECK(why_not(edge_breakout(face.inserts[0], bad, f_c, model, trace)) ==
          "the shear on insert A has no direction in its face");
    CHECK_FALSE(is_assessed(edge_breakout(face.group(), right, bad, Length{}, f_c, model, trace)));
  }
  CHECK_FALSE(is_assessed(edge_breakout(face.group(), right, right, nan * inch, f_c, model, trace)));
  CHECK_FALSE(is_assessed(edge_breakout(Group{}, right, right, Length{}, f_c, model, trace)));
}

TEST_CASE("of a shear away from an edge only the part along it counts") {
  const HeadedFace face = edges_at(10, 900, 900, 900);
  CHECK(row_lb(face, right, {-0.8, 0.6, 0.0}).value() == Approx(2.0 * V_b_lb(10.0) / 0.6));
}

TEST_CASE("thin but not narrow, and narrow but not thin: c_a1 stays") {
  // thin: (30 + 30) x 6 / 1800, sqrt(30 / 6); narrow: (9 + 12) x 30 / 1800, 0.7 + 0.3 x 9 / 30
  CHECK(row_lb(edges_at(20, 900, 500, 500, 6.0), right, right).value() ==
        Approx(60.0 * 6.0 / 1800.0 * std::sqrt(5.0) * V_b_lb(20.0)));
  CHECK(row_lb(edges_at(20, 900, 9, 12, 500.0), right, right).value() ==
        Approx(21.0 * 30.0 / 1800.0 * (0.7 + 0.3 * 9.0 / 30.0) * V_b_lb(20.0)));
}

TEST_CASE("a row counts with the thinnest concrete, shortest insert and thinnest shank, whichever has them") {
  for (const std::size_t worse : {0U, 1U}) {
    CAPTURE(worse);
    HeadedFace face = edges_at(10, 900, 900, 900);
    face.add("B", 0.0 * inch, 12.0 * inch);
    face.sites[worse].thickness = 8.0 * inch;
    face.inserts[worse].d_a = 0.5 * inch;
    face.inserts[worse].h_ef = 3.0 * inch;
    const double V_b = 7.0 * std::pow(6.0, 0.2) * std::sqrt(0.5) * std::sqrt(4000.0) * std::pow(10.0, 1.5);
    CHECK(row_lb(face, right, right).value() == Approx(42.0 * 8.0 / 450.0 * std::sqrt(15.0 / 8.0) * V_b));
  }
}

TEST_CASE("of the four edges the one the shear presses on, each at its own distance") {
  // 10, 11, 12 and 13 in; a shear along an edge has twice its strength, so that the edge ahead decides
  const HeadedFace face = edges_at(10, 11, 12, 13);
  const auto towards = [](double c, double left_in, double right_in) {
    const double r = 1.5 * c;
    return (std::min(r, left_in) + std::min(r, right_in)) / (2.0 * r) *
           std::min(1.0, 0.7 + 0.3 * std::min(left_in, right_in) / r) * V_b_lb(c);
  };
  CHECK(lb(face, right) == Approx(towards(10, 12, 13)));
  CHECK(lb(face, left) == Approx(towards(11, 12, 13)));
  CHECK(lb(face, up) == Approx(towards(12, 10, 11)));
  CHECK(lb(face, down) == Approx(towards(13, 10, 11)));
  const char* const words[] = {"+x", "-x", "+y", "-y"};
  const Direction all[] = {right, left, up, down};
  for (std::size_t i = 0; i < 4; ++i) {
    Trace trace = Trace::recording();
    assessed(edge_breakout(face.inserts[0], all[i], f_c, model, trace));
    CHECK(step_named(trace, "R").words ==
          std::string("edge breakout strength of insert A against its shear, edge towards ") + words[i]);
  }
}

TEST_CASE("cracked concrete has 1, uncracked 1.4, and lightweight its own factor") {
  HeadedFace face = edges_at(10, 900, 900, 900);
  face.inserts[0].cracked = false;
  CHECK(lb(face, right) == Approx(1.4 * V_b_lb(10.0)));
  CHECK(row_lb(face, right, right).value() == Approx(1.4 * V_b_lb(10.0)));
  face.inserts[0].lambda_a = 0.75;
  CHECK(lb(face, right) == Approx(1.4 * 0.75 * V_b_lb(10.0)));
}

TEST_CASE(
    "without depth, shank, thickness, edges or strength an edge has no number, for one insert and for a "
    "row") {
  const std::string why =
      "insert A, its edges or the concrete strength are not described by numbers above zero";
  for (const double bad :
       {0.0, -1.0, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    CAPTURE(bad);
    const auto check = [&](const HeadedFace& face, Stress strength) {
      Trace trace;
      CHECK(why_not(edge_breakout(face.inserts[0], right, strength, model, trace)) == why);
      CHECK(why_not(edge_breakout(face.group(), right, right, Length{}, strength, model, trace)) == why);
      CHECK(why_not(edge_strengths(face.inserts[0], strength, model)) == why);
    };
    HeadedFace face = edges_at(10, 900, 900, 900);
    check(face, bad * psi);
    face.inserts[0].h_ef = bad * inch;
    check(face, f_c);
    face = edges_at(10, 900, 900, 900);
    face.inserts[0].d_a = bad * inch;
    check(face, f_c);
    face = edges_at(10, 900, 900, 900);
    face.inserts[0].lambda_a = bad;
    check(face, f_c);
    for (std::size_t i = 0; i < 4; ++i) {
      face = edges_at(10, 900, 900, 900);
      face.inserts[0].edges.c[i] = bad * inch;
      check(face, f_c);
    }
    HeadedFace thin = edges_at(10, 900, 900, 900);
    thin.sites[0].thickness = bad * inch;
    check(thin, f_c);
  }
}

TEST_CASE("strengths of an edge that are no number give none, for one insert and for a row") {
  const HeadedFace face = edges_at(10, 900, 900, 900);
  const std::string why =
      "insert A, its edges or the concrete strength are not described by numbers above zero";
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (const double bad : {0.0, nan}) {
    const EdgeStrength none{bad * kN, bad * kN}, some{10.0 * kN, 20.0 * kN};
    CHECK(why_not(edge_breakout(face.inserts[0], EdgeStrengths{none, some, some, some}, right)) == why);
    CHECK(in(kN,
             assessed(edge_breakout(face.inserts[0], EdgeStrengths{some, none, some, some}, right)).value) ==
          Approx(10.0));
  }
  tables::HeadedInsertModel no_factor = model;
  no_factor.psi_cV_cracked.value = nan;
  Trace trace;
  CHECK(why_not(edge_breakout(face.group(), right, right, Length{}, f_c, no_factor, trace)) == why);
  HeadedFace two = edges_at(10, 900, 900, 900);
  two.add("B", 0.0 * inch, 12.0 * inch);
  two.sites[1].face = 3;
  CHECK(why_not(edge_breakout(two.group(), right, right, Length{}, f_c, model, trace)) ==
        "inserts A and B are not in one face");
  HeadedFace outside = edges_at(10, 900, 900, 900);
  outside.sites[0].outline.outer.clear();
  CHECK(why_not(edge_breakout(outside.group(), {0.6, 0.8, 0.0}, right, Length{}, f_c, model, trace)) ==
        "insert A does not lie inside the outline of its face");
}

TEST_CASE("at an angle to any of the four edges both parts count alike") {
  const double c = cosine(35.0 * deg), s = sine(35.0 * deg), V = V_b_lb(10.0);
  const double expected = 1.0 / std::hypot(c / V, s / (2.0 * V));
  CHECK(lb(edges_at(10, 900, 900, 900), {c, s, 0.0}) == Approx(expected));
  CHECK(lb(edges_at(900, 10, 900, 900), {-c, s, 0.0}) == Approx(expected));
  CHECK(lb(edges_at(900, 900, 10, 900), {s, c, 0.0}) == Approx(expected));
  CHECK(lb(edges_at(900, 900, 900, 10), {s, -c, 0.0}) == Approx(expected));
}

TEST_CASE("the steps of a row name its edge, its number and its strength") {
  HeadedFace face = edges_at(10, 900, 900, 900);
  face.add("B", 0.0 * inch, 12.0 * inch);
  Trace trace = Trace::recording();
  const auto R = assessed(edge_breakout(face.group(), right, right, Length{}, f_c, model, trace));
  REQUIRE(R);
  CHECK(step_named(trace, "R").result.number == Approx(42.0 / 30.0 * V_b_lb(10.0)));
  CHECK(step_named(trace, "R").words ==
        "edge breakout strength of 2 inserts in a row with A against its shear, edge towards +x");
}
