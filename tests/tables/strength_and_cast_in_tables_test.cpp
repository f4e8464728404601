// The tables of strength over time, of loops and of plates hold the numbers that their sources print, in their units.
//
// Sources  ACI 318-14 26.12.3.1 and ACI 214R-11 (ranges of two and of three), ACI 209R-92 table 2.2.1, EN 1992-1-1 3.1.2,
//          ASTM C1074, Freiesleben Hansen and Pedersen 1977, EN 1992-1-1 annex B (B.10), Yeh's measured mixtures,
//          PCI Journal 66-2 and 69-3, BS 8110-1 table 3.26, ACI 318-19 14.5.5.1, 14.5.6.1 and 25.3.2,
//          DGUV Regel 101-001: read or second-hand, as each entry tells.

#include <catch2/catch.hpp>

#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "tables/tables.hpp"

using namespace firstpick;
using namespace firstpick::tables;

namespace {

const Tables& shipped() {
  static const Tables tables = [] {
    auto read = read_tables("tables");
    if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read))
      for (const Diagnostic& fault : *faults) FAIL_CHECK(show(fault));
    return std::get<Tables>(std::move(read));
  }();
  return tables;
}

// By definition, independent of the unit parser.
constexpr double lbf_N = 4.4482216152605, in_m = 0.0254, psi_Pa = lbf_N / (in_m * in_m), hour_s = 3600.0;
constexpr double day_s = 24.0 * hour_s, zero_degC_K = 273.15, degree = 3.14159265358979323846 / 180.0;

template <class Q>
void check(const Sourced<Q>& entry, double printed, double unit_SI) {
  CAPTURE(entry.source.id);
  CHECK(entry.value.value() / unit_SI == Approx(printed).epsilon(1e-9));
}
void check(const Sourced<Ratio>& entry, double printed) { check(entry, printed, 1.0); }
void check_degC(const Sourced<Temperature>& entry, double printed) {
  CAPTURE(entry.source.id);
  CHECK(entry.value.value() - zero_degC_K == Approx(printed).margin(1e-9));
}

}  // namespace

TEST_CASE("acceptance of tests: three in a row, 500 psi up to 5000 psi, 0.9 above, the range of two and of three over sigma") {
  REQUIRE(shipped().acceptance);
  const AcceptanceLimits& limits = *shipped().acceptance;
  check(limits.run_length, 3);
  check(limits.single_drop, 500, psi_Pa);
  check(limits.drop_up_to, 5000, psi_Pa);
  check(limits.share_above, 0.90);
  // d2 is the mean range of n samples of a standard normal: 2 / sqrt(pi) of two, 3 / sqrt(pi) of three.
  check(limits.d2_of_two, 1.128);
  check(limits.d2_of_three, 1.693);
  CHECK(limits.d2_of_two.value.value() == Approx(2.0 / std::sqrt(3.14159265358979)).margin(0.0005));
  CHECK(limits.d2_of_three.value.value() == Approx(3.0 / std::sqrt(3.14159265358979)).margin(0.0005));
}

TEST_CASE("growth curves: a and beta of ACI 209R-92, s of EN 1992-1-1") {
  struct Row {
    std::string key;
    double a_d, beta;
  };
  const std::vector<Row> rows = {{"aci-209, type I, moist", 4.0, 0.85}, {"aci-209, type III, moist", 2.3, 0.92},
                                 {"aci-209, type I, steam", 1.0, 0.95}, {"aci-209, type III, steam", 0.70, 0.98}};
  for (const Row& row : rows) {
    CAPTURE(row.key);
    const GrowthCurve& curve = shipped().growth_curves.at(row.key);
    REQUIRE((curve.aci_a && curve.aci_beta));
    check(*curve.aci_a, row.a_d, day_s);
    check(*curve.aci_beta, row.beta);
    // a + beta t is t at about 28 days: the curve gives the strength of that age within 2 %.
    CHECK(28.0 / (row.a_d + row.beta * 28.0) == Approx(1.0).margin(0.02));
  }
  for (const auto& [key, s] : {std::pair{"en-1992-1-1, class R", 0.20}, std::pair{"en-1992-1-1, class N", 0.25},
                               std::pair{"en-1992-1-1, class S", 0.38}}) {
    CAPTURE(key);
    REQUIRE(shipped().growth_curves.at(key).en_s);
    check(*shipped().growth_curves.at(key).en_s, s);
  }
  CHECK(shipped().growth_curves.size() == 7);
}

TEST_CASE("what strengths over that of 28 days have been measured at 3 and 7 days") {
  const std::vector<GrowthBand>& bands = shipped().growth_bands;
  REQUIRE(bands.size() == 2);
  const std::vector<std::array<double, 4>> rows = {{3, 0.229, 0.456, 0.745}, {7, 0.426, 0.630, 0.983}};
  for (std::size_t i = 0; i < 2; ++i) {
    check(bands[i].band_age, rows[i][0], day_s);
    check(bands[i].band_low, rows[i][1]);
    check(bands[i].band_middle, rows[i][2]);
    check(bands[i].band_high, rows[i][3]);
  }
}

TEST_CASE("maturity: temperatures, activation and limits of a log") {
  REQUIRE(shipped().maturity);
  const MaturityConstants& maturity = *shipped().maturity;
  check_degC(maturity.datum_low, -10.0);
  check_degC(maturity.datum_high, 0.0);
  check_degC(maturity.reference, 20.0);
  check(maturity.activation_warm, 33500.0);
  check(maturity.activation_slope, 1470.0);
  check_degC(maturity.activation_threshold, 20.0);
  check(maturity.gas_constant, 8.314);
  check(maturity.en_constant, 13.65);
  check(maturity.en_activation, 4000.0);
  check(maturity.en_zero, 273.0);
  // At 20 degC one hour counts as one, but for the rounding of the printed constants.
  CHECK(std::exp(13.65 - 4000.0 / (273.0 + 20.0)) == Approx(1.0).margin(0.003));
  check(maturity.longest_gap, 1.0, hour_s);
  check(maturity.frozen_after, 8.0, hour_s);
  check_degC(maturity.coldest, -30.0);
  check_degC(maturity.hottest, 100.0);
  check_degC(maturity.peak, 60.0);
}

TEST_CASE("loops of strand and bar: bond, groups, hooks, bends and angles") {
  REQUIRE(shipped().loops);
  const LoopModel& loops = *shipped().loops;
  REQUIRE(loops.strand_bond.size() == 2);
  check(loops.strand_bond[0], 199, psi_Pa);  // tests of 2021
  check(loops.strand_bond[1], 100, psi_Pa);  // tests of 2024
  check(loops.bond_factor, 4);
  check(loops.bond_strength, 3000, psi_Pa);
  check(loops.strand_diameter, 0.6, in_m);
  CHECK(loops.strands.size() == 3);
  check(loops.strands.at(2), 1.9);
  check(loops.strands.at(3), 2.8);
  check(loops.strands.at(4), 3.3);
  check(loops.offset_factor, 0.58);
  check(loops.offset_tested, 1, in_m);
  check(loops.hook_factor, 0.88);
  check(loops.pin_tested, 2.4, in_m);
  check(loops.member_depth, 24, in_m);
  REQUIRE(loops.bar_bond.size() == 2);
  check(loops.bar_bond[0], 0.4, 1000.0);   // a calculation of lifting hooks; MPa^0.5 = 1000 Pa^0.5
  check(loops.bar_bond[1], 0.28, 1000.0);  // plain bar in tension
  check(loops.bar_bend, 3);
  REQUIRE(loops.maximum_angle.size() == 2);
  check(loops.maximum_angle[0], 45, degree);  // French guidance
  check(loops.maximum_angle[1], 30, degree);  // report of 2016
}

TEST_CASE("bearing and punching of plain concrete, engagement of a thread") {
  REQUIRE(shipped().plates);
  check(shipped().plates->bearing, 0.85);
  check(shipped().plates->punching, 2.66, std::sqrt(psi_Pa));
  check(shipped().plates->thread_engagement, 1.5);
}
