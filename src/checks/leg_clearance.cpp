// The legs, the hooks and the beams have room beside the concrete, and the legs beside each other.
//
//   no line through the concrete or a beam    else NO-GO
//   distance >= c_leg                   of a leg or a beam from the concrete, of legs and beams from each other; else HOLD
//   distance >= c_hook                  of a hook and the rope above it from the concrete; else HOLD; of two hooks: NO-GO
//
// Lines are where they are as the piece hangs, with form parts and without those that may be off; in a turn at every angle
// that is computed. A leg starts on the concrete: the face of its insert and all behind it is not near it, and its first
// c_end, which is clutch or shackle, may stand in a recess (up to c_leg of it inside the concrete of the rim).
// Source   geometry of the solid (piece/concrete_beside.hpp). c_leg, c_end, c_hook: "leg_clearance", "leg_end",
//          "hook_clearance" of the rule set, choices. See docs/rules/leg-clearance.md.
// Missing  the statics are not assessed; the solid cannot be asked.

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "checks/room_of_legs.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

constexpr std::string_view clearance_rule = "leg-clearance";

Finding refused(const std::string& subject, std::string text, std::string remedy, Result result) {
  Finding finding = missing(clearance_rule, subject, std::move(text), std::move(remedy));
  finding.result = result;
  return finding;
}

Finding judged(const StageFacts& facts, const TooNear& near) {
  const std::string& subject = facts.stage.rigging;
  const UnitSystem units = facts.plan.piece.units;
  const std::string at = near.situation.empty() ? "" : ", " + near.situation;
  switch (near.kind) {
    case TooNear::Kind::through:
      return refused(subject,
                     fmt::format("{} would go through the concrete, {} of it inside{}", near.what,
                                 print(near.length, units, Rounding::up), at),
                     "longer legs, a beam that holds them apart, or picks elsewhere", Result::fail);
    case TooNear::Kind::near_concrete:
      return refused(subject,
                     fmt::format("{} passes {} from the concrete, {} is the least{}", near.what,
                                 print(near.length, units, Rounding::down), print(near.least, units, Rounding::up), at),
                     "longer legs, a beam that holds them apart, or picks elsewhere", Result::missing);
    case TooNear::Kind::near_each_other:
      return refused(subject,
                     fmt::format("{} pass {} from each other, {} is the least{}", near.what,
                                 print(near.length, units, Rounding::down), print(near.least, units, Rounding::up), at),
                     "legs that do not cross each other or a beam: each to the pick on its own side", Result::missing);
    case TooNear::Kind::through_beam:
      return refused(subject, fmt::format("{} would go through each other{}", near.what, at),
                     "legs that pass beside the beam, or points of it elsewhere", Result::fail);
    case TooNear::Kind::hooks:
      return refused(subject,
                     fmt::format("{} are {} from each other, {} is the least{}", near.what,
                                 print(near.length, units, Rounding::down), print(near.least, units, Rounding::up), at),
                     "[[rigging.hook]] at: hooks apart, or all legs on one hook", Result::fail);
  }
  return missing(clearance_rule, subject, "how the legs pass the concrete is not known", {});
}

void record(const StageFacts& facts, Trace& trace) {
  const auto add = [&](const char* words, const char* symbol, const Sourced<Length>& value) {
    trace.add([&] {
      return Step{.words = words,
                  .result = {symbol, in(mm, value.value), "mm"},
                  .clause = "rule set " + facts.rules.id,
                  .sources = {value.source}};
    });
  };
  add("least distance of a leg from concrete and from another leg", "c_leg", facts.rules.leg_clearance);
  add("end of a leg that may stand in a recess", "c_end", facts.rules.leg_end);
  add("least distance of a hook from concrete and from another hook", "c_hook", facts.rules.hook_clearance);
}

}  // namespace

std::vector<Finding> leg_clearance(const StageFacts& facts, Trace& trace) {
  const std::string& subject = facts.stage.rigging;
  if (!facts.rigging)
    return {missing(clearance_rule, subject, "the stage names no rigging", "[[stage]] rigging = \"...\"")};
  record(facts, trace);
  const auto room = room_of_legs(facts);
  if (const auto* gap = std::get_if<NotAssessed>(&room)) return {missing(clearance_rule, subject, gap->why, gap->remedy)};
  std::vector<Finding> findings;
  for (const TooNear& near : std::get<std::vector<TooNear>>(room)) findings.push_back(judged(facts, near));
  if (findings.empty()) findings.push_back(passed(clearance_rule, subject));
  return findings;
}

}  // namespace firstpick::checks
