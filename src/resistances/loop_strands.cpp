// Several strands in one loop hold less than each alone; less again over a hook, or where they do not lie level.
//
//   k = m_n k_o k_h
//
// Source   tests of loops of 0.6 in strand (tables/loops.toml): m_n for 2, 3 and 4 strands, k_h over a hook, k_o where
//          one strand stands 1 in higher than another. Taken to multiply: no source says how they act together.
// Absent   the number of strands; with more than one, whether they lie level: not assessed.

#include "resistances/loop_strands.hpp"

#include <fmt/format.h>

#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

struct StrandFactors {
  Ratio m_n{1.0}, k_o{1.0}, k_h{1.0};
  std::vector<Source> sources{};
};

Outcome<StrandFactors> of_strands(const plan::Insert& insert, const plan::Loop& loop, const tables::LoopModel& model) {
  StrandFactors f;
  if (*loop.strands == 1) return f;
  const auto many = model.strands.find(*loop.strands);
  if (many == model.strands.end())
    return NotAssessed{fmt::format("no test of a loop of {} strands is in the tables", *loop.strands),
                       "fewer strands in one loop, and more loops"};
  f.m_n = many->second.value;
  f.sources.push_back(many->second.source);
  if (!loop.offset)
    return NotAssessed{fmt::format("whether the strands of loop {} lie level is not in the plan", insert.id),
                       "loop = { offset = \"0 in\" } where somebody has looked that no strand stands higher"};
  if (!is_finite(*loop.offset) || *loop.offset < Length{})
    return NotAssessed{fmt::format("the offset of the strands of loop {} is not a usable number", insert.id), {}};
  if (*loop.offset > Length{}) {
    if (*loop.offset > model.offset_tested.value)
      return NotAssessed{fmt::format("the strands of loop {} differ more in height than in any test", insert.id),
                         "strands that lie level"};
    f.k_o = model.offset_factor.value;
    f.sources.push_back(model.offset_factor.source);
    f.sources.push_back(model.offset_tested.source);
  }
  return f;
}

}  // namespace

Outcome<Ratio> strand_multiplier(const plan::Insert& insert, LoopGrip grip, const tables::LoopModel& model, Trace& trace) {
  const plan::Loop loop = insert.loop.value_or(plan::Loop{});
  if (!loop.strands)
    return NotAssessed{fmt::format("how many strands loop {} has is not in the plan", insert.id),
                       "[[insert]] loop = { strands = 1 }"};
  auto factors = of_strands(insert, loop, model);
  if (const auto* gap = std::get_if<NotAssessed>(&factors)) return *gap;
  StrandFactors& f = std::get<StrandFactors>(factors);
  if (grip == LoopGrip::hook) {
    f.k_h = model.hook_factor.value;
    f.sources.push_back(model.hook_factor.source);
  }
  const Ratio k = f.m_n * f.k_o * f.k_h;
  if (!is_usable(k)) return NotAssessed{"the reduction for the strands of a loop is not a usable number", {}};
  trace.add([&] {
    return Step{.words = fmt::format("what {} strand{} of loop {} hold{} over one on a thick pin", *loop.strands,
                                     *loop.strands == 1 ? "" : "s", insert.id, *loop.strands == 1 ? "s" : ""),
                .result = {"k", k.value(), "1"},
                .formula = "m_n * k_o * k_h",
                .given = {{"m_n", f.m_n.value(), "1"}, {"k_o", f.k_o.value(), "1"}, {"k_h", f.k_h.value(), "1"}},
                .clause = "tests of loops of strand",
                .sources = f.sources};
  });
  return k;
}

Outcome<LoopGrip> strand_grip(const plan::Insert& insert, bool over_hook, const tables::LoopModel& model, Trace& trace) {
  if (over_hook) return LoopGrip::hook;
  const auto pin = insert.loop ? insert.loop->pin : std::optional<Length>{};
  if (!pin)
    return NotAssessed{fmt::format("what goes through loop {} is no hook, and its diameter is not in the plan", insert.id),
                       "[[insert]] loop = { pin = \"...\" }, or a hook"};
  trace.add([&] {
    return Step{.words = fmt::format("pin through loop {}, against that of the tests", insert.id),
                .result = {"d_p", in(mm, *pin), "mm"},
                .clause = model.pin_tested.source.locator,
                .sources = {model.pin_tested.source}};
  });
  if (!is_usable(*pin) || *pin < model.pin_tested.value)
    return NotAssessed{fmt::format("the pin through loop {} is thinner than in the tests of strand", insert.id),
                       "a thicker pin, or a hook"};
  return LoopGrip::pin;
}

}  // namespace firstpick::resistances
