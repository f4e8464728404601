#include "checks/turn_situations.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "checks/insert_modes.hpp"
#include "checks/loop_pull.hpp"
#include "checks/standing.hpp"
#include "demands/worst_angle.hpp"
#include "resistances/interaction.hpp"
#include "units/print.hpp"

namespace firstpick::checks {

namespace {

void refuse(StageFacts& facts, const NotAssessed& why) {
  facts.turning = why;
  facts.hanging = why;
  facts.gear_situations = why;
  facts.insert_situations = why;
}

// One load set of a turn. While the form grips, the piece stands as it starts: the grip is gone once it has moved.
struct SetToTurn {
  demands::TurnedPiece piece;
  std::optional<Angle> only_at{};
};

std::vector<Situation> situations_of(const demands::TurnPose& pose, UnitSystem units, bool gripped) {
  std::vector<Situation> all;
  for (const demands::Sharing& sharing : pose.sharings) {
    std::string name = fmt::format("turned to {}{}", print(pose.angle, units), gripped ? ", breaking free" : "");
    if (!sharing.name.empty()) name += ", " + sharing.name;
    all.push_back({std::move(name), sharing.legs, !sharing.name.empty(), true});
  }
  return all;
}

Outcome<std::vector<Situation>> situations_at(const std::vector<SetToTurn>& sets, const std::vector<Angle>& angles,
                                              UnitSystem units) {
  std::vector<Situation> all;
  for (const SetToTurn& set : sets)
    for (const Angle& angle : set.only_at ? std::vector{*set.only_at} : angles) {
      const auto pose = pose_at(set.piece, angle);
      if (const auto* gap = std::get_if<NotAssessed>(&pose)) return *gap;
      for (Situation& one : situations_of(std::get<demands::TurnPose>(pose), units, set.only_at.has_value()))
        all.push_back(std::move(one));
    }
  return all;
}

// The largest utilization of an insert, by one way to fail or by tension and shear at once (no mode), at an angle.
double use_at(const StageFacts& facts, const demands::TurnedPiece& piece, std::size_t insert, std::optional<Mode> mode,
              Angle angle) {
  const auto felt = on_inserts(situations_at({{piece}}, {angle}, facts.plan.piece.units), facts.plan, facts.rigging,
                               facts.body);
  if (!is_assessed(felt)) return std::nan("");
  Trace silent;
  double most = 0.0;
  for (const InsertSituation& situation : std::get<std::vector<InsertSituation>>(felt)) {
    const auto use = [&](Mode one) {
      return check_mode(one, facts, situation, insert, silent).comparison.utilization.value_or(0.0);
    };
    if (mode) {
      most = std::max(most, use(*mode));
      continue;
    }
    resistances::Uses uses;
    for (const Mode one : all_modes) {
      Ratio& side = one == Mode::steel_tension ? uses.steel_tension
                    : one == Mode::steel_shear ? uses.steel_shear
                    : in_tension(one)          ? uses.concrete_tension
                                               : uses.concrete_shear;
      side = std::max(side, Ratio{use(one)});
    }
    most = std::max(most, resistances::interaction_utilization(uses, facts.rules.headed, silent).value());
  }
  return most;
}

// What a loop is asked for at an angle: the pull in its more loaded leg, or its lean.
double loop_use_at(const StageFacts& facts, const demands::TurnedPiece& piece, std::size_t insert, bool lean, Angle angle) {
  const auto felt = on_inserts(situations_at({{piece}}, {angle}, facts.plan.piece.units), facts.plan, facts.rigging,
                               facts.body);
  if (!is_assessed(felt)) return std::nan("");
  double most = 0.0;
  for (const InsertSituation& situation : std::get<std::vector<InsertSituation>>(felt)) {
    const LoopPull pull = loop_pull(facts.plan.inserts[insert], situation, insert);
    if (pull.whole > Force{}) most = std::max(most, lean ? pull.lean.value() : pull.leg.value());
  }
  return most;
}

std::vector<Angle> worst_for_inserts(const StageFacts& facts, const demands::TurnedPiece& piece,
                                     const std::vector<Angle>& samples) {
  std::vector<std::optional<Mode>> ways{std::nullopt};
  ways.insert(ways.end(), all_modes.begin(), all_modes.end());
  std::vector<Angle> found;
  for (const plan::Leg& leg : facts.rigging->legs) {
    const auto found_at = std::ranges::find(facts.plan.inserts, leg.to, &plan::Insert::id);
    const auto index = static_cast<std::size_t>(found_at - facts.plan.inserts.begin());
    const plan::Insert& insert = facts.plan.inserts.at(index);  // turned_piece() has found it
    if (is_lifting_loop(insert.kind))
      for (const bool lean : {false, true})
        found.push_back(demands::worst_angle(
            samples, [&](Angle angle) { return loop_use_at(facts, piece, index, lean, angle); }));
    if (insert.kind != "headed") continue;
    for (const auto& mode : ways)
      found.push_back(demands::worst_angle(
          samples, [&](Angle angle) { return use_at(facts, piece, index, mode, angle); }));
  }
  return found;
}

Outcome<std::vector<SetToTurn>> pieces_of(const StageFacts& facts, const std::vector<loads::LoadSet>& sets, Angle start) {
  std::vector<SetToTurn> pieces;
  for (const loads::LoadSet& set : sets) {
    auto piece = turned_piece(facts.plan, facts.stage, facts.body, set);
    if (const auto* gap = std::get_if<NotAssessed>(&piece)) return *gap;
    pieces.push_back({std::move(std::get<demands::TurnedPiece>(piece)), {}});
    if (set.name.starts_with(loads::breaking_free)) pieces.back().only_at = start;
  }
  if (pieces.empty()) return NotAssessed{"no load set acts in this stage", {}};
  return pieces;
}

// A piece taken off a table hangs on its legs in the end: the situations of that behind those of the turn.
std::optional<NotAssessed> add_hanging(StageFacts& facts, const std::vector<loads::LoadSet>& sets,
                                       std::vector<Situation>& all) {
  for (const loads::LoadSet& set : sets) {
    if (set.name.starts_with(loads::breaking_free)) continue;  // as it comes free, at the angle of the table
    auto hung = shared(facts.plan, facts.rigging, set, facts.rules, facts.tables,
                       std::get<Direction>(facts.up_after));
    if (const auto* gap = std::get_if<NotAssessed>(&hung)) return *gap;
    auto& found = std::get<Shared>(hung);
    if (!is_assessed(facts.hanging)) facts.hanging = found.hanging;
    if (set.name.ends_with(loads::without_form_parts)) facts.without_parts.push_back(found.hanging);
    for (Situation& one : found.situations) all.push_back(std::move(one));
  }
  return {};
}

// A hook may have more of the load while the form grips than at any angle later.
void add_shares_of_grip(const std::vector<SetToTurn>& sets, TurnSweep& sweep) {
  Force hanging{};
  for (const loads::AppliedLoad& load : sweep.piece.loads) hanging += load.force;
  for (const SetToTurn& set : sets) {
    if (!set.only_at) continue;
    const auto pose = std::get<demands::TurnPose>(pose_at(set.piece, *set.only_at));  // one of the situations
    Force total{};
    for (const loads::AppliedLoad& load : set.piece.loads) total += load.force;
    const double main = pose.main_pull / hanging;  // told, over the load that hangs
    const double tail = pose.tail_pull / total;    // of the second crane, over its own load
    if (tail > sweep.tail.share) sweep.tail = {tail, *set.only_at};
    if (main > sweep.main.share) sweep.main = {main, *set.only_at};
  }
}

}  // namespace

void add_turn(StageFacts& facts) {
  facts.joined = rigging_of_turn(facts.plan, facts.stage);
  if (facts.joined) facts.rigging = facts.joined.get();
  const auto& load = std::get<loads::StageLoad>(facts.load);
  if (!facts.stage.turn) return refuse(facts, {how_is_missing, turn_to_write});
  const auto range = range_of(facts.stage);
  if (const auto* gap = std::get_if<NotAssessed>(&range)) return refuse(facts, *gap);
  const Angle start = start_of(facts.stage, std::get<TurnRange>(range));
  const auto gear = pieces_of(facts, load.gear_loads, start), inserts = pieces_of(facts, load.insert_loads, start);
  if (const auto* gap = std::get_if<NotAssessed>(&gear)) return refuse(facts, *gap);
  if (const auto* gap = std::get_if<NotAssessed>(&inserts)) return refuse(facts, *gap);
  const auto& for_legs = std::get<std::vector<SetToTurn>>(gear);
  const auto& for_inserts = std::get<std::vector<SetToTurn>>(inserts);

  auto swept = turn_sweep(for_legs.front().piece, std::get<TurnRange>(range), facts.plan, facts.body, facts.rules);
  if (const auto* gap = std::get_if<NotAssessed>(&swept)) return refuse(facts, *gap);
  auto& sweep = std::get<TurnSweep>(swept);
  std::vector<Angle> swept_angles;
  for (const demands::TurnPose& pose : sweep.poses) swept_angles.push_back(pose.angle);
  std::vector<Angle> angles = swept_angles;
  for (const SetToTurn& set : for_inserts)
    if (!set.only_at)
      for (const Angle& angle : worst_for_inserts(facts, set.piece, swept_angles)) angles.push_back(angle);
  angles = in_order(std::move(angles));

  const UnitSystem units = facts.plan.piece.units;
  auto legs = situations_at(for_legs, angles, units), felt = situations_at(for_inserts, angles, units);
  if (const auto* gap = std::get_if<NotAssessed>(&legs)) return refuse(facts, *gap);
  if (const auto* gap = std::get_if<NotAssessed>(&felt)) return refuse(facts, *gap);
  sweep.poses.clear();
  for (const Angle& angle : angles)
    sweep.poses.push_back(std::get<demands::TurnPose>(pose_at(for_legs.front().piece, angle)));
  add_shares_of_grip(for_legs, sweep);

  facts.hanging = NotAssessed{"the piece is turned, it does not hang free", {}};
  if (for_legs.front().piece.method == plan::TurnMethod::table) {
    if (auto gap = add_hanging(facts, load.gear_loads, std::get<std::vector<Situation>>(legs)))
      return refuse(facts, *gap);
    if (auto gap = add_hanging(facts, load.insert_loads, std::get<std::vector<Situation>>(felt)))
      return refuse(facts, *gap);
  }
  facts.gear_situations = std::move(legs);
  facts.insert_situations = on_inserts(felt, facts.plan, facts.rigging, facts.body);
  facts.turning = std::move(sweep);
}

}  // namespace firstpick::checks
