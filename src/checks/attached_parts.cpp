// What leaves the form with the piece is known before the first pull.
//
// Source   form parts still attached are part of the load: AS 3850.3:2021 2.5.2. A pallet that was not hooked
//          on fell as it was freed (docs/rules/attached-parts.md).
// Absent   in the stage that brings the piece out of its form: HOLD. Written as attached = []: nothing leaves with it.
//          Parts listed: a note. A part without its place: HOLD, for it moves the centre of gravity.
//          Later stages: passes; a note where parts may be off by then (loads/attached.cpp).

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "plan/form_state.hpp"

namespace firstpick::checks {

std::vector<Finding> attached_parts(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "attached-parts";
  const std::string& mark = facts.plan.piece.mark;
  const auto& form = facts.plan.form;
  if (form)
    for (const plan::Attached& part : form->attached)
      if (!part.at && plan::part_in(facts.plan, facts.stage, part) != plan::PartIs::off)
        return {missing(id, mark, fmt::format("where {} sits on the piece is not in the plan", part.what),
                        "[[form.attached]] at = [x, y, z]: it moves the centre of gravity")};
  if (!plan::comes_out_of_form(facts.plan, facts.stage)) {
    if (!plan::parts_may_be_off(facts.plan, facts.stage)) return {passed(id, mark)};
    return {noted(id, mark, "judged with and without the form parts: the plan does not say when they are taken off "
                            "([[form.attached]] until)")};
  }
  if (form && form->attached.empty() && form->nothing_attached) return {passed(id, mark)};
  if (!form || form->attached.empty())
    return {missing(id, mark, "whether form parts leave the form with the piece is not in the plan",
                    "[[form.attached]] what, weight for each; in [form] attached = [] where there are none")};
  std::string parts;
  for (const plan::Attached& part : form->attached) parts += (parts.empty() ? "" : ", ") + part.what;
  return {noted(
      id, mark,
      fmt::format("the piece takes along {}: hook on and take up the load before anything is freed", parts))};
}

}  // namespace firstpick::checks
