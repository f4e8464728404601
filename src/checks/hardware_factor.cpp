// Lifting hardware keeps the factor that the regulation demands, whatever factor its tag was rated with.
//
//   T <= T_rated * n_d / n      n_d: breaking load over rated load of the sling; n: factor the regulation demands
//
// Source   29 CFR 1926.704(d): lifting hardware carries five times the maximum intended load. A sling rated with a
//          smaller design factor (alloy chain: 4) may therefore not be used up to its tag in precast erection.
// n_d      from the plan (tag or certificate), else from tables/slings.toml for the kind; neither: HOLD.

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "checks/sling_of.hpp"
#include "checks/worst_leg.hpp"

namespace firstpick::checks {

namespace {

struct DesignFactor {
  double value;
  const Source* source;  // of the table; null: the plan says it
};

Outcome<DesignFactor> design_factor(const plan::Sling& sling, const tables::Tables& tables) {
  if (sling.design_factor) return DesignFactor{*sling.design_factor, nullptr};
  const auto kind = tables.slings.find(sling.kind);
  if (kind == tables.slings.end())
    return NotAssessed{fmt::format("the design factor of sling '{}' is not known", sling.id),
                       "[[sling]] design_factor = 5, as the tag or certificate says"};
  return DesignFactor{kind->second.design_factor.value, &kind->second.design_factor.source};
}

}  // namespace

std::vector<Finding> hardware_factor(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "hardware-factor";
  std::vector<Finding> findings;
  if (!facts.rigging) return findings;
  findings.reserve(facts.rigging->legs.size());
  const auto& required = facts.rules.hardware_factor;
  const UnitSystem units = facts.plan.piece.units;
  for (std::size_t leg = 0; leg < facts.rigging->legs.size(); ++leg) {
    const std::string& subject = facts.rigging->legs[leg].to;
    const auto sling = sling_of(facts, leg);
    const auto worst = most_tension(facts.gear_situations, leg);
    Outcome<Resistance<Force>> breaking = NotAssessed{};
    if (const auto* gap = std::get_if<NotAssessed>(&sling)) {
      breaking = *gap;
    } else {
      const plan::Sling& s = *std::get<const plan::Sling*>(sling);
      const auto factor = design_factor(s, facts.tables);
      if (const auto* no_factor = std::get_if<NotAssessed>(&factor)) {
        breaking = *no_factor;
      } else {
        const auto& n_d = std::get<DesignFactor>(factor);
        breaking = Resistance<Force>{*s.rated * n_d.value};
        trace.add([&] {
          std::vector<Source> sources;
          if (n_d.source) sources.push_back(*n_d.source);
          sources.push_back(required.source);
          return Step{.words = fmt::format("what the leg to {} may carry with the regulation's factor", subject),
                      .result = {"T_max", in(kN, *s.rated) * n_d.value / required.value.value(), "kN"},
                      .formula = "T_rated * n_d / n",
                      .given = {{"T_rated", in(kN, *s.rated), "kN"},
                                {"n_d", n_d.value, "1"},
                                {"n", required.value.value(), "1"}},
                      .clause = required.source.locator,
                      .sources = std::move(sources)};
        });
      }
    }
    Finding finding = compared<Force>(id, subject, demand_of(worst), breaking, required.value.value(),
                                      citation(required.source));
    if (const auto* w = std::get_if<WorstLeg>(&worst)) finding.situation = w->situation;
    if (finding.result == Result::fail) {
      finding.text = fmt::format("the leg to {} keeps a factor of {} on its breaking load, {} is demanded", subject,
                                 print_number(required.value.value() / *finding.utilization, 3, Rounding::down),
                                 print_number(required.value.value(), 2));
      finding.remedy = fmt::format("a sling that breaks at no less than {}",
                                   firstpick::print(Force{required.value * std::get<WorstLeg>(worst).tension}, units,
                                                    Rounding::up));
    }
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace firstpick::checks
