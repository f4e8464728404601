#include "card/lift_card.hpp"

#include <optional>

#include "card/content.hpp"
#include "card/drawing.hpp"

namespace firstpick::card {

Page lift_card(const plan::Plan& plan, const piece::Body& body, const checks::Report& report,
               std::size_t stage, Paper paper, const checks::PullsOnScale& pulls) {
  std::optional<Drawing> hangs, above;
  if (report.stages.at(stage).verdict == checks::Verdict::go) {
    const bool turns = report.stages[stage].turn.has_value();
    hangs = turns ? as_it_turns(plan, body, report, stage, pulls) : as_it_hangs(plan, body, report, stage);
    above = from_above(plan, body, report, stage);
  }
  return lay_out(card_of(plan, body, report, stage, pulls), hangs, above, paper);
}

}  // namespace firstpick::card
