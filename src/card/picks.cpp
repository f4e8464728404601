#include "card/picks.hpp"

#include <algorithm>
#include <cmath>

namespace firstpick::card {

std::vector<Pick> picks_of(const plan::Plan& plan, const plan::Rigging& rigging) {
  std::vector<Pick> picks;
  for (std::size_t leg = 0; leg < rigging.legs.size(); ++leg) {
    const auto insert = std::ranges::find(plan.inserts, rigging.legs[leg].to, &plan::Insert::id);
    if (insert == plan.inserts.end()) continue;  // to a beam or a sheave
    picks.push_back(
        {static_cast<std::size_t>(insert - plan.inserts.begin()), leg, static_cast<int>(picks.size()) + 1});
  }
  return picks;
}

piece::View view_from_above(const Direction& up) {
  const double x = std::abs(up.x), y = std::abs(up.y), z = std::abs(up.z);
  const Direction z_up{0.0, 0.0, 1.0};
  if (x > y && x > z) return {{0.0, up.x > 0.0 ? 1.0 : -1.0, 0.0}, z_up};
  if (y > x && y > z) return {{up.y > 0.0 ? -1.0 : 1.0, 0.0, 0.0}, z_up};
  return {{up.z >= 0.0 ? 1.0 : -1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}};
}

Span span_of(const std::vector<piece::DrawnLine>& lines) {
  Span span{lines.front().points.front(), lines.front().points.front()};
  for (const piece::DrawnLine& line : lines)
    for (const plan::PlanarPoint& p : line.points) {
      span.lowest = {std::min(span.lowest.x, p.x), std::min(span.lowest.y, p.y)};
      span.highest = {std::max(span.highest.x, p.x), std::max(span.highest.y, p.y)};
    }
  return span;
}

Span span_of(const piece::Body& body, const piece::View& view) {
  return span_of(piece::box_drawing(body, view));
}

}  // namespace firstpick::card
