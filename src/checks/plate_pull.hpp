// How a bolt through the concrete is pulled, and what its three rules share.
#pragma once

#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "checks/finding.hpp"
#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// The whole pull behind the factor of the rule set against `nominal`; passes where no leg of the stage pulls it.
// Missing: a pull further across its axis than may be neglected beside tension.
Finding plate_against(std::string_view id, const StageFacts& facts, std::size_t insert,
                      const Outcome<Resistance<Force>>& nominal, std::string_view fails, std::string_view remedy,
                      Trace& trace);

// judge(index) for every bolt with a plate on the far face.
template <class JudgeOne>
std::vector<Finding> for_each_plate(const StageFacts& facts, std::string_view id, Trace& trace, JudgeOne judge) {
  std::vector<Finding> findings;
  for (std::size_t i = 0; i < facts.plan.inserts.size(); ++i) {
    const plan::Insert& insert = facts.plan.inserts[i];
    if (insert.kind != "plate") continue;
    trace.about([&] { return fmt::format("{}: {}, insert {}", plan::word_for(facts.stage.kind), id, insert.id); });
    findings.push_back(judge(i));
  }
  return findings;
}

}  // namespace firstpick::checks
