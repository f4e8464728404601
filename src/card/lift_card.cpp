#include "card/lift_card.hpp"

#include <optional>

#include "card/content.hpp"
#include "card/drawing.hpp"

namespace firstpick::card {

Page lift_card(const plan::Plan& plan, const piece::Body& body, const checks::Report& report,
               std::size_t stage, Paper paper) {
  std::optional<Drawing> hangs, above;
  if (report.stages.at(stage).verdict == checks::Verdict::go) {
    hangs = as_it_hangs(plan, body, report, stage);
    above = from_above(plan, body, report, stage);
  }
  return lay_out(card_of(plan, body, report, stage), hangs, above, paper);
}

}  // namespace firstpick::card
