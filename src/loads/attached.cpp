// Weight of the parts of the form that leave with the piece.
//
//   W_att = sum of W_att_i      each at its own point; where the plan gives none, at the centre of gravity
//
// Source   statics. That formwork still attached is part of the load lifted: AS 3850.3:2021 cl. 2.5.2, read
//          in a re-hosted extract.
// Range    the strip stage: [form] describes what is there when the piece leaves its form. In a later stage
//          its parts are not counted, and a step says so.

#include "loads/attached.hpp"

#include <string>

#include <fmt/format.h>

namespace firstpick::loads {

namespace {

bool is_finite_point(const Position& p) { return is_finite(p.x) && is_finite(p.y) && is_finite(p.z); }

std::string place_in_words(const plan::Attached& part, const Position& at) {
  return fmt::format("{} ({:.3f}, {:.3f}, {:.3f}) m",
                     part.at ? "at" : "no point given, taken at the centre of gravity", in(m, at.x),
                     in(m, at.y), in(m, at.z));
}

std::string symbol(std::size_t index) { return fmt::format("W_att_{}", index + 1); }

Step sum_of(const AttachedParts& parts) {
  Step step{.words = "weight of all attached parts",
            .result = {"W_att", in(kN, parts.total), "kN"},
            .clause = "statics"};
  for (std::size_t i = 0; i < parts.loads.size(); ++i) {
    step.formula += (i == 0 ? "" : " + ") + symbol(i);
    step.given.push_back({symbol(i), in(kN, parts.loads[i].force), "kN"});
  }
  return step;
}

}  // namespace

Outcome<AttachedParts> attached_parts(const plan::Plan& plan, const plan::Stage& stage,
                                      const piece::Body& body, Trace& trace) {
  AttachedParts parts;
  if (!plan.form || plan.form->attached.empty()) return parts;
  if (stage.kind != plan::StageKind::strip) {
    trace.add([&] {
      return Step{.words = "attached parts of [form] are counted in the strip stage only",
                  .result = {"W_att", 0.0, "kN"},
                  .clause = "firstpick, stage-load"};
    });
    return parts;
  }

  for (const plan::Attached& part : plan.form->attached) {
    const Position at = part.at.value_or(body.centroid);
    if (!(part.weight > Force{}) || !is_finite(part.weight))
      return NotAssessed{fmt::format("the weight of attached part '{}' is not a usable number", part.what),
                         "write its weight in [[form.attached]], above zero"};
    if (!is_finite_point(at))
      return NotAssessed{fmt::format("the point of attached part '{}' is not a usable number", part.what),
                         "write `at` in [[form.attached]]"};
    trace.add([&] {
      return Step{.words = fmt::format("attached part {}, {}", part.what, place_in_words(part, at)),
                  .result = {symbol(parts.loads.size()), in(kN, part.weight), "kN"},
                  .clause = "plan"};
    });
    parts.loads.push_back({at, part.weight});
    parts.total += part.weight;
  }
  trace.add([&] { return sum_of(parts); });
  return parts;
}

}  // namespace firstpick::loads
