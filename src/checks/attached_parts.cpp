// What leaves the form with the piece is known before the first pull.
//
// Source   form parts still attached are part of the load: AS 3850.3:2021 2.5.2. A pallet that was not hooked
//          on fell as it was freed (docs/rules/attached-parts.md).
// Absent   in the stage strip: HOLD. Written as attached = []: nothing leaves with it. Parts listed: a note.
//          Other stages: passes; what is attached is carried to the end (loads/attached.cpp).

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> attached_parts(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "attached-parts";
  const std::string& mark = facts.plan.piece.mark;
  if (facts.stage.kind != plan::StageKind::strip) return {passed(id, mark)};
  const auto& form = facts.plan.form;
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
