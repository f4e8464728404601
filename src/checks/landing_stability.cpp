// A piece that was set down stands by itself, or is held, before the legs come off.
//
//   alpha = atan(d / h) >= limit        demands/set_down.hpp
//
// Source   statics. The limit is "minimum_tipping_angle" of the rule set, a choice. That bearers must be level, that what
//          stands badly is racked or braced first, and that every leg is off before the hook moves: accidents told on the
//          rule page.
// Form parts that may be off by now: the worse of with and without them.
// Held     in a rack or by a brace a lesser angle is a note. Not level: fail.
// Absent   [stage.landing], its `level` or its `legs_off`: HOLD.

#include <optional>

#include <fmt/format.h>

#include "checks/load_centre_of.hpp"
#include "checks/rule.hpp"
#include "demands/set_down.hpp"

namespace firstpick::checks {

namespace {

constexpr std::string_view landing_rule = "landing-stability";
constexpr std::string_view lines_to_write = "[[stage]] landing = { on = \"flat\", level = true, legs_off = true }";

Outcome<demands::Standing> standing_of(const StageFacts& facts) {
  const plan::Landing& landing = *facts.stage.landing;
  if (landing.on == plan::LandingOn::bearers && landing.bearers.empty())
    return NotAssessed{"the bearers under the piece are not in the plan",
                       "bearers = [ { along = [ [x, y, z], [x, y, z] ], width = \"100 mm\" }, ... ] in [stage.landing]"};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.up_after)) return *gap;
  const auto centres = load_centres_of(facts);
  if (const auto* gap = std::get_if<NotAssessed>(&centres)) return *gap;
  std::optional<demands::Standing> worst;
  for (const Position& centre : std::get<std::vector<Position>>(centres)) {
    const auto standing = demands::set_down(facts.body, landing.bearers, centre, std::get<Direction>(facts.up_after));
    if (const auto* gap = std::get_if<NotAssessed>(&standing)) return *gap;
    const auto& one = std::get<demands::Standing>(standing);
    if (!worst || one.tipping < worst->tipping) worst = one;  // not above zero where the margin is not
  }
  return *worst;
}

bool is_held(const plan::Landing& landing) {
  return landing.restrained == plan::Restraint::rack || landing.restrained == plan::Restraint::brace;
}

std::string holder(const plan::Landing& landing) {
  return landing.restrained == plan::Restraint::rack ? "the rack" : "the brace";
}

Finding tips(const StageFacts& facts, const demands::Standing& standing, Trace& trace) {
  const auto& limit = facts.rules.minimum_tipping_angle;
  const UnitSystem units = facts.plan.piece.units;
  const std::string& mark = facts.plan.piece.mark;
  trace.add([&] {
    return Step{.words = "tangent of the angle by which the piece may lean before it tips, set down",
                .result = {"tan_alpha", (standing.margin / standing.height).value(), "1"},
                .formula = "d_base / h_base",
                .given = {{"d_base", in(m, standing.margin), "m"}, {"h_base", in(m, standing.height), "m"}},
                .clause = "statics",
                .sources = {limit.source}};
  });
  const bool stands = standing.margin > Length{};
  Finding finding = compared<Angle>(landing_rule, mark, Demand<Angle>{limit.value}, Resistance<Angle>{standing.tipping}, 1.0,
                                    "rule set " + facts.rules.id);
  if (stands && finding.result != Result::fail) return finding;
  finding.result = Result::fail;
  finding.text = stands ? fmt::format("set down, the piece tips when it leans {}, {} is the least",
                                      print(standing.tipping, units, Rounding::down),
                                      print(limit.value, units, Rounding::up))
                        : std::string("set down, the piece tips over by itself: its centre of gravity is not inside what "
                                      "it stands on");
  finding.remedy = "[stage.landing] restrained = \"rack\" or \"brace\", or bearers farther apart";
  return finding;
}

}  // namespace

std::vector<Finding> landing_stability(const StageFacts& facts, Trace& trace) {
  const std::string& mark = facts.plan.piece.mark;
  if (!facts.stage.landing)
    return {missing(landing_rule, mark, "what the piece is set down on is not in the plan", std::string(lines_to_write))};
  const plan::Landing& landing = *facts.stage.landing;
  const auto standing = standing_of(facts);
  Finding finding;
  if (const auto* gap = std::get_if<NotAssessed>(&standing)) finding = missing(landing_rule, mark, gap->why, gap->remedy);
  else finding = tips(facts, std::get<demands::Standing>(standing), trace);

  if (is_held(landing) && finding.result != Result::pass) {
    finding.result = Result::note;
    finding.text += fmt::format("; {} must hold it before the legs come off", holder(landing));
    finding.remedy.clear();
  }
  if (finding.result == Result::fail) return {finding};
  if (landing.level == false) {
    finding.result = Result::fail;
    finding.text = "what the piece is set down on is not level";
    finding.remedy = "level, firm and clean bearers or ground";
  } else if (!landing.level || landing.legs_off != true) {
    finding.result = Result::missing;
    finding.text = !landing.level ? "nobody says that the landing is level"
                                  : "nobody checks that every leg is off before the hook moves";
    finding.remedy = !landing.level ? "[stage.landing] level = true" : "[stage.landing] legs_off = true";
  }
  return {finding};
}

}  // namespace firstpick::checks
