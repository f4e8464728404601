// A lift that is critical whatever the crane's rating has a written plan.
//
// Source   BC OHSR 14.1: the centre of gravity of the load, or the length of a sling leg, changes during the
//          lift, or it is made over a live power line; USACE EM 385-1-1: more than one crane, a load out of the operator's
//          view, an operator who calls it critical. Legs over a sheave settle as the load is taken up, and are not counted
//          in a straight lift. Shares of the crane's rating: rule crane-thresholds.
// Absent   critical_lift_plan of such a lift: HOLD. load_in_view, clear_of_power_lines, operator_agrees, where there is no
//          written plan: HOLD.

#include <array>

#include "checks/crane_hook_load.hpp"
#include "checks/rule.hpp"
#include "checks/stated_text.hpp"

namespace firstpick::checks {

namespace {

struct SeenBeforeTheLift {
  std::optional<bool> plan::Stage::* fact;
  const char* where_false;
  const char* where_absent;
  const char* key;
};

constexpr std::array seen_before_the_lift{
    SeenBeforeTheLift{&plan::Stage::load_in_view, "the piece goes out of the operator's view",
                      "nobody has said whether the operator sees the piece all the way", "[[stage]] load_in_view = true"},
    SeenBeforeTheLift{&plan::Stage::clear_of_power_lines, "a live power line is within reach",
                      "nobody has said whether a live power line is within reach", "[[stage]] clear_of_power_lines = true"},
    SeenBeforeTheLift{&plan::Stage::operator_agrees, "the operator calls the lift critical",
                      "nobody has asked the operator whether the lift is critical", "[[stage]] operator_agrees = true"}};

}  // namespace

std::vector<Finding> critical_lift(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "critical-lift";
  constexpr const char* number_of_plan = "[[stage]] critical_lift_plan = \"...\": its number";
  const std::string& mark = facts.plan.piece.mark;
  if (is_stated(facts.stage.critical_lift_plan)) return {passed(id, mark)};
  if (facts.stage.kind == plan::StageKind::turn)
    return {missing(id, mark, "turning the piece is a critical lift, and no written plan of it is named", number_of_plan)};
  if (cranes_of(facts).size() > 1)
    return {missing(id, mark, "two cranes or hoists lift together, and no written plan of it is named", number_of_plan)};
  for (const SeenBeforeTheLift& seen : seen_before_the_lift)
    if (facts.stage.*seen.fact == false)
      return {missing(id, mark, std::string(seen.where_false) + ", and no written plan of the lift is named", number_of_plan)};
  std::string absent, keys;
  for (const SeenBeforeTheLift& seen : seen_before_the_lift)
    if (!(facts.stage.*seen.fact)) {
      absent += (absent.empty() ? "" : "; ") + std::string(seen.where_absent);
      keys += (keys.empty() ? "" : ", ") + std::string(seen.key).substr(keys.empty() ? 0 : std::string_view("[[stage]] ").size());
    }
  if (!absent.empty()) return {missing(id, mark, absent, keys)};
  return {passed(id, mark)};
}

}  // namespace firstpick::checks
