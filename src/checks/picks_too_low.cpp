// A piece hangs from above its centre of gravity.
//
//   z > 0      z: of the picks above the centre of gravity as it hangs, their mean by what each carries upright
//
//   z = sum(V_i z_i) / sum(V_i)        V_i: upright part of the tension of leg i at its pick
//
// Held lower, legs that meet above still balance it on paper; once one goes slack it turns over (docs/rules/picks-too-low.md).
// Source   statics. Judged with form parts and without those that may be off by now.
// Missing  statics not assessed, but where every pick lies at the centre or below as the stage starts: fail. Passes while the piece turns on an edge or between two hooks.

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "checks/load_centre_of.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

// Not assessed: no leg pulls upwards at an insert.
Outcome<Length> picks_above(const StageFacts& facts, const demands::Hanging& hanging,
                            const Position& centre) {
  Force upright{};
  Moment about{};
  for (std::size_t leg = 0; leg < facts.rigging->legs.size() && leg < hanging.legs.size(); ++leg) {
    const auto insert = std::ranges::find(facts.plan.inserts, facts.rigging->legs[leg].to, &plan::Insert::id);
    if (insert == facts.plan.inserts.end()) continue;  // to a beam or a sheave
    const Force part = hanging.legs[leg].tension * std::sin(hanging.legs[leg].angle_from_horizontal.value());
    upright += part;
    about += part * dot(hanging.up, insert->at - centre);
  }
  if (!(upright > Force{})) return NotAssessed{"no leg pulls upwards at an insert", {}};
  return Length{about / upright};
}

// Where no rest is known: how high the highest pick lies over the centre as the piece starts. Nothing: not known.
std::optional<Length> highest_at_first(const StageFacts& facts) {
  const auto* up = std::get_if<Direction>(&facts.up_before);
  const auto centres = load_centres_of(facts);
  if (!up || !facts.rigging || !is_assessed(centres)) return {};
  std::optional<Length> highest;
  for (const plan::Leg& leg : facts.rigging->legs) {
    const auto insert = std::ranges::find(facts.plan.inserts, leg.to, &plan::Insert::id);
    if (insert == facts.plan.inserts.end()) continue;
    for (const Position& centre : std::get<std::vector<Position>>(centres)) {
      const Length above = dot(*up, insert->at - centre);
      if (!highest || above > *highest) highest = above;
    }
  }
  return highest;
}

Outcome<Length> least_height(const StageFacts& facts) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.hanging)) return *gap;
  if (!facts.rigging) return NotAssessed{"the stage names no rigging", "[[stage]] rigging = \"...\""};
  const auto centres = load_centres_of(facts);
  if (const auto* gap = std::get_if<NotAssessed>(&centres)) return *gap;
  const auto& at = std::get<std::vector<Position>>(centres);
  std::optional<Length> least;
  for (std::size_t i = 0; i < at.size(); ++i) {
    const bool without = i > 0 && i <= facts.without_parts.size();
    const auto above = picks_above(
        facts, without ? facts.without_parts[i - 1] : std::get<demands::Hanging>(facts.hanging), at[i]);
    if (const auto* gap = std::get_if<NotAssessed>(&above)) return *gap;
    if (!least || std::get<Length>(above) < *least) least = std::get<Length>(above);
  }
  return *least;
}

}  // namespace

std::vector<Finding> picks_too_low(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "picks-too-low";
  const std::string& subject = facts.stage.rigging;
  if (facts.turning && is_assessed(*facts.turning) && facts.stage.turn->method != plan::TurnMethod::table)
    return {passed(id, subject)};
  constexpr Length rounding_of_places = 1e-6 * mm;
  auto height = least_height(facts);
  if (!is_assessed(height) && facts.stage.kind != plan::StageKind::turn)
    if (const auto highest = highest_at_first(facts); highest && *highest <= rounding_of_places)
      height = *highest;
  if (const auto* gap = std::get_if<NotAssessed>(&height))
    return {missing(id, subject, gap->why, gap->remedy)};
  const Length z = std::get<Length>(height);
  if (!is_finite(z)) return {missing(id, subject, "the height of the picks is not a usable number", {})};
  trace.add([&] {
    return Step{.words = "picks above the centre of gravity as the piece hangs, by what each carries",
                .result = {"z_pick", in(mm, z), "mm"},
                .clause = "statics"};
  });
  if (z > rounding_of_places) return {passed(id, subject)};
  const UnitSystem units = facts.plan.piece.units;
  Finding finding =
      missing(id, subject,
              -z > rounding_of_places
                  ? fmt::format("the picks lie {} below the centre of gravity: the piece wants to turn over",
                                print(-z, units, Rounding::up))
                  : std::string("the picks lie at the height of the centre of gravity: nothing keeps the "
                                "piece from turning over"),
              "picks above the centre of gravity");
  finding.result = Result::fail;
  return {finding};
}

}  // namespace firstpick::checks
