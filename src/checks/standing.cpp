#include "checks/standing.hpp"

#include <algorithm>

#include "checks/turn_sweep.hpp"

namespace firstpick::checks {

namespace {

// The middle of the picks of a rigging.
Outcome<Position> middle_of_picks(const plan::Plan& plan, const std::string& id) {
  const auto rigging = std::ranges::find(plan.riggings, id, &plan::Rigging::id);
  if (rigging == plan.riggings.end() || rigging->legs.empty())
    return NotAssessed{"a hook of the turn has no rigging", "[stage.turn] tail_rigging = \"...\""};
  Position sum;
  for (const plan::Leg& leg : rigging->legs) {
    const auto insert = std::ranges::find(plan.inserts, leg.to, &plan::Insert::id);
    if (insert == plan.inserts.end()) return NotAssessed{"a leg of the turn reaches no insert", "[[rigging]] legs"};
    sum = sum + insert->at;
  }
  return (1.0 / static_cast<double>(rigging->legs.size())) * sum;
}

}  // namespace

Outcome<demands::TurningFrame> frame_of(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body) {
  if (!stage.turn)
    return NotAssessed{how_is_missing, turn_to_write};
  const plan::Turn& turn = *stage.turn;
  if (!turn.method) return NotAssessed{"the method of the turn is not known", "[stage.turn] method = \"edge\""};
  if (*turn.method != plan::TurnMethod::two_hooks) {
    if (!turn.about)
      return NotAssessed{"the edge about which the piece turns is not in the plan",
                         "[stage.turn] about = [ [x, y, z], [x, y, z] ]"};
    return demands::frame_about_edge(*turn.about, body.centroid);
  }
  const auto main = middle_of_picks(plan, stage.rigging), tail = middle_of_picks(plan, turn.tail_rigging);
  if (const auto* gap = std::get_if<NotAssessed>(&main)) return *gap;
  if (const auto* gap = std::get_if<NotAssessed>(&tail)) return *gap;
  return demands::frame_between(std::get<Position>(tail), std::get<Position>(main));
}

Outcome<Direction> up_before(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body) {
  Direction up{0.0, 0.0, 1.0};
  for (const plan::Stage& before : plan.stages) {
    if (&before == &stage) break;
    if (before.kind != plan::StageKind::turn) continue;
    const auto frame = frame_of(plan, before, body);
    if (const auto* gap = std::get_if<NotAssessed>(&frame))
      return NotAssessed{"which way up the piece is after an earlier turn is not known: " + gap->why, gap->remedy};
    up = demands::up_at(std::get<demands::TurningFrame>(frame), before.turn->to);
  }
  return up;
}

Outcome<Direction> up_after(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body) {
  if (stage.kind != plan::StageKind::turn) return up_before(plan, stage, body);
  const auto frame = frame_of(plan, stage, body);
  if (const auto* gap = std::get_if<NotAssessed>(&frame)) return *gap;
  return demands::up_at(std::get<demands::TurningFrame>(frame), stage.turn->to);
}

}  // namespace firstpick::checks
