#include "checks/loop_pull.hpp"

#include <algorithm>
#include <cmath>

#include "checks/hardware_of.hpp"
#include "demands/loop_share.hpp"

namespace firstpick::checks {

LoopPull loop_pull(const plan::Insert& insert, const InsertSituation& situation, std::size_t index) {
  const auto& f = situation.forces.at(index);
  LoopPull pull{.situation = situation.name, .turning = situation.turning, .some_legs_only = situation.some_legs_only};
  pull.whole = Force::from_value(std::hypot(f.tension.value(), f.shear.value()));
  pull.lean = Angle::from_value(std::atan2(f.shear.value(), f.tension.value()));
  pull.leg = demands::loaded_leg_share(pull.lean, insert.loop ? insert.loop->opening : std::nullopt) * pull.whole;
  return pull;
}

Outcome<std::optional<LoopPull>> worst_loop_pull(const StageFacts& facts, std::size_t insert, LoopWorst by) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.insert_situations)) return *gap;
  const auto& situations = std::get<std::vector<InsertSituation>>(facts.insert_situations);
  if (situations.empty()) return NotAssessed{"no situation was computed", {}};
  std::optional<LoopPull> worst;
  for (const InsertSituation& situation : situations) {
    const LoopPull pull = loop_pull(facts.plan.inserts[insert], situation, insert);
    if (!is_finite(pull.whole) || !is_finite(pull.leg))
      return NotAssessed{"the force on the loop is not a usable number", {}};
    if (pull.whole == Force{}) continue;
    constexpr double more = 1.0 + 1e-9;  // of equals the first is named, whatever their last bits
    const bool worse = !worst || (by == LoopWorst::by_leg ? pull.leg > more * worst->leg : pull.lean > more * worst->lean);
    if (worse) worst = pull;
  }
  return worst;
}

Outcome<resistances::LoopGrip> loop_grip(const StageFacts& facts, std::size_t insert, Trace& trace) {
  const plan::Insert& loop = facts.plan.inserts[insert];
  if (loop.kind != "loop-strand") return resistances::LoopGrip::pin;  // of strand only
  if (!facts.tables.loops) return NotAssessed{"the table of loops is not there", "tables/loops.toml"};
  if (!facts.rigging) return NotAssessed{"the stage names no rigging", "[[stage]] rigging = \"...\""};
  bool over_hook = false;
  for (std::size_t leg = 0; leg < facts.rigging->legs.size(); ++leg) {
    if (facts.rigging->legs[leg].to != loop.id) continue;
    const auto hardware = hardware_of(facts, leg);
    if (const auto* gap = std::get_if<NotAssessed>(&hardware)) return *gap;
    over_hook = over_hook || std::get<const plan::Hardware*>(hardware)->kind == plan::HardwareKind::hook;
  }
  return resistances::strand_grip(loop, over_hook, *facts.tables.loops, trace);
}

bool stands_on_its_rating(const plan::Insert& insert) { return insert.kind == "loop-rope" && insert.rating.has_value(); }

Finding leg_against(std::string_view id, const StageFacts& facts, std::size_t insert,
                    const Outcome<std::optional<LoopPull>>& pull, const Outcome<Resistance<Force>>& nominal,
                    std::string_view fails, std::string_view remedy, Trace& trace) {
  const std::string& subject = facts.plan.inserts[insert].id;
  const auto& n = facts.rules.insert_factor;
  Outcome<Demand<Force>> demand = NotAssessed{};
  const LoopPull* worst = nullptr;
  if (const auto* gap = std::get_if<NotAssessed>(&pull)) {
    demand = *gap;
  } else {
    const auto& found = std::get<std::optional<LoopPull>>(pull);
    if (!found) return passed(id, subject);  // no leg of this stage pulls it
    worst = &*found;
    demand = Demand<Force>{worst->leg};
  }
  Finding finding = compared<Force>(id, subject, demand, nominal, n.value.value(), citation(n.source));
  if (worst) finding.situation = worst->situation;
  if (worst && finding.utilization) {
    trace.add([&] {
      return Step{.words = fmt::format("share of the pull in the more loaded leg of loop {}, {}", subject, worst->situation),
                  .result = {"T", in(kN, worst->leg), "kN"},
                  .formula = "F_loop * s",
                  .given = {{"F_loop", in(kN, worst->whole), "kN"}, {"s", double{worst->leg / worst->whole}, "1"}},
                  .clause = "statics"};
    });
    trace.add([&] {
      return Step{.words = fmt::format("share of what is allowed: {} behind the factor on inserts", id),
                  .result = {"u", *finding.utilization, "1"},
                  .formula = "T / (R / n_i)",
                  .given = {{"T", in(kN, worst->leg), "kN"},
                            {"R", in(kN, std::get<Resistance<Force>>(nominal).value), "kN"},
                            {"n_i", n.value.value(), "1"}},
                  .clause = n.source.locator,
                  .sources = {n.source}};
    });
  }
  if (finding.result == Result::fail) {
    const UnitSystem units = facts.plan.piece.units;
    const Force R = std::get<Resistance<Force>>(nominal).value;
    finding.text = fmt::format("{} at {}: {} asked of one leg, {} allowed ({} nominal over {})", fails, subject,
                               firstpick::print(worst->leg, units, Rounding::up),
                               firstpick::print(Force{R / n.value.value()}, units, Rounding::down),
                               firstpick::print(R, units, Rounding::down), print_number(n.value.value(), 2));
    if (worst->some_legs_only || worst->turning) finding.text += ", " + worst->situation;
    finding.remedy = (worst->some_legs_only ? "gear that shares the load by itself (equalised), " : "") + std::string(remedy);
  }
  return finding;
}

}  // namespace firstpick::checks
