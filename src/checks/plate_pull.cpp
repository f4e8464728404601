#include "checks/plate_pull.hpp"

#include <cmath>
#include <optional>

namespace firstpick::checks {

namespace {

struct Pull {
  Force whole{};
  std::string situation;
};

Outcome<std::optional<Pull>> worst_pull(const StageFacts& facts, std::size_t insert) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.insert_situations)) return *gap;
  const auto& situations = std::get<std::vector<InsertSituation>>(facts.insert_situations);
  if (situations.empty()) return NotAssessed{"no situation was computed", {}};
  if (facts.rules.headed.en)
    return NotAssessed{"EN 1992-4 has no share of shear that may be left out beside the tension, and no source read says what "
                       "the wall of the hole of a bolt through the concrete holds",
                       "another kind of insert, or a rule set of the plant that gives that share"};
  const double neglected = facts.rules.headed.interaction_small.value.value();
  std::optional<Pull> worst;
  for (const InsertSituation& situation : situations) {
    const auto& f = situation.forces.at(insert);
    const Force whole = Force::from_value(std::hypot(f.tension.value(), f.shear.value()));
    if (!is_finite(whole)) return NotAssessed{"the force on the insert is not a usable number", {}};
    if (whole == Force{}) continue;
    if (!(f.shear.value() <= neglected * f.tension.value()))
      return NotAssessed{fmt::format("insert {} is pulled across its axis, and no source read says what the wall of its hole "
                                     "and the edge beside it hold", facts.plan.inserts[insert].id),
                         "legs that pull straight along the bolt: a spreader, or longer legs"};
    constexpr double more = 1.0 + 1e-9;  // of equals the first is named, whatever their last bits
    if (!worst || whole > more * worst->whole) worst = Pull{whole, situation.name};
  }
  return worst;
}

}  // namespace

Finding plate_against(std::string_view id, const StageFacts& facts, std::size_t insert,
                      const Outcome<Resistance<Force>>& nominal, std::string_view fails, std::string_view remedy,
                      Trace& trace) {
  const std::string& subject = facts.plan.inserts[insert].id;
  const auto found = worst_pull(facts, insert);
  if (const auto* gap = std::get_if<NotAssessed>(&found)) return missing(id, subject, gap->why, gap->remedy);
  const auto& pull = std::get<std::optional<Pull>>(found);
  if (!pull) return passed(id, subject);
  const auto& n = facts.rules.insert_factor;
  Finding finding = compared<Force>(id, subject, Demand<Force>{pull->whole}, nominal, n.value.value(), citation(n.source));
  finding.situation = pull->situation;
  if (!finding.utilization) return finding;
  const Force R = std::get<Resistance<Force>>(nominal).value;
  trace.add([&] {
    return Step{.words = fmt::format("share of what is allowed: {} behind the factor on inserts, {}", id, pull->situation),
                .result = {"u", *finding.utilization, "1"},
                .formula = "F_pull / (R / n_i)",
                .given = {{"F_pull", in(kN, pull->whole), "kN"}, {"R", in(kN, R), "kN"}, {"n_i", n.value.value(), "1"}},
                .clause = n.source.locator,
                .sources = {n.source, facts.rules.headed.interaction_small.source}};
  });
  if (finding.result == Result::fail) {
    const UnitSystem units = facts.plan.piece.units;
    finding.text = fmt::format("{} at {}: {} asked, {} allowed ({} nominal over {})", fails, subject,
                               firstpick::print(pull->whole, units, Rounding::up),
                               firstpick::print(Force{R / n.value.value()}, units, Rounding::down),
                               firstpick::print(R, units, Rounding::down), print_number(n.value.value(), 2));
    finding.remedy = std::string(remedy);
  }
  return finding;
}

}  // namespace firstpick::checks
