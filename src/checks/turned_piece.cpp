// The facts of a turn stage put together for the statics, or what is missing.

#include <algorithm>

#include <fmt/format.h>

#include "checks/standing.hpp"
#include "checks/turn_sweep.hpp"
#include "demands/edge_on_ground.hpp"
#include "plan/rigging_tree.hpp"
#include "units/print.hpp"

namespace firstpick::checks {

namespace {

constexpr double as_it_stands = 1e-3;  // of the sine of the angle between two attitudes: 0.06 degrees

const plan::Rigging* rigging_named(const plan::Plan& plan, const std::string& id) {
  const auto found = std::ranges::find(plan.riggings, id, &plan::Rigging::id);
  return found == plan.riggings.end() ? nullptr : &*found;
}

struct Rigged {
  std::vector<demands::HungLeg> legs;
  std::vector<std::vector<std::size_t>> equalised;
};

Outcome<Rigged> rigged(const plan::Plan& plan, const plan::Rigging& rigging) {
  if (plan::has_parts(rigging))
    return NotAssessed{"a turn below hooks of the rigging, beams or sheaves is not computed",
                       "legs straight from the hook (equalised = [[...]] for one rope over a sheave on it), or the "
                       "engineer's own calculation"};
  if (rigging.length_tolerance)
    return NotAssessed{"errors of leg length are not computed while the piece turns",
                       "a [[rigging]] of its own for the turn, its legs measured, without length_tolerance"};
  Rigged found;
  for (const plan::Leg& leg : rigging.legs) {
    const auto insert = std::ranges::find(plan.inserts, leg.to, &plan::Insert::id);
    if (insert == plan.inserts.end())
      return NotAssessed{fmt::format("leg to '{}': there is no such insert", leg.to), "[[insert]]"};
    if (!leg.length)
      return NotAssessed{fmt::format("the leg to {} has no length", leg.to),
                         "legs = [ { to, length = \"2.6 m\", gear } ]"};
    found.legs.push_back({leg.to, insert->at, *leg.length, Force{}});
  }
  for (const auto& group : rigging.equalised) {
    std::vector<std::size_t> legs;
    for (const auto& id : group)
      for (std::size_t i = 0; i < rigging.legs.size(); ++i)
        if (rigging.legs[i].to == id.value) legs.push_back(i);
    found.equalised.push_back(std::move(legs));
  }
  return found;
}

std::optional<NotAssessed> starts_elsewhere(const plan::Plan& plan, const plan::Stage& stage,
                                            const piece::Body& body, const demands::TurningFrame& frame) {
  const auto before = up_before(plan, stage, body);
  if (const auto* gap = std::get_if<NotAssessed>(&before)) return *gap;
  const Direction& up = std::get<Direction>(before);
  const Direction start = demands::up_at(frame, stage.turn->from);
  if (dot(up, start) > 0.0 && norm(cross(up, start)) <= as_it_stands) return {};
  return NotAssessed{fmt::format("the piece does not stand at {} before this stage",
                                 print(stage.turn->from, plan.piece.units)),
                     "[stage.turn] from = the angle at which the stage before left it, about the same direction"};
}

}  // namespace

std::shared_ptr<const plan::Rigging> rigging_of_turn(const plan::Plan& plan, const plan::Stage& stage) {
  const plan::Rigging* main = rigging_named(plan, stage.rigging);
  if (!main) return nullptr;
  plan::Rigging joined = *main;
  if (stage.turn && stage.turn->method == plan::TurnMethod::two_hooks)
    if (const plan::Rigging* tail = rigging_named(plan, stage.turn->tail_rigging))
      joined.legs.insert(joined.legs.end(), tail->legs.begin(), tail->legs.end());
  return std::make_shared<const plan::Rigging>(std::move(joined));
}

Outcome<TurnRange> range_of(const plan::Stage& stage) {
  const plan::Turn& turn = *stage.turn;
  TurnRange range{std::min(turn.from, turn.to), std::max(turn.from, turn.to)};
  if (turn.method != plan::TurnMethod::table) return range;
  if (!turn.table_angle)
    return NotAssessed{"the angle at which the crane takes the piece off the table is not in the plan",
                       "[stage.turn] table_angle = \"80 deg\""};
  if (!(*turn.table_angle >= range.low && *turn.table_angle <= range.high))
    return NotAssessed{"the table angle lies outside the turn", "[stage.turn] table_angle between from and to"};
  return turn.from < turn.to ? TurnRange{*turn.table_angle, range.high} : TurnRange{range.low, *turn.table_angle};
}

Angle start_of(const plan::Stage& stage, const TurnRange& range) {
  return stage.turn->from < stage.turn->to ? range.low : range.high;
}

Outcome<demands::TurnedPiece> turned_piece(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body,
                                           const loads::LoadSet& set) {
  const auto frame = frame_of(plan, stage, body);
  if (const auto* gap = std::get_if<NotAssessed>(&frame)) return *gap;
  const plan::Turn& turn = *stage.turn;
  demands::TurnedPiece piece{.frame = std::get<demands::TurningFrame>(frame), .method = *turn.method};
  if (auto elsewhere = starts_elsewhere(plan, stage, body, piece.frame)) return *std::move(elsewhere);
  if (piece.method != plan::TurnMethod::two_hooks)
    if (auto refused = demands::edge_refusal(body, piece.frame, turn.from, turn.to)) return *std::move(refused);

  const plan::Rigging* main = rigging_named(plan, stage.rigging);
  if (!main) return NotAssessed{"the stage names no rigging", "[[stage]] rigging = \"...\""};
  auto legs = rigged(plan, *main);
  if (const auto* gap = std::get_if<NotAssessed>(&legs)) return *gap;
  piece.legs = std::move(std::get<Rigged>(legs).legs);
  piece.equalised = std::move(std::get<Rigged>(legs).equalised);
  piece.loads = set.loads;
  if (piece.method == plan::TurnMethod::edge)
    piece.let_down = std::min(turn.from, turn.to) >= demands::balance_angle(piece);
  if (piece.method != plan::TurnMethod::two_hooks) return piece;

  const plan::Rigging* tail = rigging_named(plan, turn.tail_rigging);
  if (!tail) return NotAssessed{"the second hook has no rigging", "[stage.turn] tail_rigging = \"...\""};
  for (const plan::Leg& leg : tail->legs)
    if (std::ranges::find(main->legs, leg.to, &plan::Leg::to) != main->legs.end())
      return NotAssessed{fmt::format("insert {} hangs on both hooks", leg.to), "an insert of its own for each leg"};
  auto tail_legs = rigged(plan, *tail);
  if (const auto* gap = std::get_if<NotAssessed>(&tail_legs)) return *gap;
  piece.tail_legs = std::move(std::get<Rigged>(tail_legs).legs);
  piece.tail_equalised = std::move(std::get<Rigged>(tail_legs).equalised);
  return piece;
}

}  // namespace firstpick::checks
