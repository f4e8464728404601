// The names by which the entries of a rule set give the constants of HeadedInsertModel, and what each must
// be.

#include "tables/read_rule_set.hpp"

namespace firstpick::tables {

HeadedInsertModel headed_insert_model(EntryReader& read) {
  const auto ratio = [&](std::string_view gives, Limit limit) { return read.quantity<Ratio>(gives, limit); };
  const auto length = [&](std::string_view gives) { return read.quantity<Length>(gives, Limit::positive); };
  const auto stress = [&](std::string_view gives) { return read.quantity<Stress>(gives, Limit::positive); };

  HeadedInsertModel model{
      .k_c = read.quantity<BreakoutCoefficient>("headed.k_c", Limit::positive),
      .k_deep = read.quantity<DeepBreakoutCoefficient>("headed.k_deep", Limit::positive),
      .deep_from = length("headed.deep_from"),
      .deep_to = length("headed.deep_to"),
      .cone_extent = ratio("headed.cone_extent", Limit::positive),
      .psi_ed_base = ratio("headed.psi_ed_base", Limit::at_most_one),
      .psi_ed_slope = ratio("headed.psi_ed_slope", Limit::at_most_one),
      .psi_c_cracked = ratio("headed.psi_c_cracked", Limit::positive),
      .psi_c_uncracked = ratio("headed.psi_c_uncracked", Limit::positive),
      .psi_cp = ratio("headed.psi_cp", Limit::at_most_one),
      .pullout = ratio("headed.pullout", Limit::positive),
      .psi_cP_cracked = ratio("headed.psi_cP_cracked", Limit::positive),
      .psi_cP_uncracked = ratio("headed.psi_cP_uncracked", Limit::positive),
      .blowout = read.quantity<RootStress>("headed.blowout", Limit::positive),
      .blowout_depth = ratio("headed.blowout_depth", Limit::positive),
      .blowout_corner = ratio("headed.blowout_corner", Limit::at_least_one),
      .blowout_group = ratio("headed.blowout_group", Limit::positive),
      .futa_of_yield = ratio("headed.futa_of_yield", Limit::at_least_one),
      .futa_cap = stress("headed.futa_cap"),
      .shear_bolt = ratio("headed.shear_bolt", Limit::at_most_one),
      .shear_stud = ratio("headed.shear_stud", Limit::at_most_one),
      .shear_small = read.quantity<RootStress>("headed.shear_small", Limit::positive),
      .shear_large = read.quantity<BreakoutCoefficient>("headed.shear_large", Limit::positive),
      .bearing_length = ratio("headed.bearing_length", Limit::positive),
      .shear_extent = ratio("headed.shear_extent", Limit::positive),
      .psi_edV_base = ratio("headed.psi_edV_base", Limit::at_most_one),
      .psi_edV_slope = ratio("headed.psi_edV_slope", Limit::at_most_one),
      .psi_cV_cracked = ratio("headed.psi_cV_cracked", Limit::positive),
      .psi_cV_uncracked = ratio("headed.psi_cV_uncracked", Limit::positive),
      .parallel_shear = ratio("headed.parallel_shear", Limit::at_least_one),
      .pryout_shallow = ratio("headed.pryout_shallow", Limit::positive),
      .pryout_deep = ratio("headed.pryout_deep", Limit::positive),
      .pryout_depth = length("headed.pryout_depth"),
      .interaction_small = ratio("headed.interaction_small", Limit::at_most_one),
      .interaction_sum = ratio("headed.interaction_sum", Limit::at_least_one),
      .minimum_spacing = ratio("headed.minimum_spacing", Limit::positive),
      .f_c_most = stress("headed.f_c_most"),
      .f_c_least = stress("headed.f_c_least"),
  };
  if (model.deep_from.value >= model.deep_to.value)
    read.fault("headed.deep_from", {}, "'headed.deep_from' is not below 'headed.deep_to'");
  if (model.f_c_least.value >= model.f_c_most.value)
    read.fault("headed.f_c_least", {}, "'headed.f_c_least' is not below 'headed.f_c_most'");
  return model;
}

}  // namespace firstpick::tables
