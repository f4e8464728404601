// The picks of a stage: which inserts its legs go to, their numbers on the card, and how they are seen from
// above.
#pragma once

#include <cstddef>
#include <vector>

#include "piece/line_drawing.hpp"
#include "plan/plan.hpp"

namespace firstpick::card {

struct Pick {
  std::size_t insert = 0;  // index in the plan
  std::size_t leg = 0;     // index in the rigging
  int number = 0;          // from 1, in the order of the legs
};

std::vector<Pick> picks_of(const plan::Plan& plan, const plan::Rigging& rigging);

// Square on the side of the piece that is up as it hangs. `up` in piece axes.
piece::View view_from_above(const Direction& up);

// The rectangle around the piece in that view.
struct Span {
  plan::PlanarPoint lowest, highest;
};
Span span_of(const std::vector<piece::DrawnLine>& lines);
Span span_of(const piece::Body& body, const piece::View& view);  // of its box

}  // namespace firstpick::card
