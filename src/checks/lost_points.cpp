// Source   statics of the survivors (stage_facts.cpp: shared, as for the whole rigging). A load that comes at once on an
//          undamped elastic leg pulls twice as much as the same load at rest: the step factor of the rule set.

#include "checks/lost_points.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>

#include <fmt/format.h>

#include "checks/insert_modes.hpp"
#include "checks/rigging_without.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

// The rules that know what breaks: their nominal resistance is the ultimate one.
constexpr std::array<std::string_view, 15> of_survivors{
    "hardware-factor",     "hardware-overload",    "insert-steel-tension", "insert-steel-shear",
    "insert-breakout",     "insert-pullout",       "insert-side-blowout",  "insert-edge-breakout",
    "insert-pryout",       "insert-interaction",   "loop-bond",            "loop-steel",
    "loop-breakout",       "plate-steel",          "plate-punching"};

// Rules that are held against the ultimate: the factor on the inserts is one.
tables::RuleSet without_insert_factor(const tables::RuleSet& rules) {
  tables::RuleSet ultimate = rules;
  ultimate.insert_factor.value = Ratio{1.0};
  return ultimate;
}

loads::LoadSet sudden(const loads::StageLoad& load, Ratio step, const std::string& name) {
  const Ratio factor = step / load.dynamic_factor;
  loads::LoadSet set = load.gear_loads.front();  // hanging free
  set.name = name;
  for (loads::AppliedLoad& each : set.loads) each.force = factor * each.force;
  set.total = factor * set.total;
  return set;
}

// Demand over ultimate; where the finding compares uses (interaction), the use without factors.
std::optional<double> use_of(const Finding& finding) {
  if (finding.demand && finding.nominal && std::holds_alternative<Force>(*finding.demand) &&
      std::holds_alternative<Force>(*finding.nominal))
    return std::get<Force>(*finding.demand) / std::get<Force>(*finding.nominal);
  return finding.utilization;
}

Angle angle_between(const Direction& a, const Direction& b) {
  return std::atan2(norm(cross(a, b)), dot(a, b)) * radian;
}

Ratio pull_of_a_swing(Angle from) { return Ratio{3.0 - 2.0 * std::cos(from.value())}; }

std::string names_of(const plan::Rigging& rigging, const std::vector<std::size_t>& rope) {
  std::string names;
  for (const std::size_t leg : rope) names += (names.empty() ? "" : " and ") + rigging.legs[leg].to;
  return names;
}

void judge(const StageFacts& after, PointLoss& loss) {
  Trace silent;
  std::vector<std::string_view> rules(of_survivors.begin(), of_survivors.end());
  rules.push_back("insert-rating");
  for (const std::string_view rule : rules)
    for (const Finding& finding : rule_named(rule)->judge(after, silent)) {
      if (finding.result == Result::missing) {
        loss.survivor = finding.subject;
        loss.rule = rule;
        loss.use = {};
        loss.why = finding.text;
        return;
      }
      const auto use = use_of(finding);
      if (!use || (loss.use && *use <= *loss.use)) continue;
      loss.survivor = finding.subject;
      loss.rule = rule;
      loss.use = use;
    }
  if (!loss.use) loss.why = "nothing that is left is held against what breaks it";
}

PointLoss after_loss_of(const StageFacts& facts, const std::vector<std::size_t>& rope, const tables::RuleSet& rules) {
  PointLoss loss{.lost = names_of(*facts.rigging, rope)};
  const auto& load = std::get<loads::StageLoad>(facts.load);
  auto left = std::make_shared<const plan::Rigging>(rigging_without(*facts.rigging, rope));
  if (left->legs.empty()) {
    loss.why = "nothing else holds the piece";
    return loss;
  }
  const auto& upright = std::get<Direction>(facts.up_before);
  const auto hung_with = [&](Ratio step) {
    return shared(facts.plan, left.get(), sudden(load, step, "without " + loss.lost), rules, facts.tables, upright);
  };
  Ratio step = std::max(rules.loss_step_factor.value, load.dynamic_factor);
  auto hung = hung_with(step);
  if (const auto* rest = std::get_if<Shared>(&hung)) {
    const auto* before = std::get_if<demands::Hanging>(&facts.hanging);
    loss.swing = angle_between(before ? before->up : upright, rest->hanging.up);
    if (const Ratio swinging = pull_of_a_swing(*loss.swing); swinging > step) hung = hung_with(step = swinging);
  }
  if (const auto* gap = std::get_if<NotAssessed>(&hung)) {
    loss.why = "no rest was found on what is left: " + gap->why;
    return loss;
  }
  const demands::Hanging& hangs = std::get<Shared>(hung).hanging;
  for (std::size_t i = 0; i < left->legs.size(); ++i)
    loss.legs.push_back({left->legs[i].to, hangs.legs[i].tension, hangs.legs[i].angle_from_horizontal, {}});
  StageFacts after{.plan = facts.plan,
                   .stage = facts.stage,
                   .rigging = left.get(),
                   .crane = facts.crane,
                   .body = facts.body,
                   .tables = facts.tables,
                   .rules = rules,
                   .anchorage = facts.anchorage,
                   .load = facts.load,
                   .hung = std::get<Shared>(hung).hung,
                   .hanging = std::get<Shared>(hung).hanging,
                   .insert_situations = NotAssessed{},
                   .gear_situations = std::get<Shared>(hung).situations,
                   .usable_strength = facts.usable_strength,
                   .required_strength = facts.required_strength,
                   .formula_strength = facts.formula_strength,
                   .up_before = facts.up_before,
                   .up_after = facts.up_after,
                   .joined = left,
                   .turning = {},
                   .modes = {},
                   .tells_losses = false,
                   .in_words = false};
  after.as_cracked = facts.as_cracked;
  after.against_ultimate = true;
  after.insert_situations = on_inserts(after.gear_situations, facts.plan, after.rigging, facts.body);
  after.modes = mode_table(after);
  judge(after, loss);
  return loss;
}

}  // namespace

std::vector<PointLoss> lost_points(const StageFacts& facts) {
  std::vector<PointLoss> losses;
  if (!facts.rigging || facts.stage.kind == plan::StageKind::turn) return losses;
  const tables::RuleSet rules = without_insert_factor(facts.rules);
  for (const auto& rope : ropes_of(*facts.rigging)) {
    PointLoss loss{.lost = names_of(*facts.rigging, rope)};
    if (const auto* gap = std::get_if<NotAssessed>(&facts.load)) loss.why = gap->why;
    else if (const auto* before = std::get_if<NotAssessed>(&facts.up_before)) loss.why = before->why;
    else loss = after_loss_of(facts, rope, rules);
    losses.push_back(std::move(loss));
  }
  return losses;
}

}  // namespace firstpick::checks
