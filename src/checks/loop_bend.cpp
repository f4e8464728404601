// A loop is not bent more sharply than its material stands.
//
//   bar      inside radius of every bend >= r_b d
//   strand   over a hook, or a pin at least as thick as in the tests
//
// Source   tables/loops.toml (docs/rules/loop-bend.md).
// Absent   bend_radius and diameter of a bar; hardware, or the pin, of strand: HOLD. A pin thinner than was tested: HOLD.
// Note     a hook: it takes its share off bond and steel of strand. Wire rope: its supplier's declaration.

#include "checks/loop_pull.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

Finding bend_of_bar(std::string_view id, const StageFacts& facts, const plan::Insert& insert, Trace& trace) {
  if (!insert.loop || !insert.loop->bend_radius || !insert.loop->diameter)
    return missing(id, insert.id, "the smallest inside radius of the bar's bends, or its diameter, is not in the plan",
                   "[[insert]] loop = { bend_radius = \"...\", diameter = \"...\" }");
  const auto& r_b = facts.tables.loops->bar_bend;
  const Length least = r_b.value * *insert.loop->diameter;
  trace.add([&] {
    return Step{.words = fmt::format("least inside radius of a bend of loop {}", insert.id),
                .result = {"r_least", in(mm, least), "mm"},
                .formula = "r_b * d",
                .given = {{"r_b", r_b.value.value(), "1"}, {"d", in(mm, *insert.loop->diameter), "mm"}},
                .clause = r_b.source.locator,
                .sources = {r_b.source}};
  });
  Finding finding = compared<Length>(id, insert.id, Demand<Length>{least}, Resistance<Length>{*insert.loop->bend_radius}, 1.0,
                                     citation(r_b.source));
  if (finding.result == Result::fail) {
    const UnitSystem units = facts.plan.piece.units;
    finding.text = fmt::format("loop {} is bent to {}, its bar stands {}", insert.id,
                               firstpick::print(*insert.loop->bend_radius, units, Rounding::down),
                               firstpick::print(least, units, Rounding::up));
    finding.remedy = "a loop bent over a thicker mandrel";
  }
  return finding;
}

}  // namespace

std::vector<Finding> loop_bend(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "loop-bend";
  return for_each_loop(facts, id, trace, [&](std::size_t i) {
    const plan::Insert& insert = facts.plan.inserts[i];
    if (!facts.tables.loops) return missing(id, insert.id, "the table of loops is not there", "tables/loops.toml");
    if (insert.kind == "loop-bar") return bend_of_bar(id, facts, insert, trace);
    if (insert.kind == "loop-rope") {
      if (stands_on_its_rating(insert))
        return noted(id, insert.id, "what the rope loses in its bend is not known here: the loop stands on its supplier's rating");
      return missing(id, insert.id, "what a wire rope loses where it is bent was found in no source that could be read",
                     "rating = { ... }, from the supplier's declaration");
    }
    const auto grip = loop_grip(facts, i, trace);
    if (const auto* gap = std::get_if<NotAssessed>(&grip)) return missing(id, insert.id, gap->why, gap->remedy);
    if (std::get<resistances::LoopGrip>(grip) == resistances::LoopGrip::hook)
      return noted(id, insert.id, fmt::format("loop {} hangs on a hook: it is credited {} of what it holds on a thick pin",
                                              insert.id, print_number(facts.tables.loops->hook_factor.value.value(), 2)));
    return passed(id, insert.id);
  });
}

}  // namespace firstpick::checks
