// The edge about which a piece is turned does not slide.
//
//   F tan(delta) / N <= mu        F: pull of the hook, N: reaction of the edge, at the worst angle
//
// delta    how far the hook line strays from plumb, "hook_off_plumb" of the rule set: with the hook plumb nothing pushes
//          the edge aside. F is that of the plumb hook.
// mu       stated, else of the ground in tables/grounds.toml; neither: HOLD.
// Source   statics. Passes where nothing turns about an edge on the ground.

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

struct Friction {
  Ratio coefficient;
  std::vector<Source> sources;
};

Outcome<Friction> friction_of(const plan::Turn& turn, const tables::Tables& tables) {
  if (turn.friction) return Friction{*turn.friction, {}};
  const auto ground = tables.grounds.find(turn.ground);
  if (ground == tables.grounds.end())
    return NotAssessed{"what the edge stands on is not in the plan", "[stage.turn] ground = \"concrete\""};
  return Friction{ground->second.friction.value, {ground->second.friction.source}};
}

void record(const TurnSweep& sweep, const tables::RuleSet& rules, Trace& trace) {
  const auto worst = std::ranges::find_if(sweep.poses, [&](const auto& p) { return p.angle == sweep.slip_at; });
  if (worst == sweep.poses.end() || !is_finite(sweep.slip)) return;
  const auto& off = rules.hook_off_plumb;
  trace.add([&] {
    return Step{.words = fmt::format("friction that the edge needs, turned to {}", print(sweep.slip_at, UnitSystem::si)),
                .result = {"mu_needed", sweep.slip.value(), "1"},
                .formula = "F_slip * tan(delta) / N_slip",
                .given = {{"F_slip", in(kN, worst->main_pull), "kN"},
                          {"delta", off.value.value(), "rad"},
                          {"N_slip", in(kN, worst->edge.upward), "kN"}},
                .clause = "statics",
                .sources = {off.source}};
  });
}

}  // namespace

std::vector<Finding> turn_slip(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "turn-slip";
  const std::string& mark = facts.plan.piece.mark;
  const auto& turn = facts.stage.turn;
  if (facts.stage.kind != plan::StageKind::turn || (turn && turn->method && turn->method != plan::TurnMethod::edge))
    return {passed(id, mark)};
  if (!facts.turning || !turn) return {missing(id, mark, how_is_missing, turn_to_write)};
  Outcome<Demand<Ratio>> needed = NotAssessed{};
  const auto* sweep = std::get_if<TurnSweep>(&*facts.turning);
  if (sweep) needed = Demand<Ratio>{sweep->slip};
  else needed = std::get<NotAssessed>(*facts.turning);
  const auto friction = friction_of(*turn, facts.tables);
  Outcome<Resistance<Ratio>> has = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&friction)) has = *gap;
  else has = Resistance<Ratio>{std::get<Friction>(friction).coefficient};
  if (sweep) record(*sweep, facts.rules, trace);
  if (const auto* f = std::get_if<Friction>(&friction))
    trace.add([&] {
      return Step{.words = turn->friction ? "friction under the edge, stated by the plan" : "friction under the edge",
                  .result = {"mu", f->coefficient.value(), "1"},
                  .clause = turn->friction ? "plan" : "",
                  .sources = f->sources};
    });

  Finding finding = compared<Ratio>(id, mark, needed, has, 1.0, "statics");
  if (sweep) finding.situation = fmt::format("turned to {}", print(sweep->slip_at, facts.plan.piece.units));
  if (finding.result == Result::fail) {
    finding.text = fmt::format("the edge slides, {}: it needs a friction of {}, there is {}", finding.situation,
                               print_number(sweep->slip.value(), 3, Rounding::up),
                               print_number(std::get<Friction>(friction).coefficient.value(), 3, Rounding::down));
    finding.remedy = "picks farther from the edge, a rougher or blocked edge, or a crane that follows more closely";
  }
  if (finding.result == Result::missing && finding.remedy.empty())
    finding.remedy = "picks farther from the edge, so that some weight stays on it";
  return {finding};
}

}  // namespace firstpick::checks
