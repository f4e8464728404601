// The names by which the entries of a rule set give the constants of EN 1992-4 and EN 1992-1-1, and what each must be.

#include "tables/read_rule_set.hpp"

namespace firstpick::tables {

En1992HeadedModel en_1992_headed_model(EntryReader& read) {
  const auto ratio = [&](std::string_view gives, Limit limit = Limit::positive) {
    return read.quantity<Ratio>(gives, limit);
  };
  const auto length = [&](std::string_view gives) { return read.quantity<Length>(gives, Limit::positive); };
  const auto stress = [&](std::string_view gives) { return read.quantity<Stress>(gives, Limit::positive); };
  const auto cone = [&](std::string_view gives) {
    return read.quantity<BreakoutCoefficient>(gives, Limit::positive);
  };
  const auto root_stress = [&](std::string_view gives) { return read.quantity<RootStress>(gives, Limit::positive); };

  return {.k1_cracked = cone("headed.k1_cracked"),
          .k1_uncracked = cone("headed.k1_uncracked"),
          .psi_s_base = ratio("headed.psi_s_base", Limit::at_most_one),
          .psi_s_slope = ratio("headed.psi_s_slope", Limit::at_most_one),
          .psi_re_base = ratio("headed.psi_re_base", Limit::at_most_one),
          .psi_re_length = length("headed.psi_re_length"),
          .split_edge = ratio("headed.split_edge", Limit::at_least_one),
          .split_extent = ratio("headed.split_extent", Limit::at_least_one),
          .split_thickness = ratio("headed.split_thickness", Limit::at_least_one),
          .k2_cracked = ratio("headed.k2_cracked"),
          .k2_uncracked = ratio("headed.k2_uncracked"),
          .k5_cracked = root_stress("headed.k5_cracked"),
          .k5_uncracked = root_stress("headed.k5_uncracked"),
          .k6_soft = ratio("headed.k6_soft", Limit::at_most_one),
          .k6_hard = ratio("headed.k6_hard", Limit::at_most_one),
          .f_uk_soft = stress("headed.f_uk_soft"),
          .f_uk_most = stress("headed.f_uk_most"),
          .k7 = ratio("headed.k7", Limit::at_most_one),
          .short_shank = ratio("headed.short_shank", Limit::at_most_one),
          .short_below = ratio("headed.short_below"),
          .k8_shallow = ratio("headed.k8_shallow"),
          .k8_deep = ratio("headed.k8_deep"),
          .k8_from = length("headed.k8_from"),
          .k9_cracked = ratio("headed.k9_cracked"),
          .k9_uncracked = ratio("headed.k9_uncracked"),
          .l_f_slender = ratio("headed.l_f_slender"),
          .thick_shank = length("headed.thick_shank"),
          .l_f_thick = ratio("headed.l_f_thick"),
          .l_f_thick_least = length("headed.l_f_thick_least"),
          .power_steel = ratio("headed.power_steel", Limit::at_least_one),
          .power_concrete = ratio("headed.power_concrete", Limit::at_least_one),
          .gamma_c = ratio("headed.gamma_c", Limit::at_least_one),
          .gamma_inst = ratio("headed.gamma_inst", Limit::at_least_one),
          .gamma_s_tension = ratio("headed.gamma_s_tension", Limit::at_least_one),
          .gamma_s_tension_least = ratio("headed.gamma_s_tension_least", Limit::at_least_one),
          .gamma_s_shear = ratio("headed.gamma_s_shear", Limit::at_least_one),
          .gamma_s_shear_least = ratio("headed.gamma_s_shear_least", Limit::at_least_one),
          .gamma_s_shear_hard = ratio("headed.gamma_s_shear_hard", Limit::at_least_one),
          .gamma_s_soft_f_uk = stress("headed.gamma_s_soft_f_uk"),
          .gamma_s_soft_yield = ratio("headed.gamma_s_soft_yield", Limit::at_most_one)};
}

En1992Tension en_1992_tension(EntryReader& read) {
  return {.f_ctm = read.quantity<Ratio>("cracking.f_ctm", Limit::positive),
          .f_ctm_strong = read.quantity<Stress>("cracking.f_ctm_strong", Limit::positive),
          .strong_from = read.quantity<Stress>("cracking.strong_from", Limit::positive),
          .mean_over = read.quantity<Stress>("bars.mean_over", Limit::positive),
          .f_ctk = read.quantity<Ratio>("cracking.f_ctk", Limit::at_most_one),
          .flexural = read.quantity<Ratio>("cracking.flexural", Limit::at_least_one),
          .flexural_length = read.quantity<Length>("cracking.flexural_length", Limit::positive),
          .plain = read.quantity<Ratio>("cracking.plain", Limit::at_most_one)};
}

}  // namespace firstpick::tables
