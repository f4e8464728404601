// Each insert can be traced to a certificate or batch.
//
// Source   accident reports of brittle inserts of unknown make (docs/rules/insert-certificate.md).
// Absent   HOLD.

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "checks/stated_text.hpp"

namespace firstpick::checks {

std::vector<Finding> insert_certificate(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "insert-certificate";
  std::vector<Finding> findings;
  findings.reserve(facts.plan.inserts.size());
  for (const plan::Insert& insert : facts.plan.inserts) {
    if (!is_stated(insert.certificate))
      findings.push_back(missing(id, insert.id, fmt::format("insert {} has no certificate or batch", insert.id),
                                 "[[insert]] certificate = \"lot ...\""));
    else
      findings.push_back(passed(id, insert.id));
  }
  return findings;
}

}  // namespace firstpick::checks
