// A loop cast in to connect one piece to the next is no lift point.
//
// Source   drawings of road authorities forbid lifting barriers by their connection loops, read in a page
//          that sums them up (docs/rules/connection-loop.md).
// Absent   made_for of a loop: HOLD. "connection", whatever the kind: fail.

#include <fmt/format.h>

#include "checks/insert_families.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> connection_loop(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "connection-loop";
  std::vector<Finding> findings;
  for (const plan::Insert& insert : facts.plan.inserts) {
    if (!insert.made_for && is_loop(insert.kind)) {
      findings.push_back(missing(id, insert.id, "whether a loop was made for lifting is not in the plan",
                                 "[[insert]] made_for = \"lifting\", if the drawing says so"));
    } else if (insert.made_for == plan::MadeFor::connection) {
      Finding finding = missing(
          id, insert.id, fmt::format("insert {} was made to connect the piece, not to lift it", insert.id),
          "lift by the points that the drawing gives for lifting");
      finding.result = Result::fail;
      findings.push_back(std::move(finding));
    } else {
      findings.push_back(passed(id, insert.id));
    }
  }
  return findings;
}

}  // namespace firstpick::checks
