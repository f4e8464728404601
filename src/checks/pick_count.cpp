// A flat piece hangs on three picks or more, any piece on two or more.
//
//   flat where h <= r_flat * b     h: height of the piece as picked; b: the less of its two widths
//   picks of which none stands more than r_flat * b off the line of the two farthest apart count as two
//
// Source   lids that rolled over on two picks and on one (docs/rules/pick-count.md); "flat_piece" of the rule
//          set. The numbers of picks are those of statics: less than three points do not hold a plate against
//          rolling.
// h, b     of the bounding box, h along the axis of the piece nearest to the mean outward normal of the
//          inserts that the legs go to: what is up when they come tight, also for a piece that would then tip
//          over. As cast where the normals cancel. In a turn about an edge or between two hooks the piece also stands
//          on its edge or hangs from a second hook: a note. Off a tilting table it hangs free: counted.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

struct Extent {
  Length height, width;
};

Extent extent_as_picked(const StageFacts& facts) {
  Direction up{0.0, 0.0, 0.0};
  for (const plan::Leg& leg : facts.rigging->legs) {
    const auto site = std::ranges::find(facts.body.sites, leg.to, &piece::InsertSite::insert);
    if (site == facts.body.sites.end()) continue;
    up = {up.x + site->normal.x, up.y + site->normal.y, up.z + site->normal.z};
  }
  const Position size = facts.body.highest - facts.body.lowest;
  const double x = std::abs(up.x), y = std::abs(up.y), z = std::abs(up.z);
  if (x > y && x > z) return {size.x, std::min(size.y, size.z)};
  if (y > x && y > z) return {size.y, std::min(size.x, size.z)};
  return {size.z, std::min(size.x, size.y)};
}

std::vector<Position> places_of_picks(const StageFacts& facts) {
  std::vector<Position> places;
  for (const plan::Leg& leg : facts.rigging->legs) {
    const auto insert = std::ranges::find(facts.plan.inserts, leg.to, &plan::Insert::id);
    if (insert != facts.plan.inserts.end()) places.push_back(insert->at);
  }
  return places;
}

// How far the picks stand off the line of the two that are farthest apart, at most.
Length off_one_line(const std::vector<Position>& picks) {
  Position from = picks.front(), line;
  for (const Position& a : picks)
    for (const Position& b : picks)
      if (norm(b - a) > norm(line)) from = a, line = b - a;
  const Length length = norm(line);
  Length most{};
  if (!(length > Length{})) return most;
  const Direction along{line.x / length, line.y / length, line.z / length};
  for (const Position& pick : picks) {
    const Position apart = pick - from;
    const Position across = cross(along, apart);
    most = std::max(most, norm(across));
  }
  return most;
}

}  // namespace

std::vector<Finding> pick_count(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "pick-count";
  const std::string& subject = facts.stage.rigging;
  if (!facts.rigging)
    return {missing(id, subject, "the stage names no rigging", "[[stage]] rigging = \"...\"")};
  const bool off_a_table = facts.stage.turn && facts.stage.turn->method == plan::TurnMethod::table;
  if (facts.stage.kind == plan::StageKind::turn && !off_a_table)
    return {noted(id, subject,
                  "picks are not counted while the piece is turned: its edge or a second hook holds it too")};

  const auto& limit = facts.rules.flat_piece;
  const UnitSystem units = facts.plan.piece.units;
  const Extent extent = extent_as_picked(facts);
  const Length height = extent.height, width = extent.width;
  trace.add([&] {
    return Step{.words = "height up to which this piece counts as flat",
                .result = {"h_flat", in(m, Length{limit.value * width}), "m"},
                .formula = "r_flat * b",
                .given = {{"r_flat", limit.value.value(), "1"}, {"b", in(m, width), "m"}},
                .clause = "rule set " + facts.rules.id,
                .sources = {limit.source}};
  });
  const Comparison flat = compare<Length>(Demand<Length>{height}, Resistance<Length>{limit.value * width});
  if (flat.result == Result::missing)
    return {missing(id, subject, flat.why, "correct the solids of the piece")};

  const bool is_flat = flat.result == Result::pass;
  const double needed = is_flat ? 3.0 : 2.0;
  const std::vector<Position> places = places_of_picks(facts);
  const bool in_a_line = places.size() > 2 && !(off_one_line(places) > limit.value * width);
  const double picks = in_a_line ? 2.0 : static_cast<double>(places.size());
  const Comparison enough = compare<Ratio>(Demand<Ratio>{Ratio{needed}}, Resistance<Ratio>{Ratio{picks}});
  if (enough.result == Result::missing)
    return {missing(id, subject, "the rigging has no leg", "legs = [ ... ]")};
  if (enough.result == Result::pass) return {passed(id, subject)};
  const std::string on = in_a_line            ? "picks in one line"
                         : places.size() == 1 ? "one pick"
                                              : "two picks";
  Finding finding =
      missing(id, subject,
              is_flat ? fmt::format("a flat piece, {} high and {} wide, hangs on {}: it can roll over",
                                    firstpick::print(height, units), firstpick::print(width, units), on)
                      : fmt::format("the piece hangs on {}: nothing holds it from turning over", on),
              is_flat ? "three picks or more, around the centre of gravity" : "two picks or more");
  finding.result = Result::fail;
  return {finding};
}

}  // namespace firstpick::checks
