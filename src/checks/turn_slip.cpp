// The edge about which a piece is turned does not slide.
//
//   F tan(delta) / N <= mu        F: pull of the hook, N: reaction of the edge, at the worst angle
//
// delta    how far the hook line strays from plumb, "hook_off_plumb" of the rule set: with the hook plumb nothing pushes
//          the edge aside. F is that of the plumb hook.
// mu       stated, else of the ground in tables/grounds.toml; neither: HOLD.
// Off a tilting table: the same at its angle, for the foot on the ledge as the hook takes the piece up. The ledge stands
//          square to the table, so that it rises outwards: that it does so is not counted, and towards the table the
//          piece cannot slide.
// Source   statics. Passes where the piece hangs between two hooks.

#include <cmath>

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

void record(const plan::Turn& turn, const Friction& friction, Trace& trace) {
  trace.add([&] {
    return Step{.words = turn.friction ? "friction under the edge, stated by the plan" : "friction under the edge",
                .result = {"mu", friction.coefficient.value(), "1"},
                .clause = turn.friction ? "plan" : "",
                .sources = friction.sources};
  });
}

// As the hook takes up a piece that still stands on the ledge of its table, at the angle of the table.
Finding off_a_table(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "turn-slip";
  const std::string& mark = facts.plan.piece.mark;
  if (const auto* gap = std::get_if<NotAssessed>(&*facts.turning)) return missing(id, mark, gap->why, gap->remedy);
  const plan::Turn& turn = *facts.stage.turn;
  const auto& sweep = std::get<TurnSweep>(*facts.turning);
  const auto pose = demands::turn_about_edge(sweep.piece, *turn.table_angle);
  if (const auto* gap = std::get_if<NotAssessed>(&pose)) return missing(id, mark, gap->why, gap->remedy);
  const auto friction = friction_of(turn, facts.tables);
  if (const auto* gap = std::get_if<NotAssessed>(&friction))
    return missing(id, mark, "what the foot of the piece stands on, on its table, is not in the plan", gap->remedy);

  const auto& taken = std::get<demands::TurnPose>(pose);
  const auto& off = facts.rules.hook_off_plumb;
  const bool pulls = taken.main_pull > Force{};
  const Ratio needed{pulls ? std::tan(off.value.value()) * taken.main_pull.value() / taken.edge.upward.value() : 0.0};
  if (is_finite(needed) && pulls)
    trace.add([&] {
      return Step{.words = fmt::format("friction that the foot needs on the ledge of the table, at {}",
                                       print(*turn.table_angle, UnitSystem::si)),
                  .result = {"mu_needed", needed.value(), "1"},
                  .formula = "F_slip * tan(delta) / N_slip",
                  .given = {{"F_slip", in(kN, taken.main_pull), "kN"},
                            {"delta", off.value.value(), "rad"},
                            {"N_slip", in(kN, taken.edge.upward), "kN"}},
                  .clause = "statics",
                  .sources = {off.source}};
    });
  record(turn, std::get<Friction>(friction), trace);
  Finding finding = compared<Ratio>(id, mark, Demand<Ratio>{needed},
                                    Resistance<Ratio>{std::get<Friction>(friction).coefficient}, 1.0, "statics");
  if (finding.result == Result::fail) {
    finding.text = fmt::format("the foot slides off the ledge of the table as the hook takes it up: it needs a friction of "
                               "{}, there is {}", print_number(needed.value(), 3, Rounding::up),
                               print_number(std::get<Friction>(friction).coefficient.value(), 3, Rounding::down));
    finding.remedy = "a rough ledge or a lip on it, picks farther from the foot, or a crane that follows more closely";
  }
  if (finding.result == Result::missing) finding.remedy = "picks farther from the foot";
  return finding;
}

}  // namespace

std::vector<Finding> turn_slip(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "turn-slip";
  const std::string& mark = facts.plan.piece.mark;
  const auto& turn = facts.stage.turn;
  if (facts.stage.kind != plan::StageKind::turn || (turn && turn->method == plan::TurnMethod::two_hooks))
    return {passed(id, mark)};
  if (!facts.turning || !turn) return {missing(id, mark, how_is_missing, turn_to_write)};
  if (turn->method == plan::TurnMethod::table) return {off_a_table(facts, trace)};
  Outcome<Demand<Ratio>> needed = NotAssessed{};
  const auto* sweep = std::get_if<TurnSweep>(&*facts.turning);
  if (sweep) needed = Demand<Ratio>{sweep->slip};
  else needed = std::get<NotAssessed>(*facts.turning);
  const auto friction = friction_of(*turn, facts.tables);
  Outcome<Resistance<Ratio>> has = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&friction)) has = *gap;
  else has = Resistance<Ratio>{std::get<Friction>(friction).coefficient};
  if (sweep) record(*sweep, facts.rules, trace);
  if (const auto* f = std::get_if<Friction>(&friction)) record(*turn, *f, trace);

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
