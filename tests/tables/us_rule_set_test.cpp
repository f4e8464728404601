// The rule set "us" holds the numbers that its sources print, in their units.
//
// Sources  29 CFR 1926.704 (text of 8 November 2024), read; 29 CFR 1910.180(h)(1), read; ACI 318-19 chapter
//          17 in inch-pound units, second-hand with clause numbers; ASME B30.9 second-hand; PCI handbook from
//          memory.
// Places   each row names clause and basis as the table must; a digit or a basis changed by accident fails
//          here.

#include <catch2/catch.hpp>

#include <cmath>
#include <string>

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

const RuleSet& us() { return shipped().rule_sets.at("us"); }

template <class Q>
void check(const Sourced<Q>& entry, double printed, Q unit, Basis basis, const std::string& locator) {
  CAPTURE(entry.source.id, entry.source.value_text);
  CHECK(entry.value.value() / unit.value() == Approx(printed).epsilon(1e-12));
  CHECK(entry.source.basis == basis);
  CHECK(entry.source.locator == locator);
}

void check(const Sourced<Ratio>& entry, double printed, Basis basis, const std::string& locator) {
  check(entry, printed, Ratio::from_value(1.0), basis, locator);
}

// Independent of the unit parser: pounds, inches and psi as they are defined.
const double lbf_N = 4.4482216152605, in_m = 0.0254, psi_Pa = lbf_N / (in_m * in_m);
const BreakoutCoefficient breakout_unit =
    BreakoutCoefficient::from_value(lbf_N / (std::sqrt(psi_Pa) * std::pow(in_m, 1.5)));
const DeepBreakoutCoefficient deep_unit =
    DeepBreakoutCoefficient::from_value(lbf_N / (std::sqrt(psi_Pa) * std::pow(in_m, 5.0 / 3.0)));
const RootStress root_psi = RootStress::from_value(std::sqrt(psi_Pa));

}  // namespace

TEST_CASE("ACI 318-19 chapter 17: constants of tension as printed") {
  const HeadedInsertModel& model = us().headed;
  check(model.k_c, 24, breakout_unit, Basis::quoted, "17.6.2.2.1");
  check(model.k_deep, 16, deep_unit, Basis::quoted, "17.6.2.2.3");
  check(model.deep_from, 11, inch, Basis::quoted, "17.6.2.2.3");
  check(model.deep_to, 25, inch, Basis::quoted, "17.6.2.2.3");
  check(model.cone_extent, 1.5, Basis::quoted, "17.6.2.1");
  check(model.psi_ed_base, 0.7, Basis::quoted, "17.6.2.4");
  check(model.psi_ed_slope, 0.3, Basis::quoted, "17.6.2.4");
  check(model.psi_c_cracked, 1.0, Basis::quoted, "17.6.2.5");
  check(model.psi_c_uncracked, 1.25, Basis::quoted, "17.6.2.5");
  check(model.psi_cp, 1.0, Basis::quoted, "17.6.2.6");
  check(model.pullout, 8, Basis::quoted, "17.6.3.2.2(a)");
  check(model.psi_cP_cracked, 1.0, Basis::quoted, "17.6.3.3");
  check(model.psi_cP_uncracked, 1.4, Basis::quoted, "17.6.3.3");
  check(model.blowout, 160, root_psi, Basis::quoted, "17.6.4.1");
  check(model.blowout_depth, 2.5, Basis::quoted, "17.6.4.1");
  check(model.blowout_corner, 3, Basis::quoted, "17.6.4.1");
  check(model.blowout_group, 6, Basis::quoted, "17.6.4.2");
  check(model.futa_of_yield, 1.9, Basis::quoted, "17.6.1.2");
  check(model.futa_cap, 125, ksi, Basis::quoted, "17.6.1.2");
}

TEST_CASE("cracking of the piece: ACI 318-25 19.2.3.1, the handbook's factor and strip from memory") {
  const CrackingModel& model = us().cracking;
  check(model.rupture, 7.5, root_psi, Basis::quoted, "19.2.3.1");
  check(model.factor, 1.5, Basis::from_memory, "");
  check(model.pick_strip, 15, Basis::from_memory, "");
  check(model.poisson, 0.2, Basis::choice, "");
  check(model.patch, 2, Basis::choice, "");
  check(model.line_slenderness, 4, Basis::choice, "");
  check(model.panel_slenderness, 5, Basis::choice, "");
  check(model.step_ratio, 3, Basis::choice, "");
  check(model.block_slenderness, 15, Basis::choice, "");
  check(model.block_size, 2.5, m, Basis::choice, "");
}

TEST_CASE("strands and bars: EN 1992-1-1 and ACI 318-19 from memory, the modulus of concrete as quoted") {
  const Ratio one = Ratio::from_value(1.0);
  const PrestressModel& strands = us().prestress;
  check(strands.least, 0.95, one, Basis::from_memory, "5.10.9");
  check(strands.most, 1.05, one, Basis::from_memory, "5.10.9");
  check(strands.transfer_least, 0.8, one, Basis::from_memory, "8.10.2.2 (3)");
  check(strands.transfer_most, 1.2, one, Basis::from_memory, "8.10.2.2 (3)");
  check(strands.compression, 0.6, one, Basis::from_memory, "table 24.5.3.1");
  const BarModel& bars = us().bars;
  check(bars.modulus, 29000, ksi, Basis::from_memory, "20.2.2.2");
  check(bars.concrete_modulus, 57000, RootStress{root(psi)}, Basis::quoted, "19.2.2.1");
  check(bars.yield_share, 0.6, one, Basis::choice, "");
  check(bars.compression, 0.6, one, Basis::choice, "");
  check(bars.crack_width, 0.3, mm, Basis::choice, "");
  CHECK_FALSE(bars.E_cm);
}

TEST_CASE("strands and bars of the European rule set: EN 1992-1-1, table 3.1 as quoted, the rest from memory") {
  const RuleSet& eu = shipped().rule_sets.at("eu");
  const Ratio one = Ratio::from_value(1.0);
  check(eu.prestress.compression, 0.6, one, Basis::from_memory, "5.10.2.2 (5)");
  check(eu.prestress.least, 0.95, one, Basis::from_memory, "5.10.9");
  check(eu.prestress.most, 1.05, one, Basis::from_memory, "5.10.9");
  REQUIRE(eu.bars.E_cm);
  REQUIRE(eu.bars.mean_over);
  check(*eu.bars.E_cm, 22, Stress{1000.0 * MPa}, Basis::quoted, "table 3.1");
  check(*eu.bars.mean_over, 8, MPa, Basis::quoted, "table 3.1");
  check(eu.bars.modulus, 200, Stress{1000.0 * MPa}, Basis::from_memory, "3.2.7 (4)");
  check(eu.bars.crack_width, 0.3, mm, Basis::from_memory, "7.3.1");
}

TEST_CASE("ACI 318-19 chapter 17: constants of shear, interaction and limits as printed") {
  const HeadedInsertModel& model = us().headed;
  check(model.shear_bolt, 0.6, Basis::quoted, "17.7.1.2");
  check(model.shear_stud, 1.0, Basis::quoted, "17.7.1.2");
  check(model.shear_small, 7, root_psi, Basis::quoted, "17.7.2.2.1");
  check(model.shear_large, 9, breakout_unit, Basis::quoted, "17.7.2.2.1");
  check(model.bearing_length, 8, Basis::quoted, "17.7.2.2.1");
  check(model.shear_extent, 1.5, Basis::quoted, "17.7.2.1");
  check(model.psi_edV_base, 0.7, Basis::quoted, "17.7.2.4");
  check(model.psi_edV_slope, 0.3, Basis::quoted, "17.7.2.4");
  check(model.psi_cV_cracked, 1.0, Basis::quoted, "17.7.2.5");
  check(model.psi_cV_uncracked, 1.4, Basis::from_memory, "17.7.2.5");
  check(model.parallel_shear, 2, Basis::quoted, "17.7.2.1");
  check(model.pryout_shallow, 1, Basis::quoted, "17.7.3.1");
  check(model.pryout_deep, 2, Basis::quoted, "17.7.3.1");
  check(model.pryout_depth, 2.5, inch, Basis::quoted, "17.7.3.1");
  check(model.interaction_small, 0.2, Basis::quoted, "17.8");
  check(model.interaction_sum, 1.2, Basis::quoted, "17.8");
  check(model.minimum_spacing, 4, Basis::quoted, "table 17.9.2(a)");
  check(model.f_c_most, 10000, psi, Basis::quoted, "17.3.1");
  check(model.f_c_least, 2500, psi, Basis::from_memory, "17.3.1");
}

TEST_CASE("29 CFR: factors of the regulation as printed") {
  check(us().insert_factor, 4, Basis::published, "(c)");
  check(us().hardware_factor, 5, Basis::published, "(d)");
  check(us().weight_disagreement, 0.10, Basis::published, "(h)(1)");
  check(us().minimum_sling_angle, 30, deg, Basis::quoted, "rated load of each kind of sling");
  check(us().strength_step, 100, psi, Basis::choice, "");
  check(us().maximum_tilt, 5, deg, Basis::choice, "");
  check(us().loss_step_factor, 2, Basis::choice, "");
  CHECK(us().loss_of_a_point.value == LossOfAPoint::report);
  CHECK(us().no_sign_off.value == NoSignOff::note);
  check(us().flat_piece, 0.2, Basis::choice, "");
  check(us().edge_shear, 0.05, Basis::choice, "");
  check(us().hook_off_plumb, 3, deg, Basis::choice, "");
  check(us().hook_side_pull, 3, deg, Basis::choice, "");
  check(us().leg_clearance, 20, mm, Basis::choice, "");
  check(us().leg_end, 200, mm, Basis::choice, "");
  check(us().hook_clearance, 200, mm, Basis::choice, "");
  check(us().release_swing, 15, deg, Basis::choice, "");
  check(us().free_turn, 5, deg, Basis::choice, "");
  check(us().side_pull, 98, newton, Basis::choice, "");
  check(us().maximum_roll, 10, deg, Basis::choice, "");
  check(us().pick_spacing, 0.25, Basis::choice, "");
  check(us().minimum_tipping_angle, 10, deg, Basis::choice, "");
  check(us().wind_caution, 9, m_per_s, Basis::choice, "");
  check(us().maximum_swing, 5, deg, Basis::choice, "");
  check(us().scale_disagreement, 0.05, Basis::choice, "");
  CHECK(us().insert_factor.source.title ==
        "29 CFR 1926.704, Requirements for precast concrete, text of 8 November 2024");
}

TEST_CASE("critical lifts and examinations: thresholds as printed") {
  check(us().crane_planned_above, 0.75, Basis::quoted, "form 16-3");
  check(us().crane_critical_above, 0.90, Basis::published, "s. 14.1");
  check(us().inspection_interval, 365, day, Basis::quoted, "s. 51(1)(b)");
}

TEST_CASE("PCI handbook: handling factors as remembered") {
  for (const std::string stage : {"strip", "turn", "yard", "store", "set"})
    check(us().dynamic_factor.at(stage), 1.2, Basis::from_memory, "table 8.3.1");
  check(us().dynamic_factor.at("haul"), 1.5, Basis::from_memory, "table 8.3.1");
  CHECK(us().dynamic_factor.size() == 6);
  check(us().minimum_strength, 2000, psi, Basis::from_memory, "");

  struct Row {
    std::string product;
    double retarded, smooth;
  };
  for (const Row& row : {Row{"flat", 1.2, 1.3}, Row{"flat-with-reveals", 1.3, 1.4}, Row{"fluted", 1.4, 1.6},
                         Row{"sculptured", 1.5, 1.7}}) {
    check(us().bending_multiplier.at("strip." + row.product + ".retarded"), row.retarded, Basis::from_memory,
          "table 8.3.1");
    check(us().bending_multiplier.at("strip." + row.product + ".smooth-mould"), row.smooth,
          Basis::from_memory, "table 8.3.1");
  }
  check(us().bending_multiplier.at("yard.any.any"), 1.2, Basis::from_memory, "table 8.3.1");
  check(us().bending_multiplier.at("set.any.any"), 1.2, Basis::from_memory, "table 8.3.1");
  check(us().bending_multiplier.at("haul.any.any"), 1.5, Basis::from_memory, "table 8.3.1");
  CHECK(us().bending_multiplier.size() == 11);
}

TEST_CASE("strength: what only another choice of the set would read") {
  check(us().fractile, 0.05, Basis::choice, "");
  check(us().known_variation, 0.15, Basis::choice, "");
  check(us().tolerance_confidence, 0.75, Basis::choice, "");
  check(us().maturity_difference, 0.10, Basis::choice, "");
  check(us().maturity_margin, 500, psi, Basis::published, "BC 3305.3.5.1.3");
}

TEST_CASE("the choices of the set take the heavier reading") {
  CHECK(us().insert_load.value == InsertLoad::with_adhesion_and_dynamic);
  CHECK(us().crane_load.value == CraneLoad::with_adhesion);
  CHECK(us().sharing.value == Sharing::statics);
  CHECK(us().usable_strength.value == UsableStrength::lowest);
  CHECK(us().below_floor.value == BelowFloor::proportional);
  CHECK(us().rating_scaling.value == RatingScaling::proportional);
  CHECK(us().minimum_results.value.value() == 2.0);
  CHECK(us().leg_stiffness_ratio.value.value() == 1e5);
  CHECK(us().maturity.value == MaturityUse::refused);
  CHECK(us().maturity.source.basis == Basis::choice);
  for (const Basis basis :
       {us().insert_load.source.basis, us().crane_load.source.basis, us().sharing.source.basis,
        us().usable_strength.source.basis, us().below_floor.source.basis, us().rating_scaling.source.basis,
        us().minimum_results.source.basis, us().leg_stiffness_ratio.source.basis})
    CHECK(basis == Basis::choice);
}

// SI constants of ACI 318 as quoted (10, 13) or remembered (3.9, 0.6, 3.7): rounded, so up to 4 % apart from
// the inch-pound ones. A power of a unit gone wrong would be far outside.
TEST_CASE("the inch-pound constants agree with the SI ones within their rounding") {
  const HeadedInsertModel& model = us().headed;
  const double root_MPa = std::sqrt(1e6);
  const auto SI = [](double coefficient, double unit) { return coefficient / unit; };
  CHECK(SI(model.k_c.value.value(), 1.0 / (root_MPa * std::pow(1e-3, 1.5))) == Approx(10.0).epsilon(0.01));
  CHECK(SI(model.k_deep.value.value(), 1.0 / (root_MPa * std::pow(1e-3, 5.0 / 3.0))) ==
        Approx(3.9).epsilon(0.01));
  CHECK(SI(model.blowout.value.value(), root_MPa) == Approx(13.0).epsilon(0.03));
  CHECK(SI(model.shear_small.value.value(), root_MPa) == Approx(0.6).epsilon(0.04));
  CHECK(SI(model.shear_large.value.value(), 1.0 / (root_MPa * std::pow(1e-3, 1.5))) ==
        Approx(3.7).epsilon(0.02));
  CHECK(in(MPa, model.futa_cap.value) == Approx(860.0).epsilon(0.01));
  CHECK(in(mm, model.deep_from.value) == Approx(280.0).epsilon(0.01));
  CHECK(in(mm, model.deep_to.value) == Approx(635.0).epsilon(0.01));
  CHECK(in(mm, model.pryout_depth.value) == Approx(65.0).epsilon(0.03));
  CHECK(in(MPa, model.f_c_most.value) == Approx(70.0).epsilon(0.02));
}

TEST_CASE("every caution is a sentence") {
  CHECK(us().cautions.size() == 5);
  for (const std::string& caution : us().cautions) {
    CAPTURE(caution);
    CHECK(caution.size() > 40);
    CHECK((caution.ends_with('.') && caution.front() >= '0' && caution.front() <= 'Z'));
  }
}
