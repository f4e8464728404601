#include "checks/standing_texts.hpp"

#include <fmt/format.h>

#include "strength/counted_strength.hpp"
#include "units/print.hpp"

namespace firstpick::checks {

std::vector<std::string> cautions_of(const tables::RuleSet& rules) {
  std::vector<std::string> cautions = {
      std::string(not_permission),
      "A competent person decides at the form. Any change to piece, rigging, crane or concrete voids this check.",
      "Nobody stands under the piece or between it and anything it can swing into.",
      "If the piece does not come free at the load stated here, stop: do not pull harder, do not jerk.",
  };
  cautions.insert(cautions.end(), rules.cautions.begin(), rules.cautions.end());
  return cautions;
}

std::vector<std::string> cautions_of(const plan::Plan& plan) {
  std::string still;
  std::size_t without = 0;
  for (const plan::Stage& stage : plan.stages) {
    if (stage.wind_speed) continue;
    ++without;
    still += fmt::format("{}{}", still.empty() ? "" : ", ", plan::word_for(stage.kind));
  }
  if (without == 0) return {};
  return {fmt::format("Judged in still air{}: the plan gives no wind_speed. If wind moves the piece, set it down.",
                      without < plan.stages.size() ? fmt::format(" ({})", still) : std::string())};
}

std::vector<std::string> stated_instead(const plan::Plan& plan, const tables::RuleSet& rules,
                                        const tables::Tables& tables) {
  std::vector<std::string> texts;
  for (const plan::Stage& stage : plan.stages) {
    if (!stage.dynamic_factor) continue;
    const auto own = rules.dynamic_factor.find(std::string(plan::word_for(stage.kind)));
    texts.push_back(fmt::format("stage {}: dynamic factor {} as the plan states it; the rule set has {}",
                                plan::word_for(stage.kind), print_number(stage.dynamic_factor->value(), 4),
                                own == rules.dynamic_factor.end() ? "none" : own->second.source.value_text));
  }
  for (const plan::Stage& stage : plan.stages)
    if (stage.wind_speed)
      texts.push_back(fmt::format("stage {}: judged in gusts of up to {}, by the plan", plan::word_for(stage.kind),
                                  print(*stage.wind_speed, plan.piece.units, Rounding::down)));
  for (const plan::Stage& stage : plan.stages)
    if (stage.wind_coefficient)
      texts.push_back(fmt::format("stage {}: wind coefficient {} as the plan states it; the table has {}",
                                  plan::word_for(stage.kind), print_number(stage.wind_coefficient->value(), 4),
                                  tables.wind ? tables.wind->coefficient.source.value_text : "none"));
  if (plan.form)
    for (const plan::Contact& contact : plan.form->contacts) {
      if (!contact.adhesion) continue;
      const auto own = tables.form_faces.find(contact.finish);
      texts.push_back(fmt::format("form contact '{}': grip of {} as the plan states it; the table has {}", contact.finish,
                                  print(*contact.adhesion, plan.piece.units),
                                  own == tables.form_faces.end() ? "none" : own->second.adhesion.source.value_text));
    }
  return texts;
}

namespace {

std::string counted_in_words(const tables::RuleSet& rules) {
  if (rules.usable_strength.value == tables::UsableStrength::lowest)
    return "the lowest specimen is the strength that counts";
  return fmt::format("the {} of the specimens is the strength that counts", strength::words_for_choice(rules));
}

}  // namespace

namespace {

// A partial safety format: what is multiplied by which factor, and what stands over which.
std::string partial_factors_in_words(const tables::RuleSet& rules) {
  const tables::En1992HeadedModel& en = *rules.headed.en;
  const bool moving = rules.insert_load.value == tables::InsertLoad::with_adhesion_and_dynamic;
  return fmt::format("headed inserts: {} times weight and form parts{}, against "
                     "characteristic resistances over {} (concrete) or {} f_uk / f_yk, {} or more (steel in tension); "
                     "declared loads of inserts: no load factor, and {} to failure; loops: these load factors, and the same to "
                     "failure; legs and crane: no load factor",
                     rules.load_factors->weight.value.value(),
                     moving ? fmt::format(" with the dynamic factor, plus {} times the grip of the form",
                                          rules.load_factors->grip.value.value())
                            : std::string(),
                     (en.gamma_c.value * en.gamma_inst.value).value(), en.gamma_s_tension.value.value(),
                     en.gamma_s_tension_least.value.value(), rules.insert_factor.value.value());
}

std::string insert_load_in_words(const tables::RuleSet& rules) {
  if (rules.headed.en && rules.load_factors) return partial_factors_in_words(rules);
  const double factor = rules.insert_factor.value.value();
  return rules.insert_load.value == tables::InsertLoad::with_adhesion_and_dynamic
             ? fmt::format("the insert factor of {} multiplies weight, form parts and grip of the form, with the dynamic factor", factor)
             : fmt::format("the insert factor of {} multiplies the static weight and form parts only", factor);
}

// Said only by rule sets that have it.
void add_what_few_have(const tables::RuleSet& rules, std::vector<std::string>& choices) {
  if (rules.load_floor)
    choices.push_back(fmt::format("the whole load of a strip is at least {} times weight and form parts",
                                  rules.load_floor->value.value()));
  if (rules.headed.en)
    choices.push_back("inserts count as in cracked concrete, unless the bending check of the piece passes in the same stage and "
                      "no edge is near");
  if (rules.below_floor.value == tables::BelowFloor::refuse)
    choices.push_back(fmt::format("below {} the formulas of inserts are not used at all",
                                  print(rules.headed.f_c_least.value, UnitSystem::si)));
  if (rules.rating_scaling.value == tables::RatingScaling::as_declared)
    choices.push_back("a declared load of an insert counts only at the strength it is declared for, or above");
}

}  // namespace

std::vector<std::string> choices_of(const tables::RuleSet& rules) {
  std::vector<std::string> choices = {
      insert_load_in_words(rules),
      rules.crane_load.value == tables::CraneLoad::with_adhesion
          ? "the crane is compared with weight, form parts, grip of the form, rigging and block, without the dynamic factor"
          : "the crane is compared with weight, form parts, rigging and block, without grip of the form or dynamic factor",
      rules.sharing.value == tables::Sharing::statics
          ? "no more legs are credited than equilibrium needs, in the worst set (four equal legs count as two)"
          : "legs share the load as equal elastic legs do",
      fmt::format("a piece that hangs more than {} out of level is not lifted",
                  print(rules.maximum_tilt.value, UnitSystem::si)),
      rules.loss_of_a_point.value == tables::LossOfAPoint::report
          ? std::string("what the loss of one point asks of the others is told and does not decide")
          : fmt::format("a lift that would not survive the loss of one point is {}",
                        rules.loss_of_a_point.value == tables::LossOfAPoint::hold ? "held" : "refused"),
      rules.no_sign_off.value == tables::NoSignOff::note
          ? std::string("a plan that no engineer has signed is told as such; one that has changed since is held")
          : fmt::format("a plan that no engineer has signed is {}; one that has changed since is held",
                        rules.no_sign_off.value == tables::NoSignOff::hold ? "held" : "refused"),
      counted_in_words(rules),
      fmt::format("a side pull of {} at the rim may roll a hanging piece by {} at most; one that was set down leans {} "
                  "before it tips, or is held", print(rules.side_pull.value, UnitSystem::si),
                  print(rules.maximum_roll.value, UnitSystem::si),
                  print(rules.minimum_tipping_angle.value, UnitSystem::si)),
  };
  add_what_few_have(rules, choices);
  return choices;
}

std::vector<std::string> strength_choices_of(const tables::RuleSet& rules) {
  return {counted_in_words(rules),
          rules.maturity.value == tables::MaturityUse::refused
              ? std::string("maturity alone carries no lift")
              : fmt::format("maturity counts where companions validate it within {:g} %, less {}",
                            100.0 * rules.maturity_difference.value.value(),
                            print(rules.maturity_margin.value, UnitSystem::si))};
}

// Shrinks as rules arrive; docs/verdict.md holds the same list.
std::vector<std::string> not_checked(BendingChecked bending) {
  return {
      bending == BendingChecked::none
          ? "cracking, bending and shear of the piece, but of the walls and slabs that its inserts pull across, in any stage"
      : bending == BendingChecked::with_bars
          ? "torsion and bending sideways of the piece, and bars but those along it that carry it cracked, in any stage"
          : "torsion and bending sideways of the piece (torsion of a ring is), shear of any but a line or ring, and its bars, in "
            "any stage",
      bending == BendingChecked::turned
          ? "an edge that rests on uneven ground or is dragged, a table that lets go late, a crane that does not follow"
          : "bending of the piece while it is turned, drag of the edge, a table that lets go late, a crane that does not "
            "follow",
      "legs, hooks and beams against what stands around the form",
      "ties on the vehicle, the ride, what stands or is stored on top, ground that gives way",
      "what a piece hits while it swings after one point lets go, and what that asks of beams and sheaves",
      "bending and buckling of lifting beams, and what their plates ask besides the rating",
      "limits of thickness and reinforcement that the supplier sets for a rated insert",
      "how a clutch or a hook sits on the insert: engaged, the right way round, not worn",
      "wind on form parts, beams and slings, wind that bends the piece, and what it does to the crane",
      "snow, ice, trapped water and anything else on the piece that the plan does not list",
      "crane set-up and travel, path of the lift, two cranes that do not move together",
  };
}

}  // namespace firstpick::checks
