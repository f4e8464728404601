// Weight of the concrete of the piece.
#pragma once

#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "units/quantity.hpp"

namespace firstpick::loads {

// Geometry's weight alone, nominal density; compared with the stated weight.
Force nominal_weight(const plan::Plan& plan, const piece::Body& body);

// The weight that every load starts from: upper bound by geometry, or the stated weight where that is more.
// Not assessed: density tolerance missing, negative or not finite; volume, density or stated weight not
// positive and finite.
Outcome<Force> weight(const plan::Plan& plan, const piece::Body& body, Trace& trace);

// The least that density and stated weight allow, where a lighter piece is the worse one.
// Not assessed: no tolerance of the density.
Outcome<Force> least_weight(const plan::Plan& plan, const piece::Body& body);

}  // namespace firstpick::loads
