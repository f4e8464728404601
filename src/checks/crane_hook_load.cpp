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

const std::string& crane_at(const StageFacts& facts, const plan::Leg& leg) {
  const plan::Hook* hook = plan::hook_named(*facts.rigging, leg.from);
  return hook && !hook->crane.empty() ? hook->crane : facts.stage.crane;
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
      if (crane_at(facts, leg) == crane) on_this += pull;
    }
    const double share = on_this / on_all;
    if (!std::isfinite(share)) return NotAssessed{"the share of a crane is not a usable number", {}};
    largest = std::max(largest, share);
  }
  return std::min(1.0, largest);
}

}  // namespace

std::vector<const plan::Crane*> cranes_of(const StageFacts& facts) {
  std::vector<const plan::Crane*> cranes;
  const auto add = [&](const std::string& id) {
    const auto crane = std::ranges::find(facts.plan.cranes, id, &plan::Crane::id);
    if (crane != facts.plan.cranes.end() && std::ranges::find(cranes, &*crane) == cranes.end())
      cranes.push_back(&*crane);
  };
  if (facts.rigging)
    for (const plan::Hook& hook : facts.rigging->hooks) add(hook.crane.empty() ? facts.stage.crane : hook.crane);
  if (cranes.empty()) add(facts.stage.crane);
  return cranes;
}

Outcome<Force> crane_hook_load(const StageFacts& facts, const plan::Crane* crane) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.load)) return *gap;
  if (!facts.rigging) return NotAssessed{"the stage names no rigging", "[[stage]] rigging = \"...\""};
  if (!facts.rigging->weight)
    return NotAssessed{fmt::format("the weight of rigging '{}' is not in the plan", facts.rigging->id),
                       "[[rigging]] weight = \"...\": slings, shackles and rings below the hook"};
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
    const auto share = largest_share(facts, crane->id);
    if (const auto* gap = std::get_if<NotAssessed>(&share)) return *gap;
    below *= std::get<double>(share);
  }
  return Force{below + *facts.rigging->weight + *crane->block};
}

Outcome<Force> crane_hook_load(const StageFacts& facts) {
  const auto cranes = cranes_of(facts);
  if (cranes.size() < 2) return crane_hook_load(facts, cranes.empty() ? nullptr : cranes.front());
  Force all{};
  for (const plan::Crane* crane : cranes) {
    const auto one = crane_hook_load(facts, crane);
    if (const auto* gap = std::get_if<NotAssessed>(&one)) return *gap;
    all += std::get<Force>(one);
  }
  return all;
}

}  // namespace firstpick::checks
