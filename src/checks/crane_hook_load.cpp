// W_hook = s (W + W_attached + adhesion by the rule set + beams and sheaves) + rigging + block
//
// s: the largest pull of the hooks of this crane along their ropes over what all hooks hold, over all load sets and
// sharings (hook_pulls.hpp); 1 with one crane. The weight of slings and shackles counts in full on each crane.
// Turn between two hooks: s of the second is its largest share over all angles; the first is compared with all
// of the piece, which it carries in the end. Each with its own rigging.
// Source   hooks, blocks, slings and all handling devices count as load: US Army TM 5-3810-305-10.

#include "checks/crane_hook_load.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "checks/hook_pulls.hpp"
#include "plan/rigging_tree.hpp"

namespace firstpick::checks {

namespace {

std::string crane_at(const StageFacts& facts, const plan::Hook* hook) {
  if (hook && !hook->crane.empty()) return hook->crane;
  return facts.stage.crane.empty() && hook ? "hook " + hook->id : facts.stage.crane;
}

// The pulls of the hooks of one crane along their ropes, over what all hooks hold: a hook that is pulled aside pulls more
// than its part of the weight.
Outcome<double> largest_share(const StageFacts& facts, const std::string& crane) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.gear_situations)) return *gap;
  double largest = 0.0;
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
    const HookPulls pulls = hook_pulls(facts, situation);
    Force on_this{};
    for (std::size_t hook = 0; hook < pulls.hooks.size(); ++hook)
      if (crane_at(facts, &facts.rigging->hooks[hook]) == crane) on_this += pulls.hooks[hook].along;
    const double share = on_this / pulls.all;
    if (!std::isfinite(share)) return NotAssessed{"the share of a crane is not a usable number", {}};
    largest = std::max(largest, share);
  }
  return largest;
}

// The second hook of a turn; one that is the first again is no crane of its own.
LiftingCrane second_crane(const StageFacts& facts, const plan::Turn& turn) {
  LiftingCrane second{turn.tail_crane.empty() ? "second hook" : turn.tail_crane, nullptr, &turn};
  const auto crane = std::ranges::find(facts.plan.cranes, turn.tail_crane, &plan::Crane::id);
  if (crane != facts.plan.cranes.end() && crane->id != facts.stage.crane) second.crane = &*crane;
  return second;
}

NotAssessed no_crane(const StageFacts& facts, const LiftingCrane& lifting) {
  if (lifting.second && lifting.id == facts.stage.crane)
    return {"both hooks of the turn are the same crane",
            "a [[crane]] of its own for each hoist, with its own rating"};
  if (lifting.second)
    return {"the crane of the second hook is not in the plan", "[stage.turn] tail_crane = \"...\""};
  if (!facts.rigging->hooks.empty())
    return {fmt::format("no crane is named for {}", lifting.id), "[[rigging.hook]] crane = \"...\""};
  return {"the stage names no crane", "[[stage]] crane = \"...\""};
}

const plan::Rigging* rigging_on(const StageFacts& facts, const LiftingCrane& lifting) {
  if (!lifting.second) return facts.rigging;
  const auto tail = std::ranges::find(facts.plan.riggings, lifting.second->tail_rigging, &plan::Rigging::id);
  return tail == facts.plan.riggings.end() ? nullptr : &*tail;
}

Outcome<double> share_of(const StageFacts& facts, const LiftingCrane& lifting) {
  if (lifting.second) {
    if (!facts.turning) return NotAssessed{how_is_missing, turn_to_write};
    if (const auto* gap = std::get_if<NotAssessed>(&*facts.turning)) return *gap;
    return std::get<TurnSweep>(*facts.turning).tail.share;
  }
  const auto cranes = cranes_of(facts);
  if (cranes.size() == 1 || cranes.back().second) return 1.0;
  return largest_share(facts, lifting.id);
}

// Of beams and sheaves.
Outcome<Force> weight_of_carriers(const plan::Rigging& rigging) {
  Force all{};
  for (const plan::Beam& beam : rigging.beams) {
    if (!beam.weight) return NotAssessed{fmt::format("the weight of beam '{}' is not in the plan", beam.id), {}};
    all += *beam.weight;
  }
  for (const plan::Sheave& sheave : rigging.sheaves) {
    if (!sheave.weight)
      return NotAssessed{fmt::format("the weight of {} '{}' is not in the plan", plan::kind_of(sheave), sheave.id), {}};
    all += *sheave.weight;
  }
  return all;
}

}  // namespace

std::vector<LiftingCrane> cranes_of(const StageFacts& facts) {
  std::vector<LiftingCrane> cranes;
  const auto add = [&](const std::string& id) {
    if (std::ranges::find(cranes, id, &LiftingCrane::id) != cranes.end()) return;
    const auto crane = std::ranges::find(facts.plan.cranes, id, &plan::Crane::id);
    cranes.push_back({id, crane == facts.plan.cranes.end() ? nullptr : &*crane, nullptr});
  };
  if (facts.rigging)
    for (const plan::Hook& hook : facts.rigging->hooks) add(crane_at(facts, &hook));
  if (cranes.empty()) add(crane_at(facts, nullptr));
  const auto& turn = facts.stage.turn;
  if (facts.stage.kind == plan::StageKind::turn && turn && turn->method == plan::TurnMethod::two_hooks)
    cranes.push_back(second_crane(facts, *turn));
  return cranes;
}

Outcome<HookLoad> hook_load(const StageFacts& facts, const LiftingCrane& lifting) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.load)) return *gap;
  if (!facts.rigging) return NotAssessed{"the stage names no rigging", "[[stage]] rigging = \"...\""};
  const plan::Rigging* rigging = rigging_on(facts, lifting);
  if (!rigging) return NotAssessed{"the second hook has no rigging", "[stage.turn] tail_rigging = \"...\""};
  if (!rigging->weight)
    return NotAssessed{fmt::format("the weight of rigging '{}' is not in the plan", rigging->id),
                       "[[rigging]] weight = \"...\": slings, shackles and rings below the hook"};
  const plan::Crane* crane = lifting.crane;
  if (!crane) return no_crane(facts, lifting);
  if (!crane->block)
    return NotAssessed{fmt::format("the weight of the hook block of crane '{}' is not in the plan", crane->id),
                       "[[crane]] block = \"...\"; \"0 lb\" where the rating is net of the block"};
  const auto carriers = weight_of_carriers(*rigging);
  if (const auto* gap = std::get_if<NotAssessed>(&carriers)) return *gap;
  const auto share = share_of(facts, lifting);
  if (const auto* gap = std::get_if<NotAssessed>(&share)) return *gap;
  return HookLoad{.share = std::get<double>(share),
                  .piece = std::get<loads::StageLoad>(facts.load).crane_load,
                  .carriers = std::get<Force>(carriers),
                  .rigging = *rigging->weight,
                  .block = *crane->block};
}

Outcome<Force> crane_hook_load(const StageFacts& facts, const LiftingCrane& lifting) {
  const auto load = hook_load(facts, lifting);
  if (const auto* gap = std::get_if<NotAssessed>(&load)) return *gap;
  return std::get<HookLoad>(load).total();
}

}  // namespace firstpick::checks
