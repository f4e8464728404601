#include "resistances/side_blowout.hpp"

#include <cmath>
#include <limits>
#include <string>

#include "resistances/lb_in_terms.hpp"
#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

const tables::HeadedInsertModel model = hand_made_headed_model();
const Stress f_c = 4000.0 * psi;
const Direction down{0.0, -1.0, 0.0};

double N_sb_lb(double c_a1_in) { return 160.0 * c_a1_in * std::sqrt(0.911) * std::sqrt(4000.0); }

// Edges at y = 0 and x = 0; the others far.
HeadedFace corner() { return HeadedFace(rectangle(0.0 * inch, 0.0 * inch, 5e3 * inch, 5e3 * inch)); }

std::optional<Resistance<Force>> of(const HeadedInsert& insert) {
  Trace trace;
  return assessed(side_blowout(insert, f_c, model, trace));
}
std::optional<Resistance<Force>> of(const HeadedFace& face) {
  Trace trace;
  return assessed(side_blowout(face.group(), down, f_c, model, trace));
}

}  // namespace

TEST_CASE("a deep head near one edge") {
  HeadedFace face = corner();
  const auto strength = of(face.add("A", 1e3 * inch, 3.0 * inch, 9.0 * inch));
  REQUIRE(strength.has_value());
  CHECK(in(lbf, strength->value) == Approx(N_sb_lb(3.0)));
}

TEST_CASE("it does not occur where h_ef is no more than 2.5 c_a1") {
  HeadedFace face = corner();
  CHECK_FALSE(of(face.add("A", 1e3 * inch, 3.0 * inch, 7.4 * inch)).has_value());
  CHECK(of(face.add("B", 1e3 * inch, 3.0 * inch, 7.6 * inch)).has_value());
}

TEST_CASE("near a corner: (1 + c_a2 / c_a1) / 4, c_a2 / c_a1 at least 1") {
  for (const auto& [c_a2, factor] :
       {std::pair{3.0, 0.5}, {6.0, 0.75}, {8.9, (1.0 + 8.9 / 3.0) / 4.0}, {9.1, 1.0}}) {
    CAPTURE(c_a2);
    HeadedFace face = corner();
    const auto strength = of(face.add("A", c_a2 * inch, 3.0 * inch, 9.0 * inch));
    REQUIRE(strength.has_value());
    CHECK(in(lbf, strength->value) == Approx(factor * N_sb_lb(3.0)));
  }
}

TEST_CASE("the nearest edge counts, whichever of the four it is") {
  HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 100.0 * inch, 100.0 * inch));
  for (const auto& [x, y] : {std::pair{97.0, 50.0}, {3.0, 50.0}, {50.0, 97.0}, {50.0, 3.0}}) {
    CAPTURE(x, y);
    const auto strength = of(face.add("A", x * inch, y * inch, 9.0 * inch));
    REQUIRE(strength.has_value());
    CHECK(in(lbf, strength->value) == Approx(N_sb_lb(3.0)));
  }
}

TEST_CASE("a row along the edge: 1 + s / (6 c_a1), without the corner factor") {
  HeadedFace face = corner();
  for (const double x : {4.0, 10.0, 16.0}) face.add("A", x * inch, 3.0 * inch, 9.0 * inch);
  CHECK(in(lbf, of(face).value().value) == Approx((1.0 + 12.0 / 18.0) * N_sb_lb(3.0)));
}

TEST_CASE("a gap of a row counts to 6 c_a1 at most: never more than so many singles") {
  HeadedFace face = corner();
  face.add("A", 1000.0 * inch, 3.0 * inch, 9.0 * inch);
  face.add("B", 1036.0 * inch, 3.0 * inch, 9.0 * inch);
  CHECK(in(lbf, of(face).value().value) == Approx(2.0 * N_sb_lb(3.0)));
}

TEST_CASE("inserts of a row for which it does not occur add no length, none left is no limit") {
  HeadedFace face = corner();
  face.add("A", 1000.0 * inch, 3.0 * inch, 9.0 * inch);
  face.add("B", 1006.0 * inch, 3.0 * inch, 9.0 * inch);
  face.add("C", 1012.0 * inch, 3.0 * inch, 5.0 * inch);
  CHECK(in(lbf, of(face).value().value) == Approx((1.0 + 6.0 / 18.0) * N_sb_lb(3.0)));
  for (HeadedInsert& insert : face.inserts) insert.h_ef = 5.0 * inch;
  CHECK_FALSE(of(face).has_value());
}

TEST_CASE("the trace names the edge") {
  HeadedFace face = corner();
  Trace trace = Trace::recording();
  assessed(side_blowout(face.add("A", 5.0 * inch, 3.0 * inch, 9.0 * inch), f_c, model, trace));
  CHECK(step_named(trace, "N_sb_corner").words == "side-face blowout strength of insert A, edge towards -y");
}

TEST_CASE("a row counts with its least edge distance and its smallest head, whichever insert has them") {
  for (const bool first_is_worse : {true, false}) {
    CAPTURE(first_is_worse);
    HeadedFace face = corner();
    face.add("A", 1000.0 * inch, (first_is_worse ? 2.5 : 3.0) * inch, 9.0 * inch);
    face.add("B", 1006.0 * inch, (first_is_worse ? 3.0 : 2.5) * inch, 9.0 * inch);
    face.inserts[first_is_worse ? 0 : 1].A_brg = 0.5 * in2;
    const double N_sb = 160.0 * 2.5 * std::sqrt(0.5) * std::sqrt(4000.0);
    CHECK(in(lbf, of(face).value().value) == Approx((1.0 + 6.0 / 15.0) * N_sb));
  }
}

// 0.75: all-lightweight concrete, ACI 318-19 table 19.2.4.2; 17.6.4.1 multiplies by it.
TEST_CASE("lightweight concrete holds less against blowout, by its factor") {
  HeadedFace face = corner();
  face.add("A", 1e3 * inch, 3.0 * inch, 9.0 * inch);
  face.inserts.front().lambda_a = Ratio{0.75};
  CHECK(in(lbf, of(face.inserts.front())->value) == Approx(0.75 * N_sb_lb(3.0)));
  CHECK(in(lbf, of(face)->value) == Approx(0.75 * N_sb_lb(3.0)));
}

TEST_CASE(
    "the corner beside the nearest edge counts, on whichever of its two sides it is, and the trace names the "
    "edge") {
  struct Case {
    double x, y;
    const char* towards;
  };
  // 60 x 60 in: 3 in from one side, 6 in from another
  for (const Case& at : {Case{57, 6, "+x"},
                         {57, 54, "+x"},
                         {3, 6, "-x"},
                         {3, 54, "-x"},
                         {6, 57, "+y"},
                         {54, 57, "+y"},
                         {6, 3, "-y"},
                         {54, 3, "-y"}}) {
    CAPTURE(at.x, at.y);
    HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 60.0 * inch, 60.0 * inch));
    Trace trace = Trace::recording();
    const auto strength =
        assessed(side_blowout(face.add("A", at.x * inch, at.y * inch, 9.0 * inch), f_c, model, trace));
    REQUIRE(strength.has_value());
    CHECK(in(lbf, strength->value) == Approx(0.75 * N_sb_lb(3.0)));
    CHECK(step_named(trace, "N_sb_corner").words ==
          std::string("side-face blowout strength of insert A, edge towards ") + at.towards);
  }
}

TEST_CASE("a direction between the axes is printed with its three parts") {
  HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 5e3 * inch, 5e3 * inch));
  Trace trace = Trace::recording();
  HeadedInsert& insert = face.add("A", 1e3 * inch, 3.0 * inch, 9.0 * inch, 30.0 * deg);
  const HeadedInsert* const row[] = {&insert};
  // Straight down is -y whichever way the insert is turned.
  assessed(side_blowout(Group(row), down, f_c, model, trace, Length{}));
  CHECK(step_named(trace, "N_sbg").words ==
        "side-face blowout strength of 1 inserts in a row with A, edge towards -y");
  CHECK(direction_in_words({0.6, -0.8, 0.0}) == "(0.600, -0.800, 0.000)");
  CHECK(direction_in_words({-1e-5, 0.8, -0.6}) == "(0.000, 0.800, -0.600)");
  CHECK(direction_in_words({0.0, 0.0, 1.0}) == "+z");
  CHECK(direction_in_words({0.0, 0.0, -1.0}) == "-z");
  CHECK(direction_in_words({0.0, 1.0, 0.0}) == "+y");
  CHECK(direction_in_words({-1.0, 0.0, 0.0}) == "-x");
  CHECK(direction_in_words({std::cos(1e-3), std::sin(1e-3), 0.0}) == "(1.000, 0.001, 0.000)");
}

TEST_CASE("a blowout without head, edge, depth or strength has no number, alone and in a row") {
  const std::string why =
      "insert A, its edges or the concrete strength are not described by numbers above zero";
  for (const double bad : {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
    CAPTURE(bad);
    HeadedFace face = corner();
    HeadedInsert& insert = face.add("A", 1e3 * inch, 3.0 * inch, 9.0 * inch);
    const HeadedInsert whole = insert;
    const auto check = [&](Stress strength) {
      Trace trace;
      CHECK(why_not(side_blowout(insert, strength, model, trace)) == why);
      CHECK(why_not(side_blowout(face.group(), down, strength, model, trace, Length{})) == why);
      insert = whole;
    };
    check(bad * psi);
    insert.A_brg = bad * in2;
    check(f_c);
    insert.h_ef = bad * inch;
    check(f_c);
    insert.lambda_a = bad;
    check(f_c);
    insert.edges.c[3] = bad * inch;
    if (!std::isinf(bad)) check(f_c);
    insert = whole;
    insert.edges.c[0] = bad * inch;
    Trace trace;
    CHECK(why_not(side_blowout(insert, f_c, model, trace)) == why);
  }
  HeadedFace face = corner();
  HeadedInsert& insert = face.add("A", 1e3 * inch, 3.0 * inch, 9.0 * inch);
  insert.A_brg = 1e308 * in2;
  Trace trace;
  CHECK(why_not(side_blowout(insert, 1e304 * psi, model, trace)) == why);  // each a number, not their product
  CHECK(why_not(side_blowout(face.group(), down, 1e304 * psi, model, trace, Length{})) == why);
  CHECK(why_not(side_blowout(Group{}, down, f_c, model, trace, Length{})) == "a row without inserts");
  face.sites[0].outline.outer.clear();
  CHECK(why_not(side_blowout(face.group(), {0.6, 0.8, 0.0}, f_c, model, trace, Length{})) ==
        "insert A does not lie inside the outline of its face");
}

TEST_CASE("a row at exactly 2.5 c_a1 does not blow out, one step deeper it does") {
  // In metres that are whole parts of two.
  for (const double h_ef_m : {0.15625, std::nextafter(0.15625, 1.0)}) {
    HeadedFace face(rectangle(0.0 * m, 0.0 * m, 100.0 * m, 100.0 * m));
    face.add("A", 50.0 * m, 0.0625 * m, h_ef_m * m);
    CHECK(of(face).has_value() == (h_ef_m > 0.15625));
    CHECK(of(face.inserts[0]).has_value() == (h_ef_m > 0.15625));
  }
}
