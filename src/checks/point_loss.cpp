// When one point of the rigging lets go, the others hold what comes on them at once.
//
//   u <= 1        u: largest share of what breaks a survivor, lost_points.hpp
//
// Source   that one point goes first and the others follow is the common sequence of fatal lifts (docs/rules/point-loss.md).
//          Whether a lift that would not survive it is made is the rule set's choice, "loss_of_a_point": report (a note),
//          hold, refuse.
// Passes where the rule set only reports and nobody asks for the report (StageFacts::tells_losses).

#include <fmt/format.h>

#include "checks/lost_points.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

std::string in_words(const PointLoss& loss, UnitSystem units) {
  constexpr Angle worth_a_word = 2.0 * deg;
  const std::string swing = loss.swing && *loss.swing > worth_a_word
                                ? fmt::format(", and the piece swings by {}", print(*loss.swing, units, Rounding::up))
                                : std::string();
  if (!loss.use) return fmt::format("without {}: {}{}", loss.lost, loss.why, swing);
  const std::string when = loss.when.empty() ? std::string() : ", " + loss.when;
  return fmt::format("without {}, {} is asked for {} of what breaks it ({}){}{}", loss.lost, loss.survivor,
                     print_utilization(*loss.use), loss.rule, when, swing);
}

std::vector<Finding> point_loss(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "point-loss";
  const std::string& subject = facts.stage.rigging;
  const auto weight = facts.rules.loss_of_a_point.value;
  if (weight == tables::LossOfAPoint::report && !facts.tells_losses) return {passed(id, subject)};
  if (!facts.rigging) return {missing(id, subject, "the stage names no rigging", "[[stage]] rigging = \"...\"")};

  const PointLoss* worst = nullptr;
  const std::vector<PointLoss> losses = lost_points(facts);
  for (const PointLoss& loss : losses)
    if (!worst || (worst->use && (!loss.use || *loss.use > *worst->use))) worst = &loss;
  if (!worst) return {missing(id, subject, "the rigging has no leg", "legs = [ ... ]")};
  trace.add([&] {
    return Step{.words = "factor on the load that comes at once on what is left",
                .result = {"n_step", facts.rules.loss_step_factor.value.value(), "1"},
                .clause = "rule set " + facts.rules.id,
                .sources = {facts.rules.loss_step_factor.source, facts.rules.loss_of_a_point.source}};
  });
  if (worst->use && *worst->use <= 1.0) return {passed(id, subject)};
  const bool fact_missing = !worst->use && !worst->rule.empty();  // the rule that needs it says so
  if (fact_missing && weight == tables::LossOfAPoint::report) return {passed(id, subject)};
  Finding finding = missing(id, subject, "one point lets go: " + in_words(*worst, facts.plan.piece.units),
                            "more picks, or inserts and gear that hold it without that one");
  if (weight == tables::LossOfAPoint::report) finding.result = Result::note;
  if (weight == tables::LossOfAPoint::refuse && worst->use) finding.result = Result::fail;
  return {finding};
}

}  // namespace firstpick::checks
