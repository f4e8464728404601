// EN 1992-4:2018, characteristic resistances of headed fasteners and their partial factors. Symbols as the standard
// writes them; cylinder strength throughout. What the two models share (reach of the cone, range of strength) is in
// HeadedInsertModel.
#pragma once

#include "record/source.hpp"
#include "units/quantity.hpp"

namespace firstpick::tables {

struct En1992HeadedModel {
  // Tension
  Sourced<BreakoutCoefficient> k1_cracked, k1_uncracked;  // N0_Rk,c = k1 sqrt(f_ck) h_ef^1.5
  Sourced<Ratio> psi_s_base, psi_s_slope;                 // 0.7, 0.3: edges, of cone, blow-out and edge failure
  Sourced<Ratio> psi_re_base;                             // 0.5: psi_re = 0.5 + h_ef / 200 mm <= 1
  Sourced<Length> psi_re_length;                          // 200 mm
  Sourced<Ratio> split_edge;                              // 1.2: no splitting where c >= 1.2 c_cr,sp
  Sourced<Ratio> split_extent;                            // c_cr,sp / h_ef
  Sourced<Ratio> split_thickness;                         // h_min / h_ef: no splitting in concrete as thick
  Sourced<Ratio> k2_cracked, k2_uncracked;                // N_Rk,p = k2 A_h f_ck
  Sourced<RootStress> k5_cracked, k5_uncracked;           // N0_Rk,cb = k5 c_1 sqrt(A_h) sqrt(f_ck)
  // Shear
  Sourced<Ratio> k6_soft, k6_hard;  // V0_Rk,s = k6 A_s f_uk
  Sourced<Stress> f_uk_soft, f_uk_most;
  Sourced<Ratio> k7;                // of steel that may not be ductile
  Sourced<Ratio> short_shank;       // 0.8, where h_ef / d is below
  Sourced<Ratio> short_below;       // 5
  Sourced<Ratio> k8_shallow, k8_deep;  // V_Rk,cp = k8 N_Rk,c
  Sourced<Length> k8_from;             // 60 mm
  Sourced<Ratio> k9_cracked, k9_uncracked;  // in N, mm, MPa: V0_Rk,c = k9 d^alpha l_f^beta sqrt(f_ck) c_1^1.5
  Sourced<Ratio> l_f_slender;               // 12: l_f <= 12 d
  Sourced<Length> thick_shank;              // 24 mm: above it l_f <= max(8 d, 300 mm)
  Sourced<Ratio> l_f_thick;                 // 8
  Sourced<Length> l_f_thick_least;          // 300 mm
  // Interaction
  Sourced<Ratio> power_steel, power_concrete;  // 2, 1.5; the sum of 1.2 is HeadedInsertModel::interaction_sum
  // Partial factors of resistances
  Sourced<Ratio> gamma_c, gamma_inst;                     // gamma_Mc = gamma_c gamma_inst
  Sourced<Ratio> gamma_s_tension, gamma_s_tension_least;  // 1.2 f_uk / f_yk >= 1.4
  Sourced<Ratio> gamma_s_shear, gamma_s_shear_least;      // 1.0 f_uk / f_yk >= 1.25
  Sourced<Ratio> gamma_s_shear_hard;                      // 1.5, for steel that is harder than
  Sourced<Stress> gamma_s_soft_f_uk;                      // 800 MPa
  Sourced<Ratio> gamma_s_soft_yield;                      // or whose f_yk / f_uk is above 0.8
};

// EN 1992-1-1, tension at which the piece cracks in bending, and in shear.
struct En1992Tension {
  Sourced<Ratio> f_ctm;             // 0.30: f_ctm = 0.30 f_ck^(2/3), in MPa
  Sourced<Stress> f_ctm_strong;     // 2.12 MPa: f_ctm = 2.12 ln(1 + f_cm / 10 MPa), in stronger concrete
  Sourced<Stress> strong_from;      // 50 MPa: f_ck above it
  Sourced<Stress> mean_over;        // 8 MPa: f_cm = f_ck + 8 MPa
  Sourced<Ratio> f_ctk;             // 0.7: lower fractile over the mean
  Sourced<Ratio> flexural;          // 1.6: f_ctm,fl = max(1.6 - h / 1000 mm; 1) f_ctm
  Sourced<Length> flexural_length;  // 1000 mm
  Sourced<Ratio> plain;             // 0.8: of the tensile strength in plain concrete, for shear
};

}  // namespace firstpick::tables
