// A rated insert carries no more than its supplier declares, behind the factor of the rule set.
//
//   F <= F_ultimate / n     F = sqrt(tension^2 + shear^2), the whole force of the leg on the insert
//
// Where the rating declares loads by direction, the one of the pull counts (resistances/declared_load.cpp), and F is the pull
// that takes most of it.
// F_ultimate  declared load times the factor it includes, scaled down at lower strength (resistances/rated.cpp).
// The declared load is the most that is allowed.
// Absent      no rating, strength or included factor: HOLD. The direction of the pull is rule insert-angle.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "resistances/declared_load.hpp"
#include "resistances/rated.hpp"

namespace firstpick::checks {

namespace {

struct WorstForce {
  Force force{};
  std::string situation;
  Force declared{};  // for the direction of this pull
};

// A declared load is held against the load itself, with dynamic factor and grip of the form, never behind partial factors.
Outcome<std::vector<InsertSituation>> situations_for_ratings(const StageFacts& facts) {
  if (!facts.rules.load_factors || is_assessed(facts.insert_situations) == false) return facts.insert_situations;
  return on_inserts(facts.gear_situations, facts.plan, facts.rigging, facts.body);
}

// The pull that takes most of what is declared for its direction; of a rating without directions the largest pull.
Outcome<WorstForce> worst_pull(const StageFacts& facts, std::size_t insert) {
  const auto felt = situations_for_ratings(facts);
  if (const auto* gap = std::get_if<NotAssessed>(&felt)) return *gap;
  const auto& situations = std::get<std::vector<InsertSituation>>(felt);
  if (situations.empty()) return NotAssessed{"no situation was computed", {}};
  const plan::Insert& rated = facts.plan.inserts[insert];
  WorstForce worst;
  for (const InsertSituation& situation : situations) {
    const auto& f = situation.forces.at(insert);
    const Force whole = Force::from_value(std::hypot(f.tension.value(), f.shear.value()));
    if (!is_finite(whole)) return NotAssessed{"the force on the insert is not a usable number", {}};
    Force declared = rated.rating ? rated.rating->load : Force{};
    if (rated.rating && whole > Force{}) {
      const auto load = resistances::declared_load(rated, facts.body.sites.at(insert), {f.tension, f.shear_u, f.shear_v});
      if (const auto* gap = std::get_if<NotAssessed>(&load))
        return NotAssessed{fmt::format("{}, {}", gap->why, situation.name), gap->remedy};
      declared = std::get<Force>(load);
    }
    constexpr double more = 1.0 + 1e-9;  // of equals the first is named, whatever their last bits
    const bool takes_more = declared == worst.declared ? whole > more * worst.force
                                                       : whole.value() * worst.declared.value() >
                                                             more * worst.force.value() * declared.value();
    if (!worst.situation.empty() && !takes_more) {
      if (declared == worst.declared) worst.force = std::max(worst.force, whole);
      continue;
    }
    worst = {std::max(whole, declared == worst.declared ? worst.force : Force{}), situation.name, declared};
  }
  return worst;
}

// Never more than the declared load is allowed, however large the factor in it.
void cap_at_declared(const plan::Insert& insert, const StageFacts& facts, Outcome<Resistance<Force>>& ultimate,
                     Trace& trace) {
  auto* known = std::get_if<Resistance<Force>>(&ultimate);
  if (!known || facts.against_ultimate) return;
  const auto& factor = facts.rules.insert_factor;
  const Force most = insert.rating->load * factor.value;
  if (!(most < known->value)) return;
  *known = Resistance<Force>{most};
  trace.add([&] {
    return Step{.words = fmt::format("insert {}: not more than its declared load is allowed", insert.id),
                .result = {"U", in(kN, most), "kN"},
                .formula = "P * n_i",
                .given = {{"P", in(kN, insert.rating->load), "kN"}, {"n_i", factor.value.value(), "1"}},
                .clause = "supplier's declaration",
                .sources = {factor.source}};
  });
}

// In concrete that is weaker than the declared load asks, nothing is known but that it holds no more than there: what fails
// there fails here.
Outcome<Resistance<Force>> ultimate_of(const plan::Insert& insert, const Outcome<Demand<Force>>& demand,
                                       const StageFacts& facts, Trace& trace) {
  const Stress usable = std::get<Stress>(facts.usable_strength);
  auto ultimate = resistances::rated(insert, usable, facts.rules, trace);
  cap_at_declared(insert, facts, ultimate, trace);
  if (is_assessed(ultimate) || !is_assessed(demand) || !insert.rating || !insert.rating->at_strength ||
      !(usable > Stress{}) || !(usable < *insert.rating->at_strength))
    return ultimate;
  Trace silent;
  auto bound = resistances::rated(insert, *insert.rating->at_strength, facts.rules, silent);
  cap_at_declared(insert, facts, bound, silent);
  const auto* most = std::get_if<Resistance<Force>>(&bound);
  if (!most) return ultimate;
  const bool fails = compare<Force>(Demand<Force>{std::get<Demand<Force>>(demand)},
                                    behind_factor<Force>(*most, facts.rules.insert_factor.value.value())).result ==
                     Result::fail;
  return fails ? bound : ultimate;
}

// The insert with the load that is declared for the direction of its worst pull.
plan::Insert for_this_pull(const plan::Insert& insert, const Outcome<WorstForce>& worst) {
  plan::Insert one = insert;
  const auto* known = std::get_if<WorstForce>(&worst);
  if (one.rating && known && known->declared > Force{}) one.rating->load = known->declared;
  return one;
}

}  // namespace

std::vector<Finding> insert_rating(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "insert-rating";
  const auto& factor = facts.rules.insert_factor;
  const UnitSystem units = facts.plan.piece.units;
  std::vector<Finding> findings;
  findings.reserve(facts.plan.inserts.size());
  for (std::size_t i = 0; i < facts.plan.inserts.size(); ++i) {
    const plan::Insert& insert = facts.plan.inserts[i];
    if (insert.kind != "rated" && !insert.rating) continue;
    trace.about([&] { return fmt::format("{}: {}, insert {}", plan::word_for(facts.stage.kind), id, insert.id); });
    const auto worst = worst_pull(facts, i);
    Outcome<Demand<Force>> demand = NotAssessed{};
    if (const auto* gap = std::get_if<NotAssessed>(&worst)) demand = *gap;
    else demand = Demand<Force>{std::get<WorstForce>(worst).force};
    Outcome<Resistance<Force>> ultimate = NotAssessed{};
    if (const auto* gap = std::get_if<NotAssessed>(&facts.usable_strength)) ultimate = *gap;
    else ultimate = ultimate_of(for_this_pull(insert, worst), demand, facts, trace);

    Finding finding = compared<Force>(id, insert.id, demand, ultimate, factor.value.value(),
                                      citation(factor.source));
    if (const auto* w = std::get_if<WorstForce>(&worst)) finding.situation = w->situation;
    if (finding.utilization)
      trace.add([&] {
        return Step{.words = fmt::format("use of insert {} by its rating: the whole force of its leg", insert.id),
                    .result = {"u", *finding.utilization, "1"},
                    .formula = "F_A / (U / n_i)",
                    .given = {{"F_A", in(kN, std::get<Demand<Force>>(demand).value), "kN"},
                              {"U", in(kN, std::get<Resistance<Force>>(ultimate).value), "kN"},
                              {"n_i", factor.value.value(), "1"}},
                    .clause = factor.source.locator,
                    .sources = {factor.source}};
      });
    if (finding.result == Result::fail) {
      finding.text = fmt::format(
          "insert {} is asked for {}, {} is allowed at this strength", insert.id,
          firstpick::print(std::get<WorstForce>(worst).force, units, Rounding::up),
          firstpick::print(Force{std::get<Resistance<Force>>(ultimate).value / factor.value}, units, Rounding::down));
      if (facts.turning) finding.text += ", " + finding.situation;
      finding.remedy = "a larger insert, more strength before lifting, or steeper legs";
    }
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace firstpick::checks
