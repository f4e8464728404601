// A slab on four headed inserts, its rules and tables made for the test: a lift in which every rule passes, to be spoilt
// by the test. 4.0 x 2.0 x 0.3 m, legs of 2.5 m of which two are one rope, on hand_made_rules().
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <variant>

#include <catch2/catch.hpp>

#include "checks/evaluate.hpp"
#include "checks/rule.hpp"
#include "checks/crane_hook_load.hpp"
#include "checks/stage_facts.hpp"
#include "support/hand_made_evidence.hpp"
#include "support/hand_made_rules.hpp"

namespace firstpick::tests {

inline const plan::MarkedSize made_size{Mass{2.5 * tonne} * standard_gravity, "2.5 t"};
inline const plan::Day made_day{tested_second / 86400 - 30, "2026-02-01"};  // a month before the lift

inline plan::Insert headed_insert_at(const std::string& id, Length x, Length y) {
  plan::Insert insert;
  insert.id = id;
  insert.kind = "headed";
  insert.at = {x, y, 0.3 * m};
  insert.embedment = 200.0 * mm;
  insert.shank = 24.0 * mm;
  insert.threaded = false;
  insert.head_bearing_area = 900.0 * mm2;
  insert.steel = "steel";
  insert.certificate = "lot 1";
  insert.position_confirmed = true;
  insert.size = made_size;
  return insert;
}

inline plan::Insert rated_insert_at(const std::string& id, Length x, Length y) {
  plan::Insert insert;
  insert.id = id;
  insert.kind = "rated";
  insert.at = {x, y, 0.3 * m};
  insert.certificate = "lot 1";
  insert.position_confirmed = true;
  insert.size = made_size;
  insert.rating = plan::Rating{.load = 30.0 * kN, .at_strength = 20.0 * MPa, .includes_factor = 4.0,
                               .maximum_angle = 60.0 * deg, .minimum_edge = 50.0 * mm,
                               .minimum_spacing = 300.0 * mm, .place = {}};
  return insert;
}

inline plan::Leg leg_to(const std::string& insert) {
  plan::Leg leg;
  leg.to = insert;
  leg.length = 2.5 * m;
  leg.gear = "chain";
  leg.hardware = "clutch";
  return leg;
}

inline plan::Plan slab_plan() {
  plan::Plan plan;
  plan.file = "slab.toml";
  plan.piece.mark = "SL-1";
  plan.piece.engineer = "engineer made for the test";
  plan.piece.stated_weight = 56.5 * kN;
  plan::Solid slab;
  slab.name = "slab";
  slab.size = {4.0 * m, 2.0 * m, 0.3 * m};
  plan.piece.solids = {slab};

  plan.concrete = concrete_with_evidence();
  plan.concrete.kind = "normalweight";
  plan.concrete.density = 2400.0 * kg_per_m3;
  plan.concrete.density_tolerance = Ratio::from_value(0.03);
  plan.concrete.cracked = true;
  plan.concrete.evidence->results = {24.0 * MPa, 25.0 * MPa};
  plan.concrete.evidence->valid_for = 12.0 * hour;

  plan::Contact bed;
  bed.faces.names = {{"-z", {}}};
  bed.finish = "smooth";
  plan.form = plan::Form{};
  plan.form->contacts = {bed};
  plan.form->nothing_attached = true;

  plan.inserts = {headed_insert_at("A1", 1.0 * m, 0.5 * m), headed_insert_at("A2", 3.0 * m, 0.5 * m),
                  headed_insert_at("A3", 3.0 * m, 1.5 * m), headed_insert_at("A4", 1.0 * m, 1.5 * m)};

  plan::Sling chain;
  chain.id = "chain";
  chain.kind = "chain";
  chain.rated = 40.0 * kN;
  chain.inspected = made_day;
  plan.slings = {chain};

  plan::Hardware clutch;
  clutch.id = "clutch";
  clutch.kind = plan::HardwareKind::clutch;
  clutch.size = made_size;
  clutch.rated = 40.0 * kN;
  clutch.design_factor = 5.0;
  clutch.inspected = made_day;
  plan.hardware = {clutch};

  plan::Crane bay;
  bay.id = "bay";
  bay.rated = 100.0 * kN;
  bay.block = 1.0 * kN;
  bay.inspected = made_day;
  plan.cranes = {bay};

  plan::Rigging four;
  four.id = "four legs";
  four.legs = {leg_to("A1"), leg_to("A2"), leg_to("A3"), leg_to("A4")};
  four.equalised = {{{"A1", {}}, {"A2", {}}}};  // three ropes: statics leaves nothing open
  four.equaliser_rated = 1000.0 * kN;
  four.equaliser_inspected = made_day;
  four.weight = 1.0 * kN;
  plan.riggings = {four};

  plan::Stage strip;
  strip.kind = plan::StageKind::strip;
  strip.rigging = "four legs";
  strip.crane = "bay";
  strip.at = plan::Timestamp{tested_second + 3600, false, "2026-03-03T08:10:00"};
  strip.hook_latch = strip.exclusion_zone = strip.tag_line = strip.signaller = true;
  strip.load_in_view = strip.clear_of_power_lines = strip.operator_agrees = true;
  plan::Landing floor;
  floor.on = plan::LandingOn::flat;
  floor.level = true;
  floor.legs_off = true;
  strip.landing = floor;
  plan.stages = {strip};
  return plan;
}

inline tables::Tables slab_tables() {
  tables::Tables tables = hand_made_tables();
  tables.steels.emplace("steel", tables::Steel{"steel", made("futa.steel", Stress{500.0 * MPa}),
                                               made("fya.steel", Stress{350.0 * MPa})});
  tables.concretes.emplace("normalweight",
                           tables::ConcreteKind{"normalweight", made_ratio("lambda_a.normalweight", 1.0),
                                                made("density_low.normalweight", Density{2200.0 * kg_per_m3}),
                                                made("density_high.normalweight", Density{2600.0 * kg_per_m3})});
  tables.slings.emplace("chain", tables::SlingKind{"chain", made_ratio("design_factor.chain", 5.0)});
  return tables;
}

// hand_made_rules() that demand every rule in every stage.
inline tables::RuleSet rules_that_demand_all() {
  tables::RuleSet rules = hand_made_rules();
  for (const checks::Rule& rule : checks::all_rules())
    rules.mandatory.push_back({std::string(rule.id), std::string(checks::word_for(rule.scope)), {}});
  return rules;
}

// Spoil `plan`, `rules` or `tables`, then ask for facts(): the facts refer to this object and to nothing of an older call.
struct SlabLift {
  plan::Plan plan = slab_plan();
  tables::RuleSet rules = rules_that_demand_all();
  tables::Tables tables = slab_tables();
  piece::Body body{};
  std::optional<checks::Anchorage> prepared{};

  SlabLift() = default;
  SlabLift(const SlabLift&) = delete;
  SlabLift& operator=(const SlabLift&) = delete;

  plan::Leg& leg(std::size_t i) { return plan.riggings.front().legs.at(i); }
  plan::Stage& stage() { return plan.stages.front(); }

  checks::StageFacts facts(Trace& trace, std::size_t stage = 0) {
    auto made = piece::make_body(plan);
    if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&made)) FAIL(show(faults->front()));
    body = std::move(std::get<piece::Body>(made));
    prepared.emplace(checks::anchorage(plan, body, rules, tables, trace));
    return checks::stage_facts(plan, plan.stages.at(stage), body, *prepared, rules, tables, trace);
  }
  checks::StageFacts facts(std::size_t stage = 0) {
    Trace silent;
    return facts(silent, stage);
  }
};

// 6.0 x 0.4 x 0.3 m, a line, with picks 1.5 m from its ends, two at each: 0.1 m and `far_y` from one side.
inline void make_line(SlabLift& lift, Length far_y) {
  lift.plan.piece.solids[0].size = {6.0 * m, 0.4 * m, 0.3 * m};
  for (plan::Insert& insert : lift.plan.inserts) {
    insert.at.x = insert.at.x < 2.0 * m ? 1.5 * m : 4.5 * m;
    insert.at.y = insert.at.y < 1.0 * m ? 0.1 * m : far_y;
  }
  lift.plan.piece.stated_weight.reset();
}

inline std::vector<checks::Finding> judged(std::string_view rule, const checks::StageFacts& facts) {
  const checks::Rule* found = checks::rule_named(rule);
  if (!found) FAIL("there is no rule " << rule);
  Trace silent;
  return found->judge(facts, silent);
}

// The one finding of a rule for a subject; none or two of them fail the test.
inline checks::Finding finding_for(std::string_view rule, std::string_view subject, const checks::StageFacts& facts) {
  std::vector<checks::Finding> mine;
  for (checks::Finding& finding : judged(rule, facts))
    if (finding.subject == subject) mine.push_back(std::move(finding));
  if (mine.size() != 1) FAIL(rule << " gave " << mine.size() << " findings for " << subject);
  return mine.front();
}

// What every finding that does not pass owes its reader. Short and complete: why, and what would change it.
inline void check_says_why(const checks::Finding& finding) {
  CAPTURE(finding.rule, finding.subject, finding.text, finding.remedy);
  CHECK_FALSE(finding.text.empty());
  CHECK_FALSE(finding.remedy.empty());
}

inline Outcome<Force> hook_load_of(SlabLift& lift) {
  const checks::StageFacts facts = lift.facts();
  return checks::crane_hook_load(facts, checks::cranes_of(facts).front());
}

// The slab turned about its edge at x = 0 by its inserts at x = 3 m, with two legs of their own, out of its form by the turn.
inline void turn_out_of_form(SlabLift& lift, Angle to) {
  lift.plan.piece.stated_weight.reset();
  plan::Rigging two;
  two.id = "two legs";
  two.legs = {leg_to("A2"), leg_to("A3")};
  two.weight = 1.0 * kN;
  lift.plan.riggings.push_back(two);
  plan::Turn turn;
  turn.method = plan::TurnMethod::edge;
  turn.about = {Position{}, Position{0.0 * m, 2.0 * m, 0.0 * m}};
  turn.to = to;
  turn.ground = "yard";
  turn.procedure = "TP-1";
  lift.stage().kind = plan::StageKind::turn;
  lift.stage().rigging = "two legs";
  lift.stage().turn = turn;
  lift.stage().dynamic_factor = Ratio{1.2};
}

// The same, released before.
inline void turn_about_edge(SlabLift& lift, Angle to) {
  turn_out_of_form(lift, to);
  if (lift.plan.form) lift.plan.form->released = true;
}

// That slab on a tilting table with its foot at x = 0, picked at its upper end: taken off at `at`, to hang at 85 degrees.
inline void take_off_a_table(SlabLift& lift, Angle at) {
  for (const std::size_t i : {1U, 2U}) lift.plan.inserts[i].at.x = 4.0 * m, lift.plan.inserts[i].at.z = 150.0 * mm;
  lift.stage().turn->method = plan::TurnMethod::table;
  lift.stage().turn->to = 85.0 * deg;
  lift.stage().turn->table_angle = at;
}

// That slab between two hooks, the second one on a crane "bay 2" by the inserts at x = 1 m.
inline void turn_between_hooks(SlabLift& lift) {
  plan::Rigging tail;
  tail.id = "tail";
  tail.legs = {leg_to("A1"), leg_to("A4")};
  tail.weight = 0.5 * kN;
  lift.plan.riggings.push_back(tail);
  plan::Crane second = lift.plan.cranes.front();
  second.id = "bay 2";
  second.block = 2.0 * kN;
  lift.plan.cranes.push_back(second);
  lift.stage().turn->method = plan::TurnMethod::two_hooks;
  lift.stage().turn->about.reset();
  lift.stage().turn->tail_rigging = "tail";
  lift.stage().turn->tail_crane = "bay 2";
}

}  // namespace firstpick::tests
