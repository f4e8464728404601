// No loop is pulled further from its axis than is accepted for loops.
//
//   angle of the force from the outward normal of the face <= alpha
//
// Source   two texts, 60 and 90 degrees between the slings: the lower counts (tables/loops.toml, docs/rules/loop-angle.md).
// A loop that no leg of the stage pulls passes.

#include "checks/loop_pull.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> loop_angle(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "loop-angle";
  const UnitSystem units = facts.plan.piece.units;
  return for_each_loop(facts, id, trace, [&](std::size_t i) {
    const plan::Insert& insert = facts.plan.inserts[i];
    if (!facts.tables.loops) return missing(id, insert.id, "the table of loops is not there", "tables/loops.toml");
    const auto found = worst_loop_pull(facts, i, LoopWorst::by_lean);
    if (const auto* gap = std::get_if<NotAssessed>(&found)) return missing(id, insert.id, gap->why, gap->remedy);
    const auto& pull = std::get<std::optional<LoopPull>>(found);
    if (!pull) return passed(id, insert.id);
    const auto& all = facts.tables.loops->maximum_angle;
    const Sourced<Angle>& most = resistances::lowest(all);
    trace.add([&] {
      Step step{.words = fmt::format("angle of the pull from the axis of loop {}, {}", insert.id, pull->situation),
                .result = {"alpha", in(deg, pull->lean), "deg"},
                .clause = "statics"};
      for (const auto& one : all) step.sources.push_back(one.source);
      return step;
    });
    Finding finding = compared<Angle>(id, insert.id, Demand<Angle>{pull->lean}, Resistance<Angle>{most.value}, 1.0,
                                      citation(most.source));
    finding.situation = pull->situation;
    if (finding.result == Result::fail) {
      finding.text = fmt::format("loop {} is pulled {} from its axis, {} is accepted for loops", insert.id,
                                 firstpick::print(pull->lean, units, Rounding::up),
                                 firstpick::print(most.value, units, Rounding::down));
      finding.remedy = "longer legs, or a spreader beam";
    }
    return finding;
  });
}

}  // namespace firstpick::checks
