// The lift card of one stage: from what was checked to a page.
#pragma once

#include <cstddef>

#include "card/lay_out.hpp"
#include "card/page.hpp"
#include "checks/report.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"

namespace firstpick::card {

Page lift_card(const plan::Plan& plan, const piece::Body& body, const checks::Report& report,
               std::size_t stage, Paper paper);

}  // namespace firstpick::card
