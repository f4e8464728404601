// The names by which the entries of a rule set give the constants of HeadedInsertModel, and what each must
// be.

#include <limits>

#include "tables/read_rule_set.hpp"

namespace firstpick::tables {

namespace {

struct NoNumber {
  template <class Q>
  operator Sourced<Q>() const {
    return {Q::from_value(std::numeric_limits<double>::quiet_NaN()), {}};
  }
};

HeadedInsertModel without_numbers() {
  constexpr NoNumber no;
  return {.k_c = no, .k_deep = no, .deep_from = no, .deep_to = no, .cone_extent = no, .psi_ed_base = no,
          .psi_ed_slope = no, .psi_c_cracked = no, .psi_c_uncracked = no, .psi_cp = no, .pullout = no,
          .psi_cP_cracked = no, .psi_cP_uncracked = no, .blowout = no, .blowout_depth = no, .blowout_corner = no,
          .blowout_group = no, .futa_of_yield = no, .futa_cap = no, .shear_bolt = no, .shear_stud = no,
          .shear_small = no, .shear_large = no, .bearing_length = no, .shear_extent = no, .psi_edV_base = no,
          .psi_edV_slope = no, .psi_cV_cracked = no, .psi_cV_uncracked = no, .parallel_shear = no,
          .pryout_shallow = no, .pryout_deep = no, .pryout_depth = no, .interaction_small = no,
          .interaction_sum = no, .minimum_spacing = no, .f_c_most = no, .f_c_least = no};
}

}  // namespace

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

// No number where nothing is read: what is asked of it by mistake is never a strength.
HeadedInsertModel shared_with_en_1992(EntryReader& read) {
  const auto ratio = [&](std::string_view gives, Limit limit) { return read.quantity<Ratio>(gives, limit); };
  const auto stress = [&](std::string_view gives) { return read.quantity<Stress>(gives, Limit::positive); };
  HeadedInsertModel model = without_numbers();
  model.cone_extent = ratio("headed.cone_extent", Limit::positive);
  model.blowout_depth = ratio("headed.blowout_depth", Limit::positive);
  model.blowout_group = ratio("headed.blowout_group", Limit::positive);
  model.shear_extent = ratio("headed.shear_extent", Limit::positive);
  model.parallel_shear = ratio("headed.parallel_shear", Limit::at_least_one);
  model.interaction_sum = ratio("headed.interaction_sum", Limit::at_least_one);
  model.minimum_spacing = ratio("headed.minimum_spacing", Limit::positive);
  model.f_c_most = stress("headed.f_c_most");
  model.f_c_least = stress("headed.f_c_least");
  if (model.f_c_least.value >= model.f_c_most.value)
    read.fault("headed.f_c_least", {}, "'headed.f_c_least' is not below 'headed.f_c_most'");
  model.en = en_1992_headed_model(read);
  return model;
}

}  // namespace firstpick::tables
