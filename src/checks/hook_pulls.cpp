#include "checks/hook_pulls.hpp"

#include <cmath>

namespace firstpick::checks {

HookPulls hook_pulls(const StageFacts& facts, const Situation& situation) {
  HookPulls pulls;
  std::vector<ForceVector> held;
  ForceVector sum;
  for (const plan::Hook& hook : facts.rigging->hooks) {
    ForceVector one;
    for (std::size_t leg = 0; leg < facts.rigging->legs.size(); ++leg)
      if (facts.rigging->legs[leg].from == hook.id) one = one + situation.legs.at(leg).on_insert;
    held.push_back(one);
    sum = sum + one;
    pulls.hooks.push_back({hook.id, norm(one), {}});
  }
  pulls.all = norm(sum);
  if (!(pulls.all > Force{})) {
    for (HookPull& pull : pulls.hooks) pull.off_plumb = std::nan("") * radian;
    return pulls;
  }
  const Direction up{sum.x / pulls.all, sum.y / pulls.all, sum.z / pulls.all};
  for (std::size_t hook = 0; hook < held.size(); ++hook) {
    const Force along_up = dot(up, held[hook]);
    const ForceVector aside = held[hook] - up * along_up;
    if (pulls.hooks[hook].along != Force{})
      pulls.hooks[hook].off_plumb = std::atan2(norm(aside).value(), along_up.value()) * radian;
  }
  return pulls;
}

}  // namespace firstpick::checks
