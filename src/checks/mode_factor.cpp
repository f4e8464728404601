#include "checks/mode_factor.hpp"

#include "checks/loaded_inserts.hpp"
#include "resistances/en_1992_4.hpp"

namespace firstpick::checks {

namespace {

resistances::PartialFactor partial_factor(Mode mode, const StageFacts& facts, std::size_t insert, Trace& trace) {
  const tables::En1992HeadedModel& en = *facts.rules.headed.en;
  if (mode == Mode::steel_tension)
    return resistances::partial_factor_of_steel_tension(headed(facts, insert), en, trace);
  if (mode == Mode::steel_shear) return resistances::partial_factor_of_steel_shear(headed(facts, insert), en, trace);
  return resistances::partial_factor_of_concrete(en, trace);
}

}  // namespace

ModeFactor mode_factor(Mode mode, const StageFacts& facts, std::size_t insert, Trace& trace) {
  const auto& one = facts.rules.insert_factor;
  if (!facts.rules.headed.en) return {one.value.value(), "n_i", one.source.locator, {one.source}};
  if (facts.against_ultimate) return {1.0, "n_i", "firstpick, point-loss", {}};
  resistances::PartialFactor partial = partial_factor(mode, facts, insert, trace);
  return {partial.value.value(), std::move(partial.symbol), std::move(partial.clause), std::move(partial.sources)};
}

double mode_factor(Mode mode, const StageFacts& facts, std::size_t insert) {
  if (!facts.rules.headed.en) return facts.rules.insert_factor.value.value();
  Trace silent;
  return mode_factor(mode, facts, insert, silent).value;
}

std::string_view clause_of(Mode mode, const tables::RuleSet& rules) {
  const bool by_en = rules.headed.en.has_value();
  switch (mode) {
    case Mode::steel_tension: return by_en ? "EN 1992-4 7.2.1.3" : "ACI 318-19 17.6.1";
    case Mode::breakout: return by_en ? "EN 1992-4 7.2.1.4" : "ACI 318-19 17.6.2";
    case Mode::pullout: return by_en ? "EN 1992-4 7.2.1.5" : "ACI 318-19 17.6.3";
    case Mode::side_blowout: return by_en ? "EN 1992-4 7.2.1.8" : "ACI 318-19 17.6.4";
    case Mode::steel_shear: return by_en ? "EN 1992-4 7.2.2.3" : "ACI 318-19 17.7.1";
    case Mode::edge_breakout: return by_en ? "EN 1992-4 7.2.2.5" : "ACI 318-19 17.7.2";
    case Mode::pryout: return by_en ? "EN 1992-4 7.2.2.4" : "ACI 318-19 17.7.3";
  }
  return {};
}

}  // namespace firstpick::checks
