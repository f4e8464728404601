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
  if (finding.demand && finding.nominal && std::holds_alternative<Force>(*finding.demand))
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
      loss.when = finding.situation;
    }
  if (!loss.use) loss.why = "nothing that is left is held against what breaks it";
}

StageFacts facts_after(const StageFacts& facts, const std::shared_ptr<const plan::Rigging>& left,
                       const tables::RuleSet& rules, std::vector<Situation> situations) {
  StageFacts after{.plan = facts.plan,
                   .stage = facts.stage,
                   .rigging = left.get(),
                   .crane = facts.crane,
                   .body = facts.body,
                   .tables = facts.tables,
                   .rules = rules,
                   .anchorage = facts.anchorage,
                   .load = facts.load,
                   .hung = NotAssessed{},
                   .hanging = NotAssessed{},
                   .insert_situations = NotAssessed{},
                   .gear_situations = std::move(situations),
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
  return after;
}

// The legs of one hook of a turn after those of a rope, which are indices from `first` on, have let go.
void let_go(const std::vector<std::size_t>& rope, std::size_t first, std::vector<demands::HungLeg>& legs,
            std::vector<std::vector<std::size_t>>& equalised) {
  const auto gone = [&](std::size_t leg) { return std::ranges::find(rope, first + leg) != rope.end(); };
  std::vector<std::size_t> place(legs.size());
  std::vector<demands::HungLeg> left;
  for (std::size_t leg = 0; leg < legs.size(); ++leg) {
    place[leg] = left.size();
    if (!gone(leg)) left.push_back(legs[leg]);
  }
  std::erase_if(equalised, [&](const auto& group) { return !group.empty() && gone(group.front()); });
  for (auto& group : equalised)
    for (std::size_t& leg : group) leg = place.at(leg);
  legs = std::move(left);
}

// In a turn the piece stays at its angle, on its edge and its hooks, at every angle of the sweep.
PointLoss after_loss_in_turn(const StageFacts& facts, const TurnSweep& sweep, const std::vector<std::size_t>& rope,
                             const tables::RuleSet& rules) {
  PointLoss loss{.lost = names_of(*facts.rigging, rope)};
  demands::TurnedPiece piece = sweep.piece;
  const std::size_t of_main = piece.legs.size();
  let_go(rope, 0, piece.legs, piece.equalised);
  let_go(rope, of_main, piece.tail_legs, piece.tail_equalised);
  const std::size_t left_there = rope.front() < of_main ? piece.legs.size() : piece.tail_legs.size();
  if (left_there < 2) {
    loss.why = left_there == 0 ? "nothing else holds the piece on that hook: it falls"
                               : "the piece falls: one pick that is left does not hold it as it turns";
    return loss;
  }
  const auto& load = std::get<loads::StageLoad>(facts.load);
  const Ratio step = std::max(rules.loss_step_factor.value, load.dynamic_factor) / load.dynamic_factor;
  auto left = std::make_shared<const plan::Rigging>(rigging_without(*facts.rigging, rope));
  std::vector<Situation> situations;
  for (const demands::TurnPose& before : sweep.poses) {
    if (before.slack) continue;
    const std::string at = fmt::format("turned to {}", print(before.angle, facts.plan.piece.units));
    const auto pose = pose_at(piece, before.angle);
    if (const auto* gap = std::get_if<NotAssessed>(&pose)) {
      loss.why = "the piece is not held: " + gap->why;
      return loss;
    }
    for (demands::Sharing sharing : std::get<demands::TurnPose>(pose).sharings) {
      for (demands::LegForce& leg : sharing.legs) {
        leg.tension = step * leg.tension;
        leg.on_insert = step.value() * leg.on_insert;
      }
      situations.push_back({at, std::move(sharing.legs), !sharing.name.empty(), true});
    }
  }
  if (situations.empty() || situations.front().legs.size() != left->legs.size()) {
    loss.why = "what the others carry is not known";
    return loss;
  }
  judge(facts_after(facts, left, rules, std::move(situations)), loss);
  return loss;
}

PointLoss after_loss_of(const StageFacts& facts, const std::vector<std::size_t>& rope, const tables::RuleSet& rules) {
  PointLoss loss{.lost = names_of(*facts.rigging, rope)};
  const auto& load = std::get<loads::StageLoad>(facts.load);
  auto left = std::make_shared<const plan::Rigging>(rigging_without(*facts.rigging, rope));
  if (left->legs.empty()) {
    loss.why = "nothing else holds the piece";
    return loss;
  }
  const auto& upright = std::get<Direction>(facts.turning ? facts.up_after : facts.up_before);  // a table hangs it upright
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
  StageFacts after = facts_after(facts, left, rules, std::get<Shared>(hung).situations);
  after.hung = std::get<Shared>(hung).hung;
  after.hanging = std::get<Shared>(hung).hanging;
  judge(after, loss);
  loss.when.clear();
  return loss;
}

}  // namespace

std::vector<PointLoss> lost_points(const StageFacts& facts) {
  std::vector<PointLoss> losses;
  if (!facts.rigging) return losses;
  const tables::RuleSet rules = without_insert_factor(facts.rules);
  const auto* turning = facts.turning ? std::get_if<TurnSweep>(&*facts.turning) : nullptr;
  for (const auto& rope : ropes_of(*facts.rigging)) {
    PointLoss loss{.lost = names_of(*facts.rigging, rope)};
    const auto& up = facts.turning ? facts.up_after : facts.up_before;
    if (facts.stage.kind == plan::StageKind::turn && !turning) {
      loss.rule = "stage-evaluated";  // which tells why
      loss.why = "the turn is not assessed";
    } else if (const auto* gap = std::get_if<NotAssessed>(&facts.load)) loss.why = gap->why;
    else if (const auto* unknown = std::get_if<NotAssessed>(&up)) loss.why = unknown->why;
    else if (turning && turning->piece.method != plan::TurnMethod::table)
      loss = after_loss_in_turn(facts, *turning, rope, rules);
    else loss = after_loss_of(facts, rope, rules);
    losses.push_back(std::move(loss));
  }
  return losses;
}

}  // namespace firstpick::checks
