// No eye of bent reinforcing bar, and no toggle behind a hole, unless an engineer's document allows it.
//
// Source   two fatal lifts on such eyes and toggles (docs/rules/bent-bar-eye.md). Bar for concrete is made to
//          bond, not to be bent to an eye and pulled over a hook.
// With     engineers_document: a note. It gives no resistance: insert-kind stays HOLD where no rule evaluates
//          it.

#include <fmt/format.h>

#include "checks/insert_families.hpp"
#include "checks/rule.hpp"
#include "checks/stated_text.hpp"

namespace firstpick::checks {

std::vector<Finding> bent_bar_eye(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "bent-bar-eye";
  std::vector<Finding> findings;
  for (const plan::Insert& insert : facts.plan.inserts) {
    if (!is_improvised(insert.kind)) {
      findings.push_back(passed(id, insert.id));
      continue;
    }
    if (is_stated(insert.engineers_document)) {
      findings.push_back(noted(id, insert.id,
                               fmt::format("insert {} is a {}, allowed by the engineer's document {}",
                                           insert.id, insert.kind, insert.engineers_document)));
      continue;
    }
    Finding finding = missing(
        id, insert.id,
        insert.kind == "toggle"
            ? fmt::format("insert {} is a toggle behind a hole: it slips through", insert.id)
            : fmt::format("insert {} is bar bent to an eye: bar breaks where it is bent", insert.id),
        "an insert made for lifting; or the engineer's design and test: engineers_document = \"...\"");
    finding.result = Result::fail;
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace firstpick::checks
