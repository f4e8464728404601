// A structure is taken apart by all its members at once: one that is added to a model, and not here, does not compile.

#include "comparison/model_sources.hpp"

namespace firstpick::comparison {

namespace {

template <class... Constants>
Sources sources(const Constants&... constants) {
  return {&constants.source...};
}

Sources sources_of(const tables::En1992HeadedModel& model) {
  const auto& [k1_cracked, k1_uncracked, psi_s_base, psi_s_slope, psi_re_base, psi_re_length, split_edge, split_extent,
               split_thickness, k2_cracked, k2_uncracked, k5_cracked, k5_uncracked, k6_soft, k6_hard, f_uk_soft, f_uk_most, k7, short_shank,
               short_below, k8_shallow, k8_deep, k8_from, k9_cracked, k9_uncracked, l_f_slender, thick_shank, l_f_thick,
               l_f_thick_least, power_steel, power_concrete, gamma_c, gamma_inst, gamma_s_tension, gamma_s_tension_least,
               gamma_s_shear, gamma_s_shear_least, gamma_s_shear_hard, gamma_s_soft_f_uk, gamma_s_soft_yield] = model;
  return sources(k1_cracked, k1_uncracked, psi_s_base, psi_s_slope, psi_re_base, psi_re_length, split_edge, split_extent,
                 split_thickness, k2_cracked, k2_uncracked, k5_cracked, k5_uncracked, k6_soft, k6_hard, f_uk_soft, f_uk_most, k7, short_shank,
                 short_below, k8_shallow, k8_deep, k8_from, k9_cracked, k9_uncracked, l_f_slender, thick_shank, l_f_thick,
                 l_f_thick_least, power_steel, power_concrete, gamma_c, gamma_inst, gamma_s_tension, gamma_s_tension_least,
                 gamma_s_shear, gamma_s_shear_least, gamma_s_shear_hard, gamma_s_soft_f_uk, gamma_s_soft_yield);
}

Sources sources_of(const tables::En1992Tension& model) {
  const auto& [f_ctm, f_ctm_strong, strong_from, mean_over, f_ctk, flexural, flexural_length, plain] = model;
  return sources(f_ctm, f_ctm_strong, strong_from, mean_over, f_ctk, flexural, flexural_length, plain);
}

// What another model leaves out has no source.
Sources with_a_source(const Sources& all) {
  Sources kept;
  for (const Source* source : all)
    if (!source->id.empty()) kept.push_back(source);
  return kept;
}

template <class Model>
Sources and_of_en(Sources all, const std::optional<Model>& en) {
  if (!en) return all;
  all = with_a_source(all);
  for (const Source* source : sources_of(*en)) all.push_back(source);
  return all;
}

}  // namespace

Sources sources_of(const tables::HeadedInsertModel& model) {
  const auto& [k_c, k_deep, deep_from, deep_to, cone_extent, psi_ed_base, psi_ed_slope, psi_c_cracked, psi_c_uncracked, psi_cp,
               pullout, psi_cP_cracked, psi_cP_uncracked, blowout, blowout_depth, blowout_corner, blowout_group,
               futa_of_yield, futa_cap, shear_bolt, shear_stud, shear_small, shear_large, bearing_length, shear_extent,
               psi_edV_base, psi_edV_slope, psi_cV_cracked, psi_cV_uncracked, parallel_shear, pryout_shallow, pryout_deep,
               pryout_depth, interaction_small, interaction_sum, minimum_spacing, f_c_most, f_c_least, en] = model;
  return and_of_en(
      sources(k_c, k_deep, deep_from, deep_to, cone_extent, psi_ed_base, psi_ed_slope, psi_c_cracked, psi_c_uncracked, psi_cp,
              pullout, psi_cP_cracked, psi_cP_uncracked, blowout, blowout_depth, blowout_corner, blowout_group,
              futa_of_yield, futa_cap, shear_bolt, shear_stud, shear_small, shear_large, bearing_length, shear_extent,
              psi_edV_base, psi_edV_slope, psi_cV_cracked, psi_cV_uncracked, parallel_shear, pryout_shallow, pryout_deep,
              pryout_depth, interaction_small, interaction_sum, minimum_spacing, f_c_most, f_c_least),
      en);
}

Sources sources_of(const tables::CrackingModel& model) {
  const auto& [rupture, factor, poisson, patch, pick_strip, line_slenderness, panel_slenderness, step_ratio,
               block_slenderness, block_size, wall_support, wall_spread, wall_spread_end,
               wall_spread_cantilever, round_height, shear, shear_factor, en] = model;
  return and_of_en(sources(rupture, factor, poisson, patch, pick_strip, line_slenderness, panel_slenderness,
                           step_ratio, block_slenderness, block_size, wall_support, wall_spread, wall_spread_end,
                           wall_spread_cantilever, round_height, shear, shear_factor),
                   en);
}

Sources sources_of(const tables::PrestressModel& model) {
  const auto& [least, most, transfer_least, transfer_most, compression] = model;
  return sources(least, most, transfer_least, transfer_most, compression);
}

Sources sources_of(const tables::BarModel& model) {
  const auto& [yield_share, modulus, concrete_modulus, compression, crack_width, E_cm, mean_over] = model;
  Sources all = with_a_source(sources(yield_share, modulus, concrete_modulus, compression, crack_width));
  for (const auto* one : {&E_cm, &mean_over})
    if (*one) all.push_back(&(*one)->source);
  return all;
}

Sources sources_of(const std::optional<tables::AnchorBarModel>& model) {
  if (!model) return {};
  const auto& [distance, yield_most, aci, en] = *model;
  Sources all = sources(distance, yield_most);
  if (aci) {
    const auto& [thin_up_to, straight_thin, straight_thick, cast_position, straight_least, hook, hook_factor, hook_base,
                 hook_over, hook_diameters, hook_least] = *aci;
    for (const Source* one : sources(thin_up_to, straight_thin, straight_thick, cast_position, straight_least, hook,
                                     hook_factor, hook_base, hook_over, hook_diameters, hook_least))
      all.push_back(one);
  }
  if (en) {
    const auto& [bond, thickest, straight_diameters, hook_diameters, beyond_least, pryout, interaction_power] = *en;
    for (const Source* one :
         sources(bond, thickest, straight_diameters, hook_diameters, beyond_least, pryout, interaction_power))
      all.push_back(one);
  }
  return all;
}

}  // namespace firstpick::comparison
