// No insert is pulled further from its axis than its supplier allows.
//
//   angle of the force from the outward normal of the face <= maximum_angle
//
// Source   the supplier's declaration. Concrete round the inserts of a stair cracked at the first lift
//          because the angle that its system was made for was not kept (docs/rules/insert-angle.md).
// Absent   maximum_angle of a rated insert: HOLD. An insert that no leg of the stage reaches passes.

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

struct Lean {
  Angle angle{};
  std::string situation;
};

// The largest angle over all situations in which the insert is pulled; nothing where it never is.
Outcome<std::optional<Lean>> largest_lean(const StageFacts& facts, std::size_t insert) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.insert_situations)) return *gap;
  const auto& situations = std::get<std::vector<InsertSituation>>(facts.insert_situations);
  if (situations.empty()) return NotAssessed{"no situation was computed", {}};
  std::optional<Lean> largest;
  for (const InsertSituation& situation : situations) {
    const auto& f = situation.forces.at(insert);
    if (!is_finite(f.tension) || !is_finite(f.shear))
      return NotAssessed{"the force on the insert is not a usable number", {}};
    if (f.tension == Force{} && f.shear == Force{}) continue;
    const Angle angle = Angle::from_value(std::atan2(f.shear.value(), f.tension.value()));
    if (!largest || angle > largest->angle) largest = Lean{angle, situation.name};
  }
  return largest;
}

}  // namespace

std::vector<Finding> insert_angle(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "insert-angle";
  const UnitSystem units = facts.plan.piece.units;
  std::vector<Finding> findings;
  for (std::size_t i = 0; i < facts.plan.inserts.size(); ++i) {
    const plan::Insert& insert = facts.plan.inserts[i];
    if (insert.kind != "rated" && !insert.rating) continue;
    if (!insert.rating || !insert.rating->maximum_angle) {
      findings.push_back(missing(id, insert.id,
                                 "the largest angle of pull that the supplier allows is not in the plan",
                                 "[[insert]] rating = { ..., maximum_angle = \"...\" }"));
      continue;
    }
    const auto lean = largest_lean(facts, i);
    if (const auto* gap = std::get_if<NotAssessed>(&lean)) {
      findings.push_back(missing(id, insert.id, gap->why, gap->remedy));
      continue;
    }
    const auto& pulled = std::get<std::optional<Lean>>(lean);
    if (!pulled) {
      findings.push_back(passed(id, insert.id));
      continue;
    }
    trace.add([&] {
      return Step{.words = fmt::format("angle of the pull from the axis of insert {}", insert.id),
                  .result = {"alpha", in(deg, pulled->angle), "deg"},
                  .formula = {},
                  .given = {},
                  .clause = "statics",
                  .sources = {}};
    });
    Finding finding =
        compared<Angle>(id, insert.id, Demand<Angle>{pulled->angle},
                        Resistance<Angle>{*insert.rating->maximum_angle}, 1.0, "supplier's declaration");
    finding.situation = pulled->situation;
    if (finding.result == Result::fail) {
      finding.text = fmt::format("insert {} is pulled {} from its axis, its supplier allows {}", insert.id,
                                 firstpick::print(pulled->angle, units, Rounding::up),
                                 firstpick::print(*insert.rating->maximum_angle, units, Rounding::down));
      finding.remedy = "longer legs, or a spreader beam; or an insert made for this angle";
    }
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace firstpick::checks
