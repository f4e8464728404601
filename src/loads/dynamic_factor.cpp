// Dynamic factor of a stage, on the weight and the attached parts.
//
//   phi = phi_plan                         where the plan states one, else
//   phi = max(phi_stage, phi_hoist)        phi_hoist = phi_min + beta v
//
// Source   phi_stage: the rule set's entry for the stage. phi_hoist: hoist classes of EN 1991-3 table 2.5, in
//          tables/hoists.toml; v is the hoisting speed of the crane.
// The first stage of a plan brings the piece out of its form (plan/form_state.hpp): phi_stage is then not below that of strip.
// phi_hoist counts where the crane has both a hoist class and a hoist speed; it can only raise the factor.
// Range    a factor below 1 would make the piece lighter than it is and is never used.

#include "loads/dynamic_factor.hpp"

#include <algorithm>
#include <optional>
#include <string>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "plan/form_state.hpp"

namespace firstpick::loads {

namespace {

bool is_usable(Ratio factor) { return factor >= Ratio::from_value(1.0) && is_finite(factor); }

Outcome<Ratio> stated_factor(const plan::Stage& stage, Trace& trace) {
  const Ratio phi = *stage.dynamic_factor;
  if (!is_usable(phi))
    return NotAssessed{"the dynamic factor of the plan is below 1 or not a usable number",
                       "write dynamic_factor in [[stage]] as 1 or more, or leave it to the rule set"};
  trace.add([&] {
    return Step{.words = "dynamic factor stated by the plan, instead of the rule set's",
                .result = {"phi", phi.value(), "1"},
                .clause = "plan"};
  });
  return phi;
}

// Empty where the crane says too little for it.
Outcome<std::optional<Ratio>> hoist_factor(const plan::Plan& plan, const plan::Stage& stage,
                                           const tables::Tables& tables, Trace& trace) {
  if (stage.crane.empty()) return std::optional<Ratio>{};
  const auto crane = std::ranges::find(plan.cranes, stage.crane, &plan::Crane::id);
  if (crane == plan.cranes.end())
    return NotAssessed{fmt::format("the plan has no crane '{}'", stage.crane), "write it as a [[crane]]"};
  if (crane->hoist_class.empty() || !crane->hoist_speed) return std::optional<Ratio>{};

  const auto hoist = tables.hoists.find(crane->hoist_class);
  if (hoist == tables.hoists.end()) {
    std::vector<std::string> known;
    for (const auto& [key, entry] : tables.hoists) known.push_back(key);
    return NotAssessed{fmt::format("the tables hold no hoist class '{}'", crane->hoist_class),
                       fmt::format("write hoist_class in [[crane]] as one of: {}", fmt::join(known, ", "))};
  }
  const Speed v = *crane->hoist_speed;
  if (!(v >= Speed{}) || !is_finite(v))
    return NotAssessed{fmt::format("the hoist speed of crane '{}' is not a usable number", crane->id),
                       "write hoist_speed in [[crane]], zero or more"};

  const auto& [key, phi_min, beta] = hoist->second;
  const Ratio phi = phi_min.value + beta.value * v;
  if (!is_usable(phi))
    return NotAssessed{fmt::format("the dynamic factor of hoist class '{}' is not a usable number", key), {}};
  trace.add([&, &phi_min = phi_min, &beta = beta] {
    return Step{.words = fmt::format("dynamic factor of the hoist, class {}", crane->hoist_class),
                .result = {"phi_hoist", phi.value(), "1"},
                .formula = "phi_min + beta * v",
                .given = {{"phi_min", phi_min.value.value(), "1"},
                          {"beta", beta.value.value(), "s/m"},
                          {"v", in(m_per_s, v), "m/s"}},
                .sources = {phi_min.source, beta.source}};
  });
  return std::optional<Ratio>{phi};
}

}  // namespace

Outcome<Ratio> dynamic_factor(const plan::Plan& plan, const plan::Stage& stage, const tables::RuleSet& rules,
                              const tables::Tables& tables, Trace& trace) {
  if (stage.dynamic_factor) return stated_factor(stage, trace);

  const auto entry = rules.dynamic_factor.find(std::string(plan::word_for(stage.kind)));
  if (entry == rules.dynamic_factor.end())
    return NotAssessed{fmt::format("the rule set '{}' has no dynamic factor for the stage '{}'", rules.id,
                                   plan::word_for(stage.kind)),
                       "write dynamic_factor in [[stage]], in the form \"1.5\""};
  // Out of the form by another stage than strip: the larger of both factors.
  const bool out_of_form = stage.kind != plan::StageKind::strip && plan::comes_out_of_form(plan, stage);
  const auto strip = out_of_form ? rules.dynamic_factor.find(std::string(plan::word_for(plan::StageKind::strip)))
                                 : rules.dynamic_factor.end();
  if (out_of_form && strip == rules.dynamic_factor.end())
    return NotAssessed{fmt::format("the rule set '{}' has no dynamic factor for the stage 'strip'", rules.id),
                       "write dynamic_factor in [[stage]], in the form \"1.5\""};
  const bool by_strip = out_of_form && strip->second.value > entry->second.value;
  const auto& [phi_stage, source] = by_strip ? strip->second : entry->second;
  if (!is_usable(phi_stage))
    return NotAssessed{
        fmt::format("the rule set's dynamic factor for the stage '{}' is below 1 or not a usable "
                    "number",
                    entry->first),
        "write dynamic_factor in [[stage]], in the form \"1.5\""};

  const Outcome<std::optional<Ratio>> of_hoist = hoist_factor(plan, stage, tables, trace);
  if (const auto* missing = std::get_if<NotAssessed>(&of_hoist)) return *missing;
  const std::optional<Ratio> phi_hoist = std::get<std::optional<Ratio>>(of_hoist);
  const Ratio phi = phi_hoist ? std::max(phi_stage, *phi_hoist) : phi_stage;
  trace.add([&, &phi_stage = phi_stage, &source = source] {
    Step step{.words = fmt::format("dynamic factor for the stage {}{}", entry->first,
                                   by_strip ? ", which brings the piece out of its form: that of strip" : ""),
              .result = {"phi", phi.value(), "1"},
              .formula = phi_hoist ? "max(phi_stage, phi_hoist)" : "phi_stage",
              .given = {{"phi_stage", phi_stage.value(), "1"}},
              .sources = {source}};
    if (phi_hoist) step.given.push_back({"phi_hoist", phi_hoist->value(), "1"});
    return step;
  });
  return phi;
}

}  // namespace firstpick::loads
