// The lift card of one stage: from what was checked to a page.
#pragma once

#include <cstddef>

#include "card/lay_out.hpp"
#include "card/page.hpp"
#include "checks/pulls_on_scale.hpp"
#include "checks/report.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"

namespace firstpick::card {

// `pulls`: of a stage that turns the piece. Without them its card knows no limit, and says that it must not be lifted by.
Page lift_card(const plan::Plan& plan, const piece::Body& body, const checks::Report& report,
               std::size_t stage, Paper paper, const checks::PullsOnScale& pulls = {});

}  // namespace firstpick::card
