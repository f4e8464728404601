// A rule set: load model, sharing model, resistance model, safety format, limits and mandatory rules, each
// value with its source. Read from tables/rules/<id>.toml and the tables it names; no number of this kind
// lives in C++.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "record/source.hpp"
#include "tables/anchor_bars.hpp"
#include "tables/en_1992_4.hpp"
#include "units/quantity.hpp"

namespace firstpick::tables {

enum class InsertLoad { weight_only, with_adhesion_and_dynamic };  // what the insert factor multiplies
enum class CraneLoad { weight_and_gear, with_adhesion };           // what is compared with the crane's rating
enum class Sharing {
  elastic,
  statics
};  // statics: no more legs are credited than equilibrium needs, worst set
enum class UsableStrength {  // what a set of specimens is worth
  lowest,
  mean,                        // while the results lie no farther apart than their own limit
  fractile_variation_known,    // EN 1990 annex D
  fractile_variation_unknown,
  tolerance_bound              // one-sided, normal
};
enum class NoSignOff { note, hold, refuse };      // what a plan is worth that no engineer has signed
enum class LossOfAPoint { report, hold, refuse };  // what a lift is worth that would not survive it
enum class MaturityUse { refused, validated_with_margin };  // whether maturity may stand in for specimens
enum class LogDoubts { hold, note };  // what a doubt about the pour's temperature log does to its specimens
enum class BelowFloor {
  proportional,
  refuse
};  // concrete capacities below the strength range of the formulas
enum class RatingScaling { proportional, square_root, as_declared };  // as declared: never for weaker concrete

// ACI 318-19 chapter 17, nominal strengths of headed cast-in inserts. Symbols as the standard writes them. Where the rule
// set names EN 1992-4, `en` holds its constants, and of the rest only what `shared_with_en_1992` reads are numbers.
struct HeadedInsertModel {
  Sourced<BreakoutCoefficient> k_c;         // N_b = k_c lambda_a sqrt(f_c) h_ef^1.5
  Sourced<DeepBreakoutCoefficient> k_deep;  // N_b = k_deep lambda_a sqrt(f_c) h_ef^(5/3)
  Sourced<Length> deep_from, deep_to;       // the range of h_ef for k_deep
  Sourced<Ratio> cone_extent;  // 1.5: the breakout body reaches cone_extent * h_ef from the insert
  Sourced<Ratio> psi_ed_base, psi_ed_slope;       // 0.7, 0.3
  Sourced<Ratio> psi_c_cracked, psi_c_uncracked;  // breakout in tension
  Sourced<Ratio> psi_cp;                          // splitting, cast-in
  Sourced<Ratio> pullout;                         // N_p = 8 A_brg f_c
  Sourced<Ratio> psi_cP_cracked, psi_cP_uncracked;
  Sourced<RootStress> blowout;               // N_sb = 160 c_a1 sqrt(A_brg) lambda_a sqrt(f_c)
  Sourced<Ratio> blowout_depth;              // 2.5: blowout governs where h_ef > 2.5 c_a1
  Sourced<Ratio> blowout_corner;             // 3: corner factor (1 + c_a2/c_a1)/4 where c_a2 < 3 c_a1
  Sourced<Ratio> blowout_group;              // 6: inserts nearer than 6 c_a1 act as a group
  Sourced<Ratio> futa_of_yield;              // 1.9
  Sourced<Stress> futa_cap;                  // 125 ksi
  Sourced<Ratio> shear_bolt;                 // 0.6: V_sa = 0.6 A_se f_uta of a bolt
  Sourced<Ratio> shear_stud;                 // 1.0: headed stud
  Sourced<RootStress> shear_small;           // 7: V_b = 7 (l_e/d_a)^0.2 sqrt(d_a) lambda_a sqrt(f_c) c_a1^1.5
  Sourced<BreakoutCoefficient> shear_large;  // 9: V_b = 9 lambda_a sqrt(f_c) c_a1^1.5
  Sourced<Ratio> bearing_length;             // 8: l_e <= 8 d_a
  Sourced<Ratio> shear_extent;               // 1.5: shear breakout reaches 1.5 c_a1 sideways and down
  Sourced<Ratio> psi_edV_base, psi_edV_slope;         // 0.7, 0.3
  Sourced<Ratio> psi_cV_cracked, psi_cV_uncracked;    // 1.0 without edge bar, 1.4
  Sourced<Ratio> parallel_shear;                      // 2: shear parallel to the edge
  Sourced<Ratio> pryout_shallow, pryout_deep;         // k_cp 1, 2
  Sourced<Length> pryout_depth;                       // 2.5 in
  Sourced<Ratio> interaction_small, interaction_sum;  // 0.2, 1.2
  Sourced<Ratio> minimum_spacing;                     // 4 d_a
  Sourced<Stress> f_c_most;                           // 10,000 psi: more strength is not credited
  Sourced<Stress> f_c_least;                          // the floor below which the formulas do not speak
  std::optional<En1992HeadedModel> en{};     // the rule set names the model of EN 1992-4
};

// The stages of a piece's life, as plans and tables write them.
inline constexpr std::array<std::string_view, 6> stage_words = {"strip", "turn", "yard",
                                                                "store", "haul", "set"};

// When the piece itself cracks in bending or shear while it hangs.
struct CrackingModel {
  Sourced<RootStress> rupture;      // 7.5: f_r = 7.5 lambda sqrt(f_c); not a number where `en` is there
  Sourced<Ratio> factor;            // 1.5: allowed tension = f_r / factor
  Sourced<Ratio> poisson;           // of panels
  Sourced<Ratio> patch;             // moments of panels are means over a disc of this many thicknesses
  Sourced<Ratio> pick_strip;        // and at picks over a strip of this many thicknesses, half the panel at most
  Sourced<Ratio> line_slenderness;  // a line is at least so many times longer than wide and deep
  Sourced<Ratio> panel_slenderness; // a panel is at least so many times wider than thick
  Sourced<Ratio> step_ratio;        // most thickness of a stepped panel over its least
  Sourced<Ratio> block_slenderness; // a block passes without bending check up to so many mean thicknesses across
  Sourced<Length> block_size;       // and up to this size
  Sourced<Ratio> wall_support;      // where a wall or slab is so many times as thick, another member holds it
  Sourced<Ratio> wall_spread;       // 2.5: width of a wall between two supports that carries one pull, t + 2.5 a (1 - a/l)
  Sourced<Ratio> wall_spread_end;   // 0.5: at the nearer support, t + 0.5 a (2 - a/l)
  Sourced<Ratio> wall_spread_cantilever;  // 1.5: of one that juts out, t + 1.5 a
  Sourced<Ratio> round_height;      // of the arc between two pulls on a round wall, one over so many is as high as its ring
  Sourced<RootStress> shear;        // 4/3: V_n = 4/3 lambda sqrt(f_c) b h; not a number where `en` is there
  Sourced<Ratio> shear_factor;      // allowed shear = nominal / factor
  std::optional<En1992Tension> en{};  // the rule set names the tension of EN 1992-1-1
};

// What strands hold at the lift, either way from what the engineer states, and how far they may press the concrete.
struct PrestressModel {
  Sourced<Ratio> least, most;                    // of the stated force
  Sourced<Ratio> transfer_least, transfer_most;  // of the stated transfer length
  Sourced<Ratio> compression;                    // 0.6: of the strength at the lift
};

// Bars of a piece that may crack.
struct BarModel {
  Sourced<Ratio> yield_share;              // 0.6: of the yield strength, with what cracked pieces are lifted
  Sourced<Stress> modulus;                 // E_s
  Sourced<RootStress> concrete_modulus;    // E_c = 57000 sqrt(f_c) in psi; not a number where E_cm is there
  Sourced<Ratio> compression;              // of the strength at the lift
  Sourced<Length> crack_width;             // the report warns of wider cracks
  std::optional<Sourced<Stress>> E_cm{};         // E_c = E_cm ((f_c + mean_over) / 10 MPa)^0.3
  std::optional<Sourced<Stress>> mean_over{};    // mean over characteristic strength
};

// Partial factors on what headed inserts are asked for; without them one factor on the inserts covers both sides.
struct LoadFactors {
  Sourced<Ratio> weight;  // on phi (W + W_att)
  Sourced<Ratio> grip;    // on the grip of the form
};

// A least strength of its own for heavy pieces.
struct HeavyPieces {
  Sourced<Mass> above;
  Sourced<Stress> minimum_strength;
};

// What a published guideline asks of a leg of four: held against what the rule set's own sharing and dynamic factor ask.
struct LegCrossCheck {
  Sourced<Ratio> skew;            // on the even share of each diagonal in turn
  Sourced<Ratio> dynamic_factor;  // on the weight
};

struct Mandatory {
  std::string rule;   // rule id
  // "piece" | "rigging" | "crane" | "leg" | "gear" | "insert" | "headed insert" | "rated insert" | "beam" | "sheave"
  std::string scope;
  std::vector<std::string> stages;  // stage words; empty = every stage
};

struct RuleSet {
  std::string id, title, edition;
  std::string based_on{};  // the rule set from which every value comes that it does not give itself; empty: none
  std::vector<std::string> cautions;  // printed on every output, after the program's own

  // Loads
  Sourced<InsertLoad> insert_load;
  Sourced<CraneLoad> crane_load;
  std::map<std::string, Sourced<Ratio>> dynamic_factor;  // by stage word: "strip", "yard", ...
  std::optional<LoadFactors> load_factors{};       // of a partial safety format
  std::optional<Sourced<Ratio>> load_floor{};      // the whole load of a strip is never below so many times the weight
  std::optional<Sourced<Stress>> adhesion_least{};  // no form grips with less per area
  std::map<std::string, Sourced<Ratio>>
      bending_multiplier;  // by stage and product: "strip.flat.smooth-mould", ...

  // Sharing between legs
  Sourced<Sharing> sharing;
  Sourced<Ratio> loss_step_factor;     // on the load of a point that lets go, as it comes on the others at once
  Sourced<LossOfAPoint> loss_of_a_point;
  std::optional<LegCrossCheck> leg_cross_check{};
  Sourced<Ratio>
      leg_stiffness_ratio;  // E A of a leg over the lifted load where the plan gives no axial stiffness

  // Strength
  Sourced<UsableStrength> usable_strength;
  Sourced<Ratio> minimum_results;    // number of specimens
  Sourced<Stress> minimum_strength;  // to strip or lift at all
  std::optional<HeavyPieces> heavy{};
  Sourced<BelowFloor> below_floor;
  Sourced<Ratio> fractile;              // share of the concrete that may be weaker than the bound
  Sourced<Ratio> known_variation;       // coefficient of variation, where it counts as known
  Sourced<Ratio> tolerance_confidence;  // with which the tolerance bound lies below the fractile
  Sourced<MaturityUse> maturity;
  Sourced<Stress> maturity_margin;      // estimate over the strength needed
  Sourced<Ratio> maturity_difference;   // estimate against companion specimens, either way
  Sourced<Ratio> companion_share;       // strength of the latest companions over the estimate, at least
  Sourced<Duration> companion_window;   // from the latest companions to the last reading, at most
  Sourced<Ratio> fit_scatter;           // standard deviation of the calibration over the estimate, at most
  Sourced<Ratio> fit_error;             // standard error of the estimate, by the fit, over it, at most
  Sourced<LogDoubts> log_doubts;
  Sourced<Duration> youngest_test;      // age of the concrete below which a test says nothing of a lift
  Sourced<Duration> longest_valid_for;  // most that a plan or pour may state
  Sourced<Ratio> widest_range;          // of the results over their mean, whatever of them counts
  Sourced<Duration> pour_lasts;         // a piece was cast at most so long before the specimens of its pour

  // Safety format and limits
  Sourced<Ratio> insert_factor;    // 4: capacity = nominal / factor
  Sourced<Ratio> hardware_factor;  // 5
  Sourced<RatingScaling> rating_scaling;
  std::optional<Sourced<Stress>> rating_basis{};  // the strength for which every declared load must be known
  Sourced<Angle> minimum_sling_angle;  // from horizontal
  Sourced<Stress> strength_step;       // strengths to print on drawings are rounded up to it
  Sourced<Angle> maximum_tilt;         // of the piece as it hangs, out of level
  Sourced<Ratio> weight_disagreement;  // stated weight against geometry

  // Gates
  Sourced<Ratio> flat_piece;             // a piece is flat up to this height over its least width
  Sourced<Ratio> edge_shear;             // shear across a narrow face, over tension, from which a hanger bar is due
  Sourced<Ratio> crane_planned_above;    // share of the crane's rating: a written lift plan from here
  Sourced<Ratio> crane_critical_above;   // and a critical lift from here
  Sourced<Duration> inspection_interval; // of slings, hardware and cranes
  // Turning, rolling, setting down
  Sourced<Angle> hook_off_plumb;         // how far the hook line strays from plumb while a piece is turned
  Sourced<Angle> hook_side_pull;         // the most that two hooks or more may be pulled off plumb by what they carry
  Sourced<Length> leg_clearance;         // least distance of a leg from concrete, and from another leg
  Sourced<Length> leg_end;               // clutch or shackle at the lower end of a leg: its hold in a recess is not asked
  Sourced<Length> hook_clearance;        // of a hook from concrete, and from another hook
  Sourced<Angle> release_swing;          // the most that a piece swings as it comes free of a tilting table
  Sourced<Angle> free_turn;              // the most that a piece may turn by itself past its balance
  Sourced<Force> side_pull;              // at the rim of a piece as it hangs: a hand, a tag line
  Sourced<Angle> maximum_roll;           // under that pull
  Sourced<Ratio> pick_spacing;           // of picks in line, over the length: less teeters
  Sourced<Angle> minimum_tipping_angle;  // of a piece that was set down
  // Wind, scale
  Sourced<Speed> wind_caution;           // in a stronger gust the lift waits
  Sourced<Angle> maximum_swing;          // of a piece that hangs, as a gust takes it
  Sourced<Ratio> scale_disagreement;     // weight by the crane's scale against the computed one

  HeadedInsertModel headed;
  CrackingModel cracking;
  PrestressModel prestress;
  BarModel bars;
  std::optional<AnchorBarModel> anchor_bars{};  // without it bars about an insert are not counted
  std::vector<Mandatory> mandatory;

  Sourced<NoSignOff> no_sign_off;
};

}  // namespace firstpick::tables
