#include "plan/form_state.hpp"

#include <algorithm>

namespace firstpick::plan {

namespace {

bool is_first(const Plan& plan, const Stage& stage) { return !plan.stages.empty() && &plan.stages.front() == &stage; }

bool released(const Plan& plan) { return plan.form && plan.form->released; }

}  // namespace

bool comes_out_of_form(const Plan& plan, const Stage& stage) {
  return stage.kind == StageKind::strip || (is_first(plan, stage) && !released(plan));
}

PartIs part_in(const Plan& plan, const Stage& stage, const Attached& part) {
  if (!part.until) return comes_out_of_form(plan, stage) ? PartIs::on : PartIs::perhaps;
  bool passed = false;  // the stage in question, going backwards to the last one of that kind
  for (auto each = plan.stages.rbegin(); each != plan.stages.rend(); ++each) {
    if (each->kind == *part.until) return PartIs::on;
    passed = passed || &*each == &stage;
    if (passed) return PartIs::off;
  }
  return PartIs::perhaps;  // a stage or a kind that the plan does not have
}

bool parts_may_be_off(const Plan& plan, const Stage& stage) {
  return plan.form && std::ranges::any_of(plan.form->attached, [&](const Attached& part) {
    return part_in(plan, stage, part) == PartIs::perhaps;
  });
}

}  // namespace firstpick::plan
