// W_hook = s (W + W_attached + adhesion by the rule set + beams and sheaves) + rigging + block
//
// s: the largest share that the hooks of this crane have of the vertical pull of all hooks, over all load sets
// and sharings; 1 with one crane. The weight of slings and shackles counts in full on each crane.
// Source   hooks, blocks, slings and all handling devices count as load: US Army TM 5-3810-305-10.

#include "checks/crane_hook_load.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "plan/rigging_tree.hpp"

namespace firstpick::checks {

namespace {

std::string crane_at(const StageFacts& facts, const plan::Hook* hook) {
  if (hook && !hook->crane.empty()) return hook->crane;
  return facts.stage.crane.empty() && hook ? "hook " + hook->id : facts.stage.crane;
}

bool hangs_on_a_hook(const StageFacts& facts, const plan::Leg& leg) {
  return leg.from.empty() || plan::hook_named(*facts.rigging, leg.from);
}

// Vertical pull of a leg at its upper end.
Force vertical(const demands::LegForce& leg) {
  return leg.tension * std::sin(in(radian, leg.angle_from_horizontal));
}

Outcome<double> largest_share(const StageFacts& facts, const std::string& crane) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.gear_situations)) return *gap;
  double largest = 0.0;
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
    Force on_this{}, on_all{};
    for (std::size_t i = 0; i < facts.rigging->legs.size(); ++i) {
      const plan::Leg& leg = facts.rigging->legs[i];
      if (!hangs_on_a_hook(facts, leg)) continue;
      const Force pull = vertical(situation.legs.at(i));
      on_all += pull;
      if (crane_at(facts, plan::hook_named(*facts.rigging, leg.from)) == crane) on_this += pull;
    }
    const double share = on_this / on_all;
    if (!std::isfinite(share)) return NotAssessed{"the share of a crane is not a usable number", {}};
    largest = std::max(largest, share);
  }
  return std::min(1.0, largest);
}

}  // namespace

std::vector<LiftingCrane> cranes_of(const StageFacts& facts) {
  std::vector<LiftingCrane> cranes;
  const auto add = [&](const std::string& id) {
    if (std::ranges::find(cranes, id, &LiftingCrane::id) != cranes.end()) return;
    const auto crane = std::ranges::find(facts.plan.cranes, id, &plan::Crane::id);
    cranes.push_back({id, crane == facts.plan.cranes.end() ? nullptr : &*crane});
  };
  if (facts.rigging)
    for (const plan::Hook& hook : facts.rigging->hooks) add(crane_at(facts, &hook));
  if (cranes.empty()) add(crane_at(facts, nullptr));
  return cranes;
}

Outcome<Force> crane_hook_load(const StageFacts& facts, const LiftingCrane& lifting) {
  const plan::Crane* crane = lifting.crane;
  if (const auto* gap = std::get_if<NotAssessed>(&facts.load)) return *gap;
  if (!facts.rigging) return NotAssessed{"the stage names no rigging", "[[stage]] rigging = \"...\""};
  if (!facts.rigging->weight)
    return NotAssessed{fmt::format("the weight of rigging '{}' is not in the plan", facts.rigging->id),
                       "[[rigging]] weight = \"...\": slings, shackles and rings below the hook"};
  if (!crane && !facts.rigging->hooks.empty())
    return NotAssessed{fmt::format("no crane is named for {}", lifting.id), "[[rigging.hook]] crane = \"...\""};
  if (!crane) return NotAssessed{"the stage names no crane", "[[stage]] crane = \"...\""};
  if (!crane->block)
    return NotAssessed{fmt::format("the weight of the hook block of crane '{}' is not in the plan", crane->id),
                       "[[crane]] block = \"...\"; \"0 lb\" where the rating is net of the block"};
  Force below{std::get<loads::StageLoad>(facts.load).crane_load};
  for (const plan::Beam& beam : facts.rigging->beams) {
    if (!beam.weight) return NotAssessed{fmt::format("the weight of beam '{}' is not in the plan", beam.id), {}};
    below += *beam.weight;
  }
  for (const plan::Sheave& sheave : facts.rigging->sheaves) {
    if (!sheave.weight) return NotAssessed{fmt::format("the weight of sheave '{}' is not in the plan", sheave.id), {}};
    below += *sheave.weight;
  }
  if (cranes_of(facts).size() > 1) {
    const auto share = largest_share(facts, lifting.id);
    if (const auto* gap = std::get_if<NotAssessed>(&share)) return *gap;
    below *= std::get<double>(share);
  }
  return Force{below + *facts.rigging->weight + *crane->block};
}

}  // namespace firstpick::checks
