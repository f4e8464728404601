// The rule set "eu" holds the numbers that its sources print, in their units.
//
// Sources  EN 1992-4:2018 7.2 and table 4.1, EN 1992-1-1 3.1.8 and table 3.1: second-hand with clause numbers, or from
//          memory; DGUV Regel 101-001, read.
// Places   each row names clause and basis as the table must; a digit or a basis changed by accident fails here.

#include <catch2/catch.hpp>

#include <cmath>
#include <string>

#include "tables/tables.hpp"

using namespace firstpick;
using namespace firstpick::tables;

namespace {

const RuleSet& eu() {
  static const Tables tables = [] {
    auto read = read_tables("tables");
    if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read))
      for (const Diagnostic& fault : *faults) FAIL_CHECK(show(fault));
    return std::get<Tables>(std::move(read));
  }();
  return tables.rule_sets.at("eu");
}

template <class Q>
void check(const Sourced<Q>& entry, double printed, double unit_SI, Basis basis, const std::string& locator) {
  CAPTURE(entry.source.id, entry.source.value_text);
  CHECK(entry.value.value() / unit_SI == Approx(printed).epsilon(1e-12));
  CHECK(entry.source.basis == basis);
  CHECK(entry.source.locator == locator);
}

// By definition, independent of the unit parser.
constexpr double one = 1.0, millimetre = 1e-3, N_per_mm2 = 1e6, gigapascal = 1e9, second = 1.0;
constexpr double degree = 3.14159265358979323846 / 180.0;

}  // namespace

TEST_CASE("EN 1992-4 7.2.1: constants of tension as printed") {
  REQUIRE(eu().headed.en);
  const En1992HeadedModel& en = *eu().headed.en;
  const double root_breakout = 1.0 / (std::sqrt(N_per_mm2) * std::pow(millimetre, 1.5));  // N / (MPa^0.5 mm^1.5)
  check(eu().headed.cone_extent, 1.5, one, Basis::quoted, "7.2.1.4 (7.3)");
  check(en.k1_cracked, 8.9, root_breakout, Basis::from_memory, "7.2.1.4 (7.2)");
  check(en.k1_uncracked, 12.7, root_breakout, Basis::from_memory, "7.2.1.4 (7.2)");
  check(en.psi_s_base, 0.7, one, Basis::quoted, "(7.4), (7.28), (7.45)");
  check(en.psi_s_slope, 0.3, one, Basis::quoted, "(7.4), (7.28), (7.45)");
  check(en.psi_re_base, 0.5, one, Basis::quoted, "(7.5)");
  check(en.psi_re_length, 200, millimetre, Basis::quoted, "(7.5)");
  check(en.split_edge, 1.2, one, Basis::quoted, "7.2.1.7");
  check(en.split_extent, 3, one, Basis::choice, "");
  check(en.k2_cracked, 7.5, one, Basis::from_memory, "7.2.1.5");
  check(en.k2_uncracked, 10.5, one, Basis::from_memory, "7.2.1.5");
  check(en.k5_cracked, 8.7, std::sqrt(N_per_mm2), Basis::from_memory, "7.2.1.8");
  check(en.k5_uncracked, 12.2, std::sqrt(N_per_mm2), Basis::from_memory, "7.2.1.8");
  check(eu().headed.blowout_depth, 2, one, Basis::quoted, "7.2.1.8");
  check(eu().headed.blowout_group, 4, one, Basis::quoted, "7.2.1.8");
}

TEST_CASE("EN 1992-4 7.2.2 and table 7.3: constants of shear and of both together as printed") {
  REQUIRE(eu().headed.en);
  const En1992HeadedModel& en = *eu().headed.en;
  check(en.k6_soft, 0.6, one, Basis::quoted, "7.2.2.3 (7.34)");
  check(en.k6_hard, 0.5, one, Basis::quoted, "7.2.2.3 (7.34)");
  check(en.f_uk_soft, 500, N_per_mm2, Basis::quoted, "7.2.2.3 (7.34)");
  check(en.f_uk_most, 1000, N_per_mm2, Basis::quoted, "7.2.2.3 (7.34)");
  check(en.k7, 0.8, one, Basis::quoted, "7.2.2.3");
  check(en.short_shank, 0.8, one, Basis::quoted, "7.2.2.3");
  check(en.short_below, 5, one, Basis::quoted, "7.2.2.3");
  check(en.k8_shallow, 1, one, Basis::from_memory, "7.2.2.4 (7.39a)");
  check(en.k8_deep, 2, one, Basis::from_memory, "7.2.2.4 (7.39a)");
  check(en.k8_from, 60, millimetre, Basis::from_memory, "7.2.2.4");
  check(en.k9_cracked, 1.7, one, Basis::quoted, "7.2.2.5 (7.41)");
  check(en.k9_uncracked, 2.4, one, Basis::quoted, "7.2.2.5 (7.41)");
  check(en.l_f_slender, 12, one, Basis::quoted, "7.2.2.5");
  check(en.thick_shank, 24, millimetre, Basis::quoted, "7.2.2.5");
  check(en.l_f_thick, 8, one, Basis::quoted, "7.2.2.5");
  check(en.l_f_thick_least, 300, millimetre, Basis::quoted, "7.2.2.5");
  check(eu().headed.shear_extent, 1.5, one, Basis::quoted, "7.2.2.5");
  check(eu().headed.parallel_shear, 2, one, Basis::quoted, "7.2.2.5 (7.48)");
  check(en.power_steel, 2, one, Basis::quoted, "table 7.3");
  check(en.power_concrete, 1.5, one, Basis::quoted, "table 7.3");
  check(eu().headed.interaction_sum, 1.2, one, Basis::quoted, "table 7.3");
  check(eu().headed.minimum_spacing, 4, one, Basis::choice, "");
  check(eu().headed.f_c_least, 12, N_per_mm2, Basis::quoted, "strength classes from C12/15");
  check(eu().headed.f_c_most, 60, N_per_mm2, Basis::from_memory, "");
}

TEST_CASE("EN 1992-4 table 4.1: partial factors as printed") {
  REQUIRE(eu().headed.en);
  const En1992HeadedModel& en = *eu().headed.en;
  check(en.gamma_c, 1.5, one, Basis::quoted, "table 4.1");
  check(en.gamma_inst, 1.0, one, Basis::quoted, "table 4.1");
  check(en.gamma_s_tension, 1.2, one, Basis::quoted, "table 4.1");
  check(en.gamma_s_tension_least, 1.4, one, Basis::quoted, "table 4.1");
  check(en.gamma_s_shear, 1.0, one, Basis::quoted, "table 4.1");
  check(en.gamma_s_shear_least, 1.25, one, Basis::quoted, "table 4.1");
  check(en.gamma_s_shear_hard, 1.5, one, Basis::quoted, "table 4.1");
  check(en.gamma_s_soft_f_uk, 800, N_per_mm2, Basis::quoted, "table 4.1");
  check(en.gamma_s_soft_yield, 0.8, one, Basis::quoted, "table 4.1");
  REQUIRE(eu().load_factors);
  check(eu().load_factors->weight, 1.35, one, Basis::from_memory, "");
  check(eu().load_factors->grip, 1.5, one, Basis::from_memory, "");
}

TEST_CASE("cracking of the piece by the European rule set: EN 1992-1-1 as quoted, the rest chosen") {
  REQUIRE(eu().cracking.en);
  const En1992Tension& tension = *eu().cracking.en;
  check(tension.f_ctm, 0.3, one, Basis::quoted, "table 3.1");
  check(tension.f_ctm_strong, 2.12, N_per_mm2, Basis::quoted, "table 3.1");
  check(tension.strong_from, 50, N_per_mm2, Basis::quoted, "table 3.1");
  check(tension.mean_over, 8, N_per_mm2, Basis::quoted, "table 3.1");
  check(tension.f_ctk, 0.7, one, Basis::quoted, "table 3.1");
  check(tension.flexural, 1.6, one, Basis::quoted, "3.1.8 (3.23)");
  check(tension.flexural_length, 1000, millimetre, Basis::quoted, "3.1.8 (3.23)");
  check(eu().cracking.factor, 1.5, one, Basis::choice, "");
  check(eu().cracking.pick_strip, 15, one, Basis::choice, "");
  check(eu().cracking.patch, 2, one, Basis::choice, "");
  check(eu().cracking.poisson, 0.2, one, Basis::choice, "");
  check(eu().cracking.line_slenderness, 4, one, Basis::choice, "");
  check(eu().cracking.panel_slenderness, 5, one, Basis::choice, "");
  check(eu().cracking.step_ratio, 3, one, Basis::choice, "");
  check(eu().cracking.block_slenderness, 15, one, Basis::choice, "");
  check(eu().cracking.block_size, 2.5, one, Basis::choice, "");
  check(eu().prestress.transfer_least, 0.8, one, Basis::from_memory, "8.10.2.2 (3)");
  check(eu().prestress.transfer_most, 1.2, one, Basis::from_memory, "8.10.2.2 (3)");
  check(eu().bars.modulus, 200, gigapascal, Basis::from_memory, "3.2.7 (4)");
  check(eu().bars.yield_share, 0.6, one, Basis::choice, "");
  check(eu().bars.compression, 0.6, one, Basis::choice, "");
}

TEST_CASE("loads, strength and limits of the European rule set") {
  for (const std::string stage : {"strip", "turn", "yard", "store", "set"})
    check(eu().dynamic_factor.at(stage), 1.3, one, Basis::from_memory, "");
  check(eu().dynamic_factor.at("haul"), 2.5, one, Basis::from_memory, "");
  CHECK(eu().dynamic_factor.size() == 6);
  CHECK_FALSE(eu().load_floor);
  check(eu().minimum_strength, 12, N_per_mm2, Basis::quoted, "strength classes from C12/15");
  check(eu().minimum_results, 2, one, Basis::choice, "");
  check(eu().fractile, 0.05, one, Basis::choice, "");
  check(eu().known_variation, 0.15, one, Basis::choice, "");
  check(eu().tolerance_confidence, 0.75, one, Basis::choice, "");
  check(eu().maturity_margin, 3.5, N_per_mm2, Basis::choice, "");
  check(eu().maturity_difference, 0.10, one, Basis::choice, "");
  check(eu().strength_step, 1, N_per_mm2, Basis::choice, "");
  check(eu().insert_factor, 3, one, Basis::published, "4.4.1");
  check(eu().hardware_factor, 4, one, Basis::from_memory, "");
  REQUIRE(eu().rating_basis);
  check(*eu().rating_basis, 15, N_per_mm2, Basis::published, "4.2.2");
  check(eu().minimum_sling_angle, 45, degree, Basis::published, "sling angle");
  check(eu().maximum_tilt, 5, degree, Basis::choice, "");
  check(eu().weight_disagreement, 0.10, one, Basis::choice, "");
  check(eu().scale_disagreement, 0.05, one, Basis::choice, "");
  check(eu().loss_step_factor, 2, one, Basis::choice, "");
  check(eu().leg_stiffness_ratio, 1e5, one, Basis::choice, "");
  check(eu().flat_piece, 0.2, one, Basis::choice, "");
  check(eu().edge_shear, 0.05, one, Basis::choice, "");
  check(eu().crane_planned_above, 0.75, one, Basis::choice, "");
  check(eu().crane_critical_above, 0.85, one, Basis::quoted, "approval of the project director");
  check(eu().inspection_interval, 182, 86400.0, Basis::published, "regulation 9(3)");
  check(eu().hook_off_plumb, 3, degree, Basis::choice, "");
  check(eu().free_turn, 5, degree, Basis::choice, "");
  check(eu().side_pull, 98, one, Basis::choice, "");
  check(eu().maximum_roll, 10, degree, Basis::choice, "");
  check(eu().pick_spacing, 0.25, one, Basis::choice, "");
  check(eu().minimum_tipping_angle, 10, degree, Basis::choice, "");
  check(eu().wind_caution, 9, 1.0 / second, Basis::choice, "");
  check(eu().maximum_swing, 5, degree, Basis::choice, "");
}
