// Rated inserts stand as far from each other as their supplier asks for: the declared load holds no nearer.
//
//   s >= minimum_spacing      s: straight to the nearest other insert of the plan, whatever its kind
//
// Source   the supplier's declaration; that it states the distance: DGUV Regel 101-001 4.2.1 (docs/rules/insert-spacing.md).
// Absent   minimum_spacing, where the plan has another insert: HOLD. One insert alone passes.

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

Finding spacing_of(const StageFacts& facts, const plan::Insert& insert, Trace& trace) {
  constexpr std::string_view id = "insert-spacing";
  const plan::Insert* nearest = nullptr;
  for (const plan::Insert& other : facts.plan.inserts)
    if (&other != &insert && (!nearest || norm(other.at - insert.at) < norm(nearest->at - insert.at)))
      nearest = &other;
  if (!nearest) return passed(id, insert.id);
  if (!insert.rating || !insert.rating->minimum_spacing)
    return missing(
        id, insert.id,
        fmt::format(
            "the distance between inserts for which the load of insert {} is declared is not in the plan",
            insert.id),
        "[[insert]] rating = { ..., minimum_spacing = \"...\" }, from the supplier's declaration");
  const Length apart = norm(nearest->at - insert.at);
  trace.add([&] {
    return Step{.words = fmt::format("from insert {} to the nearest other", insert.id),
                .result = {"s_near", in(mm, apart), "mm"},
                .clause = "geometry"};
  });
  Finding finding = compared<Length>(id, insert.id, Demand<Length>{*insert.rating->minimum_spacing},
                                     Resistance<Length>{apart}, 1.0, "supplier's declaration");
  if (finding.result == Result::fail) {
    const UnitSystem units = facts.plan.piece.units;
    finding.text = fmt::format("insert {} is {} from insert {}, its supplier asks for {}", insert.id,
                               firstpick::print(apart, units, Rounding::down), nearest->id,
                               firstpick::print(*insert.rating->minimum_spacing, units, Rounding::up));
    finding.remedy = "inserts farther apart, or inserts that are declared for this distance";
  }
  return finding;
}

}  // namespace

std::vector<Finding> insert_spacing(const StageFacts& facts, Trace& trace) {
  std::vector<Finding> findings;
  for (const plan::Insert& insert : facts.plan.inserts)
    if (insert.kind == "rated" || insert.rating) findings.push_back(spacing_of(facts, insert, trace));
  return findings;
}

}  // namespace firstpick::checks
