#include "piece/opened_body.hpp"

#include <array>
#include <utility>

#include "piece/shape.hpp"

namespace firstpick::piece {

namespace {

using Points = std::vector<plan::PlanarPoint>;

// x, y, z in the order first, second, along.
template <class Three>
std::array<Length, 3> across_and_along(const Three& v, plan::Axis axis) {
  switch (axis) {
    case plan::Axis::x: return {v.y, v.z, v.x};
    case plan::Axis::y: return {v.z, v.x, v.y};
    case plan::Axis::z: break;
  }
  return {v.x, v.y, v.z};
}

Points rectangle(Length x, Length y, Length width, Length height) {
  return {{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}};
}

Points shifted(Points points, Length x, Length y) {
  for (plan::PlanarPoint& p : points) p = {p.x + x, p.y + y};
  return points;
}

std::optional<SweptOutline> section_of(const plan::Solid& s, plan::Axis axis) {
  if (s.turned_about) return {};
  const auto [x, y, low] = across_and_along(s.at, axis);
  if (s.shape == plan::Shape::box) {
    const auto [width, height, length] = across_and_along(s.size, axis);
    return SweptOutline{low, low + length, rectangle(x, y, width, height), {}, {}, {}};
  }
  if (s.axis != axis) return {};
  SweptOutline made{low, low + s.length, {}, {}, {}, {x, y}};
  if (s.shape == plan::Shape::cylinder) {
    made.radius = 0.5 * s.diameter;
    made.outline = rectangle(x - *made.radius, y - *made.radius, s.diameter, s.diameter);
    return made;
  }
  if (s.shape != plan::Shape::prism) return {};
  made.outline = shifted(s.outline, x, y);
  for (const Points& hole : s.holes) made.holes.push_back(shifted(hole, x, y));
  return made;
}

// The openings that follow the first solid, up to the first that is none.
std::optional<OpenedBody> opened_along(const std::vector<plan::Solid>& solids, plan::Axis axis) {
  const auto body = section_of(solids.front(), axis);
  if (!body || body->radius) return {};
  OpenedBody found{axis, *body, {}};
  plan::Solid clear;  // holds the outlines against each other, as those of a prism that is written with holes
  clear.shape = plan::Shape::prism;
  clear.outline = body->outline, clear.holes = body->holes;
  for (std::size_t i = 1; i < solids.size() && solids[i].cut; ++i) {
    const auto opening = section_of(solids[i], axis);
    if (!opening || !opening->holes.empty() || !(opening->low <= body->low && opening->high >= body->high)) break;
    clear.holes.push_back(opening->outline);
    if (outline_fault(clear)) break;
    found.openings.push_back(*opening);
  }
  return found;
}

}  // namespace

std::optional<OpenedBody> opened_body(const std::vector<plan::Solid>& solids) {
  if (solids.size() < 2 || solids.front().cut || !solids[1].cut) return {};
  std::optional<OpenedBody> most;
  for (const plan::Axis axis : {plan::Axis::z, plan::Axis::x, plan::Axis::y}) {
    auto found = opened_along(solids, axis);
    if (found && found->openings.size() > (most ? most->openings.size() : 0)) most = std::move(found);
  }
  return most;
}

}  // namespace firstpick::piece
