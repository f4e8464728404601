// What takes hold of an insert is of its size.
//
// Source   a fatal lift with clutches of 2.5 t on inserts of 1.3 t: the recess took either, the loads were
//          under a third of the rating (docs/rules/clutch-mismatch.md). No number stands behind it: the two
//          marks are the same or not.
// Clutch, screw-in part   size equal to the insert's. Either mark not in the plan: HOLD.
// Shackle, hook           no size to match; on a loop, an eye, a plate or a rated insert without a size mark. Else: HOLD.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "checks/hardware_of.hpp"
#include "checks/insert_families.hpp"
#include "checks/rule.hpp"
#include "plan/rigging_tree.hpp"
#include "plan/words.hpp"

namespace firstpick::checks {

namespace {

bool same_mark(const plan::MarkedSize& a, const plan::MarkedSize& b) {
  constexpr double rounding = 1e-9;  // 1.3 t and 1300 kg are one mark; a neighbouring class is far off
  return std::abs(a.value / b.value - 1.0) <= rounding;
}

Finding judge_pair(std::string_view id, const plan::Insert& insert, const plan::Hardware& hardware) {
  const std::string_view word = plan::word_for(hardware.kind);
  if (hardware.kind == plan::HardwareKind::shackle || hardware.kind == plan::HardwareKind::hook) {
    if (insert.kind == "rated" && insert.size)
      return missing(id, insert.id,
                     fmt::format("the insert is marked {} for hardware of its own, and {} '{}' has no such mark",
                                 insert.size->text, word, hardware.id),
                     "[[hardware]]: the clutch or screw-in part of that mark; no `size` on an insert that a shackle takes");
    if (takes_a_hook(insert.kind)) return passed(id, insert.id);
    return missing(id, insert.id,
                   fmt::format("{} '{}' goes through a loop or an eye, and insert {} is of kind '{}'", word,
                               hardware.id, insert.id, insert.kind),
                   "[[hardware]]: what takes hold of the insert itself, a clutch or a screw-in part");
  }
  if (!insert.size)
    return missing(id, insert.id, "the size marked on the inserts is not in the plan",
                   "[[insert]] size = \"1.3 t\", as marked on it; an insert without a mark is not lifted by");
  if (!hardware.size)
    return missing(id, insert.id,
                   fmt::format("the size marked on {} '{}' is not in the plan", word, hardware.id),
                   "[[hardware]] size = \"1.3 t\", as marked on it; one without a mark is not used");
  if (same_mark(*insert.size, *hardware.size)) return passed(id, insert.id);
  Finding finding = missing(id, insert.id,
                            fmt::format("the insert is marked {}, {} '{}' on it {}: it may slip off",
                                        insert.size->text, word, hardware.id, hardware.size->text),
                            "hardware of the size that is marked on the insert, whatever the load");
  finding.result = Result::fail;
  return finding;
}

}  // namespace

std::vector<Finding> clutch_mismatch(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "clutch-mismatch";
  std::vector<Finding> findings;
  if (!facts.rigging) return findings;
  for (std::size_t leg = 0; leg < facts.rigging->legs.size(); ++leg) {
    const std::string& to = facts.rigging->legs[leg].to;
    const auto insert = std::ranges::find(facts.plan.inserts, to, &plan::Insert::id);
    if (plan::carrier_end(*facts.rigging, to)) {  // a beam or a sheave has no insert
      findings.push_back(passed(id, to));
      continue;
    }
    const auto hardware = hardware_of(facts, leg);
    if (const auto* gap = std::get_if<NotAssessed>(&hardware))
      findings.push_back(missing(id, to, gap->why, gap->remedy));
    else if (insert == facts.plan.inserts.end())
      findings.push_back(
          missing(id, to, fmt::format("there is no insert '{}'", to), "[[insert]] id = \"...\""));
    else
      findings.push_back(judge_pair(id, *insert, *std::get<const plan::Hardware*>(hardware)));
  }
  return findings;
}

}  // namespace firstpick::checks
