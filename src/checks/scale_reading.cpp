// What the crane's scale showed agrees with what was computed, and is not more than was checked for.
//
//   hanging         W_s = R - rigging - block - attached, as far as the scale counted them
//                   W_s <= W                        else HOLD;  W_s <= (1 + r) W      else NO-GO
//                   W_s >= (1 - r) W_least          else HOLD: another piece, or something else carries part of it
//   breaking free   R + rigging + block, as far as the scale did not count them, <= W_hook    else NO-GO
//
// W is the weight that the lift is checked for, W_least the least that density and stated weight allow, r
// "scale_disagreement" of the rule set. W_hook is the pull not to exceed (crane_hook_load.cpp).
// Source   common practice; statics. r is a choice, for the error of the scale.
// Absent   no [stage.scale_reading]: nothing is said.
// Missing  what was on the scale is not said; more than one crane; a turn.

#include <optional>

#include <fmt/format.h>

#include "checks/crane_hook_load.hpp"
#include "checks/rule.hpp"
#include "checks/standing_texts.hpp"

namespace firstpick::checks {

namespace {

constexpr std::string_view scale_rule = "scale-reading";

struct OnTheHook {
  Force gear{};   // slings, beams and sheaves
  Force block{};
};

std::optional<NotAssessed> what_is_not_said(const StageFacts& facts, const plan::ScaleReading& scale) {
  if (!scale.shows || !scale.state)
    return NotAssessed{"the reading of the scale is not given", "[stage.scale_reading] shows and state"};
  if (!scale.rigging) return NotAssessed{"whether the scale counted the rigging is not said", "rigging = true, or false"};
  if (!scale.block) return NotAssessed{"whether the scale counted the hook block is not said", "block = true, or false"};
  const bool parts = facts.plan.form && !facts.plan.form->attached.empty();
  if (parts && !scale.attached)
    return NotAssessed{"whether form parts hung on the piece as it was weighed is not said", "attached = true, or false"};
  return {};
}

Finding while_breaking_free(const StageFacts& facts, const plan::ScaleReading& scale, const HookLoad& hook,
                            const OnTheHook& on, Trace& trace) {
  const Force pull = *scale.shows + (*scale.rigging ? Force{} : on.gear) + (*scale.block ? Force{} : on.block);
  trace.add([&] {
    return Step{.words = "pull on the hook by the crane's scale while the form still held, with gear that it did not count",
                .result = {"R_all", in(kN, pull), "kN"},
                .formula = "R + G_not_counted",
                .given = {{"R", in(kN, *scale.shows), "kN"}, {"G_not_counted", in(kN, pull - *scale.shows), "kN"}},
                .clause = "statics"};
  });
  Finding finding = compared<Force>(scale_rule, facts.plan.piece.mark, Demand<Force>{pull}, Resistance<Force>{hook.total()}, 1.0,
                                    "pull not to exceed");
  if (finding.result == Result::fail) {
    const UnitSystem units = facts.plan.piece.units;
    finding.text = fmt::format("the hook pulled {} by the crane's scale while the form still held, the lift is checked for {}",
                               print(pull, units, Rounding::up), print(hook.total(), units, Rounding::down));
    finding.remedy = when_it_sticks;
  }
  return finding;
}

Finding as_it_hung(const StageFacts& facts, const plan::ScaleReading& scale, const OnTheHook& on, Trace& trace) {
  const std::string& subject = facts.plan.piece.mark;
  const UnitSystem units = facts.plan.piece.units;
  const auto& load = std::get<loads::StageLoad>(facts.load);
  const auto least = loads::least_weight(facts.plan, facts.body);
  if (const auto* gap = std::get_if<NotAssessed>(&least)) return missing(scale_rule, subject, gap->why, gap->remedy);
  const Force gear = *scale.rigging ? on.gear : Force{}, block = *scale.block ? on.block : Force{};
  const Force parts = scale.attached.value_or(false) ? load.attached : Force{};
  const Force weighed = *scale.shows - gear - block - parts;
  const Ratio r = facts.rules.scale_disagreement.value;
  trace.add([&] {
    return Step{.words = "weight of the piece by the crane's scale",
                .result = {"W_s", in(kN, weighed), "kN"},
                .formula = "R - G_rigging - G_block - W_att",
                .given = {{"R", in(kN, *scale.shows), "kN"},
                          {"G_rigging", in(kN, gear), "kN"},
                          {"G_block", in(kN, block), "kN"},
                          {"W_att", in(kN, parts), "kN"}},
                .clause = "statics",
                .sources = {facts.rules.scale_disagreement.source}};
  });

  Finding finding = compared<Force>(scale_rule, subject, Demand<Force>{weighed}, Resistance<Force>{load.weight}, 1.0,
                                    "weight that the lift is checked for");
  if (finding.result == Result::missing) {
    finding.text = "the scale shows no more than the gear on it weighs";
    finding.remedy = "read the scale again, with the piece hanging free";
    return finding;
  }
  const std::string shows = fmt::format("by the crane's scale the piece weighs {}", print(weighed, units, Rounding::up));
  if (finding.result == Result::fail) {
    const Comparison with_error = compare<Force>(Demand<Force>{weighed}, Resistance<Force>{(1.0 + r.value()) * load.weight});
    finding.result = with_error.result == Result::pass ? Result::missing : Result::fail;
    finding.text = fmt::format("{}, the lift is checked for {}", shows, print(load.weight, units, Rounding::down));
    finding.remedy = finding.result == Result::fail
                         ? "set it down; find out what it is, and check the lift of that"
                         : "weigh it again, or write what it weighs as stated_weight, and check again";
    return finding;
  }
  const Force expected = (1.0 - r.value()) * std::get<Force>(least);
  if (compare<Force>(Demand<Force>{expected}, Resistance<Force>{weighed}).result != Result::pass) {
    finding.result = Result::missing;
    finding.text = fmt::format("{}, at least {} was computed", shows, print(expected, units, Rounding::down));
    finding.remedy = "something else carried part of it, or it is another piece: look, and weigh it again";
  }
  return finding;
}

}  // namespace

std::vector<Finding> scale_reading(const StageFacts& facts, Trace& trace) {
  const std::string& subject = facts.plan.piece.mark;
  if (!facts.stage.scale_reading) return {passed(scale_rule, subject)};
  const plan::ScaleReading& scale = *facts.stage.scale_reading;
  if (const auto gap = what_is_not_said(facts, scale)) return {missing(scale_rule, subject, gap->why, gap->remedy)};
  const auto cranes = cranes_of(facts);
  if (facts.stage.kind == plan::StageKind::turn || cranes.size() != 1)
    return {missing(scale_rule, subject, "a reading of one scale says nothing of a piece that another crane or the ground helps to "
                                 "carry", "a reading as the piece hangs on one crane")};
  const auto hook = hook_load(facts, cranes.front());
  if (const auto* gap = std::get_if<NotAssessed>(&hook)) return {missing(scale_rule, subject, gap->why, gap->remedy)};
  const auto& load = std::get<HookLoad>(hook);
  const OnTheHook on{load.rigging + load.carriers, load.block};
  return {*scale.state == plan::ScaleState::breaking_free ? while_breaking_free(facts, scale, load, on, trace)
                                                          : as_it_hung(facts, scale, on, trace)};
}

}  // namespace firstpick::checks
