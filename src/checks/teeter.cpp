// Picks too near each other under the middle of a piece let it teeter: a caution.
//
//   spacing / length >= r        spacing of the two picks farthest apart, length of the piece in their direction
//
// Source   that a barrier with its lifting slots too near the centre teeters: MwRSF, answer 32895 (read). The share is
//          "pick_spacing" of the rule set, a choice: below it a note, never a fail.
// Passes with one pick (another rule's concern) and in turns.

#include <algorithm>

#include <fmt/format.h>

#include "checks/picks_of.hpp"
#include "checks/rule.hpp"
#include "demands/base_plane.hpp"

namespace firstpick::checks {

namespace {

struct Spread {
  Length spacing{}, length{};
};

// Of the two picks farthest apart.
Spread spread_of(const std::vector<Position>& picks, const piece::Body& body) {
  Spread spread;
  Position apart;
  for (const Position& a : picks)
    for (const Position& b : picks)
      if (norm(b - a) > spread.spacing) {
        spread.spacing = norm(b - a);
        apart = b - a;
      }
  if (!(spread.spacing > Length{})) return spread;
  const Direction along{apart.x / spread.spacing, apart.y / spread.spacing, apart.z / spread.spacing};
  std::vector<Length> reach;
  for (const Position& corner : demands::corners_of(body)) reach.push_back(dot(along, corner));
  if (reach.empty()) return spread;
  const auto [low, high] = std::ranges::minmax_element(reach, {}, [](const Length& l) { return l.value(); });
  spread.length = *high - *low;
  return spread;
}

}  // namespace

std::vector<Finding> teeter(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "teeter";
  const std::string& subject = facts.stage.rigging;
  const std::vector<Position> picks = picks_of(facts);
  if (facts.stage.kind == plan::StageKind::turn || picks.size() < 2) return {passed(id, subject)};
  const Spread spread = spread_of(picks, facts.body);
  const auto& least = facts.rules.pick_spacing;
  if (!(spread.length > Length{})) return {missing(id, subject, "the length of the piece is not known", "[[piece.solid]]")};
  trace.add([&] {
    return Step{.words = "picks farthest apart over the length of the piece in their direction",
                .result = {"r_spread", (spread.spacing / spread.length).value(), "1"},
                .formula = "s_pick / l_pick",
                .given = {{"s_pick", in(m, spread.spacing), "m"}, {"l_pick", in(m, spread.length), "m"}},
                .clause = "geometry",
                .sources = {least.source}};
  });
  if (spread.spacing >= least.value * spread.length) return {passed(id, subject)};
  const UnitSystem units = facts.plan.piece.units;
  return {noted(id, subject, fmt::format("the picks are only {} apart on a piece {} long: it teeters, keep its ends on tag "
                                         "lines", print(spread.spacing, units, Rounding::down),
                                         print(spread.length, units, Rounding::up)))};
}

}  // namespace firstpick::checks
