// EN 1992-4:2018, clause by clause as an unattributed engineering brief in a public repository restates it (second-hand):
// its table of N0_Rk,c for post-installed fasteners (k1 = 7.7, C20/25), recommended partial factors of table 4.1, and the
// forms of 7.2.1 and 7.2.2. The program has k1 for cast-in heads; the test puts 7.7 in. Two rows of the brief are cut off,
// not rounded (12.1 and 20.1): there the tolerance is a whole unit of the digit.
//
// Outside  eu insert-breakout, eu insert-steel-tension, eu insert-steel-shear, tables/rules/eu.toml

#include <catch2/catch.hpp>

#include "resistances/en_1992_4.hpp"
#include "resistances/steel_shear.hpp"
#include "support/assessed.hpp"
#include "support/headed_face.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

Approx printed(double number, double tolerance) { return Approx(number).margin(tolerance).epsilon(0.0); }

HeadedInsert steel_of(double f_uk_MPa, double f_yk_MPa) {
  HeadedFace face = wide_face();
  HeadedInsert insert = face.add("A", 0.0 * mm, 0.0 * mm, 200.0 * mm);
  insert.f_uta = f_uk_MPa * MPa;
  insert.f_ya = f_yk_MPa * MPa;
  return insert;
}

}  // namespace

TEST_CASE("EN 1992-4 (7.2): N0_Rk,c in kN, k1 = 7.7, f_ck = 20 MPa") {
  tables::En1992HeadedModel en = *eu_rules().headed.en;
  en.k1_cracked.value = 7.7 * newton / (root(MPa) * power<3, 2>(mm));
  Trace trace;
  struct Row {
    double h_ef_mm, N0_kN, tolerance;
  };
  for (const Row& row : {Row{40, 8.7, 0.05}, Row{50, 12.1, 0.1}, Row{60, 16.0, 0.05}, Row{70, 20.1, 0.1},
                         Row{80, 24.6, 0.05}, Row{100, 34.4, 0.05}, Row{125, 48.1, 0.05}, Row{170, 76.3, 0.05}}) {
    CAPTURE(row.h_ef_mm);
    const Force N0 = en_basic_cone(row.h_ef_mm * mm, true, 20.0 * MPa, en, trace);
    CHECK(in(kN, N0) == Approx(row.N0_kN).margin(row.tolerance).epsilon(0.0));
  }
}

TEST_CASE("EN 1992-4 table 4.1: partial factors, permanent and transient") {
  const auto& en = *eu_rules().headed.en;
  Trace trace;
  const auto tension = [&](double f_uk, double f_yk) {
    return partial_factor_of_steel_tension(steel_of(f_uk, f_yk), en, trace).value.value();
  };
  const auto shear = [&](double f_uk, double f_yk) {
    return partial_factor_of_steel_shear(steel_of(f_uk, f_yk), en, trace).value.value();
  };
  CHECK(partial_factor_of_concrete(en, trace).value.value() == printed(1.5, 1e-12));
  CHECK(tension(400.0, 240.0) == printed(2.0, 1e-12));   // 1.2 x 400 / 240
  CHECK(tension(800.0, 720.0) == printed(1.4, 1e-12));   // not less
  CHECK(shear(400.0, 240.0) == printed(400.0 / 240.0, 1e-12));
  CHECK(shear(500.0, 400.0) == printed(1.25, 1e-12));    // f_yk / f_uk = 0.8 is still soft
  CHECK(shear(500.0, 401.0) == printed(1.5, 1e-12));
  CHECK(shear(800.0, 640.0) == printed(1.25, 1e-12));    // and so is 800 MPa
  CHECK(shear(801.0, 600.0) == printed(1.5, 1e-12));
}

TEST_CASE("EN 1992-4 (7.34): steel in shear, k6 0.6 to 500 MPa, 0.5 above, none above 1000, short shanks 0.8") {
  const auto& model = eu_rules().headed;
  Trace trace;
  HeadedInsert insert = steel_of(500.0, 300.0);
  insert.A_se = 100.0 * mm2;
  insert.d_a = 20.0 * mm;
  const auto V_kN = [&] { return in(kN, assessed(steel_shear(insert, model, trace)).value); };
  CHECK(V_kN() == printed(0.8 * 0.6 * 50.0, 1e-9));  // k7 = 0.8
  insert.f_uta = 501.0 * MPa;
  CHECK(V_kN() == printed(0.8 * 0.5 * 50.1, 1e-9));
  insert.h_ef = 99.0 * mm;
  CHECK(V_kN() == printed(0.8 * 0.8 * 0.5 * 50.1, 1e-9));
  insert.h_ef = 100.0 * mm;  // h_ef / d = 5 is not short
  CHECK(V_kN() == printed(0.8 * 0.5 * 50.1, 1e-9));
  insert.f_uta = 1000.5 * MPa;
  CHECK_FALSE(is_assessed(steel_shear(insert, model, trace)));
}
