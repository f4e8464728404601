#include "checks/pulls_on_scale.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "checks/crane_hook_load.hpp"
#include "checks/insert_modes.hpp"
#include "checks/rule.hpp"
#include "demands/worst_angle.hpp"

namespace firstpick::checks {

namespace {

using demands::TurnPose;

constexpr Angle step_of_limits = 1.0 * deg;
constexpr double no_pull = 1e-6;  // of all loads: below it a hook is slack
constexpr int halvings = 14;      // of the room between what the turn needs and what is asked for

// The rules that hold a pull against what a leg, its gear or an insert may be asked for.
constexpr std::array<std::string_view, 18> of_pulls{
    "sling-overload",     "hardware-overload",    "insert-steel-tension",
    "insert-breakout",    "insert-pullout",       "insert-side-blowout",
    "insert-steel-shear", "insert-edge-breakout", "insert-pryout",
    "insert-interaction", "insert-rating",        "loop-bond",
    "loop-steel",         "loop-breakout",        "loop-edge",
    "plate-steel",        "plate-bearing",        "plate-punching"};

// One hook of a turn, asked for a pull at an angle.
class HookOfTurn {
 public:
  HookOfTurn(const StageFacts& facts, const TurnSweep& sweep, bool tail)
      : probe_(facts), legs_of_main_(sweep.piece.legs.size()), tail_(tail) {
    probe_.turning.reset();
    probe_.bending.reset();
    probe_.in_words = false;
  }

  Force pull_in(const TurnPose& pose) const { return tail_ ? pose.tail_pull : pose.main_pull; }

  // The largest use of legs, gear and inserts. Absent: a rule could not say.
  std::optional<double> use(const std::vector<TurnPose>& poses, Force pull) {
    std::vector<Situation> situations;
    for (const TurnPose& pose : poses)
      for (const demands::Sharing& sharing : pose.sharings) {
        situations.push_back({"at the limit of the pull", sharing.legs, !sharing.name.empty(), true});
        for (std::size_t leg = 0; leg < sharing.legs.size(); ++leg)
          if ((leg >= legs_of_main_) == tail_) scale(situations.back().legs[leg], pull / pull_in(pose));
      }
    probe_.gear_situations = std::move(situations);
    probe_.insert_situations = on_inserts(probe_.gear_situations, probe_.plan, probe_.rigging, probe_.body);
    probe_.modes = mode_table(probe_);
    Trace silent;
    double most = 0.0;
    for (const std::string_view id : of_pulls) {
      const auto use = largest_use(rule_named(id)->judge(probe_, silent));
      if (!use) return {};
      most = std::max(most, *use);
    }
    return most;
  }

 private:
  static void scale(demands::LegForce& leg, double factor) {
    leg.tension = factor * leg.tension;
    leg.on_insert = factor * leg.on_insert;
  }

  StageFacts probe_;
  std::size_t legs_of_main_;
  bool tail_;
};

// Between what the turn itself needs at this angle, which was found to hold, and what is asked for.
std::optional<Force> most_at(HookOfTurn& hook, const TurnPose& pose, Force needed, Force asked) {
  const auto holds = [&](Force pull) {
    const auto use = hook.use({pose}, pull);
    return use && *use <= 1.0;
  };
  if (holds(asked)) return asked;
  if (!holds(needed)) return {};
  Force low = needed, high = asked;
  for (int i = 0; i < halvings; ++i) {
    const Force middle = 0.5 * (low + high);
    (holds(middle) ? low : high) = middle;
  }
  return low;
}

// Every pose in which this hook pulls, in the order of the turn.
std::vector<TurnPose> pulling_poses(const StageFacts& facts, const TurnSweep& sweep, const HookOfTurn& hook,
                                    Force total) {
  std::vector<Angle> angles;
  for (const TurnPose& pose : sweep.poses) angles.push_back(pose.angle);
  for (const Angle& angle : demands::angles_between(sweep.low, sweep.high, step_of_limits))
    angles.push_back(angle);
  std::vector<TurnPose> poses;
  for (const Angle& angle : in_order(std::move(angles)))
    if (const auto pose = pose_at(sweep.piece, angle); is_assessed(pose))
      if (hook.pull_in(std::get<TurnPose>(pose)) > no_pull * total) poses.push_back(std::get<TurnPose>(pose));
  if (facts.stage.turn->from > facts.stage.turn->to) std::ranges::reverse(poses);
  return poses;
}

Force total_of(const TurnSweep& sweep) {
  Force total{};
  for (const loads::AppliedLoad& load : sweep.piece.loads) total += load.force;
  return total;
}

std::vector<PullBand> limits_of_turn(const StageFacts& facts, const TurnSweep& sweep, const HookLoad& load,
                                     bool tail) {
  const Force total = total_of(sweep), beside = load.rigging + load.block;
  const Force asked = (tail ? sweep.tail : sweep.main).share * load.piece;
  HookOfTurn hook(facts, sweep, tail);
  const std::vector<TurnPose> poses = pulling_poses(facts, sweep, hook, total);
  if (poses.empty() || !(asked > Force{})) return {};
  const PullBand all{facts.stage.turn->from, facts.stage.turn->to, asked + beside};
  if (const auto use = hook.use(poses, asked); use && *use <= 1.0) return {all};

  std::vector<PullBand> bands;
  Force needed_in_band{};
  for (const TurnPose& pose : poses) {
    const Force needed = (hook.pull_in(pose) / total) * load.piece;
    const auto most = most_at(hook, pose, std::min(needed, asked), asked);
    if (!most) return {};
    if (!bands.empty()) {  // one number for both, if it stops neither
      const Force both = std::min(bands.back().most, *most), needs = std::max(needed_in_band, needed);
      if (both >= needs) {
        bands.back() = {bands.back().from, pose.angle, both};
        needed_in_band = needs;
        continue;
      }
    }
    bands.push_back({bands.empty() ? all.from : pose.angle, pose.angle, *most});
    if (bands.size() > 1) bands[bands.size() - 2].to = pose.angle;
    needed_in_band = needed;
  }
  bands.back().to = all.to;
  for (PullBand& band : bands) band.most = band.most + beside;
  return bands;
}

std::vector<TurnMoment> moments_of(const StageFacts& facts, const TurnSweep& sweep,
                                   const loads::StageLoad& stage) {
  const plan::Turn& turn = *facts.stage.turn;
  const Force total = total_of(sweep), moved = stage.weight + stage.attached;
  std::vector<TurnMoment> moments;
  for (const Angle& angle : {turn.from, turn.table_angle.value_or(0.5 * (turn.from + turn.to)), turn.to}) {
    TurnMoment& moment = moments.emplace_back();
    moment.angle = angle;
    moment.up = demands::up_at(sweep.piece.frame, angle);
    moment.level = demands::level_at(sweep.piece.frame, angle);
    if (angle >= sweep.low && angle <= sweep.high) {
      const auto found = pose_at(sweep.piece, angle);
      if (!is_assessed(found)) return {};
      const auto& pose = std::get<TurnPose>(found);
      moment.held = !pose.slack;
      moment.hook = pose.hook;
      moment.tail_hook = pose.tail_hook;
      for (const LiftingCrane& crane : cranes_of(facts)) {
        const auto load = hook_load(facts, crane);
        if (!is_assessed(load)) continue;
        const auto& on = std::get<HookLoad>(load);
        const double share = (crane.second ? pose.tail_pull : pose.main_pull) / total;
        (crane.second ? moment.tail_reading : moment.reading) = share * moved + on.rigging + on.block;
      }
    }
  }
  return moments;
}

}  // namespace

std::optional<double> largest_use(const std::vector<Finding>& findings) {
  double most = 0.0;
  for (const Finding& finding : findings) {
    if (finding.result == Result::missing) return {};
    if (!finding.utilization) continue;
    if (!(*finding.utilization >= 0.0)) return {};
    most = std::max(most, *finding.utilization);
  }
  return most;
}

PullsOnScale pulls_on_scale(const plan::Plan& plan, const piece::Body& body, std::size_t at,
                            const tables::RuleSet& rules, const tables::Tables& tables) {
  const plan::Stage& stage = plan.stages.at(at);
  if (stage.kind != plan::StageKind::turn || !stage.turn) return {};
  Trace silent;
  const Anchorage anchored = anchorage(plan, body, rules, tables, silent);
  const StageFacts facts = stage_facts(plan, stage, body, anchored, rules, tables, silent);
  const auto* sweep = std::get_if<TurnSweep>(&facts.turning.value());
  if (!sweep) return {};

  const auto& load = std::get<loads::StageLoad>(facts.load);
  PullsOnScale pulls{.cranes = {}, .moments = moments_of(facts, *sweep, load)};
  for (const LiftingCrane& crane : cranes_of(facts)) {
    CranePull& pull = pulls.cranes.emplace_back();
    pull.id = crane.id;
    if (const auto found = hook_load(facts, crane); is_assessed(found)) {
      const auto& on = std::get<HookLoad>(found);
      const double share = (crane.second ? sweep->tail : sweep->main).share;
      pull.reading = share * (load.weight + load.attached) + on.rigging + on.block;
      pull.limits = limits_of_turn(facts, *sweep, on, crane.second != nullptr);
    }
  }
  return pulls;
}

}  // namespace firstpick::checks
