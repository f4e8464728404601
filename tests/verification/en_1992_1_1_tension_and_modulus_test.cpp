// Tension and modulus of elasticity of concrete by EN 1992-1-1:2004 table 3.1, 3.1.2(9) and (3.5).
//
// Sources  unit tests of the open library structuralcodes of the fib: f_ctm(t) for beta_cc 0.32, alpha 2/3, f_ctm 3.45, and
//          E_cm(t) for f_cm(t) 2.34, f_cm 3.4, E_cm 2.9. Unit tests of the open project LebeDigital: f_ctm of f_ck 30 and 60.
//          Rounded values of table 3.1, quoted from an open library: f_ctm and E_cm of C20/25 to C50/60. A worked table of
//          C40/50, computed beforehand. Tolerance: half a unit of the last printed digit.
//
// The program has no beta_cc at the lift: it puts the strength shown into table 3.1. With alpha = 2/3 that is the same
// formula, for (beta f)^(2/3) = beta^(2/3) f^(2/3), and is checked so; 3.1.2(9) has alpha = 1 before 28 days, which is not
// used (docs/rules/piece-cracking.md), and the difference is held below.
//
// Outside  eu piece-cracking, tables/rules/eu.toml

#include "resistances/concrete_modulus.hpp"
#include "resistances/cracking_stress.hpp"
#include "support/assessed.hpp"
#include "support/formula.hpp"
#include "support/step_named.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

const tables::RuleSet& eu() { return us_tables().rule_sets.at("eu"); }

plan::Concrete normal_concrete() {
  plan::Concrete concrete;
  concrete.kind = "normalweight";
  return concrete;
}

double f_ctm_MPa(double f_ck_MPa) {
  Trace trace = Trace::recording();
  assessed(resistances::cracking_stress(normal_concrete(), f_ck_MPa * MPa, 1.0 * m, eu(), us_tables(), trace));
  return step_named(trace, "f_ctm").result.number;
}

double E_cm_MPa(double f_ck_MPa) {
  Trace silent;
  return in(MPa, assessed(resistances::concrete_modulus(normal_concrete(), f_ck_MPa * MPa, eu(), us_tables(), silent)));
}

}  // namespace

TEST_CASE("LebeDigital: f_ctm of f_ck 30 and 60 MPa") {
  CHECK(f_ctm_MPa(30) == Approx(2.896468).margin(5e-7));
  CHECK(f_ctm_MPa(60) == Approx(4.354742).margin(5e-7));
}

TEST_CASE("what is printed of f_ctm gives its number again, on both sides of C50/60") {
  for (const double f_ck_MPa : {30.0, 60.0}) {
    Trace trace = Trace::recording();
    assessed(resistances::cracking_stress(normal_concrete(), f_ck_MPa * MPa, 1.0 * m, eu(), us_tables(), trace));
    const Step step = step_named(trace, "f_ctm");
    Symbols symbols;
    for (const Term& term : step.given) symbols[term.symbol] = term.number;
    CHECK(value_of(step.formula, symbols) == Approx(step.result.number).epsilon(1e-12));
  }
}

TEST_CASE("fib structuralcodes: f_ctm(t) of beta_cc 0.32, alpha 2/3 and f_ctm 3.45 MPa") {
  const double f_ck = 39.0;  // any; its own f_ctm is scaled to the 3.45 of the source
  CHECK(3.45 * f_ctm_MPa(0.32 * f_ck) / f_ctm_MPa(f_ck) == Approx(1.614058).margin(5e-7));
}

TEST_CASE("fib structuralcodes: E_cm(t) of f_cm(t) 2.34, f_cm 3.4 and E_cm 2.9") {
  // The formula takes any unit; ours f_cm = f_ck + 8 MPa, so tenfold: 23.4 and 34 MPa.
  CHECK(2.9 * E_cm_MPa(23.4 - 8.0) / E_cm_MPa(34.0 - 8.0) == Approx(2.592502).margin(5e-7));
}

TEST_CASE("EN 1992-1-1 table 3.1, rounded as printed: C20/25 to C50/60") {
  // Known different: the library prints 32 GPa for C30/37, and its own formula gives 32.84, which rounds to 33.
  struct Row {
    double f_ck, E_cm_GPa, f_ctm, E_cm_margin = 0.5;
  };
  for (const Row& row : {Row{20, 30, 2.2}, Row{25, 31, 2.6}, Row{30, 32, 2.9, 0.84}, Row{35, 34, 3.2}, Row{40, 35, 3.5},
                         Row{45, 36, 3.8}, Row{50, 37, 4.1}}) {
    CAPTURE(row.f_ck);
    CHECK(f_ctm_MPa(row.f_ck) == Approx(row.f_ctm).margin(0.05));
    CHECK(E_cm_MPa(row.f_ck) / 1000.0 == Approx(row.E_cm_GPa).margin(row.E_cm_margin));
  }
}

TEST_CASE("C40/50, computed: f_ctm, E_cm, and how far 3.1.2(9) with alpha = 1 lies below what the program takes") {
  CHECK(f_ctm_MPa(40) == Approx(3.508821).margin(5e-7));
  CHECK(E_cm_MPa(40) / 1000.0 == Approx(35.220462).margin(5e-7));
  struct Row {
    double f_ck_t, f_ctm_t, E_cm_t;  // f_ctm(t) with alpha = 1
  };
  for (const Row& row : {Row{12.346, 1.4873, 27.2250}, Row{23.823, 2.3263, 31.1347}, Row{8.417, 1.2001, 25.5277},
                         Row{20.716, 2.0991, 30.1896}, Row{29.382, 2.7327, 32.6756}, Row{13.983, 1.6070, 27.8644}}) {
    CAPTURE(row.f_ck_t);
    CHECK(E_cm_MPa(row.f_ck_t) / 1000.0 == Approx(row.E_cm_t).margin(0.0006));  // f_ck(t) is printed to 0.001 MPa
    CHECK(f_ctm_MPa(row.f_ck_t) > row.f_ctm_t);
  }
  CHECK(100.0 * (1.0 - 1.4873 / f_ctm_MPa(12.346)) == Approx(7.2).margin(0.05));
}
