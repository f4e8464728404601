// A rule: what it guards against, on which subjects, and how it judges them. The explicit list is all_rules.cpp.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "checks/finding.hpp"
#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// Which subjects a rule must give a finding for; the coverage guard counts them.
enum class Scope { piece, rigging, crane, leg, gear, insert, headed_insert, rated_insert, beam, sheave, loop_insert, plate_insert };
constexpr std::size_t number_of_scopes = 1 + static_cast<std::size_t>(Scope::plate_insert);

// "piece", "rigging", "crane", "leg", "gear", "insert", "headed insert", "rated insert", "loop insert", "plate insert"
std::string_view word_for(Scope scope);

using Judge = std::vector<Finding> (*)(const StageFacts& facts, Trace& trace);

struct Rule {
  std::string_view id;       // kebab-case name of the failure guarded against; never renamed or reused
  std::string_view guards;   // what goes wrong without it, one line
  std::string_view source;   // clause or source, one line
  Scope scope;
  Judge judge;
  bool at_any_strength = false;  // what it finds is the same at any strength of the concrete
};

std::span<const Rule> all_rules();
const Rule* rule_named(std::string_view id);

// The subjects of a scope in this stage: insert ids, the crane's id, the piece's mark, ...
std::vector<std::string> subjects_of(Scope scope, const StageFacts& facts);

// One declaration for each rule; each is defined in the file of its name.
std::vector<Finding> engineer_named(const StageFacts& facts, Trace& trace);
std::vector<Finding> stage_evaluated(const StageFacts& facts, Trace& trace);
std::vector<Finding> changed_since_sign_off(const StageFacts& facts, Trace& trace);
std::vector<Finding> stated_weight(const StageFacts& facts, Trace& trace);
std::vector<Finding> strength_evidence(const StageFacts& facts, Trace& trace);
std::vector<Finding> evidence_age(const StageFacts& facts, Trace& trace);
std::vector<Finding> strength_below_required(const StageFacts& facts, Trace& trace);
std::vector<Finding> piece_cracking(const StageFacts& facts, Trace& trace);
std::vector<Finding> piece_shear(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_wall_bending(const StageFacts& facts, Trace& trace);
std::vector<Finding> rigging_statics(const StageFacts& facts, Trace& trace);
std::vector<Finding> leg_clearance(const StageFacts& facts, Trace& trace);
std::vector<Finding> hook_plumb(const StageFacts& facts, Trace& trace);
std::vector<Finding> turn_release(const StageFacts& facts, Trace& trace);
std::vector<Finding> hanging_tilt(const StageFacts& facts, Trace& trace);
std::vector<Finding> crane_overload(const StageFacts& facts, Trace& trace);
std::vector<Finding> beam_overload(const StageFacts& facts, Trace& trace);
std::vector<Finding> sheave_overload(const StageFacts& facts, Trace& trace);
std::vector<Finding> sling_overload(const StageFacts& facts, Trace& trace);
std::vector<Finding> sling_angle(const StageFacts& facts, Trace& trace);
std::vector<Finding> hardware_factor(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_position(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_certificate(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_kind(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_embedment(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_steel_tension(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_breakout(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_pullout(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_side_blowout(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_steel_shear(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_edge_breakout(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_pryout(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_interaction(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_rating(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_edge_distance(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_spacing(const StageFacts& facts, Trace& trace);
std::vector<Finding> picks_too_low(const StageFacts& facts, Trace& trace);
std::vector<Finding> attached_parts(const StageFacts& facts, Trace& trace);
std::vector<Finding> pick_count(const StageFacts& facts, Trace& trace);
std::vector<Finding> crane_thresholds(const StageFacts& facts, Trace& trace);
std::vector<Finding> critical_lift(const StageFacts& facts, Trace& trace);
std::vector<Finding> hardware_overload(const StageFacts& facts, Trace& trace);
std::vector<Finding> clutch_mismatch(const StageFacts& facts, Trace& trace);
std::vector<Finding> gear_inspection(const StageFacts& facts, Trace& trace);
std::vector<Finding> hook_latch(const StageFacts& facts, Trace& trace);
std::vector<Finding> exclusion_zone(const StageFacts& facts, Trace& trace);
std::vector<Finding> tag_line(const StageFacts& facts, Trace& trace);
std::vector<Finding> signaller(const StageFacts& facts, Trace& trace);
std::vector<Finding> bent_bar_eye(const StageFacts& facts, Trace& trace);
std::vector<Finding> connection_loop(const StageFacts& facts, Trace& trace);
std::vector<Finding> edge_insert_hanger_bar(const StageFacts& facts, Trace& trace);
std::vector<Finding> insert_angle(const StageFacts& facts, Trace& trace);
std::vector<Finding> turn_procedure(const StageFacts& facts, Trace& trace);
std::vector<Finding> turn_slip(const StageFacts& facts, Trace& trace);
std::vector<Finding> turn_runaway(const StageFacts& facts, Trace& trace);
std::vector<Finding> point_loss(const StageFacts& facts, Trace& trace);
std::vector<Finding> roll_stability(const StageFacts& facts, Trace& trace);
std::vector<Finding> leg_skew(const StageFacts& facts, Trace& trace);
std::vector<Finding> teeter(const StageFacts& facts, Trace& trace);
std::vector<Finding> landing_stability(const StageFacts& facts, Trace& trace);
std::vector<Finding> landing_bearers(const StageFacts& facts, Trace& trace);
std::vector<Finding> haul_restraint(const StageFacts& facts, Trace& trace);
std::vector<Finding> wind_side_load(const StageFacts& facts, Trace& trace);
std::vector<Finding> scale_reading(const StageFacts& facts, Trace& trace);
std::vector<Finding> loop_depth(const StageFacts& facts, Trace& trace);
std::vector<Finding> loop_bond(const StageFacts& facts, Trace& trace);
std::vector<Finding> loop_steel(const StageFacts& facts, Trace& trace);
std::vector<Finding> loop_breakout(const StageFacts& facts, Trace& trace);
std::vector<Finding> loop_bend(const StageFacts& facts, Trace& trace);
std::vector<Finding> loop_angle(const StageFacts& facts, Trace& trace);
std::vector<Finding> loop_edge(const StageFacts& facts, Trace& trace);
std::vector<Finding> plate_steel(const StageFacts& facts, Trace& trace);
std::vector<Finding> plate_bearing(const StageFacts& facts, Trace& trace);
std::vector<Finding> plate_punching(const StageFacts& facts, Trace& trace);
std::vector<Finding> thread_engagement(const StageFacts& facts, Trace& trace);

}  // namespace firstpick::checks
