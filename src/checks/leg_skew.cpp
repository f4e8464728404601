// Four legs on one hook: what a published guideline asks of a leg, held against what this rule set asks. A cross-check: it never
// decides a lift.
//
//   T_check = k_skew k_dyn T_even        T_even: tension of the leg in still air, weights alone, shared as elastic legs do
//   T_check <= T        T: the most that this rule set asks of the leg in any situation
//
// Source   0027/ND, rev 11, 5.6.12 and table 5-1: a guideline for marine lifts, read. It holds for matched slings within a
//          tolerance of length and knows no grip of a form; short yard slings may share worse, which `sharing` covers.
// Note     where it asks more: the plan states a low dynamic factor, or the rule set shares elastically.
// Passes   without a word for other riggings, in a turn, and in a rule set without these values.

#include <algorithm>

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

bool is_checked(const StageFacts& facts) {
  const auto* hung = std::get_if<demands::HungPiece>(&facts.hung);
  return facts.rules.leg_cross_check && facts.rigging && !facts.turning && hung && !demands::is_tree(*hung) &&
         hung->legs.size() == 4 && hung->equalised.empty();
}

struct Asked {
  std::size_t leg = 0;
  Force even{}, by_check{}, here{};
};

// The leg of which the cross-check asks most against what is asked here. Nothing where a number is not usable.
std::optional<Asked> worst_of(const StageFacts& facts) {
  const auto* situations = std::get_if<std::vector<Situation>>(&facts.gear_situations);
  const auto* load = std::get_if<loads::StageLoad>(&facts.load);
  if (!situations || situations->empty() || !load) return {};
  const tables::LegCrossCheck& check = *facts.rules.leg_cross_check;
  std::optional<Asked> worst;
  for (std::size_t leg = 0; leg < situations->front().legs.size(); ++leg) {
    Asked asked{.leg = leg, .even = situations->front().legs[leg].tension / load->dynamic_factor};
    asked.by_check = check.skew.value * check.dynamic_factor.value * asked.even;
    for (const Situation& situation : *situations) asked.here = std::max(asked.here, situation.legs.at(leg).tension);
    if (!is_finite(asked.by_check) || !(asked.here > Force{}) || !is_finite(asked.here)) return {};
    if (!worst || asked.by_check / asked.here > worst->by_check / worst->here) worst = asked;
  }
  return worst;
}

void record(const Asked& asked, const StageFacts& facts, const std::string& to, Trace& trace) {
  const tables::LegCrossCheck& check = *facts.rules.leg_cross_check;
  trace.add([&] {
    return Step{.words = fmt::format("cross-check by a marine guideline: the leg to {}, of four", to),
                .result = {"T_check", in(kN, asked.by_check), "kN"},
                .formula = "k_skew * k_dyn * T_even",
                .given = {{"k_skew", check.skew.value.value(), "1"},
                          {"k_dyn", check.dynamic_factor.value.value(), "1"},
                          {"T_even", in(kN, asked.even), "kN"}},
                .clause = "0027/ND 5.6.12",
                .sources = {check.skew.source, check.dynamic_factor.source}};
  });
  trace.add([&] {
    return Step{.words = "the most that is asked of this leg here, in any situation",
                .result = {"T_here", in(kN, asked.here), "kN"},
                .clause = "statics"};
  });
}

}  // namespace

std::vector<Finding> leg_skew(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "leg-skew";
  const std::string& subject = facts.stage.rigging;
  if (!is_checked(facts)) return {passed(id, subject)};
  const auto worst = worst_of(facts);
  if (!worst) return {passed(id, subject)};  // rigging-statics says what is wrong
  const std::string& to = facts.rigging->legs.at(worst->leg).to;
  trace.about([&] { return fmt::format("{}: {}, {}", plan::word_for(facts.stage.kind), id, subject); });
  record(*worst, facts, to, trace);
  if (worst->by_check <= worst->here) return {passed(id, subject)};
  const UnitSystem units = facts.plan.piece.units;
  Finding finding = noted(
      id, subject,
      fmt::format("a marine guideline asks {} of the leg to {} ({:g} for skew, {:g} dynamic), this plan {}",
                  firstpick::print(worst->by_check, units, Rounding::up), to,
                  facts.rules.leg_cross_check->skew.value.value(),
                  facts.rules.leg_cross_check->dynamic_factor.value.value(),
                  firstpick::print(worst->here, units, Rounding::down)));
  finding.remedy = "look at the dynamic factor that the plan states, and at how the legs are taken to share";
  return {finding};
}

}  // namespace firstpick::checks
