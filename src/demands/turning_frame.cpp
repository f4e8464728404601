#include "demands/turning_frame.hpp"

#include <cmath>

namespace firstpick::demands {

namespace {

constexpr double level_within = 1e-6;  // of the edge's own length: 1 mm in a kilometre
constexpr Length too_near = 1e-6 * m;

constexpr Direction as_cast_up{0.0, 0.0, 1.0};

Direction unit(const Position& p) {
  const Length length = norm(p);
  return {p.x / length, p.y / length, p.z / length};
}

}  // namespace

Direction up_at(const TurningFrame& frame, Angle angle) {
  return cosine(angle) * frame.flat_up + sine(angle) * frame.rising;
}

Direction level_at(const TurningFrame& frame, Angle angle) {
  return cosine(angle) * frame.rising - sine(angle) * frame.flat_up;
}

Outcome<TurningFrame> frame_about_edge(const std::array<Position, 2>& edge, const Position& centre) {
  const Position along = edge[1] - edge[0];
  const Length reach = norm(along);
  if (!(reach > too_near) || !is_finite(reach))
    return NotAssessed{"the two points of the edge are the same point", "[stage.turn] about = two points of the edge"};
  const Direction e = unit(along);
  if (!(std::abs(e.z) <= level_within))
    return NotAssessed{"the edge is not level as cast", "[stage.turn] about = two points at the same height"};
  const Direction across{-e.y, e.x, 0.0};
  const Position out = centre - edge[0];
  const Length offset = across.x * out.x + across.y * out.y;
  if (!(abs(offset) > too_near))
    return NotAssessed{"the edge lies plumb under the centre of gravity, neither side rises",
                       "[stage.turn] about = an edge beside the centre of gravity"};
  const double length = std::hypot(across.x, across.y);
  const double side = (offset > Length{} ? 1.0 : -1.0) / length;
  return TurningFrame{edge[0], e, reach, as_cast_up, side * across};
}

Outcome<TurningFrame> frame_between(const Position& tail, const Position& main) {
  const Position apart{main.x - tail.x, main.y - tail.y, Length{}};
  if (!(norm(apart) > too_near))
    return NotAssessed{"the picks of the two hooks stand over each other as cast",
                       "picks of main and tail at opposite ends of the piece"};
  const Direction rising = unit(apart);
  return TurningFrame{tail, {-rising.y, rising.x, 0.0}, Length{}, as_cast_up, rising};
}

}  // namespace firstpick::demands
