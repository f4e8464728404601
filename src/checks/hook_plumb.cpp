// Two hooks or more do not pull each other aside.
//
//   delta_h <= limit        delta_h: how far the pull of a hook is from plumb, hook_pulls.hpp, over all load sets
//
// A hook hangs on a rope. It gives way to a level pull until its rope leans as far as the pull does, the crane is pulled
// sideways, and the piece hangs otherwise than computed with hooks that stay where the plan puts them. Within the limit
// that is left out.
// Source   statics; "hook_side_pull" of the rule set, a choice. That a crane is rated for a freely hanging load and that
//          side load on a boom is extremely dangerous: US Army TM 5-3810-305-10 (read).
// Passes with one hook, which hangs plumb over what it carries; in turns, where the hooks stand plumb over their legs.
// Missing  the statics are not assessed.

#include <fmt/format.h>

#include "checks/hook_pulls.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

struct Leaning {
  HookPull pull;
  std::string situation;
};

std::optional<Leaning> farthest_off(const StageFacts& facts) {
  std::optional<Leaning> worst;
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations))
    for (const HookPull& pull : hook_pulls(facts, situation).hooks)
      if (!worst || (is_finite(worst->pull.off_plumb) && !(pull.off_plumb <= worst->pull.off_plumb)))
        worst = Leaning{pull, situation.name};  // what is not a number stays
  return worst;
}

}  // namespace

std::vector<Finding> hook_plumb(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "hook-plumb";
  const std::string& subject = facts.stage.rigging;
  if (!facts.rigging) return {missing(id, subject, "the stage names no rigging", "[[stage]] rigging = \"...\"")};
  if (facts.stage.kind == plan::StageKind::turn || facts.rigging->hooks.size() < 2) return {passed(id, subject)};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.gear_situations))
    return {missing(id, subject, gap->why, gap->remedy)};
  const auto worst = farthest_off(facts);
  if (!worst) return {missing(id, subject, "what the hooks hold is not known", {})};

  const auto& limit = facts.rules.hook_side_pull;
  const UnitSystem units = facts.plan.piece.units;
  trace.add([&] {
    return Step{.words = fmt::format("pull of hook {} out of plumb, {}", worst->pull.hook, worst->situation),
                .result = {"delta_h", in(deg, worst->pull.off_plumb), "deg"},
                .clause = "statics",
                .sources = {limit.source}};
  });
  Finding finding = compared<Angle>(id, subject, Demand<Angle>{worst->pull.off_plumb}, Resistance<Angle>{limit.value}, 1.0,
                                    "rule set " + facts.rules.id);
  finding.situation = worst->situation;
  if (finding.result == Result::fail) {
    finding.text = fmt::format("hook {} is pulled {} out of plumb, {} is the most: a hook on its rope swings to where it "
                               "is not, and the crane is pulled sideways", worst->pull.hook,
                               print(worst->pull.off_plumb, units, Rounding::up), print(limit.value, units, Rounding::down));
    finding.remedy = "each hook plumb over its own picks, or a beam between the hooks and the piece";
  }
  return {finding};
}

}  // namespace firstpick::checks
