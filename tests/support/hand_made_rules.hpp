// A rule set and tables made for the test, so that a test of one rule does not move when a table is edited.
// The numbers are near those of tables/rules/us.toml; no test holds them against an outside source.
#pragma once

#include <string>

#include "tables/tables.hpp"

namespace firstpick::tests {

template <class T>
Sourced<T> made(const std::string& symbol, T value) {
  return {value, Source{.id = "hand-made." + symbol,
                        .symbol = symbol,
                        .what = "made for the test",
                        .title = "hand-made rules",
                        .locator = "none",
                        .basis = Basis::choice,
                        .note = "",
                        .value_text = "",
                        .table = "none",
                        .confirmed_by = "",
                        .confirmed_edition = "",
                        .confirmed_on = ""}};
}
inline Sourced<Ratio> made_ratio(const std::string& symbol, double number) {
  return made(symbol, Ratio::from_value(number));
}

inline tables::HeadedInsertModel hand_made_headed_model() {
  const auto root_psi = root(psi);
  const BreakoutCoefficient breakout = lbf / (root_psi * power<3, 2>(inch));
  const DeepBreakoutCoefficient deep = lbf / (root_psi * power<5, 3>(inch));
  return {.k_c = made("k_c", BreakoutCoefficient{24.0 * breakout}),
          .k_deep = made("k_deep", DeepBreakoutCoefficient{16.0 * deep}),
          .deep_from = made("deep_from", Length{11.0 * inch}),
          .deep_to = made("deep_to", Length{25.0 * inch}),
          .cone_extent = made_ratio("cone_extent", 1.5),
          .psi_ed_base = made_ratio("psi_ed_base", 0.7),
          .psi_ed_slope = made_ratio("psi_ed_slope", 0.3),
          .psi_c_cracked = made_ratio("psi_c_cracked", 1.0),
          .psi_c_uncracked = made_ratio("psi_c_uncracked", 1.25),
          .psi_cp = made_ratio("psi_cp", 1.0),
          .pullout = made_ratio("pullout", 8.0),
          .psi_cP_cracked = made_ratio("psi_cP_cracked", 1.0),
          .psi_cP_uncracked = made_ratio("psi_cP_uncracked", 1.4),
          .blowout = made("blowout", RootStress{160.0 * root_psi}),
          .blowout_depth = made_ratio("blowout_depth", 2.5),
          .blowout_corner = made_ratio("blowout_corner", 3.0),
          .blowout_group = made_ratio("blowout_group", 6.0),
          .futa_of_yield = made_ratio("futa_of_yield", 1.9),
          .futa_cap = made("futa_cap", Stress{125.0 * ksi}),
          .shear_bolt = made_ratio("shear_bolt", 0.6),
          .shear_stud = made_ratio("shear_stud", 1.0),
          .shear_small = made("shear_small", RootStress{7.0 * root_psi}),
          .shear_large = made("shear_large", BreakoutCoefficient{9.0 * breakout}),
          .bearing_length = made_ratio("bearing_length", 8.0),
          .shear_extent = made_ratio("shear_extent", 1.5),
          .psi_edV_base = made_ratio("psi_edV_base", 0.7),
          .psi_edV_slope = made_ratio("psi_edV_slope", 0.3),
          .psi_cV_cracked = made_ratio("psi_cV_cracked", 1.0),
          .psi_cV_uncracked = made_ratio("psi_cV_uncracked", 1.4),
          .parallel_shear = made_ratio("parallel_shear", 2.0),
          .pryout_shallow = made_ratio("pryout_shallow", 1.0),
          .pryout_deep = made_ratio("pryout_deep", 2.0),
          .pryout_depth = made("pryout_depth", Length{2.5 * inch}),
          .interaction_small = made_ratio("interaction_small", 0.2),
          .interaction_sum = made_ratio("interaction_sum", 1.2),
          .minimum_spacing = made_ratio("minimum_spacing", 4.0),
          .f_c_most = made("f_c_most", Stress{10000.0 * psi}),
          .f_c_least = made("f_c_least", Stress{2500.0 * psi})};
}

// Stage words with a dynamic factor: strip 1.3, yard 1.2, haul 1.5, set 1.2. None for turn and store.
inline tables::RuleSet hand_made_rules() {
  return {.id = "hand-made",
          .title = "rules made for the test",
          .edition = "none",
          .cautions = {},
          .insert_load = made("insert_load", tables::InsertLoad::with_adhesion_and_dynamic),
          .crane_load = made("crane_load", tables::CraneLoad::with_adhesion),
          .dynamic_factor = {{"strip", made_ratio("dynamic.strip", 1.3)},
                             {"yard", made_ratio("dynamic.yard", 1.2)},
                             {"haul", made_ratio("dynamic.haul", 1.5)},
                             {"set", made_ratio("dynamic.set", 1.2)}},
          .bending_multiplier = {},
          .sharing = made("sharing", tables::Sharing::statics),
          .loss_step_factor = made_ratio("loss_step_factor", 2.0),
          .loss_of_a_point = made("loss_of_a_point", tables::LossOfAPoint::report),
          .leg_stiffness_ratio = made_ratio("leg_stiffness_ratio", 1000.0),
          .usable_strength = made("usable_strength", tables::UsableStrength::lowest),
          .minimum_results = made_ratio("minimum_results", 2.0),
          .minimum_strength = made("minimum_strength", Stress{2000.0 * psi}),
          .below_floor = made("below_floor", tables::BelowFloor::proportional),
          .fractile = made_ratio("fractile", 0.05),
          .known_variation = made_ratio("known_variation", 0.10),
          .tolerance_confidence = made_ratio("tolerance_confidence", 0.75),
          .maturity = made("maturity", tables::MaturityUse::refused),
          .maturity_margin = made("maturity_margin", Stress{500.0 * psi}),
          .maturity_difference = made_ratio("maturity_difference", 0.1),
          .companion_share = made_ratio("companion_share", 0.5),
          .companion_window = made("companion_window", Duration{12.0 * hour}),
          .fit_scatter = made_ratio("fit_scatter", 0.1),
          .fit_error = made_ratio("fit_error", 0.1),
          .log_doubts = made("log_doubts", tables::LogDoubts::hold),
          .youngest_test = made("youngest_test", Duration{4.0 * hour}),
          .longest_valid_for = made("longest_valid_for", Duration{7.0 * day}),
          .widest_range = made_ratio("widest_range", 0.3),
          .pour_lasts = made("pour_lasts", Duration{2.0 * hour}),
          .insert_factor = made_ratio("insert_factor", 4.0),
          .hardware_factor = made_ratio("hardware_factor", 5.0),
          .rating_scaling = made("rating_scaling", tables::RatingScaling::proportional),
          .minimum_sling_angle = made("minimum_sling_angle", Angle{30.0 * deg}),
          .strength_step = made("strength_step", Stress{100.0 * psi}),
          .maximum_tilt = made("maximum_tilt", Angle{5.0 * deg}),
          .weight_disagreement = made_ratio("weight_disagreement", 0.1),
          .flat_piece = made_ratio("flat_piece", 0.2),
          .edge_shear = made_ratio("edge_shear", 0.05),
          .crane_planned_above = made_ratio("crane_planned_above", 0.75),
          .crane_critical_above = made_ratio("crane_critical_above", 0.9),
          .inspection_interval = made("inspection_interval", Duration{365.0 * day}),
          .hook_off_plumb = made("hook_off_plumb", Angle{3.0 * deg}),
          .hook_side_pull = made("hook_side_pull", Angle{3.0 * deg}),
          .leg_clearance = made("leg_clearance", Length{20.0 * mm}),
          .leg_end = made("leg_end", Length{200.0 * mm}),
          .hook_clearance = made("hook_clearance", Length{200.0 * mm}),
          .release_swing = made("release_swing", Angle{15.0 * deg}),
          .free_turn = made("free_turn", Angle{5.0 * deg}),
          .side_pull = made("side_pull", Force{98.0 * newton}),
          .maximum_roll = made("maximum_roll", Angle{10.0 * deg}),
          .pick_spacing = made_ratio("pick_spacing", 0.25),
          .minimum_tipping_angle = made("minimum_tipping_angle", Angle{10.0 * deg}),
          .wind_caution = made("wind_caution", Speed{9.0 * m_per_s}),
          .maximum_swing = made("maximum_swing", Angle{5.0 * deg}),
          .scale_disagreement = made_ratio("scale_disagreement", 0.05),
          .headed = hand_made_headed_model(),
          .cracking = {.rupture = made("rupture", RootStress{7.5 * root(psi)}),
                       .factor = made_ratio("factor", 1.5),
                       .poisson = made_ratio("poisson", 0.2),
                       .patch = made_ratio("patch", 2.0),
                       .pick_strip = made_ratio("pick_strip", 15.0),
                       .line_slenderness = made_ratio("line_slenderness", 4.0),
                       .panel_slenderness = made_ratio("panel_slenderness", 5.0),
                       .step_ratio = made_ratio("step_ratio", 3.0),
                       .block_slenderness = made_ratio("block_slenderness", 15.0),
                       .block_size = made("block_size", Length{2.5 * m}),
                       .wall_support = made_ratio("wall_support", 2.0),
                       .wall_spread = made_ratio("wall_spread", 2.5),
                       .wall_spread_end = made_ratio("wall_spread_end", 0.5),
                       .wall_spread_cantilever = made_ratio("wall_spread_cantilever", 1.5),
                       .round_height = made_ratio("round_height", 6.0),
                       .shear = made("shear", RootStress{4.0 / 3.0 * root(psi)}),
                       .shear_factor = made_ratio("shear_factor", 2.4)},
          .prestress = {.least = made_ratio("prestress_least", 0.95),
                        .most = made_ratio("prestress_most", 1.05),
                        .transfer_least = made_ratio("transfer_least", 0.8),
                        .transfer_most = made_ratio("transfer_most", 1.2),
                        .compression = made_ratio("prestress_compression", 0.6)},
          .bars = {.yield_share = made_ratio("yield_share", 0.6),
                   .modulus = made("modulus", Stress{29000.0 * ksi}),
                   .concrete_modulus = made("concrete_modulus", RootStress{57000.0 * root(psi)}),
                   .compression = made_ratio("bar_compression", 0.6),
                   .crack_width = made("crack_width", Length{0.4 * mm})},
          .mandatory = {},
          .no_sign_off = made("no_sign_off", tables::NoSignOff::note)};
}

// Finishes smooth (1 kPa) and rough (3 kPa); hoist class slow (1.1 + 0.34 v); ground yard (0.4); specimens 4x8 in (1) and cube
// 150 mm (0.8).
inline tables::Tables hand_made_tables() {
  tables::Tables tables;
  tables.form_faces.emplace("smooth", tables::FormFace{"smooth", made("adhesion.smooth", Stress{1.0 * kPa})});
  tables.form_faces.emplace("rough", tables::FormFace{"rough", made("adhesion.rough", Stress{3.0 * kPa})});
  tables.hoists.emplace(
      "slow", tables::HoistClass{"slow", made_ratio("phi_min.slow", 1.1),
                                 made("beta.slow", decltype(Ratio{} / Speed{})::from_value(0.34))});
  tables.grounds.emplace("yard", tables::Ground{"yard", made_ratio("mu.yard", 0.4)});
  tables.wind = tables::Wind{made("air_density", Density{1.25 * kg_per_m3}), made_ratio("coefficient", 2.0)};
  tables.specimens.emplace("cylinder 4x8 in",
                           tables::SpecimenKind{"cylinder 4x8 in", "cylinder", 4.0 * inch, 8.0 * inch,
                                                made_ratio("to_cylinder.4x8", 1.0)});
  tables.specimens.emplace("cube 150 mm",
                           tables::SpecimenKind{"cube 150 mm", "cube", 150.0 * mm, 150.0 * mm,
                                                made_ratio("to_cylinder.cube150", 0.8)});
  return tables;
}

}  // namespace firstpick::tests
