// No body of concrete breaks out with a loop of bar.
//
//   F <= N_cb / n      F: the whole pull on the loop      N_cb: resistances/loop_breakout.cpp
//
// Source   ACI 318-19 17.6.2, borrowed (docs/rules/loop-breakout.md).
// Absent   another insert whose concrete it shares: HOLD, groups of loops are not evaluated.
// Absent   strand and rope: no source gives their cone. A declared load, or engineers_document, stands for it: a note.

#include <cmath>

#include "checks/loop_pull.hpp"
#include "checks/rule.hpp"
#include "checks/stated_text.hpp"
#include "resistances/loop_breakout.hpp"

namespace firstpick::checks {

namespace {

Length depth_of(const plan::Insert& insert, Length else_this) { return insert.embedment.value_or(else_this); }

// An insert of the same face whose breakout body meets that of `loop`; null: none.
const plan::Insert* shares_concrete(const StageFacts& facts, std::size_t loop) {
  const auto& inserts = facts.plan.inserts;
  const double k = facts.rules.headed.cone_extent.value.value();
  const Length own = depth_of(inserts[loop], facts.body.sites.at(loop).thickness);
  for (std::size_t i = 0; i < inserts.size(); ++i) {
    if (i == loop || facts.body.sites.at(i).face != facts.body.sites.at(loop).face) continue;
    const auto away = inserts[i].at - inserts[loop].at;
    const Length apart =
        std::sqrt(std::pow(in(m, away.x), 2) + std::pow(in(m, away.y), 2) + std::pow(in(m, away.z), 2)) * m;
    if (!(apart >= k * (own + depth_of(inserts[i], own)))) return &inserts[i];
  }
  return nullptr;
}

Outcome<Resistance<Force>> cone_of(const StageFacts& facts, std::size_t i, Trace& trace) {
  const plan::Insert& insert = facts.plan.inserts[i];
  if (const auto* gap = std::get_if<NotAssessed>(&facts.formula_strength)) return *gap;
  if (const plan::Insert* other = shares_concrete(facts, i))
    return NotAssessed{fmt::format("loop {} shares its breakout body with insert {}: groups of loops are not evaluated",
                                   insert.id, other->id),
                       "more distance between them"};
  return resistances::loop_breakout(insert, facts.body.sites.at(i), facts.plan.concrete,
                                    std::get<Stress>(facts.formula_strength), facts.rules, facts.tables,
                                    facts.anchorage.areas, trace);
}

}  // namespace

std::vector<Finding> loop_breakout(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "loop-breakout";
  const auto& n = facts.rules.insert_factor;
  const UnitSystem units = facts.plan.piece.units;
  return for_each_loop(facts, id, trace, [&](std::size_t i) {
    const plan::Insert& insert = facts.plan.inserts[i];
    if (insert.kind != "loop-bar") {
      const std::string text = "no source gives the cone of a loop of strand or rope";
      if (insert.rating) return noted(id, insert.id, text + ": the supplier's declared load stands for it");
      if (is_stated(insert.engineers_document))
        return noted(id, insert.id, text + ": the engineer's document " + insert.engineers_document + " stands for it");
      return missing(id, insert.id, text, "the engineer's own design or test: [[insert]] engineers_document = \"...\"");
    }
    const auto found = worst_loop_pull(facts, i, LoopWorst::by_leg);
    const auto* pull = std::get_if<std::optional<LoopPull>>(&found);
    if (pull && !*pull) return passed(id, insert.id);
    Outcome<Demand<Force>> demand = NotAssessed{};
    if (pull) demand = Demand<Force>{(*pull)->whole};
    else demand = std::get<NotAssessed>(found);
    const auto nominal = cone_of(facts, i, trace);
    Finding finding = compared<Force>(id, insert.id, demand, nominal, n.value.value(), citation(n.source));
    if (pull) finding.situation = (*pull)->situation;
    if (finding.result == Result::fail) {
      finding.text = fmt::format("a cone of concrete breaks out with loop {}: {} asked, {} allowed", insert.id,
                                 firstpick::print((*pull)->whole, units, Rounding::up),
                                 firstpick::print(Force{std::get<Resistance<Force>>(nominal).value / n.value.value()}, units,
                                                  Rounding::down));
      finding.remedy = "a deeper loop, farther from edges, or more strength before lifting";
    }
    return finding;
  });
}

}  // namespace firstpick::checks
