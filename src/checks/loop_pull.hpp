// How a loop is pulled, and what the rules about loops share.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "checks/finding.hpp"
#include "checks/insert_families.hpp"
#include "checks/stage_facts.hpp"
#include "resistances/loop_leg.hpp"

namespace firstpick::checks {

struct LoopPull {
  Force leg{}, whole{};      // in the more loaded leg of the loop; on the loop
  Angle lean{};              // from the outward normal of the face
  std::string situation;
  bool turning = false, some_legs_only = false;
};

// In one situation.
LoopPull loop_pull(const plan::Insert& insert, const InsertSituation& situation, std::size_t index);

// The pull of the situation that loads one leg most, or that leans most; nothing where no situation pulls the loop.
enum class LoopWorst { by_leg, by_lean };
Outcome<std::optional<LoopPull>> worst_loop_pull(const StageFacts& facts, std::size_t insert, LoopWorst by);

// What goes through a loop of strand in this stage. Not assessed: hardware or its diameter unknown, a thin pin.
Outcome<resistances::LoopGrip> loop_grip(const StageFacts& facts, std::size_t insert, Trace& trace);

// Wire rope with a rating: its supplier's declaration covers bond and steel.
bool stands_on_its_rating(const plan::Insert& insert);

// A finding that holds the more loaded leg against `nominal` behind the factor of the rule set.
Finding leg_against(std::string_view id, const StageFacts& facts, std::size_t insert,
                    const Outcome<std::optional<LoopPull>>& pull, const Outcome<Resistance<Force>>& nominal,
                    std::string_view fails, std::string_view remedy, Trace& trace);

// judge(index) for every loop that is made of strand, bar or rope.
template <class JudgeOne>
std::vector<Finding> for_each_loop(const StageFacts& facts, std::string_view id, Trace& trace, JudgeOne judge) {
  std::vector<Finding> findings;
  for (std::size_t i = 0; i < facts.plan.inserts.size(); ++i) {
    const plan::Insert& insert = facts.plan.inserts[i];
    if (!is_lifting_loop(insert.kind)) continue;
    trace.about([&] { return fmt::format("{}: {}, insert {}", plan::word_for(facts.stage.kind), id, insert.id); });
    findings.push_back(judge(i));
  }
  return findings;
}

}  // namespace firstpick::checks
