// Weight of the parts of the form that leave with the piece.
//
//   W_att = sum of W_att_i      each at its own point; where the plan gives none, at the centre of gravity
//
// Source   statics. That formwork still attached is part of the load lifted: AS 3850.3:2021 cl. 2.5.2, read
//          in a re-hosted extract.
// Range    up to the stage `until` of the plan. A plan that does not say when a part is taken off: up to the end, and from
//          the stage after the form on the loads without it are judged beside those with it (load_sets.cpp).

#include "loads/attached.hpp"

#include <string>
#include <string_view>

#include <fmt/format.h>

#include "plan/form_state.hpp"

namespace firstpick::loads {

namespace {

bool is_finite_point(const Position& p) { return is_finite(p.x) && is_finite(p.y) && is_finite(p.z); }

std::string place_in_words(const plan::Attached& part, const Position& at) {
  return fmt::format("{} ({:.3f}, {:.3f}, {:.3f}) m",
                     part.at ? "at" : "no point given, taken at the centre of gravity", in(m, at.x),
                     in(m, at.y), in(m, at.z));
}

std::string_view in_words(plan::PartIs state) {
  switch (state) {
    case plan::PartIs::on: return "";
    case plan::PartIs::off: return ": taken off before this stage";
    case plan::PartIs::perhaps: return ": it may be off, and the loads without it are judged too";
  }
  return "";
}

}  // namespace

Outcome<AttachedParts> attached_parts(const plan::Plan& plan, const piece::Body& body, Trace& trace,
                                      const plan::Stage* stage) {
  AttachedParts parts;
  if (!plan.form || plan.form->attached.empty()) return parts;
  for (const plan::Attached& part : plan.form->attached) {
    const Position at = part.at.value_or(body.centroid);
    if (!(part.weight > Force{}) || !is_finite(part.weight))
      return NotAssessed{fmt::format("the weight of attached part '{}' is not a usable number", part.what),
                         "write its weight in [[form.attached]], above zero"};
    if (!is_finite_point(at))
      return NotAssessed{fmt::format("the point of attached part '{}' is not a usable number", part.what),
                         "write `at` in [[form.attached]]"};
    const plan::PartIs state = stage ? plan::part_in(plan, *stage, part) : plan::PartIs::on;
    const Force weight = state == plan::PartIs::off ? Force{} : part.weight;
    if (state == plan::PartIs::perhaps) parts.may_be_off.push_back(parts.loads.size());
    trace.add([&] {
      return Step{.words = fmt::format("attached part {}, {}{}", part.what, place_in_words(part, at), in_words(state)),
                  .result = {fmt::format("W_att_{}", parts.loads.size() + 1), in(kN, weight), "kN"},
                  .clause = "plan"};
    });
    parts.loads.push_back({at, weight});
  }
  parts.total = sum_of(parts.loads);
  trace.add([&] { return sum_step("weight of all attached parts", "W_att", parts.loads); });
  return parts;
}

}  // namespace firstpick::loads
