// Each insert was found where it was drawn, before and after the pour.
//
// Source   inspection; accident reports of eyes that were not where designed (docs/rules/insert-position.md).
// Absent   HOLD. Confirmed as wrong (false): fail.

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> insert_position(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "insert-position";
  std::vector<Finding> findings;
  findings.reserve(facts.plan.inserts.size());
  for (const plan::Insert& insert : facts.plan.inserts) {
    if (!insert.position_confirmed)
      findings.push_back(missing(id, insert.id, fmt::format("nobody has confirmed where insert {} is", insert.id),
                                 "look before and after the pour, then write position_confirmed = true"));
    else if (!*insert.position_confirmed) {
      Finding finding = missing(id, insert.id, fmt::format("insert {} is not where it was drawn", insert.id),
                                "enter where it is, and have the engineer of record check the plan again");
      finding.result = Result::fail;
      findings.push_back(std::move(finding));
    } else
      findings.push_back(passed(id, insert.id));
  }
  return findings;
}

}  // namespace firstpick::checks
